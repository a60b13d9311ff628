"""Folders and files that cannot be what a command needs: a sentence that names them, and no traceback."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.farm import FOLDER
from tests.faults.test_read_only import obey_permissions
from tests.terminal.terminal import Terminal
from tests.terminal.walking import DEMO, PENWALK, walked_book


@pytest.fixture
def shut(tmp_path: Path) -> Iterator[Path]:
    """A folder in which nothing can be made."""
    folder = tmp_path / "shut"
    folder.mkdir()
    folder.chmod(0o555)
    yield folder
    folder.chmod(0o755)


def sentences(env: dict[str, str], *words: str) -> str:
    """What a command that fails says: few lines, no traceback."""
    with Terminal([PENWALK, *words], env, preexec=obey_permissions) as terminal:
        assert terminal.left() == 1
        assert len(terminal.said) <= 2
        return " ".join(terminal.said)


def test_an_import_of_a_file_that_is_no_folder_names_it(env: dict[str, str], tmp_path: Path) -> None:
    letter = tmp_path / "letter.txt"
    letter.write_text("Dear Ann", encoding="utf-8")
    assert str(letter) in sentences(env, "--book", str(tmp_path / "farm.penwalk"), "import", str(letter))
    assert not (tmp_path / "farm.penwalk").exists()


def test_an_import_into_a_shut_folder_names_it(env: dict[str, str], shut: Path) -> None:
    assert str(shut) in sentences(env, "--book", str(shut / "farm.penwalk"), "import", str(FOLDER))


def test_an_import_into_a_new_folder_below_a_shut_one_names_it(env: dict[str, str], shut: Path) -> None:
    assert str(shut) in sentences(env, "--book", str(shut / "new" / "farm.penwalk"), "import", str(FOLDER))


def test_an_export_below_a_shut_folder_names_it(env: dict[str, str], shut: Path) -> None:
    assert str(shut) in sentences(env, "--book", str(walked_book(env)), "export", str(shut / "out"))


def test_an_export_below_a_file_names_it(env: dict[str, str], tmp_path: Path) -> None:
    letter = tmp_path / "letter.txt"
    letter.write_text("Dear Ann", encoding="utf-8")
    assert str(letter) in sentences(env, "--book", str(walked_book(env)), "export", str(letter / "out"))
    assert letter.read_text(encoding="utf-8") == "Dear Ann"


def test_a_demo_whose_cache_folder_is_shut_names_it(env: dict[str, str], shut: Path) -> None:
    assert str(shut) in sentences(env | {"XDG_CACHE_HOME": str(shut)}, *DEMO)


def test_an_import_of_a_table_that_may_not_be_read_names_it(env: dict[str, str], tmp_path: Path) -> None:
    farm = tmp_path / "farm"
    farm.mkdir()
    for path in (*FOLDER.glob("*.csv"), FOLDER / "farm.toml"):
        (farm / path.name).write_bytes(path.read_bytes())
    (farm / "animal.csv").chmod(0o000)
    assert "animal.csv" in sentences(env, "--book", str(tmp_path / "farm.penwalk"), "import", str(farm))
    assert not (tmp_path / "farm.penwalk").exists()


def test_a_restore_into_a_shut_folder_names_it(env: dict[str, str], shut: Path) -> None:
    assert str(shut) in sentences(env, "--book", str(shut / "farm.penwalk"), "restore", str(walked_book(env)))


def test_a_restore_of_a_copy_that_may_not_be_read_names_it(env: dict[str, str], tmp_path: Path) -> None:
    copy = tmp_path / "copy.penwalk"
    copy.write_bytes(walked_book(env).read_bytes())
    copy.chmod(0o000)
    before = walked_book(env).read_bytes()
    assert str(copy) in sentences(env, "--book", str(walked_book(env)), "restore", str(copy))
    assert walked_book(env).read_bytes() == before


def test_a_copy_below_a_shut_folder_names_it(env: dict[str, str], shut: Path) -> None:
    assert str(shut) in sentences(env, "--book", str(walked_book(env)), "backup", str(shut / "copies"))
