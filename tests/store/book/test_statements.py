"""What a round reads, it finds by index: as quick in the tenth year as in the first."""

import re
import shutil
from collections.abc import Iterator
from contextlib import closing
from datetime import date, timedelta
from pathlib import Path
from typing import Any
from uuid import UUID, uuid5

import pytest

from store.book.clock import MICROSECOND, micros
from store.book.desk import Desk, FileDesk
from store.book.figures import FIGURES
from store.book.reading import care_sql, feed_sql, milk_sql, sql, stock_sql
from store.book.reading.entries import STATEMENTS as FIGURES_READ
from store.book.records import RECORDS, Dated, Entry, Line, Row, Setting
from tests.farm import MORNING
from tests.store.book.tools import all_rows, count, table_of

FRAGMENTS = ("NEWEST_OF_ITS_STEP", "OF_THE_FEED")
WHOLE_TABLE = ("LAST_WRITTEN",)
"""Says of itself that it reads the whole table, for the demo's small book only."""
FEW = ("BARRED", "SHARINGS")
"""Read every row of what is barred for whom, and of who shared with whom: a handful in ten years."""

WRITTEN_OUT = {
    name: text
    for module in (sql, milk_sql, care_sql, feed_sql, stock_sql)
    for name, text in vars(module).items()
    if name.isupper() and isinstance(text, str) and name not in FRAGMENTS and not name.startswith("_")
}
MADE = {f"figures of {kind.TABLE}": statement for kind, (statement, _) in FIGURES_READ.items()}
STATEMENTS = WRITTEN_OUT | MADE
LINES = "|".join(["entry", *(table_of(record) for record in RECORDS if issubclass(record, Line))])
CHANGING = "|".join(table_of(record) for record in RECORDS if issubclass(record, Dated) and record is not Setting)
GROWING = [name for name, text in STATEMENTS.items() if re.search(rf"(FROM|JOIN) ({LINES})\b", text)]
DATED = [name for name, text in STATEMENTS.items() if re.search(rf"(FROM|JOIN) ({CHANGING})\b", text)]
WEEKS = range(1, 101)
VALUES = {
    "at": micros(MORNING), "day": "2026-03-11", "slot": "morning", "subject": bytes(16), "air": "cold",
    "kind": "feed", "name": "air", "known": micros(MORNING), "weeks_ago": micros(MORNING) - 1,
    "look": bytes(16), "feed": bytes(16), "treatment": bytes(16), "year_ago": 0, "long_ago": 0, "measure": bytes(16),
    "first_id": bytes(16), "since": micros(MORNING), "since_day": "2026-03-04", "until_day": "2026-03-11", "most": 2,
    "step": bytes(16), **{f"step_{at}": bytes(16) for at in range(sql.STEPS_AT_ONCE)},
}  # fmt: skip


def scans(desk: FileDesk, statement: str) -> list[str]:
    """What SQLite would read from one end to the other for a statement."""
    rows = desk.rows(f"EXPLAIN QUERY PLAN {statement}", VALUES)
    assert rows
    return [str(row[-1]) for row in rows if str(row[-1]).startswith("SCAN") and "CONSTANT" not in str(row[-1])]


@pytest.fixture(scope="module")
def grown(tmp_path_factory: pytest.TempPathFactory, whole_built: Path) -> Iterator[FileDesk]:
    """The small farm's week walked over and over for two years, and analysed."""
    place = Path(shutil.copy(whole_built, tmp_path_factory.mktemp("grown") / "grown.penwalk"))
    with closing(FileDesk(place)) as desk:
        lines: list[type[Row]] = [record for record in RECORDS if issubclass(record, Line)]
        for record in (RECORDS[RECORDS.index(Entry)], *lines):
            repeat(desk, record)
        desk.connection.execute("ANALYZE")
        yield desk


def repeat(desk: FileDesk, record: type[Row]) -> None:
    """Every row of a table again for each earlier week, under ids of its own; a line goes with its entry."""
    names, table = list(record.model_fields), table_of(record)
    older = [_earlier(dict(zip(names, row, strict=True)), week) for row in all_rows(desk)[table] for week in WEEKS]
    places = ", ".join(f":{name}" for name in names)
    desk.connection.execute("BEGIN")
    desk.connection.executemany(f'INSERT INTO "{table}" ({", ".join(names)}) VALUES ({places})', older)
    desk.connection.execute("COMMIT")


