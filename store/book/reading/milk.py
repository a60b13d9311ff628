"""The milk of some days, as the entries that count have it, and which of it is used up.

Not on the way to the first frame.
"""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date, datetime, timedelta
from functools import partial
from uuid import UUID

from msgspec import Struct

from store.book.clock import micros
from store.book.desk import ReadingDesk
from store.book.figures import CooledFigure, MilkedFigure, PouredFigure
from store.book.reading import milk_sql
from store.book.reading.entries import read_entries
from store.book.reading.facts import uid
from store.book.snapshot import Written, counting
from store.book.turn import Turn
from store.book.words import FEEDING, State


class MilkRound(Struct, frozen=True):
    """What counts of a round, with what its milk steps and its ice say."""

    turn: Turn
    entries: tuple[Written, ...]


class Use(Struct, frozen=True):
    """The entry that counts of the jar of a milk step: used up, or taken back since."""

    entry_id: UUID
    used_up: bool


def read_milk(desk: ReadingDesk, first: date, last: date) -> tuple[MilkRound, ...]:
    """Every feeding round of some days in which anything was written, oldest first. Raises DamagedBook."""
    return tuple(each for each in _rounds(desk, first, last) if each.entries)


def _rounds(desk: ReadingDesk, first: date, last: date) -> Iterator[MilkRound]:
    for ago in range((last - first).days + 1):
        for slot in FEEDING:
            turn = Turn(first + timedelta(days=ago), slot)
            rows = partial(desk.rows, values={"day": turn.day.isoformat(), "slot": slot})
            entries = read_entries(rows, (MilkedFigure, PouredFigure, CooledFigure))
            yield MilkRound(turn, tuple(counting(entries).values()))


def read_uses(desk: ReadingDesk, cow_ids: Iterable[UUID], since: datetime) -> Mapping[UUID, Use]:
    """By its own step_id what is written of each jar of some cows. since: when the oldest of them was milked."""
    return {
        uid(step_id): Use(uid(id_), state == State.DONE)
        for cow_id in cow_ids
        for id_, step_id, state in desk.rows(milk_sql.JARS, {"subject": cow_id.bytes, "since": micros(since)})
    }
