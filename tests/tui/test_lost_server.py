"""The server goes in the middle of a step: it is said, what was typed stays, and Enter works once it is back."""

from collections.abc import Iterator
from contextlib import closing

import pytest

from store.book.desk import ServerDesk
from store.book.figures import FedFigure
from store.book.folder.take_in import take_in
from store.book.migrating import migrate
from store.book.opening import Book
from store.book.reading import read_facts
from tests.farm import FOLDER, HandClock
from tests.servers import NoServer, Server, start_server
from tests.tui.keys import Sitting
from tui.rooms import House
from tui.walker import Walker

PASSWORD = "cloverleaf"


@pytest.fixture
def own_server() -> Iterator[Server]:
    """A server that can go and come back without anybody else missing it."""
    try:
        found = start_server()
    except NoServer as error:
        pytest.skip(str(error))
    yield found
    found.stop()


@pytest.fixture
def sitting(own_server: Server) -> Iterator[Sitting]:
    """At the first step of the morning, on that server; the address has a password."""
    address = own_server.url(own_server.database()).replace("@", f":{PASSWORD}@", 1)
    with closing(ServerDesk(address)) as desk:
        migrate(desk)
        take_in(FOLDER, desk)
        book = Book(desk, HandClock(), "barn")
        yield Sitting(House(Walker(book, read_facts(desk, book.clock.now()))))


def test_a_server_that_goes_and_comes_back_loses_nothing(sitting: Sitting, own_server: Server) -> None:
    """Twice: once while a figure is typed, once between two steps."""
    sitting.to_step("Hazel", "feed").press("3", ".", "5")
    own_server.halt()
    sitting.press("enter")
    assert sitting.said.startswith("Nothing was written: the server cannot be reached; Enter tries again")
    assert PASSWORD not in sitting.text(200)
    assert sitting.place is not None
    assert sitting.place.half_typed == "3.5"
    sitting.press("enter")
    assert "the server cannot be reached" in sitting.said
    own_server.come_back()
    sitting.press("enter")
    assert sitting.written() == 1
    fed = sitting.newest().the(FedFigure)
    assert fed is not None
    assert fed.typed == "3.5"
    own_server.halt()
    own_server.come_back()
    before = sitting.written()
    sitting.to_step("Water trough runs", "task").press("enter")
    assert sitting.written() == before + 1


def test_where_more_is_read_than_the_round_the_server_is_missed_in_a_sentence(
    sitting: Sitting, own_server: Server
) -> None:
    """My farm and the weather, from a step; once it is back they open."""
    sitting.to_step("Fennel", "feed")
    before = sitting.place
    own_server.halt()
    for key in ("f", "c"):
        sitting.press(key)
        assert "the server cannot be reached" in sitting.said
        assert sitting.place is before
    own_server.come_back()
    sitting.press("f")
    assert sitting.place is not before
