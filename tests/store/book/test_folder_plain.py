"""rounds.txt: the whole book in words beside the tables, for people; never read back."""

from pathlib import Path

import pytest

from store.book.desk import Desk, FileDesk
from store.book.folder.plain import FILE
from store.book.folder.put_out import put_out
from store.book.folder.take_in import take_in
from store.book.opening import Book
from tests.farm import HandClock
from tests.store.book.tools import count
from tests.store.book.walking import walk_morning


@pytest.fixture
def lines(file_desk: FileDesk, tmp_path: Path) -> list[str]:
    """The file of a walked morning."""
    walk_morning(Book(file_desk, HandClock()))
    put_out(file_desk, tmp_path / "out")
    return (tmp_path / "out" / FILE).read_text(encoding="utf-8").splitlines()


def test_it_has_a_line_for_each_entry(lines: list[str], file_desk: FileDesk) -> None:
    """Those that were corrected too, and they say so."""
    listed = lines[lines.index("") + 1 :]
    entries = listed[: listed.index("")]
    assert len(entries) == count(file_desk, "entry")
    again = file_desk.rows("SELECT count(DISTINCT step_id) FROM entry", {})[0][0]
    assert sum(not each.endswith("(replaced)") for each in entries) == again


def test_a_line_names_day_time_person_animal_and_figures_with_units(lines: list[str]) -> None:
    """As one reads it, without an id."""
    milked = "done: milk 6.2 kg, gross 7.6 kg, pail steel pail, empty 1.4 kg, fate house, typed 7.6"
    assert f"2026-03-04 morning  06:37  Ann at feed room  Fennel (milk)  {milked}" in lines


def test_a_note_with_a_line_end_stays_on_its_line(lines: list[str]) -> None:
    """And the time it happened in is a span."""
    assert "2026-03-05 morning  07:00-07:20  Ann at feed room  (note)  done: words The hinge squeaks, tell" in lines


def test_the_names_of_the_ids_stand_at_the_end(lines: list[str], tmp_path: Path) -> None:
    """So that the tables can be read with it."""
    ids = (tmp_path / "out" / "animal.csv").read_text(encoding="utf-8").split()[1:]
    named = dict(each.split("  ") for each in lines[-30:] if each.count("  ") == 1 and each[8] == "-")
    assert {named[id_] for id_ in ids} >= {"Fennel", "Hazel", "Rook", "Sloe", "Tansy"}


def test_it_is_never_read_back(file_desk: FileDesk, bare: Desk, tmp_path: Path) -> None:
    """Whatever somebody wrote into it."""
    put_out(file_desk, tmp_path / "out")
    (tmp_path / "out" / FILE).write_bytes(b"\xff\x00 no text at all")
    assert take_in(tmp_path / "out", bare).rows > 300