def _earlier(row: dict[str, Any], week: int) -> dict[str, Any]:
    ago = timedelta(weeks=week)
    ids = {name: uuid5(UUID(bytes=row[name]), str(week)).bytes for name in ("id", "entry_id", "step_id") if name in row}
    times = {name: row[name] - ago // MICROSECOND for name in ("happened_at", "written_at") if name in row}
    day = {"day": (date.fromisoformat(row["day"]) - ago).isoformat()} if row.get("day") else {}
    return row | ids | times | day


def test_the_grown_book_is_grown(grown: FileDesk) -> None:
    """Else the tests below would say nothing of the tenth year."""
    assert count(grown, "entry") > 20_000
    assert count(grown, "parted") > 1_000
    assert list(grown.rows("PRAGMA foreign_key_check", {})) == []


def test_the_statements_of_what_grows_are_found() -> None:
    """Those that the promise is about; a new one is held to it without a change here."""
    assert set(MADE) <= set(GROWING)
    assert len(MADE) == len(FIGURES) == 14
    assert {"ENTRIES", "ANIMAL_GIVEN_BEFORE", "PEN_GIVEN_BEFORE", "PAILS_BEFORE", "PARTINGS", "BATCHES",
            "ANY_ENTRY", "LAST_LOOK", "DOSES_BEFORE", "STEPS", "STOCKED", "DELIVERED", "LOST", "THROWN_OUT", "SOAKING",
            "FED", "FED_AT", "ROWS", "RECORDED", "MILKED", "QUARTERS", "LAST_BIRTH"} <= set(GROWING)  # fmt: skip
    assert {"PEOPLE", "PENS", "ANIMALS", "SHARINGS", "APART_RULES", "SECOND_COWS", "SUBSTITUTES",
            "FEEDS", "BARRED", "ANIMAL_PLANS", "PEN_PLANS", "MILKINGS", "JOBS",
            "MEASURES", "SOAK_RULES", "WITHHELD", "LOOKS", "TREATMENTS", "WEIGHINGS", "FREE",
            "STOOD_SINCE", "KEPT_SINCE", "ANIMAL_PLANS_TO_COME"} <= set(DATED)  # fmt: skip


def test_every_statement_is_held_to_the_promise_or_said_to_be_small() -> None:
    """The farm is one row, its settings are few."""
    assert set(STATEMENTS) - set(GROWING) - set(DATED) == {"FARM", "SETTINGS", "SETTINGS_TO_COME", "READ_FORM"} & set(
        STATEMENTS
    )


@pytest.mark.parametrize("name", [name for name in GROWING if name not in WHOLE_TABLE])
def test_entries_and_their_lines_are_found_by_index(file_desk: FileDesk, name: str) -> None:
    """No table that grows with every round is read from one end to the other."""
    assert scans(file_desk, STATEMENTS[name]) == []


@pytest.mark.parametrize("name", GROWING)
def test_it_stays_so_in_a_grown_book_when_sqlite_has_counted_the_rows(grown: FileDesk, name: str) -> None:
    """ANALYZE changes how it decides; a book may have been analysed by anybody."""
    if name not in WHOLE_TABLE:
        assert scans(grown, STATEMENTS[name]) == []
    else:
        assert scans(grown, STATEMENTS[name])


@pytest.mark.parametrize("name", [name for name in DATED if name not in FEW])
def test_the_history_of_a_thing_is_never_read_through(file_desk: FileDesk, name: str) -> None:
    """Things themselves (`i`, `f`) may be; what is in force of each is one look-up."""
    assert [scan for scan in scans(file_desk, STATEMENTS[name]) if scan.split()[1] not in ("i", "f")] == []


def test_a_statement_that_reads_everything_is_seen(file_desk: FileDesk) -> None:
    """The tests above can fail."""
    assert scans(file_desk, "SELECT id FROM entry WHERE bench = :slot")
    file_desk.connection.execute("DROP INDEX ix_entry_turn")
    assert scans(file_desk, sql.ENTRIES)


def test_every_statement_runs(still_desk: Desk) -> None:
    """On both kinds of desk, with the same text."""
    for statement in STATEMENTS.values():
        still_desk.rows(statement, VALUES)
