"""Import: a whole farm folder into a book, or, if there is any mistake, nothing and the list of all of them."""

import csv
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from uuid import UUID

from pydantic import ValidationError
from sqlmodel import Session, col, select

from store.book.desk import Desk, FileDesk
from store.book.engines import writing_said
from store.book.errors import BookError, FolderError
from store.book.folder.cells import Cell, cells_of, value_of
from store.book.folder.header import Header, read_header
from store.book.folder.rules import broken_rules
from store.book.migrating import migrate
from store.book.records import RECORDS, Entry, Farm, Row
from store.book.turn import Turn
from store.book.words import Kind

STRANGE = "no cell"
"""Stands for a cell that a row of an unknown column does not have."""
SEVERAL = (Kind.SOAK, Kind.LOOK, Kind.DOSE)
"""One feed or animal can have several such steps in a round, so that the name of the step cannot be left out."""


@dataclass
class Found:
    """What a folder holds: rows, where each stood and how it was written, and what is wrong."""

    header: Header
    rows: list[Row] = field(default_factory=list)
    places: dict[tuple[str, UUID], str] = field(default_factory=dict)
    texts: dict[tuple[str, UUID], dict[str, str]] = field(default_factory=dict)
    wrong: list[str] = field(default_factory=list)

    def add(self, row: Row, place: str, texts: dict[str, str]) -> None:
        """Take a row in; one whose id stands there already is a mistake."""
        key = (str(row.__tablename__), row.id)
        if key in self.places:
            self.wrong.append(f"{place}, id: found «{texts['id']}»; expected another, it stands in {self.places[key]}.")
        self.places[key], self.texts[key] = place, texts
        self.rows.append(row)


def take_in(folder: Path, desk: Desk) -> int:
    """Add every row of a folder that the book does not hold yet; how many. Raises FolderError; then none was added."""
    found = read_folder(folder)
    refused = writing_said("Nothing was taken in")
    with refused, Session(desk.engine(), expire_on_commit=False) as session, session.begin():
        fresh = [row for row in found.rows if not _held(session, row, found)]
        found.wrong += _strangers(session, found)
        if found.wrong:
            raise FolderError("\n".join(found.wrong))
        for record in RECORDS:
            for wave in _waves([row for row in fresh if type(row) is record]):
                session.add_all(wave)
                session.flush()
    return len(fresh)


def _waves(rows: list[Row]) -> Iterator[list[Row]]:
    """Rows in an order in which what is replaced stands before what replaces it."""
    waiting = {row.id: row for row in rows}
    while waiting:
        ready = [row for row in waiting.values() if getattr(row, "replaces_id", None) not in waiting]
        if not ready:  # a circle, which only a hand can write: the database refuses it
            ready = list(waiting.values())
        for row in ready:
            del waiting[row.id]
        yield ready


def new_book_from(folder: Path, place: Path) -> int:
    """Make a new book of a folder; how many rows. Raises FolderError; then no book is left behind.

    Raises BookError where a file stands already: it is left as it is.
    """
    if place.exists():
        raise BookError(f"There is something at {place} already. A new book needs a new place.")
    desk = FileDesk(place, new=True)
    try:
        migrate(desk)
        return take_in(folder, desk)
    except BaseException:
        for suffix in ("", "-wal", "-shm", ".lock"):
            place.with_name(place.name + suffix).unlink(missing_ok=True)
        raise
    finally:
        desk.close()


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
    return found


def _read_file(path: Path, record: type[Row], found: Found) -> None:
    cells = cells_of(record)
    try:
        with path.open(encoding="utf-8-sig", newline="") as file:
            reader = csv.DictReader(file)
            unknown = [name for name in reader.fieldnames or () if name not in cells]
            lacking = [c.name for c in cells.values() if not c.optional and c.name not in (reader.fieldnames or ())]
            lacking = [name for name in lacking if name not in ("written_at", "step_id")]
            if lacking:
                found.wrong += _strange_columns(path, unknown, cells)
                found.wrong += [f"{path.name} line 1: found no column «{name}»; expected it." for name in lacking]
                return
            for texts in reader:
                strange = [name for name in unknown if (texts.pop(name) or STRANGE).strip()]
                if strange:
                    found.wrong += _strange_columns(path, strange, cells)
                    return
                _read_row(f"{path.name} line {reader.line_num}", texts, record, cells, found)
    except (UnicodeDecodeError, csv.Error) as error:
        found.wrong.append(f"{path.name}: cannot be read as UTF-8 text: {error}. Save it again as CSV, UTF-8.")


def _strange_columns(path: Path, names: Iterable[str], cells: dict[str, Cell]) -> list[str]:
    """Columns that nobody knows. One that is there and empty in every row does no harm, as one of an older form."""
    return [f"{path.name} line 1: found a column «{name}»; expected one of {', '.join(cells)}." for name in names]


def _read_row(place: str, texts: dict[str, Any], record: type[Row], cells: dict[str, Cell], found: Found) -> None:
    if None in texts or None in texts.values():
        found.wrong.append(f"{place}: found another number of cells; expected one for each column of line 1.")
        return
    before = len(found.wrong)
    values = dict(_values(place, texts, cells, found))
    if len(found.wrong) > before:
        return
    broken = list(broken_rules(record, values))
    found.wrong += [f"{place}: found {rule}." for rule in broken]
    if broken:
        return
    try:
        found.add(record.model_validate(_filled(record, values, found.header)), place, texts)
    except ValidationError as error:
        for each in error.errors():
            name = str(each["loc"][0]) if each["loc"] else ""
            expected = cells[name].expected if name in cells else each["msg"]
            found.wrong.append(f"{place}, {name}: found «{texts.get(name, '')}»; expected {expected}.")


def _values(place: str, texts: dict[str, str], cells: dict[str, Cell], found: Found) -> Iterator[tuple[str, Any]]:
    for name, text in texts.items():
        if text.strip():
            try:
                yield name, value_of(text.strip(), cells[name], found.header.id, found.header.zone)
            except ValueError:
                found.wrong.append(f"{place}, {name}: found «{text}»; expected {cells[name].expected}.")


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


def _held(session: Session, row: Row, found: Found) -> bool:
    """Whether the book holds this very row. Another row with its id is a mistake: nothing is ever changed."""
    there = session.get(type(row), row.id)
    if there is not None and there.model_dump() != row.model_dump():
        place = found.places[str(row.__tablename__), row.id]
        found.wrong.append(f"{place}: the book holds this id with other content; expected a new id for a new row.")
    return there is not None


def _strangers(session: Session, found: Found) -> Iterator[str]:
    """References to what neither the folder nor the book holds; and a folder of another farm."""
    for farm in session.exec(select(Farm).where(col(Farm.id) != found.header.id)):
        yield f"farm.toml, id: found {found.header.id}; expected {farm.id}, the farm of this book."
    by_table = {str(record.__tablename__): record for record in RECORDS}
    for row in found.rows:
        place = found.places[str(row.__tablename__), row.id]
        for cell in cells_of(type(row)).values():
            id_ = getattr(row, cell.name)
            table = cell.refers_to
            if cell.name == "id" or table is None or id_ is None or (table, id_) in found.places:
                continue
            if session.get(by_table[table], id_) is None:
                typed = found.texts[str(row.__tablename__), row.id][cell.name]
                yield f"{place}, {cell.name}: found «{typed}»; expected {cell.expected}."
