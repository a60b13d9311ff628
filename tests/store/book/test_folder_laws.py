"""Out to a folder and back as a law: whatever stands in a book, every byte of the folder comes out again."""

import shutil
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from datetime import UTC, date, datetime, timedelta
from enum import StrEnum
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any
from uuid import UUID

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import AwareDatetime, ValidationError
from sqlalchemy.exc import IntegrityError
from sqlmodel import Session

from store.book.desk import FileDesk, ServerDesk
from store.book.folder.cells import Cell, cells_of
from store.book.folder.put_out import put_out
from store.book.folder.rules import broken_rules
from store.book.folder.take_in import take_in
from store.book.migrating import migrate
from store.book.records import RECORDS, Farm, Row, Setting
from tests.servers import Server
from tests.store.book.folders import contents
from tests.store.book.tools import all_rows, table_of

MANY = [record for record in RECORDS if record not in (Farm, Setting)]
WORDS = (
    "=1+1",
    "'=x",
    "-4",
    "a,b;c\td",
    'the "old" one',
    "two\r\nlines",
    "one\rline",
    "Élan 牛",
    "plain",
    "x",
    "@",
    "'",
)
SPAN_S = 86_400 * 365 * 200
BEGINNING = datetime(1900, 1, 1, tzinfo=UTC)


def moment(by: Random) -> datetime:
    """Some moment of two hundred years, to the microsecond."""
    return BEGINNING + timedelta(seconds=by.randrange(SPAN_S), microseconds=by.randrange(1_000_000))


VALUES: dict[Any, Callable[[Random], Any]] = {
    str: lambda by: "".join(by.choices(WORDS, k=by.randint(1, 3))).strip(),
    float: lambda by: by.choice((by.uniform(0, 1), by.uniform(0, 400), float(by.randint(0, 99)), -3.25)),
    int: lambda by: by.randint(0, 99),
    bool: lambda by: by.random() < 0.5,
    date: lambda by: moment(by).date(),
    AwareDatetime: moment,
}


def some(by: Random, cell: Cell, ids: dict[str, list[UUID]]) -> Any:
    """Something that a cell may hold."""
    if cell.type is UUID:
        new = cell.name == "id" or cell.name.endswith("step_id")
        return UUID(int=by.getrandbits(128)) if new else by.choice(ids[cell.refers_to or ""])
    if isinstance(cell.type, type) and issubclass(cell.type, StrEnum):
        return by.choice(list(cell.type))
    return by.choice(("morning", "evening")) if cell.name == "slot" else VALUES[cell.type](by)


def fill(desk: FileDesk, seed: int, rows: int) -> None:
    """Try to add random rows to random tables of a book; later ones speak of the ones before."""
    by = Random(seed)
    ids = {table: [UUID(bytes=row[0]) for row in found] for table, found in all_rows(desk).items()}
    for _ in range(rows):
        record = by.choice(MANY)
        cells = cells_of(record).items()
        values = {name: some(by, cell, ids) for name, cell in cells if not cell.optional or by.random() < 0.4}
        if not list(broken_rules(record, values)):
            added(desk, record, values, ids)


def added(desk: FileDesk, record: type[Row], values: dict[str, Any], ids: dict[str, list[UUID]]) -> None:
    """Add a row, unless record class or database refuse it."""
    try:
        row = record.model_validate(values)
        with Session(desk.engine()) as session, session.begin():
            session.add(row)
    except (ValidationError, IntegrityError):
        return
    ids[table_of(record)].append(values["id"])


@pytest.fixture(scope="session")
def empty_database(server: Server) -> str:
    """The name of a database with the form of a book and no row; fresh ones are copied from it."""
    name = server.database()
    with closing(ServerDesk(server.url(name))) as desk:
        migrate(desk)
    return name


@given(seed=st.integers(0, 10**9), rows=st.integers(1, 80))
@settings(max_examples=15, deadline=None)
def test_any_book_comes_out_of_a_folder_as_it_went_in(whole_built: Path, seed: int, rows: int) -> None:
    """Row for row; and out again byte for byte."""
    with TemporaryDirectory(prefix="penwalk-laws-") as name:
        folder = Path(name)
        shutil.copy(whole_built, folder / "first.penwalk")
        with closing(FileDesk(folder / "first.penwalk")) as first, closing(FileDesk(folder / "2", new=True)) as second:
            fill(first, seed, rows)
            migrate(second)
            put_out(first, folder / "out")
            take_in(folder / "out", second)
            assert all_rows(second) == all_rows(first)
            put_out(second, folder / "again")
            assert contents(folder / "again") == contents(folder / "out")


@contextmanager
def fresh(server: Server, like: str) -> Iterator[ServerDesk]:
    """A new database like another one, thrown away at the end."""
    name = server.database(like=like)
    with closing(ServerDesk(server.url(name))) as desk:
        yield desk
    server.drop(name)


@given(seed=st.integers(0, 10**9), rows=st.integers(1, 80))
@settings(max_examples=8, deadline=None)
def test_any_book_comes_back_from_a_server_byte_for_byte(
    server: Server, empty_database: str, whole_built: Path, seed: int, rows: int
) -> None:
    """File, folder, server, folder."""
    with TemporaryDirectory(prefix="penwalk-laws-") as name, fresh(server, empty_database) as served:
        folder = Path(name)
        shutil.copy(whole_built, folder / "first.penwalk")
        with closing(FileDesk(folder / "first.penwalk")) as first:
            fill(first, seed, rows)
            put_out(first, folder / "out")
            take_in(folder / "out", served)
            put_out(served, folder / "again")
            assert contents(folder / "again") == contents(folder / "out")


def test_the_law_draws_rows_of_every_kind(whole_built: Path, tmp_path: Path) -> None:
    """Each of these is taken now and then: else the laws above would say nothing of it."""
    with closing(FileDesk(Path(shutil.copy(whole_built, tmp_path / "b.penwalk")))) as desk:
        before = all_rows(desk)
        fill(desk, 1, 1500)
        took = {table for table, rows in all_rows(desk).items() if len(rows) > len(before[table])}
    assert took == {table_of(record) for record in MANY}
