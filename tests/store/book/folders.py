"""Farm folders of the tests: the demo farm copied, a cell of it changed, and what the importer says to it."""

import csv
import shutil
from pathlib import Path

import pytest

from store.book.desk import Desk
from store.book.errors import FolderError
from store.book.folder.header import FILE
from store.book.folder.take_in import take_in
from tests.farm import FOLDER
from tests.store.book.tools import all_rows

PAST = ("entry.csv", "fed.csv", "milked.csv")
Line = dict[str, str]


def copy_farm(to: Path, *, past: bool = False) -> Path:
    """A copy of the demo farm's folder. past: with the rounds that were walked."""
    to.mkdir(parents=True)
    for path in (*FOLDER.glob("*.csv"), FOLDER / FILE):
        if past or path.name not in PAST:
            shutil.copy(path, to / path.name)
    return to


def lines_of(path: Path) -> list[Line]:
    """The lines of a file, by the names of their columns."""
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def write_lines(path: Path, lines: list[Line]) -> None:
    """Write a file anew, with the columns of its first line."""
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(lines[0]), restval="", lineterminator="\n")
        writer.writeheader()
        writer.writerows(lines)


def change(folder: Path, name: str, line: int, /, **cells: str) -> None:
    """Change cells of a line, counted as an editor counts: the names of the columns are line 1."""
    lines = lines_of(folder / name)
    lines[line - 2] |= cells
    write_lines(folder / name, lines)


def add(folder: Path, name: str, /, **cells: str) -> None:
    """Add a line."""
    write_lines(folder / name, [*lines_of(folder / name), cells])


def edit(folder: Path, name: str, old: str, new: str) -> None:
    """Replace a text in a file; it must stand there."""
    text = (folder / name).read_text(encoding="utf-8")
    assert old in text
    (folder / name).write_text(text.replace(old, new, 1), encoding="utf-8")


def mistakes(folder: Path, desk: Desk) -> list[str]:
    """What the importer says of a folder, a line each; and that it wrote nothing."""
    before = all_rows(desk)
    with pytest.raises(FolderError) as error:
        take_in(folder, desk)
    assert all_rows(desk) == before
    return str(error.value).splitlines()


def contents(folder: Path) -> dict[str, bytes]:
    """Every file of a folder, byte for byte."""
    return {path.name: path.read_bytes() for path in sorted(folder.iterdir())}
