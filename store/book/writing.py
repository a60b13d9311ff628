"""Adding an entry. Heavy: loaded by a thread after the first frame, at the latest by the first append."""

from collections.abc import Callable, Sequence
from datetime import datetime
from typing import TYPE_CHECKING, Any, TypeVar
from uuid import UUID

from msgspec.structs import fields
from pydantic import ValidationError
from sqlalchemy import Connection, insert, select, text
from sqlalchemy.exc import SQLAlchemyError
from sqlmodel import col

from store.book.clock import MICROSECOND, new_id
from store.book.desk import FoundRow, ReadingDesk, Values
from store.book.drafts import Draft, RowDraft
from store.book.engines import said_by
from store.book.errors import DamagedBook, Overtaken
from store.book.figures import Figure
from store.book.records import RECORDS, Dated, Entry, Line, Row

if TYPE_CHECKING:
    from store.book.opening import Book


T = TypeVar("T")
TABLES = {str(record.__tablename__): record for record in RECORDS}
LINES = {str(record.__tablename__): record for record in RECORDS if issubclass(record, Line)}


def append(book: "Book", draft: Draft) -> UUID:
    """Write a draft as one entry with its lines, in one durable transaction; the entry's id.

    Raises Overtaken if the book has a newer entry for this step than the one the screen showed (then nothing is
    written), DamagedBook if the disk or the server refuses.
    """
    try:
        with book.desk.engine().begin() as connection:
            return _add_entry(book, connection, draft)
    except (SQLAlchemyError, ValidationError) as error:
        raise DamagedBook(f"Nothing was written: {said_by(error)}.") from error


def _take_turn(connection: Connection, draft: Draft) -> None:
    """On a server, one bench at a time writes a step; a file has one program anyway."""
    if draft.step_id and connection.dialect.name == "postgresql":
        key = int.from_bytes(draft.step_id.bytes[:8], signed=True)
        connection.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": key})


def change(book: "Book", rows: Sequence[RowDraft], *entries: Draft) -> None:
    """Write rows of what changes slowly, and entries with them, as a note: all or none.

    Raises DamagedBook if the disk or server refuses.
    """
    now = book.clock.now()
    try:
        with book.desk.engine().begin() as connection:
            for draft in rows:
                row = _row(draft, now)
                connection.execute(insert(type(row)), row.model_dump())
            for entry in entries:
                _add_entry(book, connection, entry)
    except (SQLAlchemyError, ValidationError) as error:
        raise DamagedBook(f"Nothing was written: {said_by(error)}.") from error


def trial(book: "Book", rows: Sequence[RowDraft], look: Callable[[ReadingDesk], T]) -> T:
    """What `look` finds in the book as it would be with these rows; they are taken back, whatever happens.

    Raises DamagedBook where they could not be written.
    """
    now = book.clock.now()
    try:
        with book.desk.engine().connect() as connection, connection.begin() as begun:
            for draft in rows:
                row = _row(draft, now)
                connection.execute(insert(type(row)), row.model_dump())
            try:
                return look(TrialDesk(book.desk, connection))
            finally:
                begun.rollback()
    except (SQLAlchemyError, ValidationError) as error:
        raise DamagedBook(f"That cannot be written: {said_by(error)}.") from error


class TrialDesk:
    """A desk that reads what its one connection sees, also what is not committed. Nothing is written through it."""

    def __init__(self, desk: ReadingDesk, connection: Connection) -> None:
        """Over a connection of a desk."""
        self.place, self.shared = desk.place, desk.shared
        self.connection = connection

    def rows(self, sql: str, values: Values) -> Sequence[FoundRow]:
        """The rows that a statement finds."""
        return [tuple(row) for row in self.connection.execute(text(sql), values)]


def _row(draft: RowDraft, now: datetime) -> Row:
    record = TABLES[draft.table]
    given = {"id": new_id(now)} | ({"begins_at": now, "written_at": now} if issubclass(record, Dated) else {})
    return record.model_validate(given | dict(draft.values))


def _add_entry(book: "Book", connection: Connection, draft: Draft) -> UUID:
    _take_turn(connection, draft)
    entry = _entry(book, draft, _newest(connection, draft.step_id))
    lines = (_line(entry, at, figure) for at, figure in enumerate(draft.figures))
    for row in (entry, *lines):
        connection.execute(insert(type(row)), row.model_dump())
    return entry.id


def _newest(connection: Connection, step_id: UUID | None) -> tuple[UUID, datetime] | None:
    """The id of the entry that counts for a step, and when it was written."""
    if step_id is None:
        return None
    columns = (col(Entry.id), col(Entry.written_at))
    order = (col(Entry.written_at).desc(), col(Entry.id).desc())
    found = connection.execute(select(*columns).where(col(Entry.step_id) == step_id).order_by(*order).limit(1)).first()
    return None if found is None else (found[0], found[1])


def _entry(book: "Book", draft: Draft, newest: tuple[UUID, datetime] | None) -> Entry:
    if (newest[0] if newest else None) != draft.shown:
        raise Overtaken("Another bench wrote this step first. Nothing was written; look at it again.")
    written_at = _after(newest, draft.as_of or book.clock.now())
    own_id = new_id(written_at)
    values: dict[str, Any] = {
        "id": own_id,
        "step_id": draft.step_id or own_id,
        "kind": draft.kind,
        "animal_id": draft.subject.animal_id,
        "pen_id": draft.subject.pen_id,
        "task_id": draft.subject.task_id,
        "feed_id": draft.subject.feed_id,
        "day": draft.turn.day if draft.turn else None,
        "slot": draft.turn.slot if draft.turn else None,
        "state": draft.state,
        "reason": draft.reason,
        "happened_at": draft.happened_at,
        "happened_from": draft.happened_from,
        "written_at": written_at,
        "person_id": draft.person_id,
        "bench": book.bench,
        "replaces_id": draft.shown,
    }
    return Entry.model_validate(values)


def _after(newest: tuple[UUID, datetime] | None, now: datetime) -> datetime:
    """Now, but always after the entry it replaces, whatever the clock says."""
    return now if newest is None else max(now, newest[1] + MICROSECOND)


def _line(entry: Entry, position: int, figure: Figure) -> Line:
    values: dict[str, Any] = {each.name: getattr(figure, each.name) for each in fields(figure)}
    own = {"id": new_id(entry.written_at), "entry_id": entry.id, "position": position}
    return LINES[figure.TABLE].model_validate(own | values)
