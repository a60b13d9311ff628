"""What every record has. A record is added and never changed; see store.book.guards."""

from typing import Annotated
from uuid import UUID

from pydantic import AwareDatetime, StringConstraints
from sqlalchemy import CheckConstraint
from sqlmodel import Field, SQLModel
from sqlmodel._compat import SQLModelConfig

from store.book.columns import Id, Moment

SQLModel.metadata.naming_convention = {
    "pk": "pk_%(table_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s",
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
}

Slot = Annotated[str, StringConstraints(min_length=1, max_length=20)]
Name = Annotated[str, StringConstraints(min_length=1, max_length=60, strip_whitespace=True)]


class Row(SQLModel):
    """An id, and nothing unknown let in. Build records with `model_validate`: it alone checks the values."""

    model_config = SQLModelConfig(extra="forbid")

    id: UUID = Field(sa_type=Id, primary_key=True)


class Dated(Row):
    """In force from a moment on, until the next row for the same thing begins."""

    begins_at: AwareDatetime = Field(sa_type=Moment)
    written_at: AwareDatetime = Field(sa_type=Moment)


def bounded(column: str, least: float, most: float) -> CheckConstraint:
    """A named CHECK with both bounds; no value passes too. It also refuses text and infinity."""
    return CheckConstraint(f"{column} >= {least} AND {column} <= {most}", name=column)


def named(column: str = "name", most: int = 60) -> CheckConstraint:
    """A named CHECK that a text is neither empty nor endless."""
    return CheckConstraint(f"length({column}) >= 1 AND length({column}) <= {most}", name=column)


def at_most(column: str, most: int) -> CheckConstraint:
    """A named CHECK that a text, which may be empty, is not endless."""
    return CheckConstraint(f"length({column}) <= {most}", name=column)
