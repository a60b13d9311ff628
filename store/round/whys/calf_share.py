"""What her calf took of a cow, by two ways that know nothing of each other, each with a band, and the gap between."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import TypeAlias
from uuid import UUID

from msgspec import Struct

from store.book.reading.lactation import InPails, Weight
from store.book.turn import local
from store.husbandry.body.growth import gain_kg_day
from store.husbandry.milk.share import (
    KG_PER_KG,
    PER_GAIN,
    REMOVED,
    drinks_at_most_kg,
    drunk_for_gain_kg,
    gap_kg,
    held_back_kg,
    makes_kg,
    makes_kg_h,
    not_in_the_pail_kg,
)
from store.husbandry.milk.udder import filled_h
from store.husbandry.why import LEAST, MEAN, Source, Sure, Value, given, of_all, total
from store.round.timed import TimedPail
from store.round.whys.asked import Asked
from store.round.whys.in_pails import whole_days
from store.round.whys.milk import elapsed_value

DAYS = 7
"""So many of the last whole days in pails are taken together."""
EATS_DAYS = 84
"""A calf older than this eats too much else for its gain to tell its milk: ten weeks, and two of grace. Assumed."""
STAYS = Source("10 to 20 % of the milk stay in an udder", Sure.MEMORY)
TAKEN = "the calf took, by the pail"
Band: TypeAlias = tuple[Value, Value]


class CalfShare(Struct, frozen=True):
    """Least and most by each way; None: nothing to tell it from. gap: between their middles. [kg a day]

    held_back: of what is not in the pail, what no calf of that weight can have drunk, by the least that is told.
    """

    by_pail: Band | None = None
    by_gain: Band | None = None
    gap: Value | None = None
    held_back: Value | None = None

    def values(self) -> Iterator[Value]:
        """What there is of them."""
        for band in (self.by_pail, self.by_gain):
            yield from band or ()
        yield from (each for each in (self.gap, self.held_back) if each)


def calf_share(
    asked: Asked, pails: Sequence[TimedPail], in_pails: Sequence[InPails], calves: Mapping[UUID, Sequence[Weight]]
) -> CalfShare:
    """Of a cow. pails: those that compare, newest first. calves: every calf that sucks her, and no other cow."""
    days = whole_days(in_pails)[-DAYS:]
    missing = _missing(asked, pails, days) if pails and days else None
    most = _drink_at_most(asked, calves)
    by_pail = (_drunk(missing[0], most), _drunk(missing[1], most)) if missing else None
    by_gain = _by_gain(asked, calves)
    gap = None
    if by_pail and by_gain:
        one, other = (of_all(MEAN, f"the middle {way}", "kg", band) for way, band in
                      (("by the pail", by_pail), ("by its gain", by_gain)))  # fmt: skip
        gap = gap_kg.of("between the two ways", one=one, other=other)
    held = held_back_kg.of(missing_kg=missing[0], most_kg=most) if missing and most else None
    return CalfShare(by_pail, by_gain, gap, held if held and held.amount else None)


def _missing(asked: Asked, pails: Sequence[TimedPail], days: Sequence[InPails]) -> Band:
    """What she made in a day, less what came into her pails on whole days: least and most."""
    milk = of_all(MEAN, "her pail", "kg", (_milk(asked, each) for each in pails))
    apart = of_all(MEAN, "hours that it filled", "h", (_hours(each) for each in pails))
    of_days = (given(each.kg, f"in pails on {each.day.day} {each.day:%b}", "kg", "weighed") for each in days)
    in_a_day = of_all(MEAN, "in her pails in a day", "kg", of_days)
    least, most = (_not_in_the_pail(milk, apart, in_a_day, removed) for removed in sorted(REMOVED, reverse=True))
    return least, most


def _drunk(missing: Value, most: Value | None) -> Value:
    """No more than calves of their weight drink."""
    return of_all(LEAST, TAKEN, "kg", (missing, most)) if most and most.amount < missing.amount else missing


def _not_in_the_pail(milk: Value, apart: Value, in_a_day: Value, removed: float) -> Value:
    part = given(removed, "part that a milking takes", "", "common practice", STAYS)
    full = filled_h.of("hours at full rate", elapsed_h=apart)
    rate = makes_kg_h.of(milk_kg=milk, removed=part, full_h=full)
    made = makes_kg.of(rate_kg_h=rate, full_h=full, apart_h=apart)
    return not_in_the_pail_kg.of(TAKEN, made_kg=made, pails_kg=in_a_day)


def _milk(asked: Asked, each: TimedPail) -> Value:
    return given(each.pail.milk_kg or 0.0, f"pail of {asked.when(each.pail.at)}", "kg", "weighed")


def _hours(each: TimedPail) -> Value:
    return elapsed_value(each.emptied_at or each.pail.at, each.pail.at)


def _drink_at_most(asked: Asked, calves: Mapping[UUID, Sequence[Weight]]) -> Value | None:
    """None where one of them was never weighed."""
    if not all(calves.values()):
        return None
    return total("no calf drinks more", "kg", (
        drinks_at_most_kg.of(calf_kg=_weight(asked, calf_id, weights[0])) for calf_id, weights in calves.items()
    ))  # fmt: skip


def _weight(asked: Asked, calf_id: UUID, weight: Weight) -> Value:
    return given(weight.kg, asked.snapshot.names.get(calf_id, "calf"), "kg", f"weighed {asked.day(weight.at)}")


def _by_gain(asked: Asked, calves: Mapping[UUID, Sequence[Weight]]) -> Band | None:
    """By the last two weights of each that lie a week apart; None where one has not, has lost, or eats much else."""
    gains = [_gain(asked, calf_id, weights) for calf_id, weights in calves.items()]
    known = [each for each in gains if each and each.amount > 0]
    if not gains or len(known) < len(gains):
        return None
    least, most = (
        total("the calf took, by its gain", "kg", (drunk_for_gain_kg.of(
            milk_for_gain=given(kg, "milk for 1 kg of gain", "kg", "printed from 10 to 12", PER_GAIN), gain_kg_day=gain
        ) for gain in known))
        for kg in KG_PER_KG
    )  # fmt: skip
    return least, most


def _gain(asked: Asked, calf_id: UUID, weights: Sequence[Weight]) -> Value | None:
    now = weights[0] if weights else None
    before = next((each for each in weights if now and (now.at - each.at).days >= DAYS), None)
    if now is None or before is None or _days_old(asked, calf_id, now) > EATS_DAYS:
        return None
    days = given((now.at - before.at).days, "days between", "d", "counted")
    return gain_kg_day.of(before_kg=_weight(asked, calf_id, before), now_kg=_weight(asked, calf_id, now), days=days)


def _days_old(asked: Asked, calf_id: UUID, weight: Weight) -> int:
    """How old it was when it was weighed; where its birth is not known, too old."""
    born = next((each.born_on for each in asked.snapshot.animals if each.id == calf_id), None)
    return (local(weight.at, asked.zone).date() - (born or date.min)).days
