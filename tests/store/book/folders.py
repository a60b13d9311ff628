"""Farm folders of the tests: the small farm copied, a cell of it changed, and what the importer says to it."""

import csv
import shutil
from itertools import chain
from pathlib import Path

import pytest

from store.book.desk import Desk
from store.book.errors import FolderError
from store.book.folder.header import FILE
from store.book.folder.take_in import take_in
from store.book.records import RECORDS, Entry
from store.book.records import Line as LineRecord
from tests.farm import FOLDER
from tests.store.book.tools import all_rows, table_of

PAST = tuple(f"{table_of(record)}.csv" for record in RECORDS if record is Entry or issubclass(record, LineRecord))
"""The files of the rounds that were walked."""
Line = dict[str, str]


def copy_farm(to: Path, *, past: bool = False) -> Path:
    """A copy of the small farm's folder. past: with the rounds that were walked."""
    to.mkdir(parents=True)
    for path in (*FOLDER.glob("*.csv"), FOLDER / FILE):
        if past or path.name not in PAST:
            shutil.copy(path, to / path.name)
    return to


def whole_farm(to: Path) -> Path:
    """The small farm with its rounds, and with something in every file there is; the pretend morning is the same."""
    copy_farm(to, past=True)
    add(to, "not_for.csv", id="nuts-sheep", feed_id="dairy-nuts", species="sheep", begins_at="2026-01-01")
    times = {"begins_at": "2026-02-10 07:00", "ends_at": "2026-02-12 19:00"}
    add(to, "withheld.csv", id="hazel-tube", animal_id="hazel", why="udder tube", **times)
    when = {"day": "2026-03-05", "slot": "morning", "happened_at": "2026-03-05 07:20"}
    who = {"person_id": "ann", "bench": "feed room", "state": "done", "kind": "note"}
    add(to, "entry.csv", id="a-note", step_id="a-note", happened_from="2026-03-05 07:00", **when, **who)
    _clocks(to)
    add(to, "noted.csv", id="a-note-0", entry_id="a-note", position="0", words="The hinge squeaks", tell="yes")
    return to


def _rations(to: Path) -> None:
    """Goals, milk tests, heats, limits of feeds and rules by class."""
    goal = {"condition": "3.25", "gain_kg_day": "", "mature_kg": "520", "forage_only": "yes", "score_every_days": "14"}
    add(to, "feeding_goal.csv", id="tansy-goal", animal_id="tansy", begins_at="2026-01-20", **goal)
    add(to, "milk_test.csv", id="fennel-test", animal_id="fennel", begins_at="2026-02-20", fat_percent="4.8")
    add(to, "heat.csv", id="briar-heat", animal_id="hazel", begins_at="2026-03-02 06:40", stood="yes", seen="yes")
    most = {"forage": "no", "most_meal_kg": "1", "most_day_kg": "2", "share_percent": "25", "step_days": "2"}
    add(to, "feed_limit.csv", id="nuts-most", feed_id="dairy-nuts", begins_at="2026-01-01", step_kg="0.25", **most)
    rule = {"stage": "in milk", "feed_id": "dairy-nuts", "per_kg_milk": "0.25", "above_kg": "5"}
    add(to, "class_rule.csv", id="milk-rule", begins_at="2026-01-01", **rule)


