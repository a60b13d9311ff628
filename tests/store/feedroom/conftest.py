"""Fixtures for the feed room."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from store.book.opening import Book
from tests.farm import HandClock
from tests.store.feedroom.made import empty_room


@pytest.fixture
def room(tmp_path: Path, clock: HandClock) -> Iterator[Book]:
    """The small farm before its first round, its feed room empty."""
    found = empty_room(tmp_path, clock)
    yield found
    found.close()
