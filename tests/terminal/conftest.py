"""The demo's book is imported once for all of these tests; each test walks a copy of its own."""

import shutil
from pathlib import Path

import pytest

from tests.terminal.tracing import strace
from tests.terminal.walking import demo, folders, wait_for_step

__all__ = ["env", "imported", "strace"]


@pytest.fixture(scope="session")
def imported(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A home in which the demo was opened once and left untouched."""
    home = tmp_path_factory.mktemp("imported")
    with demo(folders(home)) as terminal:
        wait_for_step(terminal, 0)
        terminal.press("q")
        assert terminal.left() == 0
    return home


@pytest.fixture
def env(imported: Path, tmp_path: Path) -> dict[str, str]:
    """The environment of one keeper, with a home of its own."""
    shutil.copytree(imported, tmp_path / "home")
    return folders(tmp_path / "home")
