"""What the modules that make steps share: the snapshot, and what already counts."""

from collections.abc import Mapping
from dataclasses import dataclass
from uuid import UUID

from store.book.drafts import Subject
from store.book.snapshot import Snapshot, Written
from store.book.words import Kind

BENCH = "Bench"
NO_PEN = "No pen"
GONE = "gone since"
Head = tuple[UUID, Kind, Subject, str, str, Written | None]
"""The fields that every step begins with."""


@dataclass(frozen=True, slots=True)
class Planning:
    """A snapshot while its plan is drawn."""

    snapshot: Snapshot
    counts: Mapping[UUID, Written]

    def head(self, kind: Kind, subject: Subject, name: str, place: str, occasion: str = "") -> Head:
        """The name of a step of this round, what it is about, and what the book holds for it."""
        step_id = self.snapshot.turn.step_id(self.snapshot.farm.id, kind, subject.id, occasion)
        return step_id, kind, subject, name, place, self.counts.get(step_id)
