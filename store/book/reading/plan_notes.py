"""What was said of changes of the plan of an animal or a pen: the notes that were written with them."""

from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.clock import micros, moment
from store.book.desk import ReadingDesk
from store.book.drafts import Subject
from store.book.reading import sql
from store.book.reading.facts import uid


class PlanNote(Struct, frozen=True):
    """One of them, by whom and when."""

    at: datetime
    person_id: UUID
    words: str


def plan_notes(desk: ReadingDesk, subject: Subject, since: datetime, most: int) -> tuple[PlanNote, ...]:
    """The newest first. Raises DamagedBook."""
    statement = sql.ANIMAL_PLAN_NOTES if subject.animal_id else sql.PEN_PLAN_NOTES
    rows = desk.rows(statement, {"subject": subject.id.bytes, "since": micros(since), "most": most})
    return tuple(PlanNote(moment(at), uid(person), words) for at, person, words in rows)
