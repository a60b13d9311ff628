"""Some feeding rounds on end: from which one a forecast counts, and until when."""

from datetime import datetime

from msgspec import Struct

from store.book.facts.farm import FarmFacts
from store.book.snapshot import Snapshot
from store.book.turn import Turn, turn_at
from store.book.words import State
from store.round.plan import plan
from store.round.steps import FeedStep


class Stretch(Struct, frozen=True):
    """Feeding rounds, one after the other, seen from a moment."""

    farm: FarmFacts
    now: datetime
    turns: tuple[Turn, ...]

    @property
    def slots(self) -> frozenset[str]:
        """Those of its rounds."""
        return frozenset(turn.slot for turn in self.turns)

    @property
    def over(self) -> datetime:
        """When its last round is over."""
        return self.turns[-1].ends(self.farm.zone, self.farm.evening_from_h)

    def ends(self, slot: str) -> datetime:
        """When its last round of a slot is over."""
        last = [turn for turn in self.turns if turn.slot == slot][-1]
        return last.ends(self.farm.zone, self.farm.evening_from_h)

    def begins(self, slot: str) -> datetime:
        """From when on a slot is another: now, or after the present round, where that is of the slot and not one of it.

        Never the moment of writing: whoever leaves the sheet open past a round's end would begin behind it.
        """
        present = turn_at(self.now, self.farm.zone, self.farm.evening_from_h)
        waits = present.slot == slot and present not in self.turns
        return present.ends(self.farm.zone, self.farm.evening_from_h) if waits else self.now

    def words(self) -> str:
        """`morning Wed to evening Wed`."""
        first, last = (f"{turn.slot} {turn.day:%a}" for turn in (self.turns[0], self.turns[-1]))
        return first if first == last else f"{first} to {last}"


def stretch_from(this: Snapshot, now: datetime, count: int) -> Stretch:
    """So many rounds, beginning with this one, or with the next where all hay of this one is given."""
    hay = [step for step in plan(this) if isinstance(step, FeedStep) and any(due.feed.baled for due in step.due)]
    given = bool(hay) and all(step.state is State.DONE for step in hay)
    turns = [this.turn.after() if given else this.turn]
    while len(turns) < count:
        turns.append(turns[-1].after())
    return Stretch(this.farm, now, tuple(turns))
