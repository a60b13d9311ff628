"""How condition and weight of an animal have gone, and when her next score is due."""

from collections.abc import Sequence
from datetime import date, timedelta
from uuid import UUID

from msgspec import Struct

from store.book.desk import Desk
from store.book.reading.measured import Measured, read_measured
from store.book.register import Register
from store.book.turn import local
from store.husbandry.body.growth import gain_kg_day
from store.husbandry.why import Value, given
from store.ration.weight import value_of, weighings

AT_CALVING = timedelta(days=30)
"""A score so near to her calving, before or after it, is the one at calving. Common practice."""
LEAST_DAYS = 7
"""Weights nearer than this say little of a gain: what is in the rumen weighs as much. Common practice. [days]"""


class Went(Struct, frozen=True):
    """From one figure to another: of the condition in points, of the weight in kg. at_calving: the first is of then."""

    first_on: date
    first: float
    last_on: date
    last: float
    at_calving: bool = False

    @property
    def change(self) -> float:
        """Above zero: it went up."""
        return self.last - self.first

    @property
    def days(self) -> int:
        """Days between the two."""
        return (self.last_on - self.first_on).days


class Trend(Struct, frozen=True):
    """Of one animal. condition: since she calved where she was scored then, else since the score before; None: fewer
    than two scores. gain_kg_day: by her last two weights. score_due_on: of the next score; None: nobody set how often.
    """

    condition: Went | None = None
    weight: Went | None = None
    gain_kg_day: Value | None = None
    score_due_on: date | None = None


def read_trend(desk: Desk, register: Register, animal_id: UUID) -> Trend:
    """As the book stands at the moment of the register."""
    zone, animal = register.farm.zone, register.get("animal_as", animal_id) or {}
    looks = read_measured(desk, animal_id, register.at)
    scores = [(local(each.at, zone).date(), each.condition_points) for each in looks if each.condition_points]
    weighed = _weights(register, animal_id, looks)
    every_days = (register.get("feeding_goal", animal_id) or {}).get("score_every_days")
    return Trend(
        condition_went(scores, animal.get("calved_on")),
        _went(weighed),
        _gain(weighed),
        score_due_on(scores, every_days, local(register.at, zone).date()),
    )


def condition_went(scores: Sequence[tuple[date, float]], calved_on: date | None) -> Went | None:
    """The newest score against the one at her calving; where there is none, against the one before. Oldest first."""
    near = [each for each in scores[:-1] if calved_on and abs(each[0] - calved_on) <= AT_CALVING]
    if near and calved_on:
        first_on, first = min(near, key=lambda each: abs(each[0] - calved_on))
        return Went(first_on, first, *scores[-1], at_calving=True)
    return Went(*scores[-2], *scores[-1]) if len(scores) > 1 else None


def score_due_on(scores: Sequence[tuple[date, float]], every_days: int | None, today: date) -> date | None:
    """When the next score is due: so many days after the last one, today where there is none."""
    if every_days is None:
        return None
    return scores[-1][0] + timedelta(days=every_days) if scores else today


def _weights(register: Register, animal_id: UUID, looks: tuple[Measured, ...]) -> list[tuple[date, float]]:
    found = (
        (local(each.at, register.farm.zone).date(), value_of(each, ""))
        for each in weighings(register, animal_id, looks)
    )
    return [(on, value.amount) for on, value in found if value]


def _went(weighed: Sequence[tuple[date, float]]) -> Went | None:
    """Her last weight against the one before that is a week older."""
    before = [each for each in weighed if (weighed[-1][0] - each[0]).days >= LEAST_DAYS]
    return Went(*before[-1], *weighed[-1]) if before else None


def _gain(weighed: Sequence[tuple[date, float]]) -> Value | None:
    went = _went(weighed)
    if went is None:
        return None
    return gain_kg_day.of(
        before_kg=given(went.first, "weight before", "kg", f"{went.first_on:%-d %b}"),
        now_kg=given(went.last, "weight", "kg", f"{went.last_on:%-d %b}"),
        days=given(went.days, "days between", "days", "counted"),
    )
