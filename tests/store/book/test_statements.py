"""What a round reads, it finds by index: as quick in the tenth year as in the first."""

import re

import pytest

from store.book.clock import micros
from store.book.desk import Desk, FileDesk
from store.book.reading import sql
from tests.farm import MORNING

FRAGMENTS = ("NEWEST_OF_ITS_STEP",)
WHOLE_TABLE = ("LAST_WRITTEN",)
"""Says of itself that it reads the whole table, for the demo's small book only."""

STATEMENTS = {name: text for name, text in vars(sql).items() if name.isupper() and name not in FRAGMENTS}
GROWING = [name for name, text in STATEMENTS.items() if re.search(r"(FROM|JOIN) (entry|fed|milked)\b", text)]
DATED = [name for name, text in STATEMENTS.items() if " n WHERE " in text and name not in GROWING]
VALUES = {"at": micros(MORNING), "day": "2026-03-11", "slot": "morning", "subject": bytes(16)}


def scans(desk: FileDesk, statement: str) -> list[str]:
    """What SQLite would read from one end to the other for a statement."""
    rows = desk.rows(f"EXPLAIN QUERY PLAN {statement}", VALUES)
    assert rows
    return [str(row[-1]) for row in rows if str(row[-1]).startswith("SCAN") and "CONSTANT" not in str(row[-1])]


def test_the_statements_of_what_grows_are_found() -> None:
    """Those that the promise is about; a new one is held to it without a change here."""
    assert {
        "ENTRIES",
        "FED",
        "MILKED",
        "ANIMAL_GIVEN_BEFORE",
        "PEN_GIVEN_BEFORE",
        "PAILS_BEFORE",
        "LAST_MILKED",
    } <= set(GROWING)
    assert {"PEOPLE", "ANIMALS", "ANIMAL_PLANS", "PEN_PLANS", "MILKINGS", "JOBS", "MEASURES"} <= set(DATED)


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


@pytest.mark.parametrize("name", DATED)
def test_the_history_of_a_thing_is_never_read_through(file_desk: FileDesk, name: str) -> None:
    """What is in force of each thing (`n`, and the row that it names) is one look-up."""
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