def _clocks(to: Path) -> None:
    """Rules of apart and withholding, and what is written beside the rounds."""
    add(to, "apart_rule.csv", id="rook-rule", calf_id="rook", begins_at="2026-01-09", from_day="14", nights="1111111")
    add(to, "second_cow.csv", id="rook-2", calf_id="rook", cow_id="hazel", begins_at="2026-01-15")
    add(to, "second_cow.csv", id="rook-3", calf_id="rook", cow_id="", begins_at="2026-02-01")
    add(to, "milk_rhythm.csv", id="hazel-each", animal_id="hazel", begins_at="2026-02-01", every="1")
    days = {"dry_days": "40", "calved_h": "96", "calved_milkings": "8", "said_by": "label"}
    held = {"milk_h": "96", "milkings": "8", "meat_days": "14"} | days
    add(to, "withdrawal.csv", id="spray-1", treatment_id="sloe-spray", begins_at="2026-03-05", **held)
    by = {"by_id": "dairy-nuts", "ratio": "0.8", "most_kg": "1.5"}
    add(to, "substitute.csv", id="lucerne-by", feed_id="lucerne", begins_at="2026-01-01", **by)
    _rations(to)
    milking = "2026-03-04-morning-stall-hazel-milk"
    fennel = next(
        line["step_id"] for line in lines_of(to / "entry.csv") if line["id"] == milking.replace("hazel", "fennel")
    )
    add(to, "drawn.csv", id="drawn-0", entry_id=milking, position="1", whole="yes", by_hand="yes")
    add(to, "poured.csv", id="poured-0", entry_id=milking, position="2", into_step_id=fennel)
    who = {"person_id": "ann", "bench": "feed room", "state": "done"}
    of_fennel = who | {"animal_id": "fennel", "happened_at": "2026-01-09 05:50"}
    cooled = {"day": "2026-03-04", "slot": "morning", "happened_at": "2026-03-04 07:40"}
    add(to, "entry.csv", id="a-cool", step_id="a-cool", kind="cool", **who, **cooled)
    add(to, "cooled.csv", id="a-cool-0", entry_id="a-cool", position="0", fate="calves")
    add(to, "entry.csv", id="a-birth", step_id="a-birth", kind="birth", happened_from="2026-01-09 02:30", **of_fennel)
    add(to, "born.csv", id="a-birth-0", entry_id="a-birth", position="0", calf_id="rook", alive="yes")
    add(to, "entry.csv", id="a-watch", step_id="a-watch", kind="watch", **of_fennel)
    due = {"due_at": "2026-01-09 14:30", "due_until": "2026-01-09 17:50", "looks": "all right"}
    add(to, "watched.csv", id="a-watch-0", entry_id="a-watch", position="0", words="cleansing passed", **due)
    add(to, "entry.csv", id="a-jar", step_id="a-jar", kind="jar", **of_fennel)
    add(to, "used_up.csv", id="a-jar-0", entry_id="a-jar", position="0", of_step_id=fennel)


def lines_of(path: Path) -> list[Line]:
    """The lines of a file, by the names of their columns."""
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def write_lines(path: Path, lines: list[Line]) -> None:
    """Write a file anew, with every column that a line has."""
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(dict.fromkeys(chain(*lines))), restval="", lineterminator="\n")
        writer.writeheader()
        writer.writerows(lines)


def change(folder: Path, name: str, line: int, /, **cells: str) -> None:
    """Change cells of a line, counted as an editor counts: the names of the columns are line 1."""
    lines = lines_of(folder / name)
    lines[line - 2] |= cells
    write_lines(folder / name, lines)


def add(folder: Path, name: str, /, **cells: str) -> None:
    """Add a line, in a file of its own if need be."""
    old = lines_of(folder / name) if (folder / name).is_file() else []
    write_lines(folder / name, [*old, cells])


def edit(folder: Path, name: str, old: str, new: str) -> None:
    """Replace a text in a file; it must stand there."""
    text = (folder / name).read_text(encoding="utf-8")
    assert old in text
    (folder / name).write_text(text.replace(old, new, 1), encoding="utf-8")


def mistakes(folder: Path, desk: Desk) -> list[str]:
    """What the importer says of a folder, a line each; and that it wrote nothing."""
    before = all_rows(desk)
    with pytest.raises(FolderError) as error:
        take_in(folder, desk)
    assert all_rows(desk) == before
    return str(error.value).splitlines()


def contents(folder: Path) -> dict[str, bytes]:
    """Every file of a folder, byte for byte."""
    return {path.name: path.read_bytes() for path in sorted(folder.iterdir())}
