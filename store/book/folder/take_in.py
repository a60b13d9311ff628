"""Import: a whole farm folder into a book, or, if there is any mistake, nothing and the list of all of them."""

from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct
from sqlmodel import Session, col, select

from store.book.desk import Desk
from store.book.engines import refusal_said
from store.book.errors import FolderError
from store.book.folder.cells import cells_of
from store.book.folder.found import Found, read_folder
from store.book.making import made_new
from store.book.records import RECORDS, Farm, Row


class Taken(Struct, frozen=True):
    """What an import did: how many rows are new, and in words what was understood of files written in another way."""

    rows: int
    understood: tuple[str, ...] = ()


def take_in(folder: Path, desk: Desk) -> Taken:
    """Add every row of a folder that the book does not hold yet. Raises FolderError; then none was added."""
    found = read_folder(folder)
    refused = refusal_said("Nothing was taken in")
    with refused, Session(desk.engine(), expire_on_commit=False) as session, session.begin():
        fresh = [row for row in found.rows if not _held(session, row, found)]
        found.wrong += _strangers(session, found)
        if found.wrong:
            raise FolderError("\n".join(found.wrong))
        for record in RECORDS:
            for wave in _waves([row for row in fresh if type(row) is record]):
                session.add_all(wave)
                session.flush()
    return Taken(len(fresh), tuple(found.understood))


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


def new_book_from(folder: Path, place: Path) -> Taken:
    """Make a new book of a folder. Raises FolderError; then no book is left behind.

    Raises BookError where a file stands already: it is left as it is; and where the disk refuses.
    """
    with made_new(place) as desk:
        return take_in(folder, desk)


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
