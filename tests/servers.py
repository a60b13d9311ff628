"""A PostgreSQL server of the tests' own: in a folder that goes away again, on a socket, never on a port."""

import getpass
import itertools
import os
import shutil
import signal
import subprocess
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import mkdtemp
from threading import Event, Thread
from typing import Any, LiteralString

import psycopg
from psycopg import sql

READY = "ready to accept connections"
PATIENCE_S = 60
CAREFREE = ("fsync=off", "full_page_writes=off", "shared_buffers=16MB", "jit=off", "listen_addresses=")
"""Settings of a server whose data nobody will miss, and that nobody else can reach."""


class NoServer(Exception):
    """There is no PostgreSQL here to start; str() says why."""


@dataclass
class Server:
    """A running server. Its databases live as long as it does."""

    folder: Path
    process: "subprocess.Popen[str]"
    listener: Thread
    numbers: "itertools.count[int]" = field(default_factory=itertools.count)

    def database(self, like: str = "template0", words: LiteralString = "") -> str:
        """The name of a fresh database, a copy of another one. words: more of CREATE DATABASE."""
        name = f"book_{next(self.numbers)}"
        start = sql.SQL("CREATE DATABASE {} TEMPLATE {} ").format(sql.Identifier(name), sql.Identifier(like))
        self.run(start + sql.SQL(words))
        return name

    def drop(self, name: str) -> None:
        """Throw a database away, whoever still looks at it."""
        self.run(sql.SQL("DROP DATABASE {} WITH (FORCE)").format(sql.Identifier(name)))

    def url(self, name: str) -> str:
        """The address of a database."""
        return f"postgresql+psycopg://{owner()}@/{name}?host={self.folder}"

    def run(self, statement: sql.Composed) -> None:
        """Run a statement outside of any transaction."""
        with psycopg.connect(host=str(self.folder), user=owner(), dbname="postgres", autocommit=True) as connection:
            connection.execute(statement)

    def halt(self) -> None:
        """It is gone: whoever talks to it is cut off. Its databases stay."""
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGINT)
        self.process.wait(PATIENCE_S)
        self.listener.join(PATIENCE_S)
        if self.process.stderr:
            self.process.stderr.close()

    def come_back(self) -> None:
        """It is there again, with the same databases at the same address."""
        again = _run(self.folder)
        self.process, self.listener = again.process, again.listener

    def stop(self) -> None:
        """Stop it and take its folder away."""
        self.halt()
        shutil.rmtree(self.folder, ignore_errors=True)


def start_server() -> Server:
    """A new server. Raises NoServer where PostgreSQL is not installed, RuntimeError where it is but will not start."""
    programs = _programs()
    folder = Path(mkdtemp(prefix="penwalk-pg-"))
    _hand_over(folder)
    setting = ("--no-sync", "--auth=trust", "--encoding=UTF8", "--no-locale", f"--username={owner()}")
    made = subprocess.run(
        [programs / "initdb", "-D", folder / "data", *setting],
        capture_output=True,
        text=True,
        check=False,
        **_as(folder),
    )
    if made.returncode:
        shutil.rmtree(folder, ignore_errors=True)
        raise RuntimeError(f"initdb failed: {made.stderr}")
    return _run(folder)


def _run(folder: Path) -> Server:
    settings = (word for each in CAREFREE for word in ("-c", each))
    process = subprocess.Popen(
        [_programs() / "postgres", "-D", folder / "data", "-k", folder, *settings],
        stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True, **_as(folder),
    )  # fmt: skip
    return _once_ready(folder, process)


def owner() -> str:
    """Whose server it is: PostgreSQL refuses to run as root."""
    return "postgres" if os.geteuid() == 0 else getpass.getuser()


def _once_ready(folder: Path, process: "subprocess.Popen[str]") -> Server:
    """Wait for the line that says so, then go on listening, so that the pipe never fills."""
    told, lines = Event(), list[str]()

    def listen() -> None:
        for line in process.stderr or ():
            lines.append(line)
            if READY in line:
                told.set()
        told.set()

    listener = Thread(target=listen, daemon=True)
    listener.start()
    server = Server(folder, process, listener)
    if not told.wait(PATIENCE_S) or not any(READY in line for line in lines):
        with suppress(ProcessLookupError):
            process.kill()
        server.stop()
        raise RuntimeError("postgres did not start: " + "".join(lines))
    return server


def _programs() -> Path:
    """The folder that holds both programs: on PATH, or where Debian keeps them, the newest first."""
    installed = Path("/usr/lib/postgresql").glob("*/bin")
    newest = sorted(installed, key=lambda path: int("0" + "".join(filter(str.isdigit, path.parent.name))), reverse=True)
    for folder in [*map(Path, os.get_exec_path()), *newest]:
        if all((folder / name).is_file() for name in ("initdb", "postgres")):
            return folder
    raise NoServer(
        "PostgreSQL is not installed here: initdb and postgres are neither on PATH nor in /usr/lib/postgresql."
    )


def _hand_over(folder: Path) -> None:
    if os.geteuid() == 0:
        try:
            shutil.chown(folder, "postgres", "postgres")
        except LookupError as error:
            shutil.rmtree(folder)
            raise NoServer("PostgreSQL refuses to run as root, and there is no user postgres to run it.") from error


def _as(folder: Path) -> dict[str, Any]:
    """How both programs are run: in their folder, in plain English, not as root."""
    plain: dict[str, Any] = {"cwd": folder, "env": {"PATH": os.environ.get("PATH", ""), "LC_ALL": "C"}}
    return plain | ({"user": "postgres", "group": "postgres", "extra_groups": []} if os.geteuid() == 0 else {})
