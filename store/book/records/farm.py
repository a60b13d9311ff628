"""The farm itself, what it decided, and who does the rounds."""

from typing import Annotated
from uuid import UUID

from pydantic import StringConstraints
from sqlalchemy import Index
from sqlmodel import Field

from store.book.columns import Id, one_of
from store.book.records.base import Dated, Name, Row, named
from store.book.words import SettingName


class Farm(Row, table=True):
    """One book is one farm. Its name, zone and units are settings."""


class Setting(Dated, table=True):
    """What the farm decided, from a day on."""

    __table_args__ = (
        Index(None, "name", "begins_at"),
        named("value", 200),
    )

    name: SettingName = Field(sa_type=one_of(SettingName, "name"))
    value: Annotated[str, StringConstraints(min_length=1, max_length=200)]


class Person(Row, table=True):
    """Somebody who does rounds."""


class PersonAs(Dated, table=True):
    """A person's name from a day on."""

    __tablename__ = "person_as"
    __table_args__ = (Index(None, "person_id", "begins_at"), named())

    person_id: UUID = Field(sa_type=Id, foreign_key="person.id")
    name: Name
    adult: bool = True
    here: bool = True  # False: does no rounds any more
