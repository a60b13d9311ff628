"""What a ration says of a calf on milk: its colostrum, its milk, its gain against what is to expect, its weaning."""

from collections.abc import Iterator

from store.husbandry.calf.growth import of_expected_percent
from store.husbandry.calf.milk import FIRST_L, FIRST_WITHIN_H
from store.husbandry.calf.weaning import DAYS_RUNNING
from store.husbandry.milk.share import drunk_for_gain_kg
from store.husbandry.ration.cautions import DECIDE
from store.husbandry.why import Value
from store.ration.calf import CalfDay
from store.ration.parts import Part
from store.round.saying import exact, weight
from tui.ration.said import figure, line_of
from tui.ration.seen import Seen


def calf_words(seen: Seen) -> Iterator[str]:
    """A sentence each; none of any other animal."""
    calf = seen.farm.calf
    if calf is None:
        return
    if calf.is_new:
        yield _colostrum(seen, calf)
    if calf.least_kg and calf.ample_kg:
        least, ample = (weight(each.amount, seen.farm.units) for each in (calf.least_kg, calf.ample_kg))
        yield f"MILK  at least {least} a day, a tenth of its weight; where it may drink it takes about {ample}."
    drinks = _by_gain(seen)
    if drinks:
        yield f"DRINKS  about {weight(drinks.amount, seen.farm.units)} a day, {drinks.came}."
    gain = _of_expected(seen)
    if gain:
        found, expected = (
            exact(gain.inputs[each].amount, seen.farm.units) for each in ("gain_kg_day", "expected_kg_day")
        )
        yield f"GAIN  {found.split()[0]} of {expected} a day that such milk and feed should make: {gain.amount:.0f} %."
    yield _weaning(seen, calf)


def calf_numbers(seen: Seen) -> Iterator[Value]:
    """The numbers of these."""
    calf = seen.farm.calf
    if calf:
        newest = next(iter(calf.eaten_kg), None)
        first = FIRST_L if calf.is_new else None
        known = (
            calf.colostrum_kg,
            first,
            calf.least_kg,
            calf.ample_kg,
            _by_gain(seen),
            _of_expected(seen),
            newest,
            calf.enough_kg,
        )
        yield from (each for each in known if each)


def _colostrum(seen: Seen, calf: CalfDay) -> str:
    kg = f"{weight(calf.colostrum_kg.amount, seen.farm.units)}, " if calf.colostrum_kg else ""
    first = figure(FIRST_L, seen.farm.units)
    return f"COLOSTRUM  {kg}a tenth of its weight: {first} of it within {FIRST_WITHIN_H:g} h. {DECIDE}"


def _by_gain(seen: Seen) -> Value | None:
    """What it drinks, where that is told by its gain."""
    milk = seen.case.heads[0].milk_kg
    return milk if milk and milk.equation is drunk_for_gain_kg else None


def _of_expected(seen: Seen) -> Value | None:
    """How it gains by its last two weights, against what is given now; of milk told by its gain nothing is expected."""
    if _by_gain(seen):
        return None
    gained, line = seen.farm.calf and seen.farm.calf.gained_kg_day, line_of(seen.before, Part.GAIN)
    if not gained or not line or not line.has or not line.has.amount:
        return None
    return of_expected_percent.of(gain_kg_day=gained, expected_kg_day=line.has)


def _weaning(seen: Seen, calf: CalfDay) -> str:
    enough, newest = exact(calf.enough_kg.amount, seen.farm.units), next(iter(calf.eaten_kg), None)
    if newest is None:
        return f"WEANING  no dry feed of it is in the book for yesterday; {enough} on {DAYS_RUNNING} days is enough."
    eats = exact(newest.amount, seen.farm.units).split()[0]
    said = f"WEANING  eats {eats} of {enough} dry feed a day; days of enough: {calf.days_enough} of {DAYS_RUNNING}"
    return f"{said}: it can be weaned." if calf.can_be_weaned else f"{said}."
