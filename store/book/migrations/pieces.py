"""Pieces of a table, for the migrations. A migration that went out stands on these: add one, never change one."""

from collections.abc import Callable
from typing import Any

import sqlalchemy as sa
from alembic import op
from sqlalchemy.schema import SchemaItem

Part = Callable[[str], list[SchemaItem]]
"""A piece of a table, once it is told the table's name."""


def table(name: str, *parts: Part) -> None:
    """Make a table: its id, then its parts."""
    items = [item for part in parts for item in part(name)]
    key = sa.PrimaryKeyConstraint("id", name=f"pk_{name}")
    op.create_table(name, sa.Column("id", sa.LargeBinary(16), nullable=False), *items, key)


def column(name: str, kind: Any, *, nullable: bool = False) -> Part:
    """A column."""
    return lambda _: [sa.Column(name, kind, nullable=nullable)]


def at(name: str, *, nullable: bool = False) -> Part:
    """Microseconds UTC."""
    return column(name, sa.BigInteger(), nullable=nullable)


def id_of(name: str, *, to: str | None = None, nullable: bool = False) -> Part:
    """Sixteen bytes, of a row of another table if one is named."""
    made = sa.Column(name, sa.LargeBinary(16), nullable=nullable)
    if to is None:
        return lambda _: [made]
    return lambda table: [made, sa.ForeignKeyConstraint([name], [f"{to}.id"], name=f"fk_{table}_{name}")]


def word(name: str, *words: str, nullable: bool = False) -> Part:
    """One of some words."""
    listed = ", ".join(f"'{word}'" for word in words)
    made = sa.Column(name, sa.String(40), nullable=nullable)
    return lambda table: [made, sa.CheckConstraint(f"{name} IN ({listed})", name=f"ck_{table}_{name}")]


def check(name: str, rule: str) -> Part:
    """A rule that every row keeps."""
    return lambda _: [sa.CheckConstraint(rule, name=name)]
