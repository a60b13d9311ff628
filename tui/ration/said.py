"""How the ration says its figures: a value with its unit, as the farm has set."""

from collections.abc import Mapping
from functools import lru_cache

from store.book.words import Species, Units
from store.feedroom.delivery import money
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import Value
from store.ration.parts import Balance, Case, Line, Part
from store.round.saying import bare
from tui.ration.seen import Farm
from tui.why.amounts import in_units

SHORT_NAMES: Mapping[Part, str] = {Part.CA_TO_P: "Ca to P"}
"""Where the whole name is too long for a column."""
SHARES = ("%", "to 1")
"""Units of needs that are told as they are: nobody wants to know how many percent of 28 % something is."""


def name_of(part: Part) -> str:
    """A part, in a column."""
    return SHORT_NAMES.get(part, part.value)


def needs_are_kept(case: Case) -> bool:
    """Whether anybody here is of a kind whose needs are reckoned."""
    return any(head.animal.species is Species.CATTLE for head in case.heads)


def figure(value: Value, units: Units) -> str:
    """A figure with its unit, as the farm has set."""
    return _figure(value.amount, value.unit, units)


@lru_cache(512)
def _figure(amount: float, unit: str, units: Units) -> str:
    """Kept, as what is needed is the same at every key."""
    amount, unit = in_units(amount, unit, units)
    return f"{bare(amount).removesuffix('.0')} {unit}".rstrip()


def line_of(balance: Balance, part: Part) -> Line | None:
    """The line of a part; None where it is not told of."""
    return next((each for each in balance.lines if each.need.part is part), None)


def percent_of(line: Line) -> float | None:
    """How much of what is needed is given; None where that is not known, or where the need is itself a share."""
    return line.percent if line.need.least and line.need.unit not in SHARES else None


def has_of(line: Line, units: Units) -> str:
    """What is given of what is needed: `18.5 of 23.4 Mcal`, `3.1, most 6 %`, `47, least 28 %`, `1.9, 1.2 to 3 to 1`."""
    least, most = line.need.least, line.need.most
    if line.has is None:
        return f"by {', '.join(line.unknown_by)}" if line.unknown_by else ""
    has = short(line.has, units)
    if percent_of(line) is not None and least:
        return f"{has} of {figure(least, units)}"
    if least and most:
        return f"{has}, {short(least, units)} to {short(most, units)}"
    return f"{has}, most {figure(most, units)}" if most else f"{has}, least {figure(least, units)}" if least else has


def has_shortly(line: Line, units: Units) -> str:
    """The same in a narrow column: `18.5/23.4`, and of a share `48.6, least 28`, without the unit."""
    least, most = line.need.least, line.need.most
    if line.has is None:
        return ""
    has = short(line.has, units)
    if percent_of(line) is not None and least:
        return f"{has}/{short(least, units)}"
    bounds = [f"{word} {short(each, units)}" for word, each in (("least", least), ("most", most)) if each]
    both = [f"{short(least, units)} to {short(most, units)}"] if least and most else bounds
    return ", ".join([has, *both])


def short(value: Value, units: Units) -> str:
    """The figure alone."""
    return figure(value, units).split(" ")[0]


def price(per_kg: Value, farm: Farm) -> str:
    """`0.38 EUR a kg`, by the pound on a US farm."""
    us = farm.units is Units.US
    return f"{money(per_kg.amount * (KG_PER_LB if us else 1), farm.currency)} a {'lb' if us else 'kg'}"
