"""Fixtures for the book: the demo farm on a file and on a server of our own."""

import shutil
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from store.book.desk import Desk, FileDesk, ServerDesk
from store.book.folder.take_in import take_in
from store.book.migrating import migrate
from store.book.opening import Book
from tests.farm import FOLDER, HandClock, built, small_book
from tests.servers import NoServer, Server, start_server
from tests.store.book.folders import copy_farm

KINDS = ("file", "server")


@pytest.fixture(scope="session")
def server() -> Iterator[Server]:
    """A PostgreSQL server, started once for all tests."""
    try:
        found = start_server()
    except NoServer as error:
        pytest.skip(str(error))
    yield found
    found.stop()


@pytest.fixture(scope="session")
def demo_database(server: Server) -> str:
    """The name of a database that holds the demo farm; fresh ones are copied from it."""
    name = server.database()
    with closing(ServerDesk(server.url(name))) as desk:
        migrate(desk)
        take_in(FOLDER, desk)
    return name


@pytest.fixture
def empty_url(server: Server) -> Iterator[str]:
    """The address of a database with nothing in it."""
    name = server.database()
    yield server.url(name)
    server.drop(name)


@pytest.fixture
def empty_desk(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Desk]:
    """A desk with no book on it yet; which kind the test says, else a file."""
    kind = getattr(request, "param", "file")
    url = request.getfixturevalue("empty_url") if kind == "server" else ""
    with closing(ServerDesk(url) if url else FileDesk(tmp_path / "new.penwalk", new=True)) as desk:
        yield desk


@pytest.fixture
def bare_file(tmp_path: Path) -> Iterator[FileDesk]:
    """A book in a file with its form and no row."""
    with closing(FileDesk(tmp_path / "bare.penwalk", new=True)) as desk:
        migrate(desk)
        yield desk


@pytest.fixture
def bare_server(empty_url: str) -> Iterator[ServerDesk]:
    """A book on the server with its form and no row."""
    with closing(ServerDesk(empty_url)) as desk:
        migrate(desk)
        yield desk


@pytest.fixture(params=KINDS)
def bare(request: pytest.FixtureRequest) -> Desk:
    """A book with its form and no row, on both kinds of desk."""
    found: Desk = request.getfixturevalue(f"bare_{request.param}")
    return found


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """The demo farm's folder without the rounds that were walked, to be spoilt."""
    return copy_farm(tmp_path / "farm")


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """A copy of the demo farm's book, closed."""
    return Path(shutil.copy(built(), tmp_path / "farm.penwalk"))


@pytest.fixture
def file_desk(tmp_path: Path) -> Iterator[FileDesk]:
    """The demo farm's book in a file."""
    with closing(small_book(tmp_path, bench="filed").desk) as desk:
        assert isinstance(desk, FileDesk)
        yield desk


@pytest.fixture
def server_desk(server: Server, demo_database: str) -> Iterator[ServerDesk]:
    """The demo farm's book on the server, fresh for each test."""
    name = server.database(like=demo_database)
    with closing(ServerDesk(server.url(name))) as desk:
        yield desk
    server.drop(name)


@pytest.fixture(params=KINDS)
def desk(request: pytest.FixtureRequest) -> Desk:
    """The demo farm's book on both kinds of desk, fresh for each test."""
    found: Desk = request.getfixturevalue(f"{request.param}_desk")
    return found


@pytest.fixture
def desk_book(desk: Desk, clock: HandClock) -> Book:
    """The demo farm's book on both kinds of desk, open on the pretend morning."""
    return Book(desk, clock, "bench")


@pytest.fixture(scope="module", params=KINDS)
def still_desk(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Desk]:
    """The demo farm's book on both kinds of desk, shared by tests that leave nothing behind in it."""
    if request.param == "file":
        found = small_book(tmp_path_factory.mktemp("still"), bench="still").desk
    else:
        server: Server = request.getfixturevalue("server")
        found = ServerDesk(server.url(server.database(like=request.getfixturevalue("demo_database"))))
    with closing(found) as desk:
        yield desk
