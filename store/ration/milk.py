"""What milk a cow gives in a day: her pails, and what a calf takes besides."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from uuid import UUID

from msgspec.structs import replace

from store.book.facts.calves import Share
from store.book.facts.milk import PastPail
from store.book.words import SettingName
from store.feedroom.milk_a_day import MEAN_DAYS
from store.husbandry.calf.milk import allowance_kg
from store.husbandry.mean import mean_of
from store.husbandry.milk.share import MILK_FOR_GAIN_KG, PER_GAIN, drunk_for_gain_kg
from store.husbandry.milk.udder import day_kg
from store.husbandry.starting import CALF_MILK_PERCENT
from store.husbandry.why import Value, given, total
from store.ration.asked import Asked, days_between
from store.ration.parts import Missing
from store.ration.trend import read_trend
from store.round.emptied import sharing
from store.round.saying import weight
from store.round.timed import NOT_KNOWN, TimedPail, timed_pails
from store.round.whys.calf_share import EATS_DAYS

MILK = "milk a day"
_, HEAVIEST_KG = allowance_kg.ranges["weight_kg"]


def milk_of(asked: Asked, cow_id: UUID, calves: Mapping[UUID, Value]) -> Value | None:
    """Milk of a day, what calves take included; None: no pail of the last whole week, or a calf's part is not known.

    calves: the weight of each calf that sucks her, of those that were weighed. [kg]
    """
    now = tuple(each for each in asked.snapshot.shares if cow_id in each.cow_ids)
    pails = _in_pails(asked, cow_id, now)
    if not now or pails is None:
        return pails
    if not all(_is_told(calves.get(share.calf_id)) for share in now):
        return None
    taken = tuple(_taken(asked, share, calves[share.calf_id]) for share in now)
    return replace(total(MILK, "kg", (pails, *taken)), came=", ".join((pails.came, *(each.name for each in taken))))


def drunk_by(asked: Asked, calf_id: UUID, weight_kg: Value | None) -> Value | None:
    """What a calf that shares a cow's milk drinks in a day; None: it shares none, or its weight tells nothing. [kg]"""
    if (
        weight_kg is None
        or not _is_told(weight_kg)
        or not any(share.calf_id == calf_id for share in asked.snapshot.shares)
    ):
        return None
    return _drinks(asked, calf_id, weight_kg, "milk that it drinks")


def _drinks(asked: Asked, calf_id: UUID, weight_kg: Value, name: str) -> Value:
    """By its gain where two weights tell it, with what its weight alone would say; else by its weight. [kg a day]"""
    percent = asked.setting(SettingName.CALF_MILK_PERCENT, CALF_MILK_PERCENT)
    by_weight = allowance_kg.of(name, weight_kg=weight_kg, percent_of_weight=percent)
    gain = _gain_of_milk(asked, calf_id)
    if gain is None:
        return by_weight
    per_kg = given(MILK_FOR_GAIN_KG, "milk for 1 kg of gain", "kg", "printed: 286 kg for 26.2 kg", PER_GAIN)
    by_gain = drunk_for_gain_kg.of(name, milk_for_gain=per_kg, gain_kg_day=gain)
    return replace(by_gain, came=f"by its gain; by its weight {weight(by_weight.amount, asked.register.farm.units)}")


def _gain_of_milk(asked: Asked, calf_id: UUID) -> Value | None:
    """What it gains by its last two weights; None: there are not two, or it lost, or it is so old that it eats much."""
    calf = asked.animal(calf_id)
    gain = read_trend(asked.desk, asked.register, calf_id).gain_kg_day
    young = calf and calf.born_on and days_between(calf.born_on, asked.today) <= EATS_DAYS
    return gain if young and gain and gain.amount > 0 else None


def calves_of(asked: Asked, cow_id: UUID) -> tuple[UUID, ...]:
    """The calves that suck her now."""
    return tuple(each.calf_id for each in asked.snapshot.shares if cow_id in each.cow_ids)


def _is_told(calf_kg: Value | None) -> bool:
    """Whether the weight of a calf tells what it drinks: what is printed ends where they live on feed."""
    return calf_kg is not None and calf_kg.amount <= HEAVIEST_KG


