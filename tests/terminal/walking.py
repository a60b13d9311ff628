"""The pretend morning walked by keys: the command, its folders, the keys of each step, and what the book then holds."""

import os
import sqlite3
import sysconfig
from contextlib import closing
from pathlib import Path

from msgspec import Struct

from tests.farm import FOLDER
from tests.terminal.terminal import Terminal

PENWALK = str(Path(sysconfig.get_path("scripts")) / "penwalk")
DEMO = ("demo", "--farm", str(FOLDER))
"""The words of the command: the small farm of the tests, on its own morning."""
PAST_ENTRIES = 226
"""Entries of the week before the morning, one for each line of entry.csv below its first."""
Figures = tuple[float | None, ...]


class Confirmed(Struct, frozen=True):
    """A step as the book holds it. figures: given or milked, feeds by name. [kg] None: not given, not milked."""

    kind: str
    name: str
    figures: Figures = ()
    state: str = "done"
    why: str = ""


class Walked(Struct, frozen=True):
    """The keys at one step, and what they write."""

    keys: str
    writes: Confirmed


MORNING = (
    Walked("\r", Confirmed("soak", "lucerne pellets")),
    Walked("2\r", Confirmed("count", "Stall")),
    Walked("\r", Confirmed("hay", "Stall", (8.2,))),
    Walked("3.5\r", Confirmed("feed", "Fennel", (2.3625, 0.9), why="3.5")),
    Walked("7.2\r", Confirmed("milk", "Fennel", (5.8,), why="7.2 house")),
    Walked("\r", Confirmed("apart", "Rook")),
    Walked("\r", Confirmed("feed", "Hazel", (2.025,))),
    Walked("s5\r", Confirmed("milk", "Hazel", (None,), "skipped", "no time")),
    Walked("\r", Confirmed("cool", "")),
    Walked("\r", Confirmed("count", "Calf pen")),
    Walked("\r", Confirmed("feed", "Rook", (0.3375,))),
    Walked("2\r", Confirmed("count", "Orchard")),
    Walked("\r", Confirmed("hay", "Orchard", (10.25,))),
    Walked("1/2\r", Confirmed("feed", "Sloe", (0.3375,), why="1/2")),
    Walked("1\r", Confirmed("udder", "Tansy")),
    Walked("s1\r", Confirmed("task", "Water trough runs", (), "skipped", "not needed today")),
    Walked("\r", Confirmed("soak", "lucerne pellets")),
    Walked("\r", Confirmed("task", "Feed room shut and chained")),
)
"""A scoop of nuts holds 0.675 kg, the empty pail weighs 1.4 kg: weighing.csv and pail_as.csv of the small farm."""

OTHER_KEY = " "
"""A key that does nothing: between two Enters on purpose it says that the second is no held key."""

_ENTRIES = """
SELECT e.id, e.kind, e.state, e.reason,
  COALESCE((SELECT name FROM animal_as WHERE animal_id = e.animal_id
   UNION ALL SELECT name FROM pen_as WHERE pen_id = e.pen_id
   UNION ALL SELECT name FROM task_as WHERE task_id = e.task_id
   UNION ALL SELECT name FROM feed_as WHERE feed_id = e.feed_id), '')
FROM entry e WHERE e.day = '2026-03-11' AND e.slot = 'morning' ORDER BY e.written_at, e.id
"""
_FED = "SELECT given_kg, typed FROM fed JOIN feed_as USING (feed_id) WHERE entry_id = ? ORDER BY name"
_MILKED = "SELECT milk_kg, typed || ' ' || fate FROM milked WHERE entry_id = ? ORDER BY id"


def folders(home: Path, **more: str) -> dict[str, str]:
    """An environment that touches nothing of the keeper's: every folder is below `home`."""
    below = {name: str(home / name.lower()) for name in ("XDG_CACHE_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME")}
    usual = {"HOME": str(home), "PATH": os.environ["PATH"], "TERM": "xterm-256color", "LANG": "C.UTF-8"}
    return usual | below | more


def demo(env: dict[str, str], *words: str, size: tuple[int, int] = (80, 24)) -> Terminal:
    """The pretend morning, begun or gone on with."""
    return Terminal([PENWALK, *DEMO, *words], env, size)


def walked_book(env: dict[str, str]) -> Path:
    """The demo's working copy."""
    (found,) = Path(env["XDG_CACHE_HOME"]).glob("penwalk/demo-*/walked.penwalk")
    return found


def entries(env: dict[str, str]) -> list[Confirmed]:
    """What the working copy holds for the pretend morning, in the order written."""
    with closing(sqlite3.connect(f"file:{walked_book(env)}?mode=ro", uri=True)) as book:
        return [_confirmed(book, *row) for row in book.execute(_ENTRIES)]


def rows(env: dict[str, str], table: str) -> int:
    """How many rows a table of the working copy holds."""
    with closing(sqlite3.connect(f"file:{walked_book(env)}?mode=ro", uri=True)) as book:
        return int(book.execute(f"SELECT count(*) FROM {table}").fetchone()[0])


def walk(terminal: Terminal, first: int = 0, last: int = len(MORNING)) -> None:
    """Press the keys of the steps from one to another, each when it is on the screen."""
    for number in range(first, last):
        wait_for_step(terminal, number)
        terminal.press(OTHER_KEY + MORNING[number].keys)
    wait_for_step(terminal, last)


def wait_for_step(terminal: Terminal, number: int) -> None:
    """Wait until so many steps are recorded, by the counts in the header."""
    skipped = sum(step.writes.state == "skipped" for step in MORNING[:number])
    terminal.wait_for(f"{number - skipped} done  {skipped} skipped  {len(MORNING) - number} to do")


def _confirmed(book: sqlite3.Connection, id_: bytes, kind: str, state: str, reason: str, name: str) -> Confirmed:
    lines = book.execute(_MILKED if kind == "milk" else _FED, (id_,)).fetchall()
    typed = next((words for _, words in lines if words), "")
    figures = tuple(None if kg is None else round(kg, 4) for kg, _ in lines)
    return Confirmed(kind, name, figures, state, reason or typed)
