"""The snapshot of one round."""

from datetime import datetime
from functools import partial

from msgspec.structs import replace

from store.book.clock import micros
from store.book.desk import FoundRow, ReadingDesk
from store.book.facts.care import Look, Treatment
from store.book.facts.jobs import Job
from store.book.reading import care_facts, care_sql, facts, feed_facts, feed_sql, milk_facts, milk_sql, sql
from store.book.reading.done import done_on
from store.book.reading.entries import read_entries
from store.book.reading.facts import uid
from store.book.reading.fed import read_batches, read_given_before, read_new_bags, read_portions, read_told, with_rows
from store.book.reading.reading import FOR_EVER, Reading, named
from store.book.reading.udders import (
    UDDERS,
    read_births,
    read_milked,
    read_milkings,
    read_pails,
    read_quarters,
    read_shares,
    sharing_now,
)
from store.book.snapshot import LastRound, Snapshot, Written
from store.book.turn import Turn

PASSED_OVER_MOST = 14
"""So many rounds in which nothing was written are passed over: a week of two a day."""


def read_snapshot(desk: ReadingDesk, turn: Turn, now: datetime) -> Snapshot:
    """All that the plan of a round needs, as the book holds it now. Raises DamagedBook."""
    reading = Reading(desk, turn, now)
    rows = reading.rows
    feeds = feed_facts.feeds(rows(feed_sql.FEEDS), rows(feed_sql.BARRED))
    last = turn.facts_at(reading.farm.zone, reading.farm.evening_from_h)
    known = micros(now) if now >= last else FOR_EVER  # a past round by what was known then
    reading.values["known"] = known
    animal_portions, pen_portions = read_portions(reading, feeds, turn.slot, at=micros(min(now, last)))
    next_begins = max(turn.after().begins(reading.farm.zone), now)
    next_animal, next_pen = read_portions(reading, feeds, turn.after().slot, at=micros(next_begins))
    shares = read_shares(reading)
    animals = facts.animals(rows(sql.ANIMALS))
    pails = {id_: read_pails(reading, id_) for id_ in read_milked(reading, turn, animals)}
    all_portions = animal_portions | pen_portions
    things = rows(sql.NAMES)
    return Snapshot(
        farm=reading.farm,
        turn=turn,
        people=facts.people(rows(sql.PEOPLE)),
        pens=facts.pens(rows(sql.PENS)),
        animals=animals,
        feeds=feeds,
        portions=with_rows(reading, animal_portions, feed_sql.ANIMAL_PLAN_ROWS)
        | with_rows(reading, pen_portions, feed_sql.PEN_PLAN_ROWS),
        portions_next=next_animal | next_pen,
        milkings=read_milkings(reading, turn, pails),
        jobs=tuple(_job(reading, turn, job) for job in facts.jobs(rows(sql.JOBS), reading.farm.zone)),
        names={uid(id_): name for id_, name, _ in things},
        pen_of={uid(id_): uid(pen_id) for id_, _, pen_id in things if pen_id is not None},
        given_before=read_given_before(reading, animal_portions, pen_portions),
        shares=sharing_now(shares),
        shared_before=tuple(each for each in shares if each.until is not None),
        pails=pails,
        quarters={each.id: read_quarters(reading, each.id) for each in animals if each.stage in UDDERS},
        births=read_births(reading, animals),
        substitutes=feed_facts.substitutes(rows(feed_sql.SUBSTITUTES)),
        withheld=milk_facts.withheld(rows(milk_sql.WITHHELD)),
        soak_limits=feed_facts.soak_limits(rows(feed_sql.SOAK_RULES)),
        batches=read_batches(reading, feeds),
        told=read_told(reading),
        new_bags=read_new_bags(reading, {each.feed.id for plan in all_portions.values() for each in plan}),
        looks=tuple(_look(reading, found) for found in rows(care_sql.LOOKS)),
        treatments=tuple(_treatment(reading, found) for found in rows(care_sql.TREATMENTS)),
        last=_last_round(reading, turn),
        entries=read_entries(rows),
    )


def was_written(desk: ReadingDesk, turn: Turn) -> bool:
    """Whether anything was written in a round."""
    return bool(desk.rows(sql.ANY_ENTRY, {**named(turn), "known": FOR_EVER}))


def read_again(desk: ReadingDesk, before: Snapshot, now: datetime) -> Snapshot:
    """The snapshot after an entry of this very round was added by this program: nothing else can have changed."""
    reading = Reading(desk, before.turn, now)
    shares = sharing_now(read_shares(reading))
    return replace(before, farm=reading.farm, shares=shares, entries=read_entries(reading.rows))


def _last_round(reading: Reading, turn: Turn) -> LastRound:
    """The round before this one; rounds that nobody opened are passed over, so that what was left is not lost."""
    passed = [turn.before()]
    while len(passed) <= PASSED_OVER_MOST and not reading.rows(sql.ANY_ENTRY, **named(passed[-1])):
        passed.append(passed[-1].before())
    if len(passed) > PASSED_OVER_MOST:
        passed = passed[:1]
    between = (each.between() for each in reversed(passed) if each.between() != turn)
    walked = (each for each in between if reading.rows(sql.ANY_ENTRY, **named(each)))
    return LastRound(passed[-1], _known(reading, passed[-1]), tuple(LastRound(e, _known(reading, e)) for e in walked))


def _known(reading: Reading, turn: Turn) -> tuple[Written, ...]:
    """What was written in another round, as far as it was known."""
    entries = read_entries(partial(reading.rows, **named(turn)))
    return tuple(entry for entry in entries if micros(entry.written_at) <= reading.values["known"])


def _job(reading: Reading, turn: Turn, job: Job) -> Job:
    """A job, and when it was done last: looked up only where this round's plan hangs on it."""
    if not (job.due.looks_back and job.slot == turn.slot and job.due.comes_on(turn.day)):
        return job
    return replace(job, last_on=done_on(reading.rows, reading.farm.id, job, turn))


def _look(reading: Reading, found: FoundRow) -> Look:
    of_it = {"subject": found[1], "look": found[0], "year_ago": reading.values["at"] - 366 * 24 * sql.HOUR}
    return care_facts.look(found, care_facts.last_look(reading.rows(care_sql.LAST_LOOK, **of_it)))


def _treatment(reading: Reading, found: FoundRow) -> Treatment:
    of_it = {"subject": found[1], "treatment": found[0], "since": found[9] - 400 * 24 * sql.HOUR}
    given, not_given = (
        reading.rows(statement, **of_it) for statement in (care_sql.DOSES_BEFORE, care_sql.DOSES_NOT_GIVEN)
    )
    return care_facts.treatment(found, given, not_given)
