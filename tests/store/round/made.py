"""Feeds, pails and rounds for the tests of a round: by hand, or the small farm's morning changed by hand."""

from datetime import date, timedelta
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from uuid import UUID, uuid5

from hypothesis import settings
from msgspec.structs import replace

from store.book.clock import new_id
from store.book.drafts import Draft
from store.book.facts.calves import Parting, Share
from store.book.facts.farm import Animal, Pen
from store.book.facts.feed import Feed, Portion, Told
from store.book.facts.milk import Pail
from store.book.figures import PartedFigure
from store.book.reading import read_snapshot
from store.book.snapshot import Snapshot, Written
from store.book.turn import Turn
from store.book.words import EVENING, Kind, State, Units
from store.round.confirm import Hand
from store.round.plan import plan
from store.round.steps import Step
from tests.farm import MORNING, morning, small_book

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
def dawn() -> Snapshot:
    """The small farm's pretend morning, before anything is written."""
    with TemporaryDirectory() as folder:
        book = small_book(Path(folder))
        found = morning(book)
        book.close()
    return found


@cache
def dusk() -> Snapshot:
    """The small farm's evening of the day before the pretend morning, as it was written."""
    with TemporaryDirectory() as folder:
        book = small_book(Path(folder))
        found = read_snapshot(book.desk, Turn(date(2026, 3, 10), EVENING), MORNING)
        book.close()
    return found


def hand(snapshot: Snapshot, units: Units = Units.METRIC) -> Hand:
    """The first person of the farm presses a key, a minute after what was written last."""
    now = MORNING + timedelta(minutes=1 + len(snapshot.entries))
    return Hand(snapshot.turn, snapshot.people[0].id, now, units, snapshot.farm.meal_limit_kg)


def wrote(snapshot: Snapshot, *drafts: Draft) -> Snapshot:
    """The round after drafts were written: what the book would say of it."""
    for draft in drafts:
        snapshot = replace(snapshot, entries=(*snapshot.entries, _entry(draft)))
    return replace(snapshot, shares=tuple(_parted(snapshot, share) for share in snapshot.shares))


def _parted(snapshot: Snapshot, share: Share) -> Share:
    """What was written of a calf, as the book reads it: this round's entries that count, then what was before."""
    mine = [
        entry for entry in snapshot.entries if entry.kind is Kind.APART and entry.subject.animal_id == share.calf_id
    ]
    written = {entry.happened_at for entry in mine}
    before = [parting for parting in share.partings if parting.at not in written]
    counts = [entry for entry in snapshot.counts().values() if entry in mine]
    now = [
        Parting(figure.state if figure else None, entry.happened_at, entry.happened_from)
        for entry in counts
        if entry.state in (State.DONE, State.ON_PAPER)
        for figure in (entry.the(PartedFigure),)
    ]
    newest_first = sorted((*now, *before), key=lambda parting: parting.at, reverse=True)
    return replace(share, partings=tuple(newest_first))


def _entry(draft: Draft) -> Written:
    id_ = new_id(draft.happened_at)
    return Written(
        id=id_,
        step_id=draft.step_id or id_,
        kind=draft.kind,
        subject=draft.subject,
        state=draft.state,
        reason=draft.reason,
        happened_at=draft.happened_at,
        happened_from=draft.happened_from,
        written_at=draft.happened_at,
        person_id=draft.person_id,
        replaces_id=draft.shown,
        figures=draft.figures,
    )


def moved(snapshot: Snapshot, name: str, pen: str | None) -> Snapshot:
    """The round with one animal standing in another pen, or in none."""
    pen_id = pen_named(snapshot, pen).id if pen else None
    return with_animal(snapshot, replace(animal_named(snapshot, name), pen_id=pen_id))


def with_animal(snapshot: Snapshot, animal: Animal) -> Snapshot:
    """The round with other facts of one animal."""
    changed = tuple(animal if each.id == animal.id else each for each in snapshot.animals)
    return replace(snapshot, animals=changed)


def without_animal(snapshot: Snapshot, name: str) -> Snapshot:
    """The round with one animal not kept any more."""
    return replace(snapshot, animals=tuple(each for each in snapshot.animals if each.name != name))


def animal_named(snapshot: Snapshot, name: str) -> Animal:
    """An animal by its name."""
    return next(animal for animal in snapshot.animals if animal.name == name)


def pen_named(snapshot: Snapshot, name: str) -> Pen:
    """A pen by its name."""
    return next(pen for pen in snapshot.pens if pen.name == name)


def walk(snapshot: Snapshot) -> list[tuple[str, str, str]]:
    """Each step's place, name and kind, in order."""
    return [(step.place, step.name, step.kind.value) for step in plan(snapshot)]


def with_portions(snapshot: Snapshot, subject_id: UUID, *portions: Portion) -> Snapshot:
    """The round with another feeding plan for one animal or pen; none: its plan ended."""
    changed = {**snapshot.portions, subject_id: portions}
    if not portions:
        del changed[subject_id]
    feeds = {portion.feed.id: portion.feed for portion in portions}
    return replace(snapshot, portions=changed, feeds={**snapshot.feeds, **feeds})


def the_step(snapshot: Snapshot, step: Step) -> Step:
    """The same step, drawn anew."""
    return next(each for each in plan(snapshot) if each.step_id == step.step_id)
