"""Fixtures for the screen: the house of the pretend morning, and its pages as text files."""

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from syrupy.assertion import SnapshotAssertion
from syrupy.extensions.single_file import SingleFileSnapshotExtension, WriteMode

from store.book.clock import new_id
from store.book.opening import Book
from store.book.reading import read_facts
from store.book.records.care import Look, LookAs, Treatment, TreatmentAs
from store.book.words import Asks, SettingName
from tests.demo import demo_book
from tests.farm import MORNING
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn
from tests.tui.benched import set_to
from tests.tui.keys import Sitting
from tui.rooms import House
from tui.walker import Walker


class Screen(SingleFileSnapshotExtension):
    """A screen is kept as a text file that one can look at."""

    _write_mode = WriteMode.TEXT
    file_extension = "txt"


@pytest.fixture
def screen(snapshot: SnapshotAssertion) -> SnapshotAssertion:
    """Compares a page's text with the one kept beside the tests."""
    return snapshot.use_extension(Screen)


@pytest.fixture
def sitting(book: Book) -> Sitting:
    """The pretend morning, to press keys at without a terminal."""
    return Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))


@pytest.fixture
def cared(book: Book) -> Sitting:
    """The pretend morning with a lame heifer and a dry cow to be scored: two looks at the one, a dose, a score."""
    sloe, tansy = (animal_named(dawn(), name).id for name in ("Sloe", "Tansy"))
    foot, score, heat, spray = (new_id(MORNING) for _ in range(4))
    for record, id_ in ((Look, foot), (Look, score), (Look, heat), (Treatment, spray)):
        put(book.desk, record, id=id_)
    put(book.desk, LookAs, look_id=foot, animal_id=sloe, name="left hind foot", asks=Asks.HOW, slot="morning")
    put(book.desk, LookAs, look_id=heat, animal_id=sloe, name="fever", asks=Asks.TEMPERATURE, slot="morning")
    put(book.desk, LookAs, look_id=score, animal_id=tansy, name="condition", asks=Asks.CONDITION, slot="morning")
    put(
        book.desk, TreatmentAs, treatment_id=spray, animal_id=sloe, product="foot spray", amount="cover the sole",
        doses=3, every_h=12, first_at=MORNING + timedelta(minutes=29),
    )  # fmt: skip
    return Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))


@pytest.fixture
def timed(book: Book) -> Sitting:
    """The pretend morning of a farm that has said when its rounds begin."""
    set_to(book, SettingName.MORNING_AT, "06:30")
    set_to(book, SettingName.EVENING_AT, "17:10")
    return Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True)))


@pytest.fixture
def demo(tmp_path: Path) -> Iterator[Sitting]:
    """The demo farm at its pretend moment."""
    with demo_book(tmp_path) as book:
        yield Sitting(House(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True))).begin()
