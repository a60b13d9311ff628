"""farm.toml: which farm, and its first settings; every mistake in it is a sentence, and nothing is written."""

from contextlib import closing
from pathlib import Path
from uuid import UUID

import pytest

from store.book.desk import FileDesk
from store.book.facts.farm import FarmFacts
from store.book.folder.header import FILE, read_header
from store.book.folder.take_in import take_in
from store.book.migrating import migrate
from store.book.reading import read_facts
from store.book.words import Air, Units
from tests.farm import MORNING
from tests.store.book.folders import edit, mistakes
from tests.store.book.tools import all_rows


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("revision = 1", "revision = 2", "revision: found «2»; expected 1, the form this Penwalk reads."),
        ("revision = 1", "", "revision: found «»; expected 1, the form this Penwalk reads."),
        ('id = "tumblewick"', 'id = ""', "id: found «»; expected a word or a UUID."),
        ('name = "Tumblewick"', 'name = ""', "name: found «»; expected text of 1 to 60 letters."),
        ('name = "Tumblewick"', f'name = "{"x" * 61}"', f"name: found «{'x' * 61}»; expected text of 1 to 60 letters."),
        ("Europe/Dublin", "Europe/Nowhere", "zone: found «Europe/Nowhere»; expected a time zone as Europe/Dublin."),
        ('"metric"', '"stones"', "units: found «stones»; expected one of: metric, us."),
        ('evening_from = "12"', 'evening_from = "24"', "evening_from: found «24»; expected an hour from 4 to 23."),
        ('evening_from = "12"', 'evening_from = "noon"', "evening_from: found «noon»; expected an hour from 4 to 23."),
        ('evening_from = "12"', 'evening_from = "3"', "evening_from: found «3»; expected an hour from 4 to 23."),
    ],
)
def test_a_mistake_is_named_with_what_was_found_and_what_is_expected(
    folder: Path, bare_file: FileDesk, old: str, new: str, said: str
) -> None:
    """Each key of the table."""
    edit(folder, FILE, old, new)
    assert mistakes(folder, bare_file) == [f"{FILE}, {said}"]


def test_all_mistakes_are_named_at_once(folder: Path, bare_file: FileDesk) -> None:
    """One attempt, not six."""
    (folder / FILE).write_text("[farm]\n", encoding="utf-8")
    found = mistakes(folder, bare_file)
    keys = ("revision", "id", "name", "zone", "units", "evening_from")
    assert [line.split(":")[0] for line in found] == [f"{FILE}, {key}" for key in keys]


def test_a_folder_without_it_is_no_farm_folder(tmp_path: Path, bare_file: FileDesk) -> None:
    """A sentence with the folder's name."""
    assert mistakes(tmp_path, bare_file) == [f"{tmp_path} is no farm folder: it has no {FILE}."]


def test_a_folder_that_is_not_there_is_said_in_a_sentence(tmp_path: Path, bare_file: FileDesk) -> None:
    """The same one."""
    assert mistakes(tmp_path / "gone", bare_file) == [f"{tmp_path / 'gone'} is no farm folder: it has no {FILE}."]


def test_a_file_named_instead_of_its_folder_is_said_in_a_sentence(folder: Path, bare_file: FileDesk) -> None:
    """Easily done: the path of farm.toml itself, or of a CSV."""
    assert len(mistakes(folder / FILE, bare_file)) == 1


@pytest.mark.parametrize(
    "content", [b"farm = ", b"", b"[barn]\n", b"\xff\xfe[\x00f\x00", '[farm]\nname = "Ä"'.encode("latin-1")]
)
def test_what_is_no_toml_or_not_utf_8_is_said_in_a_sentence(folder: Path, bare_file: FileDesk, content: bytes) -> None:
    """With the name of the file."""
    (folder / FILE).write_bytes(content)
    (found,) = mistakes(folder, bare_file)
    assert found.startswith(f"{FILE}: cannot be read: ")
    assert found.endswith("Expected a table [farm].")


@pytest.mark.parametrize("content", ["farm = 3\n", 'farm = "Tumblewick"\n', "farm = [1]\n", "[[farm]]\nrevision = 1\n"])
def test_a_farm_that_is_no_table_is_said_in_a_sentence(folder: Path, bare_file: FileDesk, content: str) -> None:
    """It is TOML, and has a farm, but not as a table."""
    (folder / FILE).write_text(content, encoding="utf-8")
    (found,) = mistakes(folder, bare_file)
    assert found.startswith(f"{FILE}: found farm = ")
    assert found.endswith("; expected a table [farm].")


def test_an_hour_may_be_a_number(folder: Path, bare_file: FileDesk) -> None:
    """As one would write it."""
    edit(folder, FILE, 'evening_from = "12"', "evening_from = 14")
    take_in(folder, bare_file)
    assert read_facts(bare_file, MORNING).evening_from_h == 14


def test_its_settings_are_in_force_from_the_beginning(folder: Path, bare_file: FileDesk) -> None:
    """Until a dated row of setting.csv says otherwise."""
    (folder / "setting.csv").write_text("id,name,begins_at,value\nus,units,2026-03-01,us\n", encoding="utf-8")
    take_in(folder, bare_file)
    farm_id = read_header(folder).id
    told = FarmFacts(farm_id, "Tumblewick", "Europe/Dublin", Units.METRIC, 12, None, Air.MILD, "")
    assert read_facts(bare_file, MORNING.replace(year=1970, month=1, day=2)) == told
    assert read_facts(bare_file, MORNING).units is Units.US


def test_an_id_may_be_a_word_or_a_uuid(folder: Path, tmp_path: Path) -> None:
    """A word is the same id wherever it is read; a UUID is itself."""
    by_word = read_header(folder).id
    edit(folder, FILE, '"tumblewick"', f'"{by_word}"')
    assert read_header(folder).id == by_word
    edit(folder, FILE, str(by_word), "hedgerow")
    assert read_header(folder).id != by_word
    assert isinstance(by_word, UUID)


def test_a_folder_of_another_farm_is_refused(folder: Path, file_desk: FileDesk) -> None:
    """One book is one farm."""
    here = read_header(folder).id
    edit(folder, FILE, '"tumblewick"', '"hedgerow"')
    there = read_header(folder).id
    assert mistakes(folder, file_desk) == [f"{FILE}, id: found {there}; expected {here}, the farm of this book."]


def test_other_first_settings_of_the_same_farm_are_refused(folder: Path, file_desk: FileDesk) -> None:
    """A name or a unit changes by a dated row, not by changing what was."""
    edit(folder, FILE, '"metric"', '"us"')
    assert mistakes(folder, file_desk) == [
        f"{FILE}: the book holds this id with other content; expected a new id for a new row."
    ]


def test_the_folder_is_the_same_farm_in_two_books(folder: Path, tmp_path: Path) -> None:
    """Every id of it: two benches that import one folder can be merged."""
    found = []
    for name in ("barn", "kitchen"):
        with closing(FileDesk(tmp_path / f"{name}.penwalk", new=True)) as desk:
            migrate(desk)
            take_in(folder, desk)
            found.append(all_rows(desk))
    assert found[0] == found[1]
