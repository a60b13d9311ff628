"""The snapshot of one round."""

from collections.abc import Sequence
from datetime import date, datetime
from typing import Any
from uuid import UUID

from store.book.clock import micros, moment
from store.book.desk import Desk, FoundRow
from store.book.drafts import FedFigure, MilkedFigure, Subject
from store.book.reading import facts, sql
from store.book.reading.facts import maybe_uid, uid
from store.book.snapshot import Given, Milking, Snapshot, Written
from store.book.turn import Turn
from store.book.words import Fate, Kind, State


def read_snapshot(desk: Desk, turn: Turn, now: datetime) -> Snapshot:
    """All that the plan of a round needs, as the book holds it now. Raises DamagedBook."""
    values = {"at": micros(now), "day": turn.day.isoformat(), "slot": turn.slot}

    def rows(statement: str, **more: Any) -> Sequence[FoundRow]:
        return desk.rows(statement, values | more)

    feeds, measures = facts.feeds(rows(sql.FEEDS)), rows(sql.MEASURES)
    by_animal = facts.portions(rows(sql.ANIMAL_PLANS), feeds, measures)
    by_pen = facts.portions(rows(sql.PEN_PLANS), feeds, measures)
    given = {id_: rows(sql.ANIMAL_GIVEN_BEFORE, subject=id_.bytes) for id_ in by_animal}
    given |= {id_: rows(sql.PEN_GIVEN_BEFORE, subject=id_.bytes) for id_ in by_pen}
    milkings = {
        uid(found[0]): _milking(found, *(rows(each, subject=found[0]) for each in (sql.PAILS_BEFORE, sql.LAST_MILKED)))
        for found in rows(sql.MILKINGS)
    }
    return Snapshot(
        farm=facts.read_facts(desk, now),
        turn=turn,
        people=facts.people(rows(sql.PEOPLE)),
        pens=facts.pens(rows(sql.PENS)),
        animals=facts.animals(rows(sql.ANIMALS), rows(sql.SHARED)),
        feeds=feeds,
        portions=by_animal | by_pen,
        milkings=milkings,
        jobs=facts.jobs(rows(sql.JOBS)),
        given_before={id_: found for id_ in given if (found := _given(given[id_]))},
        entries=_entries(rows(sql.ENTRIES), rows(sql.FED), rows(sql.MILKED)),
    )


def _milking(found: FoundRow, pails: Sequence[FoundRow], last: Sequence[FoundRow]) -> Milking:
    animal_id, pail_id, name, empty_kg = found
    return Milking(
        uid(animal_id),
        facts.pail(pail_id, name, empty_kg),
        tuple(milk_kg for (milk_kg,) in pails),
        moment(last[0][0]) if last else None,
    )


def _given(found: Sequence[FoundRow]) -> Given | None:
    if not found:
        return None
    return Given(date.fromisoformat(found[0][0]), {uid(feed): given_kg for _, feed, given_kg in found})


def _entries(found: Sequence[FoundRow], fed: Sequence[FoundRow], milked: Sequence[FoundRow]) -> tuple[Written, ...]:
    fed_by: dict[UUID, tuple[FedFigure, ...]] = {}
    for entry, feed, measure, due_kg, given_kg, typed in fed:
        figure = FedFigure(uid(feed), maybe_uid(measure), due_kg, given_kg, typed)
        fed_by[uid(entry)] = (*fed_by.get(uid(entry), ()), figure)
    milked_by = {
        uid(entry): MilkedFigure(milk_kg, gross_kg, maybe_uid(pail), empty_kg, Fate(fate) if fate else None, typed)
        for entry, milk_kg, gross_kg, pail, empty_kg, fate, typed in milked
    }
    return tuple(_written(row, fed_by, milked_by) for row in found)


def _written(row: FoundRow, fed_by: dict[UUID, tuple[FedFigure, ...]], milked_by: dict[UUID, MilkedFigure]) -> Written:
    id_, step_id, kind, animal, pen, task, state, reason, happened_at, written_at, person, replaces = row
    return Written(
        id=uid(id_),
        step_id=uid(step_id),
        kind=Kind(kind),
        subject=Subject(maybe_uid(animal), maybe_uid(pen), maybe_uid(task)),
        state=State(state),
        reason=reason,
        happened_at=moment(happened_at),
        written_at=moment(written_at),
        person_id=uid(person),
        replaces_id=maybe_uid(replaces),
        fed=fed_by.get(uid(id_), ()),
        milked=milked_by.get(uid(id_)),
    )
