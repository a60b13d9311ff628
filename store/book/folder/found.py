"""Reading a farm folder: every row of it, and every mistake inside a single row."""

import csv
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from uuid import UUID

from msgspec import Struct
from pydantic import ValidationError

from store.book.folder.cells import Cell, cells_of, value_of
from store.book.folder.habits import Habits, Unclear, habits_of
from store.book.folder.header import Header, read_header
from store.book.folder.rules import broken_rules
from store.book.folder.sheets import Sheet, read_sheet
from store.book.records import RECORDS, Entry, Farm, Row
from store.book.turn import Turn
from store.book.words import Kind

SEVERAL = (Kind.SOAK, Kind.LOOK, Kind.DOSE)
"""One feed or animal can have several such steps in a round, so that the name of the step cannot be left out."""
LEFT_OUT = ("written_at", "step_id")
"""Columns that a file may do without."""


@dataclass
class Found:
    """What a folder holds: rows, where each stood and how it was written, what is wrong, and what was understood."""

    header: Header
    rows: list[Row] = field(default_factory=list)
    places: dict[tuple[str, UUID], str] = field(default_factory=dict)
    texts: dict[tuple[str, UUID], dict[str, str]] = field(default_factory=dict)
    wrong: list[str] = field(default_factory=list)
    understood: list[str] = field(default_factory=list)

    def add(self, row: Row, place: str, texts: dict[str, str]) -> None:
        """Take a row in; one whose id stands there already is a mistake."""
        key = (str(row.__tablename__), row.id)
        if key in self.places:
            self.wrong.append(f"{place}, id: found «{texts['id']}»; expected another, it stands in {self.places[key]}.")
        self.places[key], self.texts[key] = place, texts
        self.rows.append(row)


def read_folder(folder: Path) -> Found:
    """Every row of a folder, and every mistake inside a single row. Raises FolderError for farm.toml."""
    header = read_header(folder)
    found = Found(header)
    for row in header.rows():
        found.add(row, "farm.toml", {})
    for record in RECORDS:
        path = folder / f"{record.__tablename__}.csv"
        if path.is_file() and record is not Farm:
            _read_file(path, record, found)
    found.wrong += _strange_files(folder)
    return found


def _strange_files(folder: Path) -> Iterator[str]:
    """Tables that nobody knows: a misspelt one would else be left out without a word."""
    known = {f"{record.__tablename__}.csv" for record in RECORDS if record is not Farm}
    for path in sorted(folder.glob("*.csv")):
        if path.name not in known and not path.name.startswith("."):
            yield f"{path.name}: found a table of this name; expected one of {', '.join(sorted(known))}."


def _read_file(path: Path, record: type[Row], found: Found) -> None:
    cells = cells_of(record)
    try:
        sheet = read_sheet(path, cells)
    except (UnicodeDecodeError, csv.Error) as error:
        found.wrong.append(f"{path.name}: cannot be read as text: {error}. Save it again as CSV, UTF-8.")
        return
    wrong = list(_wrong_columns(sheet, cells))
    if wrong:
        found.wrong += [f"{path.name} line 1: {each}" for each in wrong]
        return
    habits = habits_of((cells[name].type, text) for name, text in sheet.cells() if name in cells)
    understood = [*sheet.understood, *habits.understood()]
    if understood:
        found.understood.append(f"{path.name}: read as {', '.join(understood)}.")
    for line, row in sheet.rows:
        _read_row(f"{path.name} line {line}", row, sheet.columns, _Reading(record, cells, habits), found)


def _wrong_columns(sheet: Sheet, cells: dict[str, Cell]) -> Iterator[str]:
    """Columns that nobody knows, that stand twice or are missing.

    An unknown one that is empty in every row does no harm, as one of an older form.
    """
    lacking = [c.name for c in cells.values() if not c.optional and c.name not in (*sheet.columns, *LEFT_OUT)]
    for at, name in enumerate(sheet.columns):
        if name in sheet.columns[:at]:
            yield f"found the column «{name}» twice; expected it once."
        if name not in cells and (lacking or any(len(row) <= at or row[at].strip() for _, row in sheet.rows)):
            yield f"found a column «{name}»; expected one of {', '.join(cells)}."
    yield from (f"found no column «{name}»; expected it." for name in lacking)


class _Reading(Struct, frozen=True):
    """How the rows of one file are read."""

    record: type[Row]
    cells: dict[str, Cell]
    habits: Habits


def _read_row(place: str, row: tuple[str, ...], columns: tuple[str, ...], how: _Reading, found: Found) -> None:
    if len(row) != len(columns):
        found.wrong.append(f"{place}: found another number of cells; expected one for each column of line 1.")
        return
    texts = {name: text for name, text in zip(columns, row, strict=True) if name in how.cells}
    before = len(found.wrong)
    values = dict(_values(place, texts, how, found))
    if len(found.wrong) > before:
        return
    broken = list(broken_rules(how.record, values))
    found.wrong += [f"{place}: found {rule}." for rule in broken]
    if broken:
        return
    try:
        found.add(how.record.model_validate(_filled(how.record, values, found.header)), place, texts)
    except ValidationError as error:
        for each in error.errors():
            name = str(each["loc"][0]) if each["loc"] else ""
            expected = how.cells[name].expected if name in how.cells else each["msg"]
            found.wrong.append(f"{place}, {name}: found «{texts.get(name, '')}»; expected {expected}.")


def _values(place: str, texts: dict[str, str], how: _Reading, found: Found) -> Iterable[tuple[str, Any]]:
    for name, text in texts.items():
        if text.strip():
            cell = how.cells[name]
            try:
                plain = how.habits.plain(text.strip(), cell.type)
                yield name, value_of(plain, cell, found.header.id, found.header.zone)
            except ValueError as error:
                more = str(error) if isinstance(error, Unclear) else ""
                found.wrong.append(f"{place}, {name}: found «{text}»; expected {cell.expected}{more}.")


def _filled(record: type[Row], values: dict[str, Any], header: Header) -> dict[str, Any]:
    """What a hand-written row may leave out: when it was written, and the name of an entry's step."""
    if "written_at" in record.model_fields:
        values.setdefault("written_at", values.get("begins_at", values.get("happened_at")))
    if record is Entry and "day" not in values and "id" in values:
        values.setdefault("step_id", values["id"])  # outside of any round an entry names its own step
    subject = values.get("animal_id") or values.get("pen_id") or values.get("task_id")
    plain = values.get("kind") not in SEVERAL
    if record is Entry and plain and "step_id" not in values and subject and {"day", "slot", "kind"} <= values.keys():
        turn = Turn(values["day"], values["slot"])
        values["step_id"] = turn.step_id(header.id, Kind(values["kind"]), subject)
    return values
