"""What a round reads, it finds by index: as quick in the tenth year as in the first."""

import re

import pytest

from store.book.clock import micros
from store.book.desk import Desk, FileDesk
from store.book.figures import FIGURES
from store.book.reading import sql
from store.book.reading.entries import STATEMENTS as FIGURES_READ
from store.book.records import RECORDS, Dated, Line
from tests.farm import MORNING
from tests.store.book.tools import table_of

FRAGMENTS = ("NEWEST_OF_ITS_STEP",)
WHOLE_TABLE = ("LAST_WRITTEN",)
"""Says of itself that it reads the whole table, for the demo's small book only."""

WRITTEN_OUT = {
    name: text
    for name, text in vars(sql).items()
    if name.isupper() and isinstance(text, str) and name not in FRAGMENTS
}
MADE = {f"figures of {kind.TABLE}": statement for kind, (statement, _) in FIGURES_READ.items()}
STATEMENTS = WRITTEN_OUT | MADE
LINES = "|".join(["entry", *(table_of(record) for record in RECORDS if issubclass(record, Line))])
CHANGING = "|".join(table_of(record) for record in RECORDS if issubclass(record, Dated) and table_of(record) != "setting")
GROWING = [name for name, text in STATEMENTS.items() if re.search(rf"(FROM|JOIN) ({LINES})\b", text)]
DATED = [name for name, text in STATEMENTS.items() if re.search(rf"(FROM|JOIN) ({CHANGING})\b", text)]
VALUES = {"at": micros(MORNING), "day": "2026-03-11", "slot": "morning", "subject": bytes(16), "air": "cold"}


def scans(desk: FileDesk, statement: str) -> list[str]:
    """What SQLite would read from one end to the other for a statement."""
    rows = desk.rows(f"EXPLAIN QUERY PLAN {statement}", VALUES)
    assert rows
    return [str(row[-1]) for row in rows if str(row[-1]).startswith("SCAN") and "CONSTANT" not in str(row[-1])]


def test_the_statements_of_what_grows_are_found() -> None:
    """Those that the promise is about; a new one is held to it without a change here."""
    assert set(MADE) <= set(GROWING)
    assert len(MADE) == len(FIGURES) == 8
    assert {"ENTRIES", "ANIMAL_GIVEN_BEFORE", "PEN_GIVEN_BEFORE", "PAILS_BEFORE", "PARTINGS", "BATCHES",
            "MOVED_ON"} <= set(GROWING)  # fmt: skip
    assert {"PEOPLE", "PENS", "ANIMALS", "SHARED", "FEEDS", "BARRED", "ANIMAL_PLANS", "PEN_PLANS", "MILKINGS", "JOBS",
            "MEASURES", "SOAK_RULES", "WITHHELD"} == set(DATED)  # fmt: skip


def test_every_statement_is_held_to_the_promise_or_said_to_be_small() -> None:
    """The farm is one row, its settings are few."""
    assert set(STATEMENTS) - set(GROWING) - set(DATED) == {"FARM", "SETTINGS", "READ_FORM"} & set(STATEMENTS)


@pytest.mark.parametrize("name", [name for name in GROWING if name not in WHOLE_TABLE])
def test_entries_and_their_lines_are_found_by_index(file_desk: FileDesk, name: str) -> None:
    """No table that grows with every round is read from one end to the other."""
    assert scans(file_desk, STATEMENTS[name]) == []


@pytest.mark.parametrize("name", GROWING)
def test_it_stays_so_when_sqlite_has_counted_the_rows(file_desk: FileDesk, name: str) -> None:
    """ANALYZE changes how it decides; a book may have been analysed by anybody."""
    file_desk.connection.execute("ANALYZE")
    if name not in WHOLE_TABLE:
        assert scans(file_desk, STATEMENTS[name]) == []
    else:
        assert scans(file_desk, STATEMENTS[name])


@pytest.mark.parametrize("analysed", [False, True])
@pytest.mark.parametrize("name", DATED)
def test_the_history_of_a_thing_is_never_read_through(file_desk: FileDesk, name: str, analysed: bool) -> None:
    """Things themselves (`i`, `f`) may be; what is in force of each is one look-up."""
    if analysed:
        file_desk.connection.execute("ANALYZE")
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
