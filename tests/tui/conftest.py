"""Fixtures for the screen: the house of the pretend morning, and its pages as text files."""

import pytest
from syrupy.assertion import SnapshotAssertion
from syrupy.extensions.single_file import SingleFileSnapshotExtension, WriteMode

from store.book.opening import Book
from store.book.reading import read_facts
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
