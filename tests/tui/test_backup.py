"""The backup command, in words."""

from pathlib import Path

import pytest

from store.book.opening import Book
from tui.cli import FAILED, OK, main


def test_a_backup_says_where_it_is_and_what_is_in_it(
    book: Book, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["--book", book.desk.place, "backup", str(tmp_path / "stick")]) == OK
    said = capsys.readouterr().out
    (copy,) = (tmp_path / "stick").iterdir()
    assert said == f"{copy}: read again, 14 rounds, the newest Tue 10 Mar evening.\n"


def test_a_book_on_a_server_is_not_copied_so_and_that_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["--book", "postgresql://bench@nowhere/farm", "backup", str(tmp_path / "stick")]) == FAILED
    assert "the server's own tools" in capsys.readouterr().err
    assert not (tmp_path / "stick").exists()


def test_a_stick_that_is_full_or_gone_is_said_and_the_status_tells(
    book: Book, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "stick").write_text("")
    assert main(["--book", book.desk.place, "backup", str(tmp_path / "stick")]) == FAILED
    assert "No copy was made" in capsys.readouterr().err


def test_a_restore_says_what_is_in_the_book_now_and_where_the_one_before_it_is(
    book: Book, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    book.close()
    assert main(["--book", book.desk.place, "backup", str(tmp_path / "stick")]) == OK
    (copy,) = (tmp_path / "stick").iterdir()
    capsys.readouterr()
    assert main(["--book", book.desk.place, "restore", str(copy)]) == OK
    (kept,) = tmp_path.glob("bench-before-*.penwalk")
    said = f"{book.desk.place}: 14 rounds, the newest Tue 10 Mar evening; the book before it is kept as {kept}.\n"
    assert capsys.readouterr().out == said


def test_a_book_that_is_open_is_not_restored_over(
    book: Book, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["--book", book.desk.place, "backup", str(tmp_path / "stick")]) == OK
    (copy,) = (tmp_path / "stick").iterdir()
    assert main(["--book", book.desk.place, "restore", str(copy)]) == FAILED
    assert "is open in another Penwalk. Leave that one first (Q)." in capsys.readouterr().err
