"""Jobs that come and go: every so many days, once, until a day, in a season, while an animal of a stage is there."""

from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from store.book.drafts import Draft
from store.book.facts.jobs import Due, Job
from store.book.opening import Book
from store.book.reading import read_snapshot, sql
from store.book.records.feeding import Task, TaskAs, TaskDue
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import MORNING, SLOTS, Stage, Units
from store.round.confirm import Hand, done, left_open, moved_on, skipped, undone
from store.round.plan import plan
from store.round.steps import Step, TaskStep
from store.round.task import is_due
from tests.farm import HandClock
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn, moved, pen_named, some_id, unhurried

BATH = "Foot bath filled"
TUESDAY = Turn(date(2026, 3, 10), MORNING)
JOB = Job(some_id("bath"), BATH, None, False, MORNING)
DAYS = st.dates(date(2020, 1, 1), date(2035, 12, 31))


def on(days: int, slot: str = MORNING) -> Turn:
    """The round so many days after the Tuesday."""
    return Turn(TUESDAY.day + timedelta(days=days), slot)


def due(job: Job, turn: Turn = TUESDAY, snapshot: Snapshot | None = None) -> bool:
    """Whether a job is asked for in a round of the small farm."""
    return is_due(replace(snapshot or dawn(), turn=turn), job)


def comes(**how: Any) -> Job:
    """The foot bath, coming in some way."""
    return replace(JOB, due=Due(**how))


@pytest.mark.parametrize(("days", "expected"), [(1, False), (2, False), (3, True), (4, True), (300, True)])
def test_every_third_day_it_is_due_on_the_third_day_after_it_was_done(days: int, expected: bool) -> None:
    """Done on Tuesday: on Friday, not on Thursday; and it stays due."""
    assert due(replace(comes(every_days=3), last_on=TUESDAY.day), on(days)) is expected


def test_one_that_was_never_done_is_due_at_once() -> None:
    """Nobody has to remember to begin."""
    assert due(comes(every_days=3))
    assert due(comes(once=True))


@pytest.mark.parametrize("days", [1, 30, 3000])
def test_what_comes_once_never_comes_again(days: int) -> None:
    """However long ago it was done."""
    assert not due(replace(comes(once=True), last_on=TUESDAY.day), on(days))


@pytest.mark.parametrize(("days", "expected"), [(-1, True), (0, True), (1, False)])
def test_until_a_date_includes_the_last_day(days: int, expected: bool) -> None:
    """And not the day behind it."""
    assert due(comes(until_on=TUESDAY.day), on(days)) is expected


@pytest.mark.parametrize(
    ("season", "day", "expected", "number"),
    [
        (("03-15", "05-10"), "2026-03-14", False, None),
        (("03-15", "05-10"), "2026-03-15", True, 1),
        (("03-15", "05-10"), "2026-04-01", True, 18),
        (("03-15", "05-10"), "2026-05-10", True, 57),
        (("03-15", "05-10"), "2026-05-11", False, None),
        (("11-01", "02-28"), "2026-12-31", True, 61),
        (("11-01", "02-28"), "2027-01-01", True, 62),
        (("11-01", "02-28"), "2028-02-29", False, None),
        (("11-01", "02-28"), "2026-10-31", False, None),
        (("02-29", "03-02"), "2028-02-29", True, 1),
        (("02-29", "03-02"), "2027-03-01", True, 1),
        (("05-05", "05-05"), "2026-05-05", True, 1),
    ],
)
def test_a_season_has_a_first_and_a_last_day(season: tuple[str, str], day: str, expected: bool, number: int) -> None:
    """It may run over New Year; its days are counted from the first."""
    job, at = comes(season=season), date.fromisoformat(day)
    assert due(job, Turn(at, MORNING)) is expected
    assert not expected or job.due.day_of_season(at) == number


