"""The last calving of a cow as it is written: what a correction of it writes again."""

from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.clock import micros
from store.book.desk import ReadingDesk
from store.book.facts.calves import Birth
from store.book.reading import care_facts, care_sql
from store.book.reading.facts import uid


class KnownBirth(Struct, frozen=True):
    """A calving, the entry of it that counts, and its step."""

    entry_id: UUID
    step_id: UUID
    birth: Birth


def last_birth(desk: ReadingDesk, cow_id: UUID, at: datetime) -> KnownBirth | None:
    """Her last calving; None where none is in the book with its time."""
    found = desk.rows(care_sql.LAST_BIRTH, {"subject": cow_id.bytes, "at": micros(at)})
    return KnownBirth(uid(found[0][4]), uid(found[0][5]), care_facts.birth(found)) if found else None
