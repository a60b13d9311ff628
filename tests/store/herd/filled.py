"""Sheets of the small farm, filled in by words, and written."""

from uuid import UUID

from store.book.clock import MICROSECOND
from store.book.drafts import Subject
from store.book.opening import Book
from store.book.register import Register, read_register
from store.book.snapshot import Snapshot
from store.herd.filling import Filling
from store.herd.sheet import Sheet
from tests.farm import morning


def register(book: Book) -> Register:
    """What is in force now."""
    return read_register(book.desk, book.clock.now() + MICROSECOND)


def id_of(found: Register, table: str, name: str) -> UUID:
    """The thing that is called so: `animal_as`, `Fennel`."""
    key = next(key for key, row in found.rows[table].items() if row["name"] == name)
    id_: UUID = key[0]
    return id_


def animal(book: Book, name: str) -> UUID:
    """An animal of the small farm."""
    return id_of(register(book), "animal_as", name)


def of_animal(book: Book, name: str) -> Subject:
    """An animal as the subject of a plan."""
    return Subject(animal_id=animal(book, name))


def filled(sheet: Sheet, **typed: str) -> Filling:
    """A sheet with some answers typed; a picked one by its word."""
    filling = Filling(sheet)
    assert typed.keys() <= filling.texts.keys(), f"no such question: {typed.keys() - filling.texts.keys()}"
    filling.texts.update(typed)
    return filling


def write(book: Book, sheet: Sheet, **typed: str) -> Snapshot:
    """Write what a filled sheet makes; the round of the moment after it."""
    book.change(sheet.rows(filled(sheet, **typed).answers()))
    return morning(book)