@unhurried
@given(DAYS, DAYS, DAYS)
def test_a_day_is_in_a_season_or_in_the_rest_of_the_year(first: date, last: date, day: date) -> None:
    """Never in both, whether the season runs over New Year or not."""
    one, other = f"{first:%m-%d}", f"{last:%m-%d}"
    assume(one != other)
    in_it, in_the_rest = Due(season=(one, other)).comes_on(day), Due(season=(other, one)).comes_on(day)
    assert in_it or in_the_rest
    assert (in_it and in_the_rest) == (f"{day:%m-%d}" in (one, other))


def test_a_job_for_a_stage_is_due_while_such_an_animal_stands_in_its_pen() -> None:
    """Where it is a job of the bench, anywhere on the farm."""
    job = replace(comes(stage=Stage.DRY), pen_id=pen_named(dawn(), "Orchard").id)
    assert animal_named(dawn(), "Tansy").stage is Stage.DRY
    assert due(job)
    elsewhere = moved(dawn(), "Tansy", "Stall")
    assert not due(job, snapshot=elsewhere)
    assert due(replace(job, pen_id=None), snapshot=elsewhere)
    assert not due(replace(job, due=Due(stage=Stage.BULL)))


@pytest.mark.parametrize("slot", SLOTS)
def test_a_job_is_due_in_its_own_slot_only(slot: str) -> None:
    """Whatever else is said of it."""
    assert due(replace(comes(every_days=3), slot=slot), on(0, slot))
    assert [due(replace(JOB, slot=slot), on(0, each)) for each in SLOTS].count(True) == 1


class Farm:
    """The small farm's book with the foot bath among its jobs, its rounds read and written on other days."""

    def __init__(self, book: Book, **how: Any) -> None:
        """The bath, coming in some way since the Tuesday."""
        self.book = book
        since = {"task_id": JOB.id, "begins_at": datetime(2026, 3, 10, tzinfo=UTC)}
        put(book.desk, Task, id=JOB.id)
        put(book.desk, TaskAs, name=BATH, slot=MORNING, **since)
        put(book.desk, TaskDue, **since, **how)

    def read(self, turn: Turn, hour: int = 7, *, known: bool = False) -> Snapshot:
        """A round while it is walked; or as it is read later, by what was known then."""
        at = turn.facts_at("Europe/Dublin", 12) if known else datetime(*turn.day.timetuple()[:3], hour, tzinfo=UTC)
        return read_snapshot(self.book.desk, turn, at)

    def steps(self, turn: Turn, *, known: bool = False) -> list[Step]:
        """The bath's steps of a round."""
        found = plan(self.read(turn, 7 if turn.slot == MORNING else 18, known=known))
        return [step for step in found if isinstance(step, TaskStep) and step.name == BATH]

    def hand(self, turn: Turn) -> Hand:
        """Somebody presses a key in a round."""
        at = datetime(*turn.day.timetuple()[:3], 8 if turn.slot == MORNING else 19, tzinfo=UTC)
        self.book.clock = HandClock(at)
        return Hand(turn, dawn().people[0].id, at, Units.METRIC)

    def write(self, turn: Turn, how: Any, *more: Any) -> Draft:
        """What became of the bath in a round."""
        (step,) = self.steps(turn)
        draft: Draft = how(self.hand(turn), step, *more)
        self.book.append(draft)
        return draft

    def due(self, *turns: Turn, known: bool = False) -> list[bool]:
        """In which of some rounds the bath is asked for."""
        return [bool(self.steps(turn, known=known)) for turn in turns]


def test_it_is_read_from_what_was_done(book: Book) -> None:
    """Done on Tuesday: on Friday and after, not on Wednesday or Thursday; nor does its own round lose it."""
    farm = Farm(book, every_days=3)
    farm.write(TUESDAY, done)
    assert farm.due(*map(on, range(5))) == [True, False, False, True, True]
    (friday,) = [job for job in farm.read(on(3)).jobs if job.name == BATH]
    assert friday.last_on == TUESDAY.day


@pytest.mark.parametrize(("how", "more"), [(skipped, ("no time",)), (left_open, ())])
def test_skipped_or_not_recorded_it_is_due_the_next_day(book: Book, how: Any, more: tuple[str, ...]) -> None:
    """What was not done does not count as done."""
    farm = Farm(book, every_days=3)
    farm.write(TUESDAY, how, *more)
    assert farm.due(on(1)) == [True]


