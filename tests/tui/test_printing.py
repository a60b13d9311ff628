"""The closing as a text file beside the book, and through the system's own `lp`."""

from pathlib import Path

import pytest

from tests.tui.keys import Sitting

AT_THE_END = ["left", *["right"] * 18]


def page(sitting: Sitting) -> Path:
    """Where the page of the pretend morning is written."""
    return Path(sitting.walker.book.desk.place).with_name("bench-2026-03-11-morning.txt")


@pytest.fixture(autouse=True)
def programs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of programs in which nothing lies yet, and no other."""
    folder = tmp_path / "programs"
    folder.mkdir()
    monkeypatch.setenv("PATH", str(folder))
    return folder


def a_printer(programs: Path, does: str) -> None:
    """A system with a printer that does something with the file."""
    program = programs / "lp"
    program.write_text(f"#!/bin/sh\n{does}\n")
    program.chmod(0o755)


def test_the_page_is_written_beside_the_book_with_every_line(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press("9.4", "enter", *AT_THE_END, "m", "1", "enter")
    assert f"Written: {page(sitting)}" in sitting.said
    text = page(sitting).read_text(encoding="utf-8")
    assert text.startswith(" CLOSING THE MORNING   Wed 11 Mar")
    assert text.count("\n") > 20
    assert "Feed room shut and chained" in text
    assert "Hazel" in text.split("MILK")[1]
    assert max(map(len, text.splitlines())) <= 78


def test_without_a_printer_only_the_file_is_offered(sitting: Sitting) -> None:
    sitting.press(*AT_THE_END, "m")
    assert "on paper" not in sitting.text()
    assert not page(sitting).exists()
    sitting.press("2", "enter")
    assert not page(sitting).exists()


def test_the_printer_gets_the_file(sitting: Sitting, programs: Path) -> None:
    a_printer(programs, f'while read -r line; do echo "$line"; done < "$1" > {programs}/paper')
    sitting.press(*AT_THE_END, "m", "2", "enter")
    assert "Written" in sitting.said
    assert "CLOSING THE MORNING" in (programs / "paper").read_text()


def test_a_printer_that_refuses_is_said_and_the_file_is_there(sitting: Sitting, programs: Path) -> None:
    a_printer(programs, "exit 3")
    sitting.press(*AT_THE_END, "m", "2", "enter")
    assert "The printer did not take it" in sitting.said
    assert page(sitting).exists()


def test_a_place_that_cannot_be_written_is_said_and_the_round_goes_on(sitting: Sitting) -> None:
    page(sitting).mkdir()
    sitting.press(*AT_THE_END, "m", "1", "enter")
    assert "Nothing was printed" in sitting.said
    assert "Is a directory" in sitting.said
    sitting.press("backspace", "enter")
    assert sitting.written() == 0
