"""The snapshot of one round."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from functools import partial
from typing import Any
from uuid import UUID

from store.book.clock import micros, moment
from store.book.desk import FoundRow, ReadingDesk
from store.book.facts.calves import Birth, Share
from store.book.facts.care import Look, Treatment
from store.book.facts.farm import Animal, FarmFacts
from store.book.facts.feed import Batch, Feed, PlanRow, Portion, Told
from store.book.facts.jobs import Job
from store.book.facts.milk import Milking, PastPail, QuarterFound
from store.book.reading import facts, sql, stock_sql
from store.book.reading.done import done_on
from store.book.reading.entries import read_entries
from store.book.reading.facts import uid
from store.book.rhythm import is_her_turn
from store.book.snapshot import Given, LastRound, Snapshot, Written
from store.book.turn import Turn
from store.book.words import Kind, Stage
from store.husbandry.lots import lot_began

PASSED_OVER_MOST = 14
"""So many rounds in which nothing was written are passed over: a week of two a day."""
SHARED_BEFORE, QUARTERS_BEFORE = timedelta(days=30), timedelta(days=30)
"""A pair that ended, or a quarter that was found so, longer ago says nothing of this round."""
MILKED_BEFORE = timedelta(days=8)
"""So long ago a pail can still be house milk that must not be drunk."""
UDDERS = (Stage.IN_MILK, Stage.DRY, Stage.CLOSE_UP)
LOTS_MOST = 12
"""So many deliveries back it is looked for the beginning of a lot."""
FOR_EVER = 2**63 - 1
"""Later than any moment. [microseconds]"""


class Reading:
    """One reading of the book: every statement with the same moment and round."""

    def __init__(self, desk: ReadingDesk, turn: Turn, now: datetime) -> None:
        """For a round, as the book stands at a moment."""
        self.desk = desk
        self.farm: FarmFacts = facts.read_facts(desk, now)
        self.values: dict[str, Any] = {
            "at": micros(now),
            "air": self.farm.air.value,
            "known": FOR_EVER,
            "weeks_ago": micros(now - QUARTERS_BEFORE),
            **_named(turn),
        }

    def rows(self, statement: str, **more: Any) -> Sequence[FoundRow]:
        """What a statement finds."""
        return self.desk.rows(statement, self.values | more)


def read_snapshot(desk: ReadingDesk, turn: Turn, now: datetime) -> Snapshot:
    """All that the plan of a round needs, as the book holds it now. Raises DamagedBook."""
    reading = Reading(desk, turn, now)
    rows = reading.rows
    feeds = facts.feeds(rows(sql.FEEDS), rows(sql.BARRED))
    last = turn.facts_at(reading.farm.zone, reading.farm.evening_from_h)
    known = micros(now) if now >= last else FOR_EVER  # a past round by what was known then
    reading.values["known"] = known
    animal_portions, pen_portions = _portions(reading, feeds, turn.slot, at=micros(min(now, last)))
    next_begins = max(turn.after().begins(reading.farm.zone), now)
    next_animal, next_pen = _portions(reading, feeds, turn.after().slot, at=micros(next_begins))
    shares = _shares(reading)
    animals = facts.animals(rows(sql.ANIMALS))
    pails = {id_: _pails(reading, id_) for id_ in _milked(reading, turn, animals)}
    all_portions = animal_portions | pen_portions
    named = rows(sql.NAMES)
    return Snapshot(
        farm=reading.farm,
        turn=turn,
        people=facts.people(rows(sql.PEOPLE)),
        pens=facts.pens(rows(sql.PENS)),
        animals=animals,
        feeds=feeds,
        portions=_with_rows(reading, animal_portions, sql.ANIMAL_PLAN_ROWS)
        | _with_rows(reading, pen_portions, sql.PEN_PLAN_ROWS),
        portions_next=next_animal | next_pen,
        milkings=_milkings(reading, turn, pails),
        jobs=tuple(_job(reading, turn, job) for job in facts.jobs(rows(sql.JOBS), reading.farm.zone)),
        names={uid(id_): name for id_, name, _ in named},
        pen_of={uid(id_): uid(pen_id) for id_, _, pen_id in named if pen_id is not None},
        given_before=_given_before(reading, animal_portions, pen_portions),
        shares=_now(shares),
        shared_before=tuple(each for each in shares if each.until is not None),
        pails=pails,
        quarters={each.id: _quarters(reading, each.id) for each in animals if each.stage in UDDERS},
        births=_births(reading, animals),
        substitutes=facts.substitutes(rows(sql.SUBSTITUTES)),
        withheld=facts.withheld(rows(sql.WITHHELD)),
        soak_limits=facts.soak_limits(rows(sql.SOAK_RULES)),
        batches=_batches(reading, feeds),
        told=_told(reading),
        new_bags=_new_bags(reading, {each.feed.id for plan in all_portions.values() for each in plan}),
        looks=tuple(_look(reading, found) for found in rows(sql.LOOKS)),
        treatments=tuple(_treatment(reading, found) for found in rows(sql.TREATMENTS)),
        last=_last_round(reading, turn),
        entries=read_entries(rows),
    )


def was_written(desk: ReadingDesk, turn: Turn) -> bool:
    """Whether anything was written in a round."""
    return bool(desk.rows(sql.ANY_ENTRY, {**_named(turn), "known": FOR_EVER}))


def read_again(desk: ReadingDesk, before: Snapshot, now: datetime) -> Snapshot:
    """The snapshot after an entry of this very round was added by this program: nothing else can have changed."""
    reading = Reading(desk, before.turn, now)
    shares = _now(_shares(reading))
    return replace(before, farm=reading.farm, shares=shares, entries=read_entries(reading.rows))


def _portions(
    reading: Reading, feeds: Mapping[UUID, Feed], slot: str, **more: Any
) -> tuple[dict[UUID, tuple[Portion, ...]], dict[UUID, tuple[Portion, ...]]]:
    measures = _told(reading, **more)
    plans = (reading.rows(statement, slot=slot, **more) for statement in (sql.ANIMAL_PLANS, sql.PEN_PLANS))
    animals, pens = (facts.portions(each, feeds, measures) for each in plans)
    return animals, pens


def _with_rows(
    reading: Reading, plans: Mapping[UUID, tuple[Portion, ...]], statement: str
) -> dict[UUID, tuple[Portion, ...]]:
    """The portions of this round with the rows of their plans, of which a change under way is seen."""

    def rows(id_: UUID, portion: Portion) -> tuple[PlanRow, ...]:
        found = reading.rows(statement, subject=id_.bytes, feed=portion.feed.id.bytes)
        return facts.plan_rows(found)

    return {id_: tuple(replace(each, rows=rows(id_, each)) for each in plan) for id_, plan in plans.items()}


def _told(reading: Reading, **more: Any) -> dict[tuple[UUID, UUID], Told]:
    return facts.told(reading.rows(sql.MEASURES, **more))


def _last_round(reading: Reading, turn: Turn) -> LastRound:
    """The round before this one; rounds that nobody opened are passed over, so that what was left is not lost."""
    passed = [turn.before()]
    while len(passed) <= PASSED_OVER_MOST and not reading.rows(sql.ANY_ENTRY, **_named(passed[-1])):
        passed.append(passed[-1].before())
    if len(passed) > PASSED_OVER_MOST:
        passed = passed[:1]
    between = (each.between() for each in reversed(passed) if each.between() != turn)
    walked = (each for each in between if reading.rows(sql.ANY_ENTRY, **_named(each)))
    return LastRound(passed[-1], _known(reading, passed[-1]), tuple(LastRound(e, _known(reading, e)) for e in walked))


def _known(reading: Reading, turn: Turn) -> tuple[Written, ...]:
    """What was written in another round, as far as it was known."""
    entries = read_entries(partial(reading.rows, **_named(turn)))
    return tuple(entry for entry in entries if micros(entry.written_at) <= reading.values["known"])


def _named(turn: Turn) -> dict[str, str]:
    return {"day": turn.day.isoformat(), "slot": turn.slot}


def _job(reading: Reading, turn: Turn, job: Job) -> Job:
    """A job, and when it was done last: looked up only where this round's plan hangs on it."""
    if not (job.due.looks_back and job.slot == turn.slot and job.due.comes_on(turn.day)):
        return job
    return replace(job, last_on=done_on(reading.rows, reading.farm.id, job, turn))


