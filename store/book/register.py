"""What is in force of everything that changes slowly, row by row: what the set-up asks about and changes.

Heavy, and not needed for a round: a round reads a snapshot. A row is in force from its beginning until the next one
for the same thing begins; of two that begin together the one written later counts.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any, TypeAlias
from uuid import UUID

from sqlmodel import Session, col, select

from store.book.desk import Desk
from store.book.engines import refusal_said
from store.book.facts import FarmFacts
from store.book.reading import read_facts
from store.book.records import RECORDS, Dated

Key: TypeAlias = tuple[Any, ...]
Values: TypeAlias = Mapping[str, Any]

SAME: Mapping[str, tuple[str, ...]] = {
    "setting": ("name",),
    "person_as": ("person_id",),
    "pen_as": ("pen_id",),
    "animal_as": ("animal_id",),
    "breeding": ("animal_id",),
    "body": ("animal_id",),
    "standing": ("animal_id",),
    "sharing": ("calf_id",),
    "feed_as": ("feed_id",),
    "composition": ("feed_id",),
    "not_for": ("feed_id", "species"),
    "free_feed": ("feed_id", "pen_id"),
    "soak_rule": ("feed_id", "air"),
    "measure_as": ("measure_id",),
    "volume": ("measure_id",),
    "weighing": ("measure_id", "feed_id"),
    "pail_as": ("pail_id",),
    "feed_plan": ("animal_id", "pen_id", "slot", "feed_id"),
    "milk_plan": ("animal_id", "slot"),
    "task_as": ("task_id",),
    "task_due": ("task_id",),
    "look_as": ("look_id",),
}
"""By table: the columns that say which thing a row is about."""


@dataclass(frozen=True, slots=True)
class Register:
    """Rows in force at a moment, by table and by what they are about."""

    farm: FarmFacts
    at: datetime
    rows: Mapping[str, Mapping[Key, Values]]

    def get(self, table: str, *key: Any) -> Values | None:
        """The row of one thing; None where there is none."""
        return self.rows[table].get(key)

    def all(self, table: str) -> Iterator[Values]:
        """Every row in force of a table."""
        yield from self.rows[table].values()

    def name(self, table: str, id_: UUID | None) -> str:
        """The name in a row with a name, as of a pen or an animal; empty where there is none."""
        row = self.get(table, id_)
        return str(row["name"]) if row else ""


def read_register(desk: Desk, at: datetime) -> Register:
    """Everything in force at a moment. Raises DamagedBook where the book has no farm or cannot be read."""
    records = {str(record.__tablename__): record for record in RECORDS if issubclass(record, Dated)}
    with refusal_said("The book cannot be read"), Session(desk.engine()) as session:
        found = {table: _in_force(session, records[table], same, at) for table, same in SAME.items()}
    return Register(read_facts(desk, at), at, found)


def _in_force(session: Session, record: type[Dated], same: tuple[str, ...], at: datetime) -> dict[Key, Values]:
    order = (col(record.begins_at), col(record.written_at), col(record.id))
    begun = session.exec(select(record).where(col(record.begins_at) <= at).order_by(*order))
    return {tuple(getattr(row, name) for name in same): row.model_dump() for row in begun}
