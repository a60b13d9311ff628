"""What an animal carries, as it is in force: for who asks about one animal. Not on the way to the first frame."""

from datetime import date, datetime
from uuid import UUID

from msgspec import Struct

from store.book.clock import micros
from store.book.desk import ReadingDesk
from store.book.reading import care_sql


class Carries(Struct, frozen=True):
    """When she was served, and when she is due. due_on None: not in calf, or not known."""

    served_on: date | None
    due_on: date | None


def read_carries(desk: ReadingDesk, animal_id: UUID, now: datetime) -> Carries | None:
    """None where nothing was ever written of it."""
    rows = desk.rows(care_sql.CARRIES, {"subject": animal_id.bytes, "at": micros(now)})
    days = [None if each is None else date.fromisoformat(each) for each in rows[0]] if rows else []
    return Carries(*days) if days else None
