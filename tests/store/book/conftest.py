"""Fixtures for the book: the small farm on a file and on a server of our own."""

import shutil
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from store.book.desk import Desk, FileDesk, ServerDesk
from store.book.folder.take_in import new_book_from, take_in
from store.book.migrating import migrate
from store.book.opening import Book
from tests.farm import HandClock, built
from tests.servers import NoServer, Server, start_server
from tests.store.book.folders import copy_farm, whole_farm

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
def whole_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the small farm with something in every file."""
    return whole_farm(tmp_path_factory.mktemp("whole") / "farm")


@pytest.fixture(scope="session")
def whole_built(whole_folder: Path) -> Path:
    """The book of that folder, imported once; to be copied."""
    new_book_from(whole_folder, whole_folder.parent / "built.penwalk")
    return whole_folder.parent / "built.penwalk"


@pytest.fixture(scope="session")
def small_database(server: Server, whole_folder: Path) -> str:
    """The name of a database that holds the small farm; fresh ones are copied from it."""
    name = server.database()
    with closing(ServerDesk(server.url(name))) as desk:
        migrate(desk)
        take_in(whole_folder, desk)
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
    """The small farm's folder without the rounds that were walked, to be spoilt."""
    return copy_farm(tmp_path / "farm")


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """A copy of the small farm's book, closed."""
    return Path(shutil.copy(built(), tmp_path / "farm.penwalk"))


@pytest.fixture
def file_desk(tmp_path: Path, whole_built: Path) -> Iterator[FileDesk]:
    """The small farm's book in a file."""
    with closing(FileDesk(Path(shutil.copy(whole_built, tmp_path / "filed.penwalk")))) as desk:
        yield desk


@pytest.fixture
def server_desk(server: Server, small_database: str) -> Iterator[ServerDesk]:
    """The small farm's book on the server, fresh for each test."""
    name = server.database(like=small_database)
    with closing(ServerDesk(server.url(name))) as desk:
        yield desk
    server.drop(name)


@pytest.fixture(params=KINDS)
def desk(request: pytest.FixtureRequest) -> Desk:
    """The small farm's book on both kinds of desk, fresh for each test."""
    found: Desk = request.getfixturevalue(f"{request.param}_desk")
    return found


@pytest.fixture
def desk_book(desk: Desk, clock: HandClock) -> Book:
    """The small farm's book on both kinds of desk, open on the pretend morning."""
    return Book(desk, clock, "bench")


@pytest.fixture(scope="module", params=KINDS)
def still_desk(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory, whole_built: Path
) -> Iterator[Desk]:
    """The small farm's book on both kinds of desk, shared by tests that leave nothing behind in it."""
    if request.param == "file":
        found: Desk = FileDesk(Path(shutil.copy(whole_built, tmp_path_factory.mktemp("still") / "still.penwalk")))
    else:
        server: Server = request.getfixturevalue("server")
        found = ServerDesk(server.url(server.database(like=request.getfixturevalue("small_database"))))
    with closing(found) as desk:
        yield desk
