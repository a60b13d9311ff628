"""The form of a book: made step by step by migrating, it is the form that the record classes describe."""

import re
import sqlite3
from collections.abc import Iterator, Mapping
from contextlib import closing
from pathlib import Path

import pytest
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import text
from sqlmodel import SQLModel

from store.book.desk import Desk, FileDesk, FoundRow, ServerDesk
from store.book.form import HEAD, KNOWN_FORMS
from store.book.guards import set_guards
from store.book.migrating import MIGRATIONS, migrate
from store.book.opening import form_of
from store.book.records import RECORDS
from tests.servers import Server
from tests.store.book.conftest import KINDS
from tests.store.book.tools import all_rows, record_of, refusal, refused, table_of

CATALOGUE = {
    "columns": """
        SELECT table_name, column_name, data_type, character_maximum_length, is_nullable, column_default
        FROM information_schema.columns WHERE table_schema = 'public'""",
    "constraints": """
        SELECT conrelid::regclass::text, conname, pg_get_constraintdef(oid) FROM pg_constraint
        WHERE connamespace = 'public'::regnamespace""",
    "indexes": "SELECT tablename, indexname, indexdef FROM pg_indexes WHERE schemaname = 'public'",
    "triggers": """
        SELECT tgrelid::regclass::text, tgname, pg_get_triggerdef(oid) FROM pg_trigger WHERE NOT tgisinternal""",
}
"""What PostgreSQL says of a form."""


def as_described(desk: Desk) -> None:
    """Make the form as the record classes describe it."""
    with desk.engine().begin() as connection:
        SQLModel.metadata.create_all(connection, tables=[SQLModel.metadata.tables[table_of(each)] for each in RECORDS])
        set_guards(connection)


def form_of_file(desk: FileDesk) -> dict[tuple[str, str], list[str]]:
    """By kind and name: the lines of what made each table, index and trigger, in an order of our own."""
    found = desk.rows("SELECT type, name, sql FROM sqlite_master WHERE name NOT LIKE 'sqlite_%'", {})
    return {(kind, name): lines(made) for kind, name, made in found if "alembic_version" not in name}


def lines(made: str) -> list[str]:
    """The parts of a statement, each on its own, spaces and quotes evened out."""
    even = (re.sub(r"\s+", " ", line.replace('"', "")).strip().rstrip(",").strip() for line in made.splitlines())
    return sorted(line for line in even if line)


def form_of_server(desk: ServerDesk) -> dict[str, list[tuple[object, ...]]]:
    """What the catalogue says, in an order of its own."""
    return {
        what: sorted((tuple(row) for row in desk.rows(question, {}) if "alembic_version" not in str(row)), key=str)
        for what, question in CATALOGUE.items()
    }


@pytest.fixture
def other_file(tmp_path: Path) -> Iterator[FileDesk]:
    """A second desk with nothing on it."""
    with closing(FileDesk(tmp_path / "other.penwalk", new=True)) as desk:
        yield desk


@pytest.fixture
def other_server(server: Server) -> Iterator[ServerDesk]:
    """A second database with nothing in it."""
    name = server.database()
    with closing(ServerDesk(server.url(name))) as desk:
        yield desk
    server.drop(name)


def test_migrating_a_file_from_nothing_makes_what_the_records_describe(
    empty_desk: FileDesk, other_file: FileDesk
) -> None:
    """The same tables, columns, checks, references, indexes and triggers, line for line."""
    migrate(empty_desk)
    as_described(other_file)
    migrated, described = form_of_file(empty_desk), form_of_file(other_file)
    assert migrated.keys() == described.keys()
    assert {name: made for name, made in migrated.items() if made != described[name]} == {}
    assert {kind for kind, _ in migrated} == {"table", "index", "trigger"}


