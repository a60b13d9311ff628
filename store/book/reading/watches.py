"""What is to be looked at again. A watch is one step; each look at it is an entry of it, and the newest counts."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from uuid import UUID

from store.book.clock import micros, moment
from store.book.desk import FoundRow, ReadingDesk
from store.book.drafts import Subject
from store.book.reading import sql
from store.book.reading.facts import maybe_uid, uid
from store.book.words import Looks

LOOKED_BACK = timedelta(days=92)
"""What should have been looked at longer ago is no watch any more, so that reading costs the same in every year."""


@dataclass(frozen=True, slots=True)
class Watch:
    """Something to be looked at again at a moment, or between two. looks: how it was last; None: not looked yet.

    entry_id: the entry that counts; seen_at: when that was. due_until None: at one moment.
    """

    entry_id: UUID
    step_id: UUID
    subject: Subject
    seen_at: datetime
    words: str
    due_at: datetime
    due_until: datetime | None = None
    looks: Looks | None = None

    def is_due(self, now: datetime) -> bool:
        """Whether it is time to look."""
        return self.due_at <= now

    def is_late(self, now: datetime) -> bool:
        """Whether the time to look has gone by."""
        return (self.due_until or self.due_at) < now


def open_watches(desk: ReadingDesk, at: datetime) -> tuple[Watch, ...]:
    """What is still to be looked at again, soonest first, as the book stands. at: the moment of asking."""
    values = {"at": micros(at), "long_ago": micros(at - LOOKED_BACK)}
    return tuple(_watch(found) for found in desk.rows(sql.OPEN_WATCHES, values))


def _watch(found: FoundRow) -> Watch:
    id_, step_id, animal, pen, task, feed, seen_at, words, due_at, due_until, looks = found
    return Watch(
        entry_id=uid(id_),
        step_id=uid(step_id),
        subject=Subject(maybe_uid(animal), maybe_uid(pen), maybe_uid(task), maybe_uid(feed)),
        seen_at=moment(seen_at),
        words=words,
        due_at=moment(due_at),
        due_until=None if due_until is None else moment(due_until),
        looks=Looks(looks) if looks else None,
    )
