"""Makes the rounds before the pretend morning: entry.csv and the files of its figures in this folder.

Run it after changing the farm: python -m demo_farm.make_past. The same farm always gives the same files; what
happened in those rounds stands in demo_farm.past.
"""

import csv
import random
import re
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import closing
from functools import cache
from pathlib import Path
from typing import Any
from uuid import UUID

from msgspec.structs import fields

from demo_farm.past import past_rounds
from demo_farm.room import room_rows
from store.book.clock import Clock
from store.book.drafts import NOBODY, Draft
from store.book.figures import FIGURES, OUTSIDE
from store.book.folder.cells import id_of, text_of
from store.book.folder.header import read_header
from store.book.folder.take_in import new_book_from
from store.book.opening import open_book
from store.round.steps import LookStep, QuarterStep, SoakCheckStep, Step

HERE = Path(__file__).parent
NAMES = ("entry", *(kind.TABLE for kind in (*FIGURES, *OUTSIDE)))
Row = dict[str, Any]


def word_for(step: Step, draft: Draft) -> str:
    """The id of an entry, as words that one can read."""
    where = () if step.place == step.name else (step.place,)
    act = "check" if isinstance(step, SoakCheckStep) else draft.kind.value
    act = f"{act} {step.look.name}" if isinstance(step, LookStep) else act
    act = step.mark.quarter.value if isinstance(step, QuarterStep) else act
    words = " ".join((str(draft.turn.day), draft.turn.slot, *where, step.name, act)).lower()
    return re.sub(r"[^a-z0-9]+", "-", words.replace("'", ""))


def entry_row(word: str, draft: Draft, farm_id: UUID) -> Row:
    """The row of entry.csv. The step is left out where the importer finds it from day, slot, kind and subject."""
    subject, turn = draft.subject, draft.turn
    plain = subject.id != NOBODY and draft.step_id == turn.step_id(farm_id, draft.kind, subject.id)
    return {
        "id": word, "step_id": "" if plain else draft.step_id or id_of(word, "entry", farm_id),
        "kind": draft.kind.value, "animal_id": subject.animal_id, "pen_id": subject.pen_id,
        "task_id": subject.task_id, "feed_id": subject.feed_id, "day": turn.day, "slot": turn.slot,
        "state": draft.state.value, "reason": draft.reason, "happened_at": text_of(draft.happened_at),
        "happened_from": text_of(draft.happened_from), "person_id": draft.person_id, "bench": "feed room",
    }  # fmt: skip


def line_rows(word: str, draft: Draft) -> Iterator[tuple[str, Row]]:
    """The rows of an entry's figures, each with the name of its table."""
    for at, figure in enumerate(draft.figures):
        own = {"id": f"{word}-{at}", "entry_id": word, "position": at}
        yield figure.TABLE, own | {each.name: _cell(getattr(figure, each.name)) for each in fields(figure)}


def _cell(value: Any) -> Any:
    """Text, but an id as it is; weights to the gram's tenth."""
    if isinstance(value, float):
        return text_of(round(value, 4))
    return value if isinstance(value, UUID) else text_of(value)


@cache
def _words() -> dict[Any, str]:
    """By the ids of the folder the words that stand for them."""
    farm_id = read_header(HERE).id
    words: dict[Any, str] = {}
    for table in ("animal", "pen", "task", "feed", "measure", "pail", "person", "look", "treatment"):
        with (HERE / f"{table}.csv").open(encoding="utf-8", newline="") as file:
            words |= {id_of(row["id"], table, farm_id): row["id"] for row in csv.DictReader(file)}
    return words


def walk() -> Iterable[tuple[Step, Draft]]:
    """All of the past, written into a book that is thrown away."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder) / "book"
        new_book_from(HERE, place)
        with closing(open_book(str(place), Clock())) as book:
            return list(past_rounds(book, random.Random(7)))


def write(name: str, rows: list[Row]) -> None:
    """One file of the folder."""
    with (HERE / f"{name}.csv").open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, rows[0], lineterminator="\n")
        writer.writeheader()
        writer.writerows({name: _words().get(value, value) for name, value in row.items()} for row in rows)


def main() -> None:
    """Take the old past away, walk a new one, write it."""
    for name in NAMES:
        (HERE / f"{name}.csv").unlink(missing_ok=True)
    farm_id = read_header(HERE).id
    tables: dict[str, list[Row]] = {name: [] for name in NAMES}
    for step, draft in walk():
        word = word_for(step, draft)
        tables["entry"].append(entry_row(word, draft, farm_id))
        for table, row in line_rows(word, draft):
            tables[table].append(row)
    for table, row, entry in room_rows():
        tables[table].append(row)
        tables["entry"].append(dict.fromkeys(tables["entry"][0], "") | entry)
    for name, rows in tables.items():
        if rows:
            write(name, rows)


if __name__ == "__main__":
    main()
