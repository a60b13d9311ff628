"""Adding an entry. Heavy: loaded by a thread after the first frame, at the latest by the first append."""

from dataclasses import fields
from datetime import datetime
from typing import TYPE_CHECKING, Any
from uuid import UUID

from pydantic import ValidationError
from sqlalchemy import text
from sqlalchemy.exc import SQLAlchemyError
from sqlmodel import Session, col, select

from store.book.clock import MICROSECOND, new_id
from store.book.drafts import Draft
from store.book.engines import said_by
from store.book.errors import DamagedBook, Overtaken
from store.book.figures import Figure
from store.book.records import RECORDS, Entry, Line
from store.book.records.feeding import Weighing

if TYPE_CHECKING:
    from store.book.opening import Book


LINES = {str(record.__tablename__): record for record in RECORDS if issubclass(record, Line)}


def append(book: "Book", draft: Draft) -> UUID:
    """Write a draft as one entry with its lines, in one durable transaction; the entry's id.

    Raises Overtaken if the book has a newer entry for this step than the one the screen showed (then nothing is
    written), DamagedBook if the disk or the server refuses.
    """
    try:
        with Session(book.desk.engine()) as session, session.begin():
            _take_turn(session, draft)
            entry = _entry(book, draft, newest_of(session, draft.step_id) if draft.step_id else None)
            session.add(entry)
            session.flush()
            session.add_all(_line(entry, at, figure) for at, figure in enumerate(draft.figures))
            return entry.id
    except (SQLAlchemyError, ValidationError) as error:
        raise DamagedBook(f"Nothing was written: {said_by(error)}.") from error


def _take_turn(session: Session, draft: Draft) -> None:
    """On a server, one bench at a time writes a step; a file has one program anyway."""
    if draft.step_id and session.get_bind().dialect.name == "postgresql":
        key = int.from_bytes(draft.step_id.bytes[:8], signed=True)
        session.connection().execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": key})


def weigh(book: "Book", measure_id: UUID, feed_id: UUID, holds_kg: float) -> None:
    """Write a dated weighing that begins now. Raises DamagedBook if the disk or the server refuses."""
    now = book.clock.now()
    values: dict[str, Any] = {"id": new_id(now), "begins_at": now, "written_at": now}
    values |= {"measure_id": measure_id, "feed_id": feed_id, "holds_kg": holds_kg}
    try:
        with Session(book.desk.engine()) as session, session.begin():
            session.add(Weighing.model_validate(values))
    except (SQLAlchemyError, ValidationError) as error:
        raise DamagedBook(f"Nothing was written: {said_by(error)}.") from error


def newest_of(session: Session, step_id: UUID) -> Entry | None:
    """The entry that counts for a step."""
    order = (col(Entry.written_at).desc(), col(Entry.id).desc())
    return session.exec(select(Entry).where(Entry.step_id == step_id).order_by(*order).limit(1)).first()


def _entry(book: "Book", draft: Draft, newest: Entry | None) -> Entry:
    if (newest.id if newest else None) != draft.shown:
        raise Overtaken("Another bench wrote this step first. Nothing was written; look at it again.")
    written_at = _after(newest, book.clock.now())
    own_id = new_id(written_at)
    values: dict[str, Any] = {
        "id": own_id,
        "step_id": draft.step_id or own_id,
        "kind": draft.kind,
        "animal_id": draft.subject.animal_id,
        "pen_id": draft.subject.pen_id,
        "task_id": draft.subject.task_id,
        "feed_id": draft.subject.feed_id,
        "day": draft.turn.day,
        "slot": draft.turn.slot,
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


def _after(newest: Entry | None, now: datetime) -> datetime:
    """Now, but always after the entry it replaces, whatever the clock says."""
    return now if newest is None else max(now, newest.written_at + MICROSECOND)


def _line(entry: Entry, position: int, figure: Figure) -> Line:
    values: dict[str, Any] = {each.name: getattr(figure, each.name) for each in fields(figure)}
    own = {"id": new_id(entry.written_at), "entry_id": entry.id, "position": position}
    return LINES[figure.TABLE].model_validate(own | values)
