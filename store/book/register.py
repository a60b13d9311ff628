"""What is in force of everything that changes slowly, row by row: what the set-up asks about and changes.

Heavy, and not needed for a round: a round reads a snapshot. A row is in force from its beginning until the next one
for the same thing begins; of two that begin together the one written later counts.
"""

from collections.abc import Iterator, Mapping
from datetime import datetime
from typing import Any, TypeAlias
from uuid import UUID

from msgspec import Struct
from sqlalchemy import Connection, select
from sqlmodel import col

from store.book.desk import Desk
from store.book.engines import refusal_said
from store.book.facts.farm import FarmFacts
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
    "feeding_goal": ("animal_id",),
    "milk_test": ("animal_id",),
    "heat": ("animal_id",),
    "standing": ("animal_id",),
    "sharing": ("calf_id",),
    "apart_rule": ("calf_id",),
    "second_cow": ("calf_id",),
    "feed_as": ("feed_id",),
    "composition": ("feed_id",),
    "feed_limit": ("feed_id",),
    "class_rule": ("stage", "feed_id"),
    "not_for": ("feed_id", "species"),
    "free_feed": ("feed_id", "pen_id"),
    "soak_rule": ("feed_id", "air"),
    "substitute": ("feed_id",),
    "measure_as": ("measure_id",),
    "volume": ("measure_id",),
    "weighing": ("measure_id", "feed_id"),
    "pail_as": ("pail_id",),
    "feed_plan": ("animal_id", "pen_id", "slot", "feed_id"),
    "milk_plan": ("animal_id", "slot"),
    "milk_rhythm": ("animal_id",),
    "task_as": ("task_id",),
    "task_due": ("task_id",),
    "look_as": ("look_id",),
    "treatment_as": ("treatment_id",),
    "withdrawal": ("treatment_id",),
}
"""By table: the columns that say which thing a row is about."""


class Register(Struct, frozen=True):
    """Rows by table and by what they are about: those in force at a moment, and every one there is, in their order."""

    farm: FarmFacts
    at: datetime
    rows: Mapping[str, Mapping[Key, Values]]
    history: Mapping[str, Mapping[Key, tuple[Values, ...]]]

    def get(self, table: str, *key: Any) -> Values | None:
        """The row of one thing that is in force; None where there is none."""
        return self.rows[table].get(key)

    def all(self, table: str) -> Iterator[Values]:
        """Every row in force of a table."""
        yield from self.rows[table].values()

    def course(self, table: str, *key: Any) -> tuple[Values, ...]:
        """Every row of one thing, those to come too; of two that begin together the one that counts stands last."""
        return self.history[table].get(key, ())

    def name(self, table: str, id_: UUID | None) -> str:
        """The name in a row with a name, as of a pen or an animal; empty where there is none."""
        row = self.get(table, id_)
        return str(row["name"]) if row else ""


def read_register(desk: Desk, at: datetime) -> Register:
    """Everything that changes slowly, at a moment. Raises DamagedBook where the book has no farm or cannot be read."""
    farm = read_facts(desk, at)
    tables = {str(record.__tablename__): record for record in RECORDS if issubclass(record, Dated)}
    with refusal_said("The book cannot be read"), desk.engine().connect() as connection:
        history = {table: _course(connection, tables[table], same) for table, same in SAME.items()}
    rows = {table: dict(_in_force(courses, at)) for table, courses in history.items()}
    return Register(farm, at, rows, history)


def _course(connection: Connection, record: type[Dated], same: tuple[str, ...]) -> dict[Key, tuple[Values, ...]]:
    order = (col(record.begins_at), col(record.written_at), col(record.id))
    found: dict[Key, list[Values]] = {}
    for row in connection.execute(
        select(*(col(getattr(record, name)) for name in record.model_fields)).order_by(*order)
    ):
        values = dict(row._mapping)
        found.setdefault(tuple(values[name] for name in same), []).append(values)
    return {key: tuple(rows) for key, rows in found.items()}


def _in_force(courses: Mapping[Key, tuple[Values, ...]], at: datetime) -> Iterator[tuple[Key, Values]]:
    for key, rows in courses.items():
        begun = [row for row in rows if row["begins_at"] <= at]
        if begun:
            yield key, begun[-1]