def test_what_was_taken_back_is_due_again(book: Book) -> None:
    """Of the entries of a step the newest counts."""
    farm = Farm(book, every_days=3)
    farm.write(TUESDAY, done)
    (step,) = farm.steps(TUESDAY)
    assert step.entry
    book.append(undone(farm.hand(TUESDAY), step.entry))
    assert farm.due(on(1)) == [True]


@pytest.mark.parametrize("how", [{"every_days": 3}, {"once": True}])
def test_moved_on_and_done_in_the_evening_it_counts_as_done_then(book: Book, how: dict[str, Any]) -> None:
    """Moved on and not done, it is due the next morning."""
    farm = Farm(book, **how)
    farm.write(TUESDAY, moved_on)
    assert farm.due(on(1)) == [True]
    farm.write(on(0, "evening"), done)
    assert farm.due(on(1), on(2), on(3)) == [False, False, "every_days" in how]


def test_once_it_comes_until_it_is_done(book: Book) -> None:
    """Then never again, also where that was weeks after it was set, and years ago."""
    farm = Farm(book, once=True)
    assert farm.due(on(0), on(1), on(40)) == [True, True, True]
    farm.write(on(40), done)
    assert farm.due(on(39), on(40), on(41), on(1500)) == [True, True, False, False]


def test_once_and_done_it_does_not_come_back_when_its_last_day_is_changed(book: Book) -> None:
    """It comes again where it was said meanwhile that it comes every day."""
    farm = Farm(book, once=True)
    farm.write(on(1), done)
    for days, how in ((2, {"once": True, "until_on": on(30).day}), (4, {"once": False}), (6, {"once": True})):
        begins_at = datetime(*on(days).day.timetuple()[:3], tzinfo=UTC)
        put(book.desk, TaskDue, task_id=JOB.id, begins_at=begins_at, **how)
    assert farm.due(on(1), on(2), on(3), on(4), on(5), on(6)) == [True, False, False, True, True, True]


def test_a_past_round_stays_as_it_was_when_more_is_typed_in_later(book: Book) -> None:
    """What was not known then does not change what was asked for then."""
    farm = Farm(book, every_days=3)
    farm.write(on(1), done)
    assert farm.due(on(2), known=True) == [False]
    assert farm.due(on(3), on(4), known=True) == [False, True]
    draft = farm.write(on(4), done)
    book.clock = HandClock(draft.happened_at + timedelta(days=3))
    (step,) = farm.steps(on(1), known=True)
    book.append(skipped(replace(farm.hand(on(7)), turn=on(1)), step, "no time"))
    assert farm.due(on(2), on(3), on(4), known=True) == [False, False, True]


def test_one_that_was_done_in_its_season_comes_back_in_the_next(book: Book) -> None:
    """A year later it counts as never done."""
    farm = Farm(book, every_days=300, season_first="03-01", season_last="04-30")
    farm.write(TUESDAY, done)
    assert farm.due(on(1), on(60), on(365), on(380)) == [False, False, True, True]


@pytest.mark.parametrize(
    ("how", "most"), [({"every_days": 1}, 0), ({"season_first": "05-01", "season_last": "05-31"}, 0),
                      ({"every_days": 3}, 1), ({"once": True}, 1)],
)  # fmt: skip
def test_only_a_job_that_hangs_on_it_looks_back(
    book: Book, monkeypatch: pytest.MonkeyPatch, how: dict[str, Any], most: int
) -> None:
    """In its own slot and season; one that was done lately needs one look-up, however long the book."""
    farm = Farm(book, **{"every_days": 9} | how)
    if farm.due(TUESDAY) == [True]:
        farm.write(TUESDAY, done)
    asked: list[str] = []
    rows = book.desk.rows

    def counted(statement: str, values: Any) -> Any:
        asked.append(statement)
        return rows(statement, values)

    monkeypatch.setattr(book.desk, "rows", counted)
    farm.due(on(5))
    assert asked.count(sql.STEPS) == most
    farm.due(on(5, "evening"))
    assert asked.count(sql.STEPS) == most
