"""What is read of each cow: the calves that share her milk, her pails, quarters and calving."""

from collections.abc import Mapping, Sequence
from datetime import timedelta
from uuid import UUID

from msgspec.structs import replace

from store.book.clock import moment
from store.book.desk import FoundRow
from store.book.facts.calves import Birth, Share
from store.book.facts.farm import Animal
from store.book.facts.milk import Milking, PastPail, QuarterFound
from store.book.reading import care_facts, care_sql, milk_facts, milk_sql
from store.book.reading.facts import uid
from store.book.reading.reading import SHARED_BEFORE, Reading
from store.book.rhythm import is_her_turn
from store.book.turn import Turn
from store.book.words import Stage

MILKED_BEFORE = timedelta(days=8)
"""So long ago a pail can still be house milk that must not be drunk."""

UDDERS = (Stage.IN_MILK, Stage.DRY, Stage.CLOSE_UP)


def read_shares(reading: Reading) -> tuple[Share, ...]:
    """Every pair of the last weeks, with what was written of the calf while it was one."""
    rows = reading.rows
    ended_after = moment(reading.values["at"]) - SHARED_BEFORE
    pairs = milk_facts.shares(
        rows(milk_sql.SHARINGS), rows(milk_sql.APART_RULES), rows(milk_sql.SECOND_COWS), ended_after
    )
    written = {
        calf_id: tuple(milk_facts.parting(found) for found in rows(milk_sql.PARTINGS, subject=calf_id.bytes))
        for calf_id in {each.calf_id for each in pairs}
    }
    return tuple(
        replace(each, partings=tuple(p for p in written[each.calf_id] if each.until is None or p.at <= each.until))
        for each in pairs
    )


def sharing_now(shares: tuple[Share, ...]) -> tuple[Share, ...]:
    """Those that share now."""
    return tuple(each for each in shares if each.until is None)


def read_milked(reading: Reading, turn: Turn, animals: Sequence[Animal]) -> dict[UUID, None]:
    """The cows in milk or dry, then whatever else was milked in the last days, also one that is gone since."""
    lately = reading.rows(milk_sql.MILKED_LATELY, since_day=(turn.day - MILKED_BEFORE).isoformat())
    in_milk = (each.id for each in animals if each.stage in UDDERS)
    return dict.fromkeys((*in_milk, *sorted(uid(id_) for (id_,) in lately)))


def read_pails(reading: Reading, cow_id: UUID) -> tuple[PastPail, ...]:
    """Her milkings before this round, newest first."""
    return tuple(milk_facts.past_pail(found) for found in reading.rows(milk_sql.PAILS_BEFORE, subject=cow_id.bytes))


def read_births(reading: Reading, animals: Sequence[Animal]) -> dict[UUID, Birth]:
    """The last calving of each that has one in the book."""
    asked = (each.id for each in animals if each.calved_on is not None)
    found = ((id_, reading.rows(care_sql.LAST_BIRTH, subject=id_.bytes)) for id_ in asked)
    return {id_: care_facts.birth(rows) for id_, rows in found if rows}


def read_quarters(reading: Reading, cow_id: UUID) -> tuple[QuarterFound, ...]:
    """What was found at her quarters, newest first."""
    return tuple(milk_facts.quarter_found(found) for found in reading.rows(milk_sql.QUARTERS, subject=cow_id.bytes))


def read_milkings(reading: Reading, turn: Turn, pails: Mapping[UUID, tuple[PastPail, ...]]) -> dict[UUID, Milking]:
    """The cows that are milked in this round: planned in its slot, and where not at each milking, at her turn."""
    other = turn.after().slot
    twice = {uid(found[0]) for found in reading.rows(milk_sql.MILKINGS, slot=other)}
    planned = [_milking(reading, found, pails) for found in reading.rows(milk_sql.MILKINGS)]
    whole = [replace(each, slots=frozenset({turn.slot, *[other] * (each.animal_id in twice)})) for each in planned]
    return {each.animal_id: each for each in whole if is_her_turn(each.every, each.slots, each.pails_before, turn)}


def _milking(reading: Reading, found: FoundRow, pails: Mapping[UUID, tuple[PastPail, ...]]) -> Milking:
    animal_id, pail_id, name, empty_kg, every = found
    cow_id = uid(animal_id)
    before = pails[cow_id] if cow_id in pails else read_pails(reading, cow_id)
    return Milking(cow_id, milk_facts.pail(pail_id, name, empty_kg), before, every or 1)
