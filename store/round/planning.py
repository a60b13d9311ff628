"""What the modules that make steps share: the snapshot, and what already counts."""

from collections.abc import Mapping
from dataclasses import dataclass
from uuid import UUID

from store.book.drafts import Subject
from store.book.snapshot import Snapshot, Written
from store.book.words import Kind

BENCH = "Bench"
NO_PEN = "No pen"


@dataclass(frozen=True, slots=True)
class Planning:
    """A snapshot while its plan is drawn."""

    snapshot: Snapshot
    counts: Mapping[UUID, Written]

    def step_id(self, kind: Kind, subject: Subject) -> UUID:
        """The name of a step of this round."""
        return self.snapshot.turn.step_id(self.snapshot.farm.id, kind, subject.id)