@pytest.mark.parametrize("empty_desk", ["server"], indirect=True)
def test_migrating_a_server_from_nothing_makes_what_the_records_describe(
    empty_desk: ServerDesk, other_server: ServerDesk
) -> None:
    """The same, as its own catalogue tells it."""
    migrate(empty_desk)
    as_described(other_server)
    migrated, described = form_of_server(empty_desk), form_of_server(other_server)
    for what in CATALOGUE:
        assert migrated[what] == described[what]
        assert len(migrated[what]) > len(RECORDS)


def test_a_difference_of_form_is_seen(empty_desk: FileDesk) -> None:
    """The comparison can fail: one column more, one index gone, one guard gone."""
    migrate(empty_desk)
    before = form_of_file(empty_desk)
    for change in ("ALTER TABLE pen ADD COLUMN roof TEXT", "DROP INDEX ix_entry_turn", "DROP TRIGGER fed_no_DELETE"):
        empty_desk.connection.execute(change)
    after = form_of_file(empty_desk)
    assert before.keys() - after.keys() == {("index", "ix_entry_turn"), ("trigger", "fed_no_DELETE")}
    assert [name for name in after if after[name] != before[name]] == [("table", "pen")]


def test_every_record_class_has_its_table(empty_desk: FileDesk) -> None:
    """And the list of record classes forgets none: it is what is merged, exported and guarded."""
    migrate(empty_desk)
    tables = {name for kind, name in form_of_file(empty_desk) if kind == "table"}
    assert tables == {table_of(record) for record in RECORDS} == set(SQLModel.metadata.tables)


def test_records_stand_after_what_they_refer_to() -> None:
    """Parents before children: the order in which rows are added."""
    names = [table_of(record) for record in RECORDS]
    for at, name in enumerate(names):
        parents = {key.column.table.name for key in SQLModel.metadata.tables[name].foreign_keys}
        assert parents <= set(names[: at + 1])


def test_head_is_the_newest_file_of_the_migrations() -> None:
    """And the known forms are every file there is, oldest first."""
    files = sorted(path.name.split("_")[0] for path in (MIGRATIONS / "versions").glob("[0-9]*.py"))
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS))
    scripts = ScriptDirectory.from_config(config)
    assert files[-1] == HEAD == scripts.get_current_head()
    assert tuple(files) == KNOWN_FORMS
    assert tuple(script.revision for script in scripts.walk_revisions())[::-1] == KNOWN_FORMS


@pytest.mark.parametrize("empty_desk", KINDS, indirect=True)
def test_a_migrated_desk_has_todays_form_however_often(empty_desk: Desk) -> None:
    """A second time changes nothing."""
    for _ in range(2):
        migrate(empty_desk)
        assert form_of(empty_desk) == HEAD
    assert all(rows == [] for rows in all_rows(empty_desk).values())


def test_a_copy_of_a_book_in_a_file_is_kept_before_its_form_changes(file_desk: FileDesk) -> None:
    """Whole and readable, also where a broken one lies there from an attempt before."""
    before = all_rows(file_desk)
    migrate(file_desk)
    copy = Path(f"{file_desk.place}.form-{HEAD}")
    with closing(sqlite3.connect(copy)) as kept:
        assert kept.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        assert kept.execute("SELECT count(*) FROM entry").fetchone() == (len(before["entry"]),)
    copy.write_bytes(b"half a copy")
    migrate(file_desk)
    with closing(sqlite3.connect(copy)) as kept:
        assert kept.execute("SELECT count(*) FROM entry").fetchone() == (len(before["entry"]),)
    assert not copy.with_name(f"{copy.name}.part").exists()
    assert all_rows(file_desk) == before


def test_a_new_book_keeps_no_copy_of_nothing(empty_desk: FileDesk) -> None:
    """There is nothing to keep."""
    migrate(empty_desk)
    assert list(Path(empty_desk.place).parent.glob("*.form-*")) == []


