"""One CSV file as a spreadsheet or an editor may have saved it: its letters, its separator, its empty edges."""

import codecs
import csv
import io
from collections.abc import Collection, Iterator
from pathlib import Path

from msgspec import Struct

SEPARATORS = {",": "", ";": "semicolons between the cells", "\t": "tabs between the cells"}
"""The first is what we write ourselves."""
MARKS = ((codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"), (codecs.BOM_UTF8, "utf-8-sig"))
"""What a file begins with that says itself in which letters it is written."""
OLD_WINDOWS = "cp1252"
"""What spreadsheets of western Europe and America write where they do not write UTF-8. Common practice."""


class Sheet(Struct, frozen=True):
    """The columns of a file and its rows, each with the line it ends on; and what was understood, in words."""

    columns: tuple[str, ...]
    rows: tuple[tuple[int, tuple[str, ...]], ...]
    understood: tuple[str, ...]

    def cells(self) -> Iterator[tuple[str, str]]:
        """Every cell with the name of its column."""
        for _, row in self.rows:
            yield from zip(self.columns, row, strict=False)  # a row of another length is a mistake, told elsewhere


def read_sheet(path: Path, known: Collection[str]) -> Sheet:
    """Read a file. known: the columns it may have, by which its separator is told.

    Raises UnicodeDecodeError or csv.Error where it is no text, OSError where it cannot be read.
    """
    text, letters = _text(path.read_bytes())
    separator = _separator(text, known)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator)
    columns = _without_empty_end(next(reader, []))
    rows = ((reader.line_num, _fitted(row, len(columns))) for row in reader if any(cell.strip() for cell in row))
    understood = filter(None, (letters, SEPARATORS[separator]))
    return Sheet(columns, tuple(rows), tuple(understood))


def _text(found: bytes) -> tuple[str, str]:
    for mark, letters in MARKS:
        if found.startswith(mark):
            return found.decode(letters), "UTF-16 text" if letters == "utf-16" else ""
    try:
        return found.decode("utf-8"), ""
    except UnicodeDecodeError:
        return found.decode(OLD_WINDOWS), "Windows text (cp1252): look at every name with an accent"


def _separator(text: str, known: Collection[str]) -> str:
    """The one that finds the most known columns; where it makes no difference, ours."""
    first = io.StringIO(text, newline="").readline()
    return max(SEPARATORS, key=lambda each: sum(cell.strip() in known for cell in _cells(first, each)))


def _cells(line: str, separator: str) -> list[str]:
    return next(csv.reader([line], delimiter=separator), [])


def _without_empty_end(cells: list[str]) -> tuple[str, ...]:
    """Columns to the right that have no name are a spreadsheet's empty edge."""
    named = [cell.strip() for cell in cells]
    while named and not named[-1]:
        named.pop()
    return tuple(named)


def _fitted(row: list[str], columns: int) -> tuple[str, ...]:
    """A row without the empty cells behind its last column."""
    cells = list(row)
    while len(cells) > columns and not cells[-1].strip():
        cells.pop()
    return tuple(cells)