def why_unknown(asked: Asked, cow_id: UUID, calves: Mapping[UUID, Value]) -> Iterator[Missing]:
    """Why her milk is not known: no pail of the last whole week, or a calf that nobody weighed or that is too heavy."""
    shares = tuple(each for each in asked.snapshot.shares if cow_id in each.cow_ids)
    if _in_pails(asked, cow_id, shares) is None:
        cow = asked.register.name("animal_as", cow_id)
        yield Missing("milk", f"{cow} has no pail of the last seven days: weigh one in a round, at her milk.")
    for calf_id in calves_of(asked, cow_id):
        calf, weight_kg = asked.register.name("animal_as", calf_id), calves.get(calf_id)
        if weight_kg is None:
            yield Missing("milk", f"{calf} has no weight, so what it takes is not known: F, animals, {calf}, weight.")
        elif not _is_told(weight_kg):
            weighs, most = (weight(kg, asked.register.farm.units) for kg in (weight_kg.amount, HEAVIEST_KG))
            said = f"{calf} weighs {weighs}: what one above {most} sucks is not known"
            yield Missing("milk", f"{said}. If it is weaned: F, animals, {calf}.")


def _in_pails(asked: Asked, cow_id: UUID, now: Sequence[Share]) -> Value | None:
    """What comes into her pails in a day, in the mean of the last whole week."""
    first = max((asked.today - timedelta(days=MEAN_DAYS), *_began(asked, cow_id, now)))
    pails = asked.snapshot.pails.get(cow_id, ())
    of_week = [each for each in timed_pails(cow_id, sharing(asked.snapshot, cow_id), pails) if
               _is_of(each.pail, first, asked.today)]  # fmt: skip
    compared = [each for each in of_week if not each.why_not]
    if not of_week:
        return None
    return _by_days(asked, whole_days(of_week)) if now or not compared else _by_hours(asked, compared)


def whole_days(found: Sequence[TimedPail]) -> Sequence[TimedPail]:
    """Without the days of which a pail is not all: the calf had got out, or she held back. All where no day is left.

    A pail of which only the hours are not known counts: no hours are asked here.
    """
    left_out = {each.pail.turn.day for each in found if each.why_not not in ("", NOT_KNOWN) and each.pail.turn}
    return [each for each in found if each.pail.turn and each.pail.turn.day not in left_out] or found


def _is_of(pail: PastPail, first: date, today: date) -> bool:
    return pail.milk_kg is not None and pail.turn is not None and first <= pail.turn.day < today


def _began(asked: Asked, cow_id: UUID, now: Sequence[Share]) -> Iterator[date]:
    """The first whole day with each calf: her pails before it held what it takes now."""
    for share in now:
        began = share.began(cow_id)
        if began and asked.day(began) + timedelta(days=1) < asked.today:
            yield asked.day(began) + timedelta(days=1)


def _by_hours(asked: Asked, found: Sequence[TimedPail]) -> Value:
    """The mean of what each pail is in 24 hours."""
    days = [
        day_kg.of(
            "pail in 24 h",
            milk_kg=_pail(asked, each.pail),
            elapsed_h=given(each.elapsed_h or 0.0, "hours that she filled", "h", "from the rounds"),
        )
        for each in found
    ]
    return _mean(total("pails in 24 h", "kg", days), len(days), f"mean of {_pails(len(days))}, as 24 hours")


def _by_days(asked: Asked, found: Sequence[TimedPail]) -> Value:
    """What came into pails in the mean of the days that have one: the calf has the rest."""
    pails = [_pail(asked, each.pail) for each in found]
    days = {each.pail.turn.day for each in found if each.pail.turn}
    return _mean(total("pails", "kg", pails), len(days), f"mean of {_pails(len(pails))}")


def _pail(asked: Asked, pail: PastPail) -> Value:
    return given(pail.milk_kg or 0.0, "pail", "kg", f"weighed {asked.said(asked.day(pail.at))}")


def _mean(together: Value, count: int, came: str) -> Value:
    value = mean_of.of(MILK, together=together, count=given(count, "how many", "", "counted"))
    return replace(value, came=came, unit="kg")


def _pails(count: int) -> str:
    return f"{count} pail" if count == 1 else f"{count} pails"


def _taken(asked: Asked, share: Share, calf_kg: Value) -> Value:
    calf = asked.register.name("animal_as", share.calf_id)
    drinks = _drinks(asked, share.calf_id, calf_kg, f"what {calf} drinks")
    cows = given(len(share.cow_ids), "cows that it sucks", "", "as set up")
    return replace(mean_of.of(f"what {calf} takes", together=drinks, count=cows), unit="kg")
