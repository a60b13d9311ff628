"""The jobs of what falls due at an animal: a look with findings to pick from, a look with a figure, a dose."""

from typing import ClassVar

from store.book.drafts import Draft
from store.book.facts.farm import Animal
from store.book.figures import LookedFigure
from store.book.words import Looks, State
from store.round.amount import Unreadable
from store.round.care import dosed, look_measured, looked
from store.round.confirm import Doubtful, Hand
from store.round.measured import IF_RIGHT
from store.round.steps import DoseStep, LookStep
from tui.page import Line, Size
from tui.walk.care_cards import EARLY_H, dose_lines, look_lines
from tui.walk.job import Job, More
from tui.walk.shown import Shown
from tui.words import hours, when


class LookJob(Job[LookStep]):
    """How it has come on: a line for each finding, none chosen at first."""

    ENTER: ClassVar[str] = "write it"
    DIGITS: ClassVar[str] = "how it looks"
    PICKS: ClassVar[bool] = True
    ROW_COUNTS: ClassVar[bool] = True

    def first_row(self, step: LookStep) -> int:
        """The finding that the book holds already; none: it has to be picked."""
        written = step.entry.the(LookedFigure) if step.entry and step.entry.state is State.DONE else None
        return tuple(Looks).index(written.looks) if written and written.looks else -1

    def rows(self, shown: Shown, step: LookStep) -> int:  # noqa: ARG002
        """The findings."""
        return len(Looks)

    def draft(self, hand: Hand, shown: Shown, step: LookStep) -> Draft:
        """The finding."""
        if shown.row < 0:
            raise Unreadable("How does it look? 1 all right, 2 better, 3 the same, 4 worse; then Enter.")
        return looked(hand, step, tuple(Looks)[shown.row])

    def lines(self, shown: Shown, step: LookStep, size: Size) -> list[Line]:
        """The findings to pick from."""
        return look_lines(shown, step, size)


class LookFigureJob(Job[LookStep]):
    """A score, a girth, a temperature: never as shown."""

    ENTER: ClassVar[str] = "write it"
    DIGITS: ClassVar[str] = "the figure"

    def draft(self, hand: Hand, shown: Shown, step: LookStep) -> Draft:
        """The figure typed."""
        if not shown.typed.get(0):
            raise Unreadable(f"A {step.look.asks.value} is never as shown. Type it, or S to skip.")
        return look_measured(hand, step, shown.typed[0])

    def lines(self, shown: Shown, step: LookStep, size: Size) -> list[Line]:
        """The figure, large."""
        return look_lines(shown, step, size)


class DoseJob(Job[DoseStep]):
    """A dose is given: never by Enter alone, its number is typed."""

    DIGITS: ClassVar[str] = "the dose's number"

    def draft(self, hand: Hand, shown: Shown, step: DoseStep) -> Draft:
        """Given, once its number stands there."""
        if not _is_said(shown, step):
            raise Unreadable(
                f"A dose is never as shown. Type {step.number} when dose {step.number} is given, or S skips."
            )
        early_h = (step.due_at - hand.when.earliest).total_seconds() / 3600
        if early_h > EARLY_H and not shown.sure:
            raise Doubtful(f"It is {hours(early_h)} too early: due {when(step.due_at, shown.walker.zone)}. {IF_RIGHT}")
        return dosed(hand, step)

    def lines(self, shown: Shown, step: DoseStep, size: Size) -> list[Line]:
        """What was ordered."""
        return dose_lines(shown, step, size)

    def more(self, shown: Shown, step: DoseStep) -> tuple[More, ...]:  # noqa: ARG002
        """Its record."""
        return (treatments_of(step.animal),)

    def enter_words(self, shown: Shown, step: DoseStep) -> str:
        """The clock to the next one starts with this key."""
        return f"dose {step.number} given now" if _is_said(shown, step) else f"once {step.number} is typed"


def _is_said(shown: Shown, step: DoseStep) -> bool:
    """Whether the number that is typed is this dose's."""
    return shown.typed.get(0, "").strip() == str(step.number)


def treatments_of(animal: Animal) -> More:
    """Where the record of a treatment is begun, mended or ended."""
    return More("Treatments of her: begin, mend, end one", lambda lamp: lamp.rooms.treatments(lamp, animal.id))
