"""Fixtures for every test."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from store.book.opening import Book
from tests.farm import HandClock, small_book


@pytest.fixture
def clock() -> HandClock:
    """The pretend morning's clock."""
    return HandClock()


@pytest.fixture
def book(tmp_path: Path, clock: HandClock) -> Iterator[Book]:
    """The demo farm's book, fresh for each test."""
    found = small_book(tmp_path, clock)
    yield found
    found.close()
