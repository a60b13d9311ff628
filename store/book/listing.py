"""Rows of a book in words, for people: names instead of ids, units beside figures. Heavy: it knows the records."""

from collections.abc import Iterator, Mapping
from enum import StrEnum
from uuid import UUID

from store.book.desk import Desk
from store.book.records import Entry, Line, Row
from store.book.words import Kind, State

NAMED = {"animal": "name", "pen": "name", "task": "name", "feed": "name", "person": "name", "measure": "name",
         "pail": "name", "look": "name", "treatment": "product"}  # fmt: skip
"""What has a name, and the column of it."""
UNITS = {"kg": "kg", "l": "L", "cm": "cm", "c": "C", "points": "points", "kmh": "km/h"}
"""By the last word of a column's name."""
OF_THE_ROW = ("id", "entry_id", "position")
NOT_DONE = (*OF_THE_ROW, "typed", "due_kg", "heads_due", "measure_id")
"""Columns of a figure that do not say what was done."""

Names = Mapping[UUID, str]


def names_of(desk: Desk) -> dict[UUID, str]:
    """By id the newest name of every animal, pen, job, feed, person, measure, pail, look and treatment."""
    newest = "SELECT {0}_id, {1} FROM {0}_as ORDER BY begins_at, written_at, id"
    return {
        UUID(bytes=bytes(id_)): one_line(name)
        for thing, column in NAMED.items()
        for id_, name in desk.rows(newest.format(thing, column), {})
    }


def subject_words(entry: Entry, names: Names) -> str:
    """Whose step an entry is: a name; empty for the whole yard."""
    found = (entry.animal_id, entry.pen_id, entry.task_id, entry.feed_id)
    return next((names.get(each, str(each)) for each in found if each is not None), "")


def entry_words(entry: Entry, lines: Iterator[Line], names: Names, leave_out: tuple[str, ...] = OF_THE_ROW) -> str:
    """What became of a step, with its figures: `done: feed dairy nuts, due 2.7 kg, given 2.7 kg`."""
    said = [entry.state.value, *([one_line(entry.reason)] if entry.reason else [])]
    if entry.kind is Kind.ROUND and entry.state is State.DONE:
        said = ["ended"]
    figures = "; ".join(filter(None, (line_words(line, names, leave_out) for line in lines)))
    return ", ".join(said) + (f": {figures}" if figures else "")


def line_words(line: Row, names: Names, leave_out: tuple[str, ...] = OF_THE_ROW) -> str:
    """A figure, or another row, by its columns, what is empty left out: `milk 6.2 kg, fate house`."""
    columns = (name for name in type(line).model_fields if name not in leave_out)
    return ", ".join(filter(None, (_cell(name, getattr(line, name), names) for name in columns)))


def one_line(text: str) -> str:
    """A text without line ends, and without what cannot be printed."""
    return " ".join("".join(each if each.isprintable() else " " for each in text).split())


def _cell(column: str, value: object, names: Names) -> str:
    *word, last = column.split("_")
    if value is None or value == "" or value is False:
        return ""
    if isinstance(value, UUID):
        return f"{' '.join(word)} {names.get(value, value)}"
    if value is True:
        return column.replace("_", " ")
    if isinstance(value, float) and last in UNITS:
        return " ".join(filter(None, (*word, f"{value:.6g}", UNITS[last])))
    said = value.value if isinstance(value, StrEnum) else one_line(str(value))
    return f"{column.replace('_', ' ')} {said}"