def _look(reading: Reading, found: FoundRow) -> Look:
    of_it = {"subject": found[1], "look": found[0], "year_ago": reading.values["at"] - 366 * 24 * sql.HOUR}
    return facts.look(found, facts.last_look(reading.rows(sql.LAST_LOOK, **of_it)))


def _treatment(reading: Reading, found: FoundRow) -> Treatment:
    of_it = {"subject": found[1], "treatment": found[0], "since": found[9] - 400 * 24 * sql.HOUR}
    given, not_given = (reading.rows(statement, **of_it) for statement in (sql.DOSES_BEFORE, sql.DOSES_NOT_GIVEN))
    return facts.treatment(found, given, not_given)


def _shares(reading: Reading) -> tuple[Share, ...]:
    """Every pair of the last weeks, with what was written of the calf while it was one."""
    rows = reading.rows
    ended_after = moment(reading.values["at"]) - SHARED_BEFORE
    pairs = facts.shares(rows(sql.SHARINGS), rows(sql.APART_RULES), rows(sql.SECOND_COWS), ended_after)
    written = {
        calf_id: tuple(facts.parting(found) for found in rows(sql.PARTINGS, subject=calf_id.bytes))
        for calf_id in {each.calf_id for each in pairs}
    }
    return tuple(
        replace(each, partings=tuple(p for p in written[each.calf_id] if each.until is None or p.at <= each.until))
        for each in pairs
    )


