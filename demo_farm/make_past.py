"""Makes the rounds before the pretend morning: entry.csv and the files of its figures in this folder.

Run it after changing the farm: python -m demo_farm.make_past. The same farm always gives the same files; every
figure is invented.
"""

import csv
import random
import tempfile
from collections.abc import Iterator
from contextlib import closing
from dataclasses import fields
from datetime import date, datetime, timedelta
from functools import cache
from pathlib import Path
from typing import Any
from uuid import UUID

from store.book.clock import Clock
from store.book.drafts import Draft
from store.book.figures import FIGURES
from store.book.folder.cells import id_of, text_of
from store.book.folder.header import read_header
from store.book.folder.take_in import new_book_from
from store.book.opening import Book, open_book
from store.book.reading import read_facts, read_snapshot
from store.book.turn import Turn, from_wall
from store.book.words import EVENING, MORNING, SKIP_REASONS, Fill, Kind, Soak
from store.round.confirm import Hand, counted, done, felt, parted, skipped
from store.round.measured import fates_of, fed, milked, soak_checked, soak_started
from store.round.plan import plan
from store.round.steps import (
    ApartStep,
    CountStep,
    FeedStep,
    MilkStep,
    SoakCheckStep,
    SoakStartStep,
    Step,
    UdderStep,
)

HERE = Path(__file__).parent
FIRST_DAY, DAYS = date(2026, 3, 4), 7
BEGINS = {MORNING: (6, 30), EVENING: (17, 45)}
USUAL_KG = {("Fennel", MORNING): 5.9, ("Hazel", MORNING): 8.6, ("Hazel", EVENING): 7.1}
SKIPPED = {("2026-03-07", EVENING, "Water trough runs"), ("2026-03-10", EVENING, "Hazel", "milk")}
LESS = {("2026-03-09", EVENING, "Fennel"): "2 scoops"}
Row = dict[str, Any]


def past_rounds(book: Book, chance: random.Random) -> Iterator[tuple[Turn, Step, Draft]]:
    """Every step of the week as it was confirmed, in the order written."""
    for number in range(DAYS * 2):
        turn = Turn(FIRST_DAY + timedelta(days=number // 2), (MORNING, EVENING)[number % 2])
        wall = datetime(turn.day.year, turn.day.month, turn.day.day, *BEGINS[turn.slot])  # noqa: DTZ001 wall time
        farm = read_facts(book.desk, Clock().now())
        snapshot = read_snapshot(book.desk, turn, from_wall(wall, farm.zone))
        names = {person.name: person.id for person in snapshot.people}
        person = names["Tom" if turn.day == date(2026, 3, 8) else "Ann"]
        for step in plan(snapshot):
            wall += timedelta(seconds=chance.randint(40, 200))
            hand = Hand(turn, person, from_wall(wall, farm.zone), farm.units)
            yield turn, step, _draft(hand, step, chance)


def _draft(hand: Hand, step: Step, chance: random.Random) -> Draft:
    when = (str(hand.turn.day), hand.turn.slot, step.name)
    if {when, (*when, step.kind.value)} & SKIPPED:
        return skipped(hand, step, SKIP_REASONS[4])
    match step:
        case FeedStep():
            typed = {step.due[0].feed.id: LESS[when]} if when in LESS else {}
            return fed(hand, step, typed, "2" if step.kind is Kind.HAY else "")
        case MilkStep():
            empty_kg = step.milking.pail.empty_kg if step.milking.pail else 0.0
            gross_kg = USUAL_KG[step.name, hand.turn.slot] * chance.uniform(0.91, 1.08) + empty_kg
            return milked(hand, step, f"{gross_kg:.1f}", fates_of(step, hand.now)[0])
        case CountStep():
            return counted(hand, step, len(step.heads))
        case SoakCheckStep():
            return soak_checked(hand, step, Soak.FIT)
        case SoakStartStep():
            return soak_started(hand, step, "")
        case ApartStep():
            return parted(hand, step)
        case UdderStep():
            return felt(hand, step, Fill.SLACK)
        case _:
            return done(hand, step)


def entry_row(turn: Turn, step: Step, draft: Draft) -> Row:
    """The row of entry.csv; its id is a word that one can read."""
    word = f"{turn.day}-{turn.slot}-{step.place}-{step.name}-{step.kind}".lower().replace(" ", "-")
    if isinstance(step, SoakCheckStep):
        word += "-check"
    return {
        "id": word, "step_id": draft.step_id, "kind": draft.kind.value, "animal_id": draft.subject.animal_id,
        "pen_id": draft.subject.pen_id, "task_id": draft.subject.task_id, "feed_id": draft.subject.feed_id,
        "day": turn.day, "slot": turn.slot, "state": draft.state.value, "reason": draft.reason,
        "happened_at": text_of(draft.happened_at), "person_id": draft.person_id, "bench": "feed room",
    }  # fmt: skip


def line_rows(word: str, draft: Draft) -> Iterator[tuple[str, Row]]:
    """The rows of an entry's figures, each with the name of its table."""
    for at, figure in enumerate(draft.figures):
        own = {"id": f"{word}-{at}", "entry_id": word, "position": at}
        values = {each.name: getattr(figure, each.name) for each in fields(figure)}
        yield figure.TABLE, own | {name: v if isinstance(v, UUID) else text_of(v) for name, v in values.items()}


def readable(row: Row) -> Row:
    """The ids of a row as the words that stand in the folder."""
    return {name: _words().get(value, value) for name, value in row.items()}


@cache
def _words() -> dict[Any, str]:
    farm_id = read_header(HERE).id
    words: dict[Any, str] = {}
    for table in ("animal", "pen", "task", "feed", "measure", "pail", "person"):
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
    names = ("entry", *(kind.TABLE for kind in FIGURES))
    for name in names:
        (HERE / f"{name}.csv").unlink(missing_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "book"
        new_book_from(HERE, place)
        with closing(open_book(str(place), Clock())) as book:
            found = list(past_rounds(book, random.Random(7)))
    tables: dict[str, list[Row]] = {name: [] for name in names}
    for turn, step, draft in found:
        entry = entry_row(turn, step, draft)
        tables["entry"].append(entry)
        for table, row in line_rows(entry["id"], draft):
            tables[table].append(row)
    for name, rows in tables.items():
        if rows:
            write(f"{name}.csv", rows)


if __name__ == "__main__":
    main()
