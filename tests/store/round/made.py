"""Feeds, pails and rounds for the tests of a round: by hand, or the demo farm's morning changed by hand."""

from dataclasses import replace
from datetime import date, timedelta
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from uuid import UUID, uuid5

from hypothesis import settings

from store.book.clock import new_id
from store.book.drafts import Draft, FedFigure, MilkedFigure
from store.book.reading import read_snapshot
from store.book.snapshot import Feed, Pail, Pen, Portion, Snapshot, Told, Written
from store.book.turn import Turn
from store.book.words import EVENING, Units
from store.round.confirm import Hand
from store.round.plan import plan
from store.round.steps import FeedStep, MilkStep, Step, TaskStep
from tests.farm import MORNING, small_book, morning

unhurried = settings(deadline=None)
"""For laws over random values: what an example may take is not part of the promise."""

_NAMES = UUID(int=7)


def some_id(word: str) -> UUID:
    """An id that a word always has."""
    return uuid5(_NAMES, word)


NUTS = Feed(some_id("nuts"), "oat nuts", soaked=False)
PULP = Feed(some_id("pulp"), "beet pulp", soaked=True)
SCOOP = Told(some_id("scoop"), "scoop", "scoops", 0.675)
UNWEIGHED = Told(some_id("jug"), "jug", "jugs", None)
PAIL = Pail(some_id("pail"), "tin pail", 1.4)


@cache
def demo() -> Snapshot:
    """The demo farm's pretend morning, before anything is written."""
    with TemporaryDirectory() as folder:
        book = small_book(Path(folder))
        found = morning(book)
        book.close()
    return found


@cache
def demo_evening() -> Snapshot:
    """The demo farm's evening of the day before the pretend morning, as it was written."""
    with TemporaryDirectory() as folder:
        book = small_book(Path(folder))
        found = read_snapshot(book.desk, Turn(date(2026, 3, 10), EVENING), MORNING)
        book.close()
    return found


def hand(snapshot: Snapshot, units: Units = Units.METRIC) -> Hand:
    """The first person of the farm presses a key, a minute after what was written last."""
    return Hand(snapshot.turn, snapshot.people[0].id, MORNING + timedelta(minutes=1 + len(snapshot.entries)), units)


def wrote(snapshot: Snapshot, draft: Draft) -> Snapshot:
    """The round after a draft was written: what the book would say of it."""
    entry = Written(
        id=new_id(draft.happened_at),
        step_id=draft.step_id,
        kind=draft.kind,
        subject=draft.subject,
        state=draft.state,
        reason=draft.reason,
        happened_at=draft.happened_at,
        written_at=draft.happened_at,
        person_id=draft.person_id,
        replaces_id=draft.shown,
        fed=tuple(figure for figure in draft.figures if isinstance(figure, FedFigure)),
        milked=next((figure for figure in draft.figures if isinstance(figure, MilkedFigure)), None),
    )
    return replace(snapshot, entries=(*snapshot.entries, entry))


def moved(snapshot: Snapshot, name: str, pen: str | None) -> Snapshot:
    """The round with one animal standing in another pen, or in none."""
    pen_id = pen_named(snapshot, pen).id if pen else None
    return replace(
        snapshot,
        animals=tuple(replace(animal, pen_id=pen_id) if animal.name == name else animal for animal in snapshot.animals),
    )


def pen_named(snapshot: Snapshot, name: str) -> Pen:
    """A pen by its name."""
    return next(pen for pen in snapshot.pens if pen.name == name)


def step_named(snapshot: Snapshot, name: str, kind: str) -> Step:
    """The planned step of a name and kind."""
    return next(step for step in plan(snapshot) if (step.name, step.kind) == (name, kind))


def feed_of(snapshot: Snapshot, name: str) -> FeedStep:
    """The feed step of an animal or a pen."""
    step = step_named(snapshot, name, "feed")
    assert isinstance(step, FeedStep)
    return step


def milk_of(snapshot: Snapshot, name: str) -> MilkStep:
    """The milk step of a cow."""
    step = step_named(snapshot, name, "milk")
    assert isinstance(step, MilkStep)
    return step


def task_of(snapshot: Snapshot, name: str) -> TaskStep:
    """The step of a standing job."""
    step = step_named(snapshot, name, "task")
    assert isinstance(step, TaskStep)
    return step


def with_portions(snapshot: Snapshot, subject_id: UUID, *portions: Portion) -> Snapshot:
    """The round with another feeding plan for one animal or pen; none: its plan ended."""
    changed = {**snapshot.portions, subject_id: portions}
    if not portions:
        del changed[subject_id]
    feeds = {portion.feed.id: portion.feed for portion in portions}
    return replace(snapshot, portions=changed, feeds={**snapshot.feeds, **feeds})
