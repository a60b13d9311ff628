"""The job of a quarter that was marked in an earlier round."""

from typing import ClassVar

from store.book.drafts import Draft
from store.book.figures import QuarterFigure
from store.book.words import Sign, State
from store.round.care import quarter_looked
from store.round.confirm import Hand
from store.round.quarters import toggled
from store.round.steps import QuarterStep
from tui.page import Line, Size
from tui.walk.job import Job, More
from tui.walk.looks import QUARTER
from tui.walk.quarter_cards import quarter_lines
from tui.walk.shown import Shown


class QuarterJob(Job[QuarterStep]):
    """How it is now: digits pick signs, several if need be; none at first."""

    DIGITS: ClassVar[str] = "how it is"
    TOGGLES: ClassVar[bool] = True

    def first_marks(self, step: QuarterStep) -> frozenset[str]:
        """The signs that the book holds already."""
        written = step.entry.of(QuarterFigure) if step.entry and step.entry.state is State.DONE else ()
        return frozenset(figure.sign.value for figure in written)

    def toggled(self, marks: frozenset[str], number: int) -> frozenset[str]:
        """One sign more, or one less."""
        signs = toggled(frozenset(map(Sign, marks)), tuple(Sign)[number - 1])
        return frozenset(sign.value for sign in signs)

    def draft(self, hand: Hand, shown: Shown, step: QuarterStep) -> Draft:
        """The signs."""
        return quarter_looked(hand, step, map(Sign, shown.marks))

    def lines(self, shown: Shown, step: QuarterStep, size: Size) -> list[Line]:
        """The four quarters, and the signs to pick from."""
        return quarter_lines(shown, step, size)

    def enter_words(self, shown: Shown, step: QuarterStep) -> str:  # noqa: ARG002
        """Once a sign is picked."""
        return "write it" if shown.marks else "once a sign is picked"

    def more(self, shown: Shown, step: QuarterStep) -> tuple[More, ...]:  # noqa: ARG002
        """Another quarter is not as the others."""
        return (QUARTER,)
