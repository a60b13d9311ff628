"""What the modules that make steps share: the snapshot, and what already counts."""

from collections.abc import Mapping
from functools import cached_property
from uuid import UUID

from msgspec import Struct

from store.book.drafts import Subject
from store.book.snapshot import Snapshot, Written
from store.book.words import Kind
from store.round.bucket import Bucket, read_buckets

BENCH = "Bench"
NO_PEN = "No pen"
GONE = "gone since"
Head = tuple[UUID, Kind, Subject, str, str, Written | None]
"""The fields that every step begins with."""


class Planning(Struct, frozen=True, dict=True):
    """A snapshot while its plan is drawn."""

    snapshot: Snapshot
    counts: Mapping[UUID, Written]

    @cached_property
    def buckets(self) -> Mapping[UUID, Bucket]:
        """What stands in each soak bucket that this round feeds from, by feed: every feed step asks for it."""
        return {bucket.feed.id: bucket for bucket in read_buckets(self.snapshot, self.counts)}

    def head(self, kind: Kind, subject: Subject, name: str, place: str, occasion: str = "") -> Head:
        """The name of a step of this round, what it is about, and what the book holds for it."""
        step_id = self.snapshot.turn.step_id(self.snapshot.farm.id, kind, subject.id, occasion)
        return step_id, kind, subject, name, place, self.counts.get(step_id)
