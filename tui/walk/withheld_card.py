"""Withheld milk on a card: until when none is kept, how short this milking is, which is the first to keep, and why."""

from datetime import timedelta
from math import ceil

from store.book.facts.milk import Withholding
from store.round.measured import withholding_at
from store.round.steps import MilkStep
from store.round.withholding import first_turn_to_keep
from tui.page import Line, Role, Size, wrapped
from tui.telling import turn_words
from tui.treated import sucks_words
from tui.walk.shown import Shown
from tui.words import hours, when

CAUTION = "Treated or just calved: none to the house until label or vet allow."
HOUR_MIN = 60


def withheld_lines(shown: Shown, step: MilkStep, size: Size) -> list[Line]:
    """Withheld milk says until when; otherwise the usual caution."""
    withheld = withholding_at(step, shown.done(step))
    if withheld is None:
        return wrapped(CAUTION, size.width, Role.WARNING, "          ")
    words = _until(shown, step, withheld)
    lines = wrapped(f"{words}: {withheld.why}", size.width, Role.WARNING, "  ")
    for calf in step.calves:
        for sucks in sucks_words(shown.walker, step.animal, calf.calf, shown.now):
            lines += wrapped(sucks, size.width, Role.WARNING, "  ")
    return lines


def _until(shown: Shown, step: MilkStep, withheld: Withholding) -> str:
    """Until when none is kept, and which milking is the first to keep, as far as that can be reckoned."""
    first, at, zone = _first(shown, step), shown.done(step).earliest, shown.walker.zone
    if withheld.until and not withheld.to_calves:
        minutes = (withheld.until - at) / timedelta(minutes=1)
        short = f"{ceil(minutes)} min" if minutes < HOUR_MIN else hours(minutes / HOUR_MIN)
        return f"KEEP NONE BEFORE {when(withheld.until, zone)}, {short} short{f'; then {first}' if first else ''}"
    none = "NONE TO THE HOUSE" if withheld.to_calves else "KEEP NONE"
    return f"{none} BEFORE {first}" if first else f"{none} until further notice"


def _first(shown: Shown, step: MilkStep) -> str:
    """`Sun 15 Mar morning`; empty where that cannot be reckoned."""
    snapshot = shown.walker.snapshot
    turn = first_turn_to_keep(snapshot, step.animal.id, shown.done(step).earliest)
    return turn_words(turn) if turn and turn != snapshot.turn else ""