@pytest.mark.parametrize("empty_desk", KINDS, indirect=True)
def test_a_change_of_form_that_fails_leaves_nothing_half_made(
    empty_desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It is one transaction: the guards come last, and when they fail, no table is there."""

    def fail(_connection: object) -> None:
        raise RuntimeError("the lamp went out")

    with monkeypatch.context() as patch:
        patch.setattr("store.book.migrating.set_guards", fail)
        with pytest.raises(RuntimeError, match="the lamp went out"):
            migrate(empty_desk)
    if isinstance(empty_desk, FileDesk):
        assert form_of_file(empty_desk) == {}
    elif isinstance(empty_desk, ServerDesk):
        assert form_of_server(empty_desk)["columns"] == []
    migrate(empty_desk)
    assert form_of(empty_desk) == HEAD


SINCE = (
    "look", "look_as", "treatment", "treatment_as", "quarter", "looked", "dosed",
    "breeding", "body", "task_due", "composition", "volume", "free_feed", "delivered", "stocked", "lost", "forecast",
    "apart_rule", "second_cow", "milk_rhythm", "withdrawal", "substitute", "drawn", "poured", "cooled", "born",
    "watched", "used_up", "feeding_goal", "milk_test", "heat", "feed_limit", "class_rule",
)  # fmt: skip
KINDS_SINCE = ("look", "dose", "delivery", "stock", "loss", "weather", "cool", "birth", "watch", "jar")
"""Tables and kinds that the first form did not have."""


def book_of_the_first_form(desk: Desk, rows: Mapping[str, list[FoundRow]]) -> dict[str, list[FoundRow]]:
    """Make a book of the first form and put in what it can hold of some rows; what was put in."""
    migrate(desk, to="0001")
    held = {name: found for name, found in rows.items() if name not in SINCE}
    held["entry"] = [row for row in held["entry"] if row[2] not in KINDS_SINCE]
    with desk.engine().begin() as connection:
        for record in RECORDS:
            name = table_of(record)
            if found := held.get(name):
                more = [(*row, "") if name == "felt" else row for row in found]
                columns = ", ".join(record.model_fields) + (", quarters" if name == "felt" else "")
                places = ", ".join(f":c{at}" for at in range(len(more[0])))
                values = [{f"c{at}": cell for at, cell in enumerate(row)} for row in more]
                connection.execute(text(f'INSERT INTO "{name}" ({columns}) VALUES ({places})'), values)
    return held


@pytest.mark.parametrize("empty_desk", KINDS, indirect=True)
def test_a_book_of_the_first_form_is_brought_to_todays_with_every_row(
    empty_desk: Desk, request: pytest.FixtureRequest
) -> None:
    """The small farm's week; afterwards it takes what the first form refused, and its guards stand."""
    same_kind = "file_desk" if isinstance(empty_desk, FileDesk) else "server_desk"
    small: Desk = request.getfixturevalue(same_kind)
    before = book_of_the_first_form(empty_desk, all_rows(small))
    look = rows_as_values(small, "entry", "kind = 'look'")
    assert refused(empty_desk, "entry", look)
    migrate(empty_desk)
    assert form_of(empty_desk) == HEAD
    after = all_rows(empty_desk)
    assert {name: after[name] for name in before} == before
    assert not refused(empty_desk, "entry", look)
    assert refusal(empty_desk, "UPDATE entry SET reason = 'other'")
    assert refused(empty_desk, "entry", look | {"kind": "look and see"})
    if isinstance(empty_desk, FileDesk):
        assert empty_desk.rows("PRAGMA integrity_check", {}) == [("ok",)]
        assert empty_desk.rows("PRAGMA foreign_key_check", {}) == []


def rows_as_values(desk: Desk, table: str, where: str) -> dict[str, object]:
    """The first row of a table of which something is true, by column."""
    names = list(record_of(table).model_fields)
    found = desk.rows(f'SELECT {", ".join(names)} FROM "{table}" WHERE {where} ORDER BY id LIMIT 1', {})
    return dict(zip(names, found[0], strict=True))
