"""No row is ever changed or taken away: the database refuses it, whoever asks, table by table."""

from contextlib import closing

import pytest

from store.book.desk import Desk, FileDesk, ServerDesk
from store.book.guards import REFUSAL
from store.book.migrating import migrate
from store.book.records import RECORDS
from tests.store.book.tools import all_rows, count, raw_row, record_of, refusal, table_of

TABLES = [table_of(record) for record in RECORDS]


@pytest.fixture(params=TABLES)
def table(request: pytest.FixtureRequest) -> str:
    """The name of each table of the book in turn."""
    return str(request.param)


def test_the_whole_farm_has_rows_in_every_table(still_desk: Desk) -> None:
    """Else the tests below would guard nothing."""
    assert [name for name in TABLES if count(still_desk, name) == 0] == []


def test_a_row_cannot_be_updated(still_desk: Desk, table: str) -> None:
    """Not one, and not to the same value either."""
    before = all_rows(still_desk)[table]
    assert REFUSAL in str(refusal(still_desk, f'UPDATE "{table}" SET id = id'))
    assert all_rows(still_desk)[table] == before


def test_a_row_cannot_be_deleted(still_desk: Desk, table: str) -> None:
    """Even where nothing refers to it."""
    before = all_rows(still_desk)[table]
    assert REFUSAL in str(refusal(still_desk, f'DELETE FROM "{table}"'))
    assert all_rows(still_desk)[table] == before


def test_a_row_cannot_be_written_over_by_an_insert(still_desk: Desk, table: str) -> None:
    """An insert that would update instead, on both kinds of desk."""
    names = ", ".join(record_of(table).model_fields)
    again = f'INSERT INTO "{table}" ({names}) SELECT {names} FROM "{table}" WHERE true'
    before = all_rows(still_desk)[table]
    assert REFUSAL in str(refusal(still_desk, f"{again} ON CONFLICT (id) DO UPDATE SET id = excluded.id"))
    assert all_rows(still_desk)[table] == before


@pytest.mark.parametrize("verb", ["INSERT OR REPLACE", "REPLACE"])
def test_a_row_cannot_be_replaced_in_a_file(file_desk: FileDesk, verb: str) -> None:
    """SQLite deletes the old row without a word, unless triggers fire for that too."""
    before = all_rows(file_desk)
    for name in TABLES:
        names = ", ".join(record_of(name).model_fields)
        again = f'{verb} INTO "{name}" ({names}) SELECT {names} FROM "{name}"'
        assert REFUSAL in str(refusal(file_desk, again)), name
    assert all_rows(file_desk) == before


def test_no_table_of_a_server_can_be_emptied(server_desk: ServerDesk) -> None:
    """TRUNCATE fires no trigger of a row; it has one of its own."""
    before = all_rows(server_desk)
    for name in TABLES:
        assert REFUSAL in str(refusal(server_desk, f'TRUNCATE "{name}" CASCADE')), name
    assert all_rows(server_desk) == before


def test_a_new_row_is_let_in(still_desk: Desk, table: str) -> None:
    """The guards do not stand in the way of adding."""
    names = ", ".join(record_of(table).model_fields)
    places = ", ".join(f":{name}" for name in record_of(table).model_fields)
    insert = f'INSERT INTO "{table}" ({names}) VALUES ({places})'
    assert refusal(still_desk, insert, raw_row(still_desk, table)) is None


def test_the_guards_are_there_again_after_a_book_was_brought_to_a_form(desk: Desk) -> None:
    """Migrating lifts them and sets them again, all of them; and no row is lost by it."""
    before = all_rows(desk)
    migrate(desk)
    assert all_rows(desk) == before
    for name in TABLES:
        assert REFUSAL in str(refusal(desk, f'DELETE FROM "{name}"')), name


def test_a_guard_that_is_missing_is_seen(file_desk: FileDesk) -> None:
    """The tests above can fail: without its trigger a row of `sharing` goes away."""
    file_desk.connection.execute("DROP TRIGGER sharing_no_DELETE")
    assert refusal(file_desk, "DELETE FROM sharing") is None
    with closing(file_desk.connection.execute("SELECT count(*) FROM sharing")) as found:
        assert found.fetchone() == (1,)
