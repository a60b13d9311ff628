"""The steps of a round, as frozen values. One class per kind; `store.round.plan` makes them."""

from dataclasses import dataclass
from uuid import UUID

from store.book.drafts import Subject
from store.book.snapshot import Animal, Feed, Given, Milking, Told, Written
from store.book.words import Kind, State


@dataclass(frozen=True, slots=True)
class Step:
    """One job of the round. `entry` is what the book holds for it: the newest, or None."""

    step_id: UUID
    kind: Kind
    subject: Subject
    name: str  # whose step: "FENNEL", "Orchard", "Sweep the stand"
    place: str  # where: the pen's name, or the bench
    entry: Written | None

    @property
    def state(self) -> State:
        """What became of it so far."""
        return State.OPEN if self.entry is None else self.entry.state


@dataclass(frozen=True, slots=True)
class DueFeed:
    """One feed of a feed step: the weight that is due, and how it is told at the bench.

    due_kg: for all heads together. [kg, soaked feeds dry]
    measures: the nearest quarter of the measure; None: told by weight.
    as_shown_kg: what those measures weigh; what Enter writes. [kg]
    """

    feed: Feed
    told: Told | None
    due_kg: float
    measures: float | None
    as_shown_kg: float


@dataclass(frozen=True, slots=True)
class FeedStep(Step):
    """What one animal, or a pen fed as one, gets."""

    animal: Animal | None
    heads: tuple[Animal, ...]
    due: tuple[DueFeed, ...]
    before: Given | None


@dataclass(frozen=True, slots=True)
class MilkStep(Step):
    """One cow to be milked; the calves that share her milk; her usual pail in this slot. [kg]"""

    animal: Animal
    calves: tuple[Animal, ...]
    milking: Milking
    usual_kg: tuple[float, float] | None


@dataclass(frozen=True, slots=True)
class TaskStep(Step):
    """A standing job."""


@dataclass(frozen=True, slots=True)
class PastStep(Step):
    """Something this round's book holds that is no longer planned: it still counts."""
