"""The demo farm's book, at its pretend moment."""

import tomllib
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import datetime
from importlib.resources import files
from pathlib import Path

from store.book.folder.take_in import new_book_from
from store.book.opening import Book, open_book
from store.book.reading import read_facts
from store.book.turn import from_wall
from tests.farm import HandClock

DEMO_FOLDER = Path(str(files("demo_farm")))


@contextmanager
def demo_book(folder: Path) -> Iterator[Book]:
    """Imported by the ordinary importer into a folder, open until it is left."""
    place, clock = folder / "demo.penwalk", HandClock()
    new_book_from(DEMO_FOLDER, place)
    with closing(open_book(str(place), clock)) as book:
        starts = tomllib.loads((DEMO_FOLDER / "demo.toml").read_text(encoding="utf-8"))["starts_at"]
        clock.at = from_wall(datetime.fromisoformat(starts), read_facts(book.desk, clock.at).zone)
        yield book
