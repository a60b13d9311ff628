"""Makes the rounds of the week before the pretend morning: entry.csv, fed.csv and milked.csv of this folder.

Run it after changing the farm: python -m demo_farm.make_past. The same farm always gives the same files; every
figure is invented.
"""

import csv
import random
import tempfile
from collections.abc import Iterator
from contextlib import closing
from datetime import date, datetime, timedelta
from functools import cache
from pathlib import Path
from typing import Any

from store.book.clock import Clock
from store.book.folder.cells import id_of
from store.book.folder.header import read_header
from store.book.folder.take_in import new_book_from
from store.book.opening import Book, open_book
from store.book.reading import read_facts, read_snapshot
from store.book.turn import Turn, from_wall
from store.book.words import EVENING, MORNING, SKIP_REASONS
from store.round.plan import plan
from store.round.steps import FeedStep, MilkStep, Step

HERE = Path(__file__).parent
FIRST_DAY, DAYS = date(2026, 3, 4), 7
BEGINS = {MORNING: (6, 30), EVENING: (17, 45)}
USUAL_KG = {("Fennel", MORNING): 5.9, ("Hazel", MORNING): 8.6, ("Hazel", EVENING): 7.1}
SKIPPED = {("2026-03-07", EVENING, "Water trough runs"), ("2026-03-10", EVENING, "Hazel", "milk")}
LESS_KG = {("2026-03-09", EVENING, "Fennel"): ("2 scoops", 1.35)}
Row = dict[str, Any]


def past_rounds(book: Book, chance: random.Random) -> Iterator[tuple[Row, list[Row], list[Row]]]:
    """Every entry of the week with its lines, in the order written."""
    for number in range(DAYS * 2):
        turn = Turn(FIRST_DAY + timedelta(days=number // 2), (MORNING, EVENING)[number % 2])
        wall = datetime(turn.day.year, turn.day.month, turn.day.day, *BEGINS[turn.slot])  # noqa: DTZ001 wall time
        person = "tom" if turn.day == date(2026, 3, 8) else "ann"
        zone = read_facts(book.desk, Clock().now()).zone
        for step in plan(read_snapshot(book.desk, turn, from_wall(wall, zone))):
            wall += timedelta(seconds=chance.randint(60, 300))
            yield _entry(turn, step, wall, person, chance)


def _entry(
    turn: Turn, step: Step, wall: datetime, person: str, chance: random.Random
) -> tuple[Row, list[Row], list[Row]]:
    word = f"{turn.day}-{turn.slot}-{step.place}-{step.name}-{step.kind}".lower().replace(" ", "-")
    skipped = {
        (str(turn.day), turn.slot, step.name),
        (str(turn.day), turn.slot, step.name, step.kind.value),
    } & SKIPPED
    entry = {
        "id": word, "kind": step.kind.value, "animal_id": step.subject.animal_id, "pen_id": step.subject.pen_id,
        "task_id": step.subject.task_id, "day": turn.day, "slot": turn.slot,
        "state": "skipped" if skipped else "done", "reason": SKIP_REASONS[4] if skipped else "",
        "happened_at": wall.isoformat(sep=" "), "person_id": person, "bench": "feed room",
    }  # fmt: skip
    return entry, _fed(turn, step, word, bool(skipped)), _milked(turn, step, word, bool(skipped), chance)


def _fed(turn: Turn, step: Step, word: str, skipped: bool) -> list[Row]:
    if not isinstance(step, FeedStep):
        return []
    less = LESS_KG.get((str(turn.day), turn.slot, step.name))
    return [
        {
            "id": f"{word}-{at}", "entry_id": word, "position": at, "feed_id": due.feed.id,
            "measure_id": due.told.id if due.told else None, "due_kg": due.due_kg,
            "given_kg": None if skipped else less[1] if less and at == 0 else due.as_shown_kg,
            "typed": less[0] if less and at == 0 else "",
        }
        for at, due in enumerate(step.due)
    ]  # fmt: skip


def _milked(turn: Turn, step: Step, word: str, skipped: bool, chance: random.Random) -> list[Row]:
    if not isinstance(step, MilkStep):
        return []
    if skipped:
        return [{"id": f"{word}-1", "entry_id": word}]
    pail = step.milking.pail
    empty_kg = pail.empty_kg if pail else 0.0
    gross_kg = round(USUAL_KG[step.name, turn.slot] * chance.uniform(0.91, 1.08) + empty_kg, 1)
    return [
        {
            "id": f"{word}-1", "entry_id": word, "milk_kg": round(gross_kg - empty_kg, 1), "gross_kg": gross_kg,
            "pail_id": pail.id if pail else None, "empty_kg": empty_kg, "fate": "house", "typed": f"{gross_kg}",
        }
    ]  # fmt: skip


def readable(row: Row) -> Row:
    """The ids of a row as the words that stand in the folder."""
    return {name: _words().get(value, value) for name, value in row.items()}


@cache
def _words() -> dict[Any, str]:
    farm_id = read_header(HERE).id
    words: dict[Any, str] = {}
    for table in ("animal", "pen", "task", "feed", "measure", "pail"):
        with (HERE / f"{table}.csv").open(encoding="utf-8", newline="") as file:
            words |= {id_of(row["id"], table, farm_id): row["id"] for row in csv.DictReader(file)}
    return words


def write(name: str, rows: list[Row]) -> None:
    """One file of the folder."""
    columns = max((list(row) for row in rows), key=len)
    with (HERE / name).open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, columns, restval="", lineterminator="\n")
        writer.writeheader()
        writer.writerows(readable(row) for row in rows)


def main() -> None:
    """Take the old week away, walk a new one, write it."""
    for name in ("entry.csv", "fed.csv", "milked.csv"):
        (HERE / name).unlink(missing_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "book"
        new_book_from(HERE, place)
        with closing(open_book(str(place), Clock())) as book:
            found = list(past_rounds(book, random.Random(7)))
    write("entry.csv", [entry for entry, _, _ in found])
    write("fed.csv", [row for _, fed, _ in found for row in fed])
    write("milked.csv", [row for _, _, milked in found for row in milked])


if __name__ == "__main__":
    main()
