"""A past round stays what it was, whatever the farm changes on a later day."""

from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest
from msgspec.structs import replace

from store.book.clock import new_id
from store.book.desk import Desk
from store.book.facts.span import span
from store.book.figures import FedFigure
from store.book.opening import Book
from store.book.reading import read_facts, read_snapshot
from store.book.records import Row, Setting
from store.book.records.farm import Person, PersonAs
from store.book.records.feeding import (
    FeedAs,
    FeedPlan,
    MeasureAs,
    MilkPlan,
    NotFor,
    PailAs,
    SoakRule,
    TaskAs,
    Weighing,
)  # fmt: skip
from store.book.records.yard import AnimalAs, PenAs, Sharing, Standing, Withheld
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import Air, Fate, Fill, Kind, SettingName, Species, Stage, State, Water
from store.round.confirm import Hand, ended, felt, left_open
from store.round.measured import fates_of
from store.round.plan import plan
from store.round.steps import UdderStep
from store.round.summary import summarise
from tests.farm import MORNING, hand, morning
from tests.store.book.seeing import ZONE, animal, put
from tests.store.book.tools import count
from tests.store.round.named import milk_of, step_of

EVENING_BEFORE, MORNING_BEFORE = Turn(date(2026, 3, 9), "evening"), Turn(date(2026, 3, 9), "morning")
NEXT_MIDNIGHT = datetime(2026, 3, 10, tzinfo=UTC)
"""Dated rows typed as a day begin then; in March the farm's wall clock shows UTC."""


def looked_back(desk: Desk, turn: Turn) -> Snapshot:
    """A past round as it is opened later: by what was in force on its own day."""
    zone, evening_from_h = read_facts(desk, MORNING).zone, read_facts(desk, MORNING).evening_from_h
    return read_snapshot(desk, turn, turn.facts_at(zone, evening_from_h))


def ids(found: Snapshot) -> dict[str, Any]:
    """The ids that changes are made of."""
    due = next(portion for portion in found.portions[animal(found, "Fennel").id] if portion.feed.soaked)
    assert due.told is not None
    pens = {pen.name: pen.id for pen in found.pens}
    return {
        "fennel": animal(found, "Fennel").id, "hazel": animal(found, "Hazel").id, "rook": animal(found, "Rook").id,
        "stall": pens["Stall"], "orchard": pens["Orchard"], "feed": due.feed.id, "measure": due.told.id,
        "job": found.jobs[0].id, "person": found.people[0].id,
        "pail": next(milking.pail.id for milking in found.milkings.values() if milking.pail),
    }  # fmt: skip


def changes(i: dict[str, Any], slot: str) -> list[tuple[type[Row], dict[str, Any]]]:
    """A change of every kind that a farm can make."""
    rule = {"least_h": 1, "most_h": 2, "water_per_kg": 5}
    return [
        (FeedPlan, {"slot": slot, "animal_id": i["fennel"], "feed_id": i["feed"], "due_kg": 7.0}),
        (FeedPlan, {"slot": slot, "pen_id": i["stall"], "feed_id": i["feed"], "due_kg": 3.0}),
        (Weighing, {"measure_id": i["measure"], "feed_id": i["feed"], "holds_kg": 0.4}),
        (MeasureAs, {"measure_id": i["measure"], "name": "dipper", "plural": "dippers"}),
        (FeedAs, {"feed_id": i["feed"], "name": "grass nuts", "soaked": False}),
        (PailAs, {"pail_id": i["pail"], "name": "tin pail", "empty_kg": 2.0}),
        (PenAs, {"pen_id": i["stall"], "name": "Shed", "position": 90}),
        (PenAs, {"pen_id": i["orchard"], "name": "Orchard", "position": 30, "in_use": False}),
        (AnimalAs, {"animal_id": i["hazel"], "name": "Hazel the elder", "stage": Stage.DRY}),
        (AnimalAs, {"animal_id": i["rook"], "name": "Rook", "stage": Stage.CALF, "kept": False}),
        (Standing, {"animal_id": i["fennel"], "pen_id": i["orchard"]}),
        (Sharing, {"cow_id": i["hazel"], "calf_id": i["rook"]}),
        (Withheld, {"animal_id": i["hazel"], "why": "waits for the vet"}),
        (NotFor, {"feed_id": i["feed"], "species": Species.CATTLE}),
        (SoakRule, {"feed_id": i["feed"], "air": Air.COLD, "water": Water.WARM, **rule}),
        (TaskAs, {"task_id": i["job"], "name": "Another job", "slot": slot}),
        (PersonAs, {"person_id": i["person"], "name": "Anna", "here": False}),
        (Setting, {"name": SettingName.AIR, "value": "hot"}),
        (Setting, {"name": SettingName.MEAL_LIMIT_KG, "value": "1"}),
        (Setting, {"name": SettingName.UNITS, "value": "us"}),
        (MilkPlan, {"slot": slot, "animal_id": i["hazel"], "milked": False}),
    ]


@pytest.mark.parametrize("turn", [EVENING_BEFORE, MORNING_BEFORE])
@pytest.mark.parametrize("begins_at", [MORNING, NEXT_MIDNIGHT + timedelta(hours=7, minutes=1)])
def test_a_past_round_is_the_same_after_every_change_of_a_later_day(
    desk: Desk, turn: Turn, begins_at: datetime
) -> None:
    """Plan, measure, pen, name, rule, setting: the snapshot, the plan and the closing of the old round stay."""
    before = looked_back(desk, turn)
    for record, values in changes(ids(before), turn.slot):
        put(desk, record, begins_at=begins_at, written_at=MORNING, **values)
    after = looked_back(desk, turn)
    assert after == before
    assert plan(after) == plan(before)
    assert summarise(after, plan(after)) == summarise(before, plan(before))


