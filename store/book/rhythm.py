"""At which of her planned milkings a cow is milked: each, every other one, every third."""

from collections.abc import Collection, Sequence

from store.book.facts.milk import PastPail
from store.book.turn import Turn


def is_her_turn(every: int, slots: Collection[str], pails: Sequence[PastPail], turn: Turn) -> bool:
    """Whether a cow that is milked at every so many of her planned milkings is milked in this round.

    slots: of the feeding rounds in which she is planned. pails: of earlier rounds, newest first. Counted from the last
    round in which she was milked, or was on paper; one that was left out on purpose, or skipped, is not passed over.
    """
    milked = (pail.turn for pail in pails if pail.milk_kg is not None or pail.on_paper)
    last = next((each for each in milked if each and each.is_before(turn)), None)
    return every == 1 or last is None or _planned(slots, last, turn, every) >= every


def _planned(slots: Collection[str], last: Turn, turn: Turn, most: int) -> int:
    """Planned milkings behind a round, up to this one, at most so many."""
    count, at = 0, last
    while at.is_before(turn) and count < most:
        at = at.after()
        count += at.slot in slots
    return count
