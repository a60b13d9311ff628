"""Pieces of a table, for the migrations. A migration that went out stands on these: add one, never change one."""

import re
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
    made = sa.Column(name, sa.String(40), nullable=nullable)
    return lambda table: [made, sa.CheckConstraint(_one_of(name, words), name=f"ck_{table}_{name}")]


def check(name: str, rule: str) -> Part:
    """A rule that every row keeps."""
    return lambda _: [sa.CheckConstraint(rule, name=name)]


def other_words(table: str, column: str, *words: str) -> None:
    """Let a column hold other words than before.

    On SQLite a CHECK cannot be altered; its text is replaced in the catalogue, as https://www.sqlite.org/lang_altertable.html
    (section 7) has it for a change that touches no stored row: a rebuilt table would have to copy every entry.
    """
    rule, name = _one_of(column, words), f"ck_{table}_{column}"
    if op.get_context().dialect.name == "sqlite":
        _reworded(table, rf"(CONSTRAINT {name} CHECK) \({column} IN \([^)]*\)\)", rf"\1 ({rule})")
    else:
        op.drop_constraint(name, table, type_="check")
        op.create_check_constraint(name, table, rule)


def other_rule(table: str, name: str, rule: str) -> None:
    """Let a table keep another rule under the same name; the rows that are there must keep it too."""
    if op.get_context().dialect.name == "sqlite":
        _reworded(table, rf"(CONSTRAINT {name} CHECK) \(.*?\)(?=,\s*CONSTRAINT|\s*\)$)", rf"\1 ({rule})")
    else:
        op.drop_constraint(name, table, type_="check")
        op.create_check_constraint(name, table, rule)


def without_column(table: str, column: str) -> None:
    """Take a column away, with the rule of its own."""
    name = f"ck_{table}_{column}"
    if op.get_context().dialect.name == "sqlite":
        _reworded(table, rf",\s*CONSTRAINT {name} CHECK \(.*?\)(?=,|\s*\)$)", "")
    else:
        op.drop_constraint(name, table, type_="check")
    op.drop_column(table, column)


def _one_of(column: str, words: tuple[str, ...]) -> str:
    listed = ", ".join(f"'{word}'" for word in words)
    return f"{column} IN ({listed})"


def _reworded(table: str, pattern: str, by: str) -> None:
    """Replace a part of a table's own text, which must stand in it once. Raises ValueError."""
    bind = op.get_bind()
    where = {"table": table}
    made = bind.execute(
        sa.text("SELECT sql FROM sqlite_master WHERE type = 'table' AND name = :table"), where
    ).scalar_one()
    reworded, times = re.subn(pattern, by, made)
    if times != 1:
        raise ValueError(f"{table}: {pattern} stands {times} times in its text")
    version = bind.execute(sa.text("PRAGMA schema_version")).scalar_one()
    bind.execute(sa.text("PRAGMA writable_schema = ON"))
    change = "UPDATE sqlite_master SET sql = :sql WHERE type = 'table' AND name = :table"
    bind.execute(sa.text(change), where | {"sql": reworded})
    bind.execute(sa.text(f"PRAGMA schema_version = {version + 1}"))
    bind.execute(sa.text("PRAGMA writable_schema = OFF"))
