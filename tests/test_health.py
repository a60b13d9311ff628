"""The checks of the whole repository, run with the tools of this same interpreter."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "tui", "store", "tests", "demo_farm"}
"""Everything that a visitor sees at the top of the repository."""
LINT_IMPORTS = "from importlinter.cli import lint_imports_command as check; check()"


def run(*words: str) -> subprocess.CompletedProcess[str]:
    """This interpreter with these words, at the top of the repository."""
    return subprocess.run([sys.executable, *words], cwd=ROOT, capture_output=True, text=True, check=False)


def finds_nothing(*words: str) -> str:
    """A tool leaves with success; what it said. What it found is shown otherwise."""
    done = run(*words)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def test_ruff_finds_nothing() -> None:
    """The rules of pyproject.toml."""
    finds_nothing("-m", "ruff", "check")


def test_every_file_is_laid_out_by_ruff() -> None:
    """Nobody lays out code by hand."""
    finds_nothing("-m", "ruff", "format", "--check")


@pytest.mark.timeout(600)  # a first run without its cache reads every library
def test_mypy_strict_finds_nothing() -> None:
    """In the program and in its tests."""
    assert "no issues found" in finds_nothing("-m", "mypy")


def test_mypy_is_strict(tmp_path: Path) -> None:
    """So that the check above cannot be made easy: a function without types is refused."""
    loose = tmp_path / "loose.py"
    loose.write_text("def halve(number):\n    return number / 2\n", encoding="utf-8")
    found = run("-m", "mypy", "--cache-dir", str(tmp_path / "cache"), str(loose))
    assert found.returncode == 1
    assert "no-untyped-def" in found.stdout


def test_imports_run_one_way() -> None:
    """The contracts of pyproject.toml, all of them kept."""
    assert " 0 broken" in finds_nothing("-c", LINT_IMPORTS, "--no-cache", "--no-logo")


def test_the_top_of_the_repository_holds_nothing_more_and_nothing_less() -> None:
    """Hidden names and what .gitignore leaves out aside."""
    ignored = {line.rstrip("/") for line in (ROOT / ".gitignore").read_text(encoding="utf-8").splitlines()}
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert found - ignored == TOP
