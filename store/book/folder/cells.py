"""One cell of a CSV file: text to value, value to text, and in words what the cell should hold."""

from collections.abc import Callable
from datetime import UTC, date, datetime
from enum import StrEnum
from re import match
from types import NoneType, UnionType
from typing import Any, Union, get_args, get_origin
from uuid import UUID, uuid5

from msgspec import Struct
from pydantic import AwareDatetime
from pydantic.fields import FieldInfo

from store.book.records import Row
from store.book.turn import from_wall

PENWALK = UUID("5a4b1c1e-6f0d-5b0e-9c1a-2d7c3e8f4a60")
"""Namespace of the ids of farms that are words."""
FORMULA = r"'*[=+\-@\t\r]"
"""What a spreadsheet may run. Apostrophes before it count, so that a text with one of its own comes back as it was.
The signs: OWASP, "CSV Injection", from memory."""
YES, NO = ("yes", "true", "1"), ("no", "false", "0")


class Cell(Struct, frozen=True):
    """What one column of one record class holds."""

    name: str
    type: Any
    optional: bool
    refers_to: str | None  # the table whose id it holds
    expected: str


def id_of(word: str, table: str, farm_id: UUID) -> UUID:
    """The id that a cell names: a UUID as it stands, or a word, which is the same id on every laptop."""
    try:
        return UUID(word)
    except ValueError:
        return uuid5(farm_id, f"{table}:{word}")


def cells_of(record: type[Row]) -> dict[str, Cell]:
    """The columns of a record class, from its fields."""
    return {name: _cell(record, name, field) for name, field in record.model_fields.items()}


def value_of(text: str, cell: Cell, farm_id: UUID, zone: str) -> Any:
    """The value of a cell's text. Raises ValueError. A time without an offset is the farm's own wall time."""
    if cell.type is UUID:
        return id_of(text, cell.refers_to or "", farm_id)
    if cell.type is AwareDatetime:
        return _moment(text, zone)
    if cell.type in READERS:
        return READERS[cell.type](text)
    if cell.type in (int, float) and "_" in text:  # Python's own way to write a number, and nobody else's
        raise ValueError(text)
    return cell.type(text)


def text_of(value: Any) -> str:
    """The text of a value; reading it back gives the same value."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, datetime):
        return value.astimezone(UTC).isoformat(sep=" ")
    return repr(value) if isinstance(value, float) else guarded(str(value))


def guarded(text: str) -> str:
    """A text so that no spreadsheet takes it for a formula and runs it: with an apostrophe before it.

    A number, a day or an id is never one: nothing but a text can begin so and not be a figure.
    """
    return f"'{text}" if match(FORMULA, text) else text


def unguarded(text: str) -> str:
    """The text without the apostrophe that guards it."""
    return text[1:] if match(f"'{FORMULA}", text) else text


def _bool(text: str) -> bool:
    if text.lower() not in YES + NO:
        raise ValueError(text)
    return text.lower() in YES


READERS: dict[Any, Callable[[str], Any]] = {str: unguarded, bool: _bool, date: date.fromisoformat}


def _moment(text: str, zone: str) -> datetime:
    found = datetime.fromisoformat(text)
    try:
        return found.astimezone(UTC) if found.tzinfo else from_wall(found, zone)
    except OverflowError as error:
        raise ValueError(text) from error


def _cell(record: type[Row], name: str, field: FieldInfo) -> Cell:
    kinds = get_args(field.annotation) if get_origin(field.annotation) in (Union, UnionType) else (field.annotation,)
    kind = next(each for each in kinds if each is not NoneType)
    if get_args(kind):
        kind = get_args(kind)[0]
    column = record.metadata.tables[str(record.__tablename__)].c[name]
    refers = next((key.column.table.name for key in column.foreign_keys), None)
    table = str(record.__tablename__) if name == "id" else refers
    return Cell(name, kind, not field.is_required(), table, _expected(kind, field, refers))


def _expected(kind: Any, field: FieldInfo, refers: str | None) -> str:
    if kind is UUID:
        return f"an id that stands in {refers}.csv" if refers else "an id: a word or a UUID"
    if isinstance(kind, type) and issubclass(kind, StrEnum):
        return "one of: " + ", ".join(kind)
    words = {
        bool: "yes or no",
        date: "a day as 2026-03-05",
        AwareDatetime: "a time as 2026-03-05 06:31",
        int: "a whole number",
        float: "a number with a point, as 3.5",
        str: "text",
    }
    return words.get(kind, "text") + _bounds(field)


def _bounds(field: FieldInfo) -> str:
    found = {name: getattr(each, name) for each in field.metadata for name in ("ge", "le", "min_length", "max_length")
             if getattr(each, name, None) is not None}  # fmt: skip
    if "ge" in found:
        return f" from {found['ge']:g} to {found['le']:g}"
    if "max_length" in found:
        return f" of {found.get('min_length', 0)} to {found['max_length']} letters"
    return ""
