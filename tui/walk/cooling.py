"""The milk into ice: how long since the first pail, and where that is too long, what becomes of the milk."""

from datetime import datetime
from typing import ClassVar

from store.book.drafts import Draft
from store.book.figures import CooledFigure
from store.book.words import State
from store.round.amount import Unreadable
from store.round.confirm import Hand
from store.round.cool import LATE_FATES, cooled, is_late, since_first, too_soon
from store.round.saying import weight
from store.round.steps import CoolStep
from tui.page import Line, Role, Size, Span, large_lines, line, wrapped
from tui.walk.job import Job
from tui.walk.shown import Shown
from tui.walk.title import scale_for, title
from tui.words import clock, elapsed, volume

LATE_WORDS = ("kept all the same", "to the calves", "to other animals", "thrown away")
ANSWER_CELLS = 24
RAW = (
    "Raw milk: no look, smell or taste shows that it is safe. Children, the pregnant, the old and the ill should not "
    "drink it. Common practice: local rules and your vet decide."
)


class CoolJob(Job[CoolStep]):
    """Enter writes the time; lines are what becomes of milk that is late."""

    DIGITS: ClassVar[str] = "if late: its use"
    PICKS: ClassVar[bool] = True
    ROW_COUNTS: ClassVar[bool] = True

    def first_row(self, step: CoolStep) -> int:
        """What the book holds already; none: it has to be picked."""
        written = step.entry.the(CooledFigure) if step.entry and step.entry.state is State.DONE else None
        return LATE_FATES.index(written.fate) if written and written.fate in LATE_FATES else -1

    def rows(self, shown: Shown, step: CoolStep) -> int:
        """Only where it is late there is something to pick."""
        return len(LATE_FATES) if is_late(step, _at(shown, step)) else 1

    def draft(self, hand: Hand, shown: Shown, step: CoolStep) -> Draft:
        """In ice now; late, with what was picked. Nothing can be in ice before it was milked."""
        problem = too_soon(step, _at(shown, step))
        if problem:
            raise Unreadable(problem)
        return cooled(hand, step, LATE_FATES[shown.row] if shown.row >= 0 else None)

    def again(self, hand: Hand, shown: Shown, step: CoolStep) -> Draft:
        """At another time it may be late, or no longer be."""
        return self.draft(hand, shown, step)

    def lines(self, shown: Shown, step: CoolStep, size: Size) -> list[Line]:
        """The minutes, large."""
        return cool_lines(shown, step, size)

    def enter_words(self, shown: Shown, step: CoolStep) -> str:
        """The clock stops with this key."""
        if too_soon(step, _at(shown, step)):
            return "once a pail is written"
        if not is_late(step, _at(shown, step)):
            return "in ice now"
        return f"in ice now, {LATE_WORDS[shown.row]}" if shown.row >= 0 else "once it is said what becomes of it"


def cool_lines(shown: Shown, step: CoolStep, size: Size) -> list[Line]:
    """The body of the step."""
    at, zone = _at(shown, step), shown.walker.farm.zone
    since = since_first(step, at)
    large = elapsed(since) if since is not None else "-"
    role = Role.WARNING if is_late(step, at) else Role.AMOUNT
    lines = title(step.name, ["INTO ICE", step.place, _kept(shown, step)], size)
    lines += [(Span("  "), *row) for row in large_lines(large, role, size.width - 4, scale_for(size))]
    first = f"since the first pail, {clock(step.first_at, zone)}" if step.first_at else "no pail for people yet"
    lines += [(), line(f"  {first}; your limit {step.within_min:g} min")]
    late = _late(shown, size) if since is not None and is_late(step, at) else []
    return [*lines, *late, (), *wrapped(RAW, size.width, Role.TEXT, "  ")]


def _late(shown: Shown, size: Size) -> list[Line]:
    """The question, and its answers, as many in a row as fit whole."""
    answers = [
        Span(f" {'>' if row == shown.row else ' '} {row + 1} {words:<{ANSWER_CELLS - 6}} ", _role(row, shown))
        for row, words in enumerate(LATE_WORDS)
    ]
    a_row = max(size.width // ANSWER_CELLS, 1)
    rows = [tuple(answers[at : at + a_row]) for at in range(0, len(answers), a_row)]
    return [*wrapped("LATE. What becomes of the milk for people?", size.width, Role.WARNING, "  "), *rows]


def _role(row: int, shown: Shown) -> Role:
    return Role.HERE if row == shown.row else Role.TEXT


def _kept(shown: Shown, step: CoolStep) -> str:
    units = shown.units
    return f"{weight(step.kept_kg, units)}, {volume(step.kept_kg, units)} for people" if step.kept_kg else "none yet"


def _at(shown: Shown, step: CoolStep) -> datetime:
    return shown.done(step).latest
