"""The snapshot of one round."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime
from typing import Any
from uuid import UUID

from store.book.clock import micros, moment
from store.book.desk import Desk, FoundRow
from store.book.facts import Batch, FarmFacts, Feed, Milking, PastPail, Portion, Share
from store.book.reading import facts, sql
from store.book.reading.entries import read_entries, written
from store.book.reading.facts import uid
from store.book.snapshot import Given, Snapshot, notes_of
from store.book.turn import Turn
from store.book.words import Kind

FOR_EVER = 2**63 - 1
"""Later than any moment. [microseconds]"""


class Reading:
    """One reading of the book: every statement with the same moment and round."""

    def __init__(self, desk: Desk, turn: Turn, now: datetime) -> None:
        """For a round, as the book stands at a moment."""
        self.desk = desk
        self.farm: FarmFacts = facts.read_facts(desk, now)
        self.values: dict[str, Any] = {
            "at": micros(now),
            "day": turn.day.isoformat(),
            "slot": turn.slot,
            "air": self.farm.air.value,
        }

    def rows(self, statement: str, **more: Any) -> Sequence[FoundRow]:
        """What a statement finds."""
        return self.desk.rows(statement, self.values | more)


def read_snapshot(desk: Desk, turn: Turn, now: datetime) -> Snapshot:
    """All that the plan of a round needs, as the book holds it now. Raises DamagedBook."""
    reading = Reading(desk, turn, now)
    rows = reading.rows
    feeds = facts.feeds(rows(sql.FEEDS), rows(sql.BARRED))
    last = turn.facts_at(reading.farm.zone, reading.farm.evening_from_h)
    known = micros(now) if now >= last else FOR_EVER  # a past round by what was known then
    animal_portions, pen_portions = _portions(reading, feeds, turn.slot, at=micros(min(now, last)), known=known)
    next_begins = max(turn.after().begins(reading.farm.zone), now)
    next_animal, next_pen = _portions(reading, feeds, turn.after().slot, at=micros(next_begins), known=known)
    shares = _shares(reading)
    named = rows(sql.NAMES)
    before = {"day": turn.before().day.isoformat(), "slot": turn.before().slot}
    return Snapshot(
        farm=reading.farm,
        turn=turn,
        people=facts.people(rows(sql.PEOPLE)),
        pens=facts.pens(rows(sql.PENS)),
        animals=facts.animals(rows(sql.ANIMALS)),
        feeds=feeds,
        portions=animal_portions | pen_portions,
        portions_next=next_animal | next_pen,
        milkings={uid(found[0]): _milking(reading, found) for found in rows(sql.MILKINGS)},
        jobs=facts.jobs(rows(sql.JOBS)),
        names={uid(id_): name for id_, name, _ in named},
        pen_of={uid(id_): uid(pen_id) for id_, _, pen_id in named if pen_id is not None},
        given_before=_given_before(reading, animal_portions, pen_portions),
        shares=shares,
        withheld=facts.withheld(rows(sql.WITHHELD)),
        soak_limits=facts.soak_limits(rows(sql.SOAK_RULES)),
        batches=_batches(reading, feeds),
        moved_here=tuple(written(row, {}) for row in rows(sql.MOVED_ON, **before)),
        notes=notes_of(read_entries(lambda text: rows(text, **before))),
        entries=read_entries(rows),
    )


def read_again(desk: Desk, before: Snapshot, now: datetime) -> Snapshot:
    """The snapshot after an entry of this very round was added by this program: nothing else can have changed."""
    reading = Reading(desk, before.turn, now)
    return replace(before, farm=reading.farm, shares=_shares(reading), entries=read_entries(reading.rows))


def _portions(
    reading: Reading, feeds: Mapping[UUID, Feed], slot: str, **more: Any
) -> tuple[dict[UUID, tuple[Portion, ...]], dict[UUID, tuple[Portion, ...]]]:
    measures = reading.rows(sql.MEASURES, **more)
    plans = (reading.rows(statement, slot=slot, **more) for statement in (sql.ANIMAL_PLANS, sql.PEN_PLANS))
    animals, pens = (facts.portions(each, feeds, measures) for each in plans)
    return animals, pens


def _shares(reading: Reading) -> tuple[Share, ...]:
    return tuple(
        Share(
            uid(cow),
            uid(calf),
            longest_h,
            tuple(facts.parting(found) for found in reading.rows(sql.PARTINGS, subject=calf)),
        )
        for cow, calf, longest_h in reading.rows(sql.SHARED)
    )


def _milking(reading: Reading, found: FoundRow) -> Milking:
    animal_id, pail_id, name, empty_kg = found
    pails = reading.rows(sql.PAILS_BEFORE, subject=animal_id)
    return Milking(
        uid(animal_id),
        facts.pail(pail_id, name, empty_kg),
        tuple(PastPail(moment(at), milk_kg, bool(held)) for at, milk_kg, held in pails),
    )


def _given_before(
    reading: Reading, animals: Mapping[UUID, tuple[Portion, ...]], pens: Mapping[UUID, tuple[Portion, ...]]
) -> dict[UUID, Given]:
    found: dict[UUID, Sequence[FoundRow]] = {}
    for plans, statement in ((animals, sql.ANIMAL_GIVEN_BEFORE), (pens, sql.PEN_GIVEN_BEFORE)):
        for id_, portions in plans.items():
            kind = Kind.HAY if any(portion.feed.baled for portion in portions) else Kind.FEED
            found[id_] = reading.rows(statement, subject=id_.bytes, kind=kind.value)
    return {
        id_: Given(date.fromisoformat(rows[0][0]), {uid(feed): given_kg for _, feed, given_kg in rows})
        for id_, rows in found.items()
        if rows
    }


def _batches(reading: Reading, feeds: Mapping[UUID, Feed]) -> dict[UUID, Batch]:
    """What stands in the soak buckets: the newest batch of each soaked feed, unless it was fed or thrown out."""
    found = {feed.id: reading.rows(sql.BATCHES, subject=feed.id.bytes) for feed in feeds.values() if feed.soaked}
    return {
        id_: Batch(moment(rows[0][0]), rows[0][1], rows[0][2])
        for id_, rows in found.items()
        if rows and not rows[0][3] and rows[0][1] is not None
    }
