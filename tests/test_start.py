"""The way to the first frame stays light: what it must not load, looked for in a fresh interpreter."""

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.farm import built

HEAVY = frozenset({"sqlmodel", "sqlalchemy", "pydantic", "alembic", "numpy", "psycopg"})
"""Libraries that no module on the way to the first frame may load, itself or through another."""

ON_THE_WAY = ("tui.app", "tui.sitting", "tui.walker", "store.book.reading", "store.round.plan")
"""The modules that are loaded before the first frame stands."""

OPEN_AND_PLAN = """
import sys
from datetime import UTC, datetime
from store.book.clock import PretendClock
from store.book.opening import open_book
from store.book.reading import read_facts
from tui.walker import Walker
book = open_book(sys.argv[1], PretendClock(datetime(2026, 3, 11, 6, 31, tzinfo=UTC)))
walker = Walker(book, read_facts(book.desk, book.clock.now()))
import tui.app
tui.app.PenwalkApp(walker).house.first()
assert len(walker.steps) == 18
book.close()
"""

ASK_VERSION = """
from tui.cli import main
try:
    main(["--version"])
except SystemExit as left:
    assert left.code == 0
"""


def loaded(code: str, *words: str) -> set[str]:
    """The top names of all that a fresh interpreter has loaded after some code."""
    ending = "\nimport json, sys\nprint('\\n' + json.dumps(sorted({name.split('.')[0] for name in sys.modules})))"
    done = subprocess.run([sys.executable, "-c", code + ending, *words], capture_output=True, text=True, check=True)
    return set(json.loads(done.stdout.splitlines()[-1]))


@pytest.mark.parametrize("module", ON_THE_WAY)
def test_the_way_to_the_first_frame_loads_nothing_heavy(module: str) -> None:
    """Each module alone."""
    found = loaded(f"import {module}")
    assert module.partition(".")[0] in found
    assert not found & HEAVY


def test_a_book_opened_read_and_planned_has_loaded_nothing_heavy(tmp_path: Path) -> None:
    """All the way from the file to the first place of the walk."""
    place = tmp_path / "farm.penwalk"
    shutil.copy(built(), place)
    found = loaded(OPEN_AND_PLAN, str(place))
    assert "textual" in found
    assert not found & HEAVY


def test_what_writes_is_heavy_and_would_be_noticed() -> None:
    """The same look finds the libraries where they are: so the tests above can fail."""
    assert loaded("import store.book.writing") >= {"sqlmodel", "sqlalchemy", "pydantic"}


def test_the_version_is_told_without_loading_the_screen() -> None:
    """Nor anything heavy: the answer is there at once."""
    asked = (
        "from tui.cli import main\ntry:\n    main(['--version'])\nexcept SystemExit as left:\n    assert left.code == 0"
    )
    found = loaded(asked)
    assert "argparse" in found
    assert not found & (HEAVY | {"textual", "rich"})
