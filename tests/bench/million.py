"""A book with very many entries, made by the ordinary append path: python -m tests.bench.million [entries]

Every entry is planned, drafted and appended as the program does it; only the wait for the disk is off while it is
built. The small farm of the tests has some thirty steps a day, so a million entries are ninety years of it.
Prints how large a step is in the file, and what reading a round costs beside the demo's book.
"""

import hashlib
import random
import sys
from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from tempfile import gettempdir
from time import perf_counter
from typing import Any

from msgspec.structs import replace

from store.book.drafts import Draft
from store.book.folder.take_in import new_book_from
from store.book.form import HEAD
from store.book.migrating import MIGRATIONS
from store.book.opening import Book, open_book
from store.book.reading import read_facts, read_snapshot
from store.book.snapshot import LastRound, Snapshot
from store.book.turn import Turn, turn_at
from store.book.words import EVENING, MORNING, SKIP_REASONS, Fate, Fill, Soak
from store.round.confirm import Hand, counted, done, felt, parted, skipped, time_of
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
from tests.bench.telling import Figures, ratio, say, tell
from tests.farm import FOLDER, HandClock
from tests.farm import MORNING as DEMO_BEGINS

ENTRIES = 1_000_000
LAST_DAY = date(2026, 3, 3)
"""The day before the demo's own past begins."""
TYPED_IN_FROM = datetime(2025, 12, 1, tzinfo=UTC)
BEGINS_H = {MORNING: 6, EVENING: 18}


def long_book(entries: int = ENTRIES) -> Path:
    """The book with so many entries before the demo's own; built once, then found in the temporary folder."""
    place = Path(gettempdir()) / f"penwalk-bench-{_form()}" / f"{entries}.penwalk"
    if not place.is_file():
        place.parent.mkdir(exist_ok=True)
        half = place.with_suffix(".half")
        for suffix in ("", "-wal", "-shm", ".lock"):
            half.with_name(half.name + suffix).unlink(missing_ok=True)
        new_book_from(FOLDER, half)
        _fill(half, entries)
        half.replace(place)
    return place


def _form() -> str:
    """A word for what a book looks like inside: it changes with any migration."""
    content = hashlib.sha256(HEAD.encode())
    for path in sorted((MIGRATIONS / "versions").glob("*.py")):
        content.update(path.read_bytes())
    return content.hexdigest()[:12]


def _fill(place: Path, entries: int) -> None:
    clock = HandClock(TYPED_IN_FROM)
    began_s = perf_counter()
    with closing(open_book(str(place), clock, "bench")) as book:
        book.desk.rows("PRAGMA synchronous=OFF", {})
        for number, draft in enumerate(_drafts(book, entries), 1):
            clock.move(seconds=0.5)
            book.append(draft)
            if number % 50_000 == 0:
                say(f"{number} entries, {number / (perf_counter() - began_s):.0f} a second")
        book.desk.rows("PRAGMA wal_checkpoint(TRUNCATE)", {})


def _drafts(book: Book, entries: int) -> Iterator[Draft]:
    """So many confirmed steps, day after day, up to some weeks before the last day, as jobs have seasons."""
    chance = random.Random(7)
    snapshots = {slot: _snapshot(book, slot) for slot in (MORNING, EVENING)}
    seasons = [date(LAST_DAY.year, month, 1) for month in range(1, 13)]
    a_day = min(
        sum(len(plan(replace(each, turn=Turn(day, slot)))) for slot, each in snapshots.items()) for day in seasons
    )
    day, left = LAST_DAY - timedelta(days=entries // a_day), entries
    while left:
        for slot, snapshot in snapshots.items():
            turn = Turn(day, slot)
            at = datetime(day.year, day.month, day.day, BEGINS_H[slot], 30, tzinfo=UTC)
            steps = plan(replace(snapshot, turn=turn))[:left]
            for step in steps:
                at += timedelta(seconds=chance.randint(60, 300))
                hand = Hand(turn, snapshot.people[0].id, at, snapshot.farm.units)
                yield _draft(hand, step, chance)
            left -= len(steps)
        day += timedelta(days=1)


def _snapshot(book: Book, slot: str) -> Snapshot:
    """What the small farm's plan is drawn from in a slot, before anything of it is written."""
    snapshot = read_snapshot(book.desk, Turn(DEMO_BEGINS.date(), slot), DEMO_BEGINS)
    return replace(snapshot, entries=(), last=LastRound(snapshot.turn.before()))


def _draft(hand: Hand, step: Step, chance: random.Random) -> Draft:
    if chance.random() < 0.03:
        return skipped(hand, step, chance.choice(SKIP_REASONS))
    if isinstance(step, FeedStep):
        typed = {step.due[0].feed.id: f"{chance.randint(1, 4)}"} if chance.random() < 0.05 else {}
        return fed(hand, step, typed)
    if isinstance(step, MilkStep):
        uses = fates_of(step, time_of(hand, step))
        fate = Fate.HOUSE if Fate.HOUSE in uses else uses[0]
        return milked(hand, step, f"{chance.uniform(6.0, 11.0):.1f}", fate)
    return OTHERS.get(type(step), done)(hand, step)


OTHERS: dict[type[Step], Callable[[Hand, Any], Draft]] = {
    CountStep: lambda hand, step: counted(hand, step, len(step.heads)),
    ApartStep: parted,
    UdderStep: lambda hand, step: felt(hand, step, Fill.SLACK),
    SoakCheckStep: lambda hand, step: soak_checked(hand, step, Soak.FIT),
    SoakStartStep: lambda hand, step: soak_started(hand, step, ""),
}


def first_read_s(place: Path) -> float:
    """How long the first reading takes in a book just opened. [s]"""
    with closing(open_book(str(place), HandClock())) as book:
        return next(read_times_s(book, 1))


def read_times_s(book: Book, runs: int) -> Iterator[float]:
    """How long reading and planning the demo's morning takes, again and again. [s]"""
    for _ in range(runs):
        began_s = perf_counter()
        now = book.clock.now()
        farm = read_facts(book.desk, now)
        plan(read_snapshot(book.desk, turn_at(now, farm.zone, farm.evening_from_h), now))
        yield perf_counter() - began_s


def main() -> None:
    """Build it, measure its size and its reading beside the demo's."""
    entries = int(sys.argv[1]) if len(sys.argv) > 1 else ENTRIES
    place = long_book(entries)
    small = long_book(0)
    size, empty = (each.stat().st_size for each in (place, small))
    say(f"{place}: {entries} confirmed steps, {size / 1e6:.0f} MB, {(size - empty) / entries:.0f} bytes a step")
    opened = [(first_read_s(place), first_read_s(small)) for _ in range(20)]
    with closing(open_book(str(place), HandClock())) as long, closing(open_book(str(small), HandClock())) as short:
        pairs = [(next(read_times_s(long, 1)), next(read_times_s(short, 1))) for _ in range(200)]
    for what, times_s in (("first read after opening", opened), ("read a round", pairs)):
        figures = [
            Figures(f"{what}, {name}", [pair[at] for pair in times_s]) for at, name in enumerate(("long", "demo"))
        ]
        tell(*figures)
        say(f"{what}, long book / demo's book: {ratio(*figures)}")


if __name__ == "__main__":
    main()
