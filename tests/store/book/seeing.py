"""Rows put into a book one by one, and the pretend morning read at a moment."""

from datetime import date, datetime, timedelta
from typing import Any

from sqlmodel import Session

from store.book.clock import new_id
from store.book.desk import Desk
from store.book.facts.farm import Animal
from store.book.reading import read_snapshot
from store.book.records import Row
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from tests.farm import MORNING

NOW = MORNING + timedelta(minutes=1)
ZONE = "Europe/Dublin"
TODAY = date(2026, 3, 11)


def put(desk: Desk, record: type[Row], **values: Any) -> None:
    """Add a row; it begins now and was written now, unless said otherwise."""
    times = {"begins_at": MORNING, "written_at": MORNING} if "begins_at" in record.model_fields else {}
    with Session(desk.engine()) as session, session.begin():
        session.add(record.model_validate({"id": new_id(MORNING)} | times | values))


def seen(desk: Desk, at: datetime = NOW) -> Snapshot:
    """The pretend morning, read at a moment."""
    return read_snapshot(desk, Turn(TODAY, "morning"), at)


def animal(snapshot: Snapshot, name: str) -> Animal:
    """The animal of a name."""
    return next(each for each in snapshot.animals if each.name == name)
