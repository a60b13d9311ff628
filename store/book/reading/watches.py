"""What is to be looked at again. A watch is one step; each look at it is an entry of it, and the newest counts."""

from datetime import datetime, timedelta
from uuid import UUID

from msgspec import Struct

from store.book.clock import first_id, micros, moment
from store.book.desk import FoundRow, ReadingDesk
from store.book.drafts import Subject
from store.book.figures import WatchedFigure
from store.book.reading import care_sql
from store.book.reading.facts import maybe_uid, uid
from store.book.words import Looks

LATELY = timedelta(days=1)
LOOKED_BACK = timedelta(days=92)
"""What should have been looked at longer ago is no watch any more, so that reading costs the same in every year."""


class Watch(Struct, frozen=True):
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


class Looked(Struct, frozen=True):
    """What was written of a watch lately and counts. before: what it took the place of; None: it was offered then."""

    entry_id: UUID
    step_id: UUID
    subject: Subject
    at: datetime
    figure: WatchedFigure
    before: WatchedFigure | None


def open_watches(desk: ReadingDesk, at: datetime) -> tuple[Watch, ...]:
    """What is still to be looked at again, soonest first, as the book stands. at: the moment of asking."""
    values = {"at": micros(at), "long_ago": micros(at - LOOKED_BACK)}
    return tuple(_watch(found) for found in desk.rows(care_sql.OPEN_WATCHES, values))


def looked_lately(desk: ReadingDesk, at: datetime) -> tuple[Looked, ...]:
    """What was written of watches in the last day, newest first: what can be taken back."""
    found = desk.rows(care_sql.LOOKED_LATELY, {"first_id": first_id(at - LATELY).bytes})
    return tuple(_looked(each) for each in found)


def _looked(found: FoundRow) -> Looked:
    id_, step_id, *rest = found
    before = _figure(*rest[9:]) if rest[9] is not None else None
    return Looked(uid(id_), uid(step_id), _subject(*rest[:4]), moment(rest[4]), _figure(*rest[5:9]), before)


def _figure(words: str, due_at: int | None, due_until: int | None, looks: str | None) -> WatchedFigure:
    return WatchedFigure(words, _maybe(due_at), _maybe(due_until), Looks(looks) if looks else None)


def _watch(found: FoundRow) -> Watch:
    id_, step_id, *rest = found
    subject, seen_at, figure = _subject(*rest[:4]), moment(rest[4]), _figure(*rest[5:])
    due_at = moment(rest[6])
    return Watch(uid(id_), uid(step_id), subject, seen_at, figure.words, due_at, figure.due_until, figure.looks)


def _subject(*ids: bytes | None) -> Subject:
    return Subject(*map(maybe_uid, ids))


def _maybe(found: int | None) -> datetime | None:
    return None if found is None else moment(found)