def test_those_changes_would_be_seen(desk: Desk) -> None:
    """The comparison above can fail: a minute before the round they change it, one by one."""
    before = looked_back(desk, EVENING_BEFORE)
    for record, values in changes(ids(before), "evening"):
        was = looked_back(desk, EVENING_BEFORE)
        noon = datetime(2026, 3, 9, 12, tzinfo=UTC)
        put(desk, record, begins_at=noon, written_at=noon, **values)
        assert looked_back(desk, EVENING_BEFORE) != was, (record, values)


@pytest.mark.parametrize("turn", [EVENING_BEFORE, MORNING_BEFORE])
def test_a_change_dated_with_the_next_day_leaves_the_round_of_this_evening(desk: Desk, turn: Turn) -> None:
    """A day without a time begins at midnight, and the evening's round goes on until three. (What is soaked: below.)"""
    before = looked_back(desk, turn)
    for record, values in changes(ids(before), turn.slot):
        put(desk, record, begins_at=NEXT_MIDNIGHT, written_at=MORNING, **values)
    after = looked_back(desk, turn)
    assert replace(after, portions_next=before.portions_next) == before


def test_what_was_put_to_soak_in_a_past_evening_stays_due_as_it_was(desk: Desk) -> None:
    """The next morning, before the round, the plan is changed: the evening before was walked by the old one."""
    before, six = looked_back(desk, EVENING_BEFORE), NEXT_MIDNIGHT + timedelta(hours=6)
    values = {"slot": "morning", "animal_id": ids(before)["fennel"], "feed_id": ids(before)["feed"], "due_kg": 7.0}
    put(desk, FeedPlan, begins_at=six, written_at=six, **values)
    assert plan(looked_back(desk, EVENING_BEFORE)) == plan(before)


def test_milk_typed_in_later_is_withheld_as_it_was_when_she_was_milked(desk: Desk) -> None:
    """Withheld until ten; milked at seven; the morning is typed in the next day: thrown away, and nowhere else."""
    hazel = animal(looked_back(desk, MORNING_BEFORE), "Hazel").id
    ten = datetime(2026, 3, 9, 10, tzinfo=UTC)
    put(desk, Withheld, animal_id=hazel, begins_at=ten - timedelta(days=2), ends_at=ten, why="udder tube")
    step = milk_of(looked_back(desk, MORNING_BEFORE), "Hazel")
    assert fates_of(step, span(ten - timedelta(hours=3))) == (Fate.THROWN_AWAY,)


def test_a_round_that_ended_keeps_what_was_due_even_from_a_plan_mended_afterwards(desk_book: Book) -> None:
    """What was never done was left open with what was due; a plan dated back changes the plan, not the entries."""
    found = morning(desk_book)
    at = hand(desk_book, found)
    for step in plan(found):
        desk_book.append(left_open(at, step, State.ON_PAPER if step.kind == "hay" else State.OPEN))
    desk_book.append(ended(at, found.turn.step_id(found.farm.id, Kind.ROUND, found.farm.id), None))
    due = {entry.step_id: entry.figures for entry in morning(desk_book).entries}
    for record, values in changes(ids(found), "morning"):
        put(desk_book.desk, record, begins_at=MORNING - timedelta(hours=1), written_at=MORNING, **values)
    after = looked_back(desk_book.desk, found.turn)
    assert {entry.step_id: entry.figures for entry in after.entries} == due
    fed = [figure for figures in due.values() for figure in figures if isinstance(figure, FedFigure)]
    assert sorted(figure.due_kg or 0 for figure in fed) == pytest.approx([0.34, 0.9, 1.0125, 2.0, 2.7, 8.2, 10.25])
    assert {figure.given_kg for figure in fed} == {None}
    assert after.entries[-1].kind is Kind.ROUND


def test_a_past_round_shows_what_is_typed_into_it_later(desk_book: Book) -> None:
    """That is no change of the farm, but of the round."""
    desk = desk_book.desk
    found, entries = looked_back(desk, EVENING_BEFORE), count(desk, "entry")
    step = step_of(found, UdderStep, "Tansy")
    at = Hand(EVENING_BEFORE, found.people[1].id, EVENING_BEFORE.begins(ZONE), found.farm.units)
    desk_book.append(felt(at, step, Fill.TIGHT))
    after = looked_back(desk, EVENING_BEFORE)
    assert count(desk, "entry") == entries + 1
    assert [len(each.entries) for each in (found, after)] == [len(found.entries), len(found.entries) + 1]
    entry = step_of(after, UdderStep, "Tansy").entry
    assert entry is not None
    assert (entry.replaces_id, entry.person_id) == (step.entry.id if step.entry else None, at.person_id)


def test_a_person_who_came_later_is_in_no_older_round(desk: Desk) -> None:
    """Nor do they change who is first in it."""
    before = looked_back(desk, EVENING_BEFORE)
    person = new_id(MORNING)
    put(desk, Person, id=person)
    put(desk, PersonAs, person_id=person, name="Aaron", begins_at=MORNING)
    assert looked_back(desk, EVENING_BEFORE).people == before.people
