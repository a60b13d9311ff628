"""The small farm of the tests: its book, its morning, its steps by name."""

import shutil
from datetime import UTC, datetime, timedelta
from functools import cache
from pathlib import Path
from tempfile import mkdtemp

from store.book.clock import Clock
from store.book.folder.take_in import new_book_from
from store.book.opening import Book, open_book
from store.book.reading import read_facts, read_snapshot
from store.book.snapshot import Snapshot
from store.book.turn import turn_at
from store.round.confirm import Hand
from store.round.plan import plan
from store.round.steps import Step

FOLDER = Path(__file__).parent / "small_farm"
"""Three pens, five animals, three feeds, and a week of past rounds: small enough to know by heart."""
MORNING = datetime(2026, 3, 11, 6, 31, tzinfo=UTC)
"""The pretend morning begins; in March the farm's wall clock shows UTC."""


class HandClock(Clock):
    """A clock that stands still until a test moves it on."""

    def __init__(self, at: datetime = MORNING) -> None:
        """At a moment."""
        self.at = at
        self.ticks_s = 100.0

    def now(self) -> datetime:
        """The moment it was set to, one microsecond later each time it is asked."""
        self.at += timedelta(microseconds=1)
        return self.at

    def ticks(self) -> float:
        """Seconds, a second later each time it is asked."""
        self.ticks_s += 1.0
        return self.ticks_s

    def move(self, **by: float) -> None:
        """Let time go by, as `hours=1`."""
        self.at += timedelta(**by)


@cache
def built() -> Path:
    """The small farm's book, imported once for all tests."""
    place = Path(mkdtemp(prefix="penwalk-tests-")) / "built.penwalk"
    new_book_from(FOLDER, place)
    return place


def small_book(folder: Path, clock: Clock | None = None, bench: str = "bench") -> Book:
    """A copy of the small farm's book in a folder, open, on the pretend morning."""
    place = folder / f"{bench}.penwalk"
    shutil.copy(built(), place)
    return open_book(str(place), clock or HandClock(), bench)


def morning(book: Book) -> Snapshot:
    """The round of the moment as the book holds it."""
    now = book.clock.now()
    farm = read_facts(book.desk, now)
    return read_snapshot(book.desk, turn_at(now, farm.zone, farm.evening_from_h), now)


def hand(book: Book, snapshot: Snapshot) -> Hand:
    """The first person of the farm presses a key."""
    return Hand(snapshot.turn, snapshot.people[0].id, book.clock.now(), snapshot.farm.units)


def step_of(snapshot: Snapshot, name: str, kind: str) -> Step:
    """The step of a name and kind, as ("Fennel", "milk")."""
    return next(step for step in plan(snapshot) if step.name == name and step.kind == kind)