def _now(shares: tuple[Share, ...]) -> tuple[Share, ...]:
    return tuple(each for each in shares if each.until is None)


def _milked(reading: Reading, turn: Turn, animals: Sequence[Animal]) -> dict[UUID, None]:
    """The cows in milk or dry, then whatever else was milked in the last days, also one that is gone since."""
    lately = reading.rows(sql.MILKED_LATELY, since_day=(turn.day - MILKED_BEFORE).isoformat())
    in_milk = (each.id for each in animals if each.stage in UDDERS)
    return dict.fromkeys((*in_milk, *sorted(uid(id_) for (id_,) in lately)))


def _pails(reading: Reading, cow_id: UUID) -> tuple[PastPail, ...]:
    return tuple(facts.past_pail(found) for found in reading.rows(sql.PAILS_BEFORE, subject=cow_id.bytes))


def _births(reading: Reading, animals: Sequence[Animal]) -> dict[UUID, Birth]:
    """The last calving of each that has one in the book."""
    asked = (each.id for each in animals if each.calved_on is not None)
    found = ((id_, reading.rows(sql.LAST_BIRTH, subject=id_.bytes)) for id_ in asked)
    return {id_: facts.birth(rows) for id_, rows in found if rows}


def _quarters(reading: Reading, cow_id: UUID) -> tuple[QuarterFound, ...]:
    return tuple(facts.quarter_found(found) for found in reading.rows(sql.QUARTERS, subject=cow_id.bytes))


def _milkings(reading: Reading, turn: Turn, pails: Mapping[UUID, tuple[PastPail, ...]]) -> dict[UUID, Milking]:
    """The cows that are milked in this round: planned in its slot, and where not at each milking, at her turn."""
    planned = [_milking(reading, found, pails) for found in reading.rows(sql.MILKINGS)]
    seldom = any(each.every > 1 for each in planned)
    other = reading.rows(sql.MILKINGS, slot=turn.after().slot) if seldom else ()
    twice = {uid(found[0]) for found in other}

    def at_turn(each: Milking) -> bool:
        slots = {turn.slot, turn.after().slot} if each.animal_id in twice else {turn.slot}
        return is_her_turn(each.every, slots, each.pails_before, turn)

    return {each.animal_id: each for each in planned if at_turn(each)}


def _milking(reading: Reading, found: FoundRow, pails: Mapping[UUID, tuple[PastPail, ...]]) -> Milking:
    animal_id, pail_id, name, empty_kg, every = found
    cow_id = uid(animal_id)
    before = pails[cow_id] if cow_id in pails else _pails(reading, cow_id)
    return Milking(cow_id, facts.pail(pail_id, name, empty_kg), before, every or 1)


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


def _new_bags(reading: Reading, feed_ids: set[UUID]) -> dict[UUID, datetime]:
    """When the newest lot of each feed came, where any came by the book."""
    found = {id_: reading.rows(stock_sql.LAST_DELIVERED, feed=id_.bytes, most=LOTS_MOST) for id_ in feed_ids}
    return {id_: moment(rows[lot_began([row[-1] for row in rows])][2]) for id_, rows in found.items() if rows}


def _batches(reading: Reading, feeds: Mapping[UUID, Feed]) -> dict[UUID, Batch]:
    """What stands in the soak buckets: the newest batch of each soaked feed, unless it was fed or thrown out."""
    found = {feed.id: reading.rows(sql.BATCHES, subject=feed.id.bytes) for feed in feeds.values() if feed.soaked}
    return {
        id_: Batch(moment(rows[0][0]), rows[0][1], rows[0][2])
        for id_, rows in found.items()
        if rows and not rows[0][3] and rows[0][1] is not None
    }
