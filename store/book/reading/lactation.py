"""What a cow's lactation is told from, besides her last pails. Not on the way to the first frame."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime
from functools import partial
from typing import Any
from uuid import UUID

from msgspec import Struct

from store.book.clock import micros, moment
from store.book.desk import ReadingDesk
from store.book.facts.farm import Animal
from store.book.reading import milk_sql
from store.book.turn import local


class MilkTest(Struct, frozen=True):
    """What a test of her milk found. None: not tested for. [%]"""

    at: datetime
    fat_percent: float | None
    protein_percent: float | None


class InPails(Struct, frozen=True):
    """All that came into her pails on a day, of so many milkings. [kg]"""

    day: date
    kg: float
    milkings: int


class Weight(Struct, frozen=True):
    """What an animal weighed. [kg]"""

    at: datetime
    kg: float


class Lactation(Struct, frozen=True):
    """Of one cow. in_pails: by day since she calved, the earliest first. calves: by calf, the newest weight first."""

    breed: str = ""
    test: MilkTest | None = None
    in_pails: tuple[InPails, ...] = ()
    calves: Mapping[UUID, tuple[Weight, ...]] = {}


def read_lactation(desk: ReadingDesk, cow: Animal, calf_ids: Sequence[UUID], now: datetime, zone: str) -> Lactation:
    """As the book has it at a moment. calf_ids: the calves that suck her."""
    rows = partial(_rows, desk, cow.id, now)
    breed = rows(milk_sql.BREED)
    return Lactation(
        str(breed[0][0]) if breed else "",
        next((MilkTest(moment(at), *found) for at, *found in rows(milk_sql.MILK_TEST)), None),
        tuple(_in_pails(rows, cow.calved_on, local(now, zone).date())),
        {calf_id: _weights(desk, calf_id, now) for calf_id in calf_ids},
    )


def _in_pails(rows: Any, calved_on: date | None, today: date) -> Iterator[InPails]:
    """None where it is not known when she calved."""
    if calved_on is not None:
        days = {"since_day": calved_on.isoformat(), "day": today.isoformat()}
        for day, kg, milkings in rows(milk_sql.IN_PAILS, **days):
            yield InPails(date.fromisoformat(day), kg, milkings)


def _weights(desk: ReadingDesk, animal_id: UUID, now: datetime) -> tuple[Weight, ...]:
    return tuple(Weight(moment(at), kg) for at, kg in _rows(desk, animal_id, now, milk_sql.WEIGHED))


def _rows(desk: ReadingDesk, animal_id: UUID, now: datetime, statement: str, **values: Any) -> Sequence[Any]:
    return desk.rows(statement, {"subject": animal_id.bytes, "at": micros(now), **values})
