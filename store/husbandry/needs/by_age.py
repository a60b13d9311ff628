"""What a growing heifer's feed should hold by her age, where no gain is wanted by name. [% of dry matter]"""

from collections.abc import Sequence

from store.husbandry.body.growth import on_a_line
from store.husbandry.bounds import at_least_zero
from store.husbandry.why import Printed, Source, Sure, equation, example

TABLE = Source("Nutrient Requirements of Dairy Cattle, 6th edition (1989), table 6-5, growing heifers", Sure.MEMORY)
_MIDDLES = (137.0, 274.0, 457.0)
"""Of the printed classes: 3 to 6 months, 6 to 12, over 12. [days]"""
_TDN, _PROTEIN, _CALCIUM, _PHOSPHORUS = (69.0, 66.0, 61.0), (16.0, 12.0, 12.0), (0.52, 0.41, 0.29), (0.31, 0.30, 0.23)
_READS = "a table for 3 to 6, 6 to 12 and over 12 months, evenly between the middles of these"


def _by_age(age_days: float, column: Sequence[float]) -> float:
    at_least_zero(age_days=age_days)
    return on_a_line(tuple(zip(_MIDDLES, column, strict=True)), age_days)


def _printed(column: Sequence[float]) -> tuple[Printed, ...]:
    return tuple(example(each, 0.005, TABLE, age_days=age) for age, each in zip(_MIDDLES, column, strict=True))


@equation("TDN of her feed", _READS, "% of dry matter", TABLE, *_printed(_TDN), age_days=(90, 720))
def tdn_percent(age_days: float) -> float:
    """Energy. [% of dry matter] Raises ValueError below zero."""
    return _by_age(age_days, _TDN)


@equation("protein of her feed", _READS, "% of dry matter", TABLE, *_printed(_PROTEIN), age_days=(90, 720))
def protein_percent(age_days: float) -> float:
    """Crude protein. [% of dry matter] Raises ValueError below zero."""
    return _by_age(age_days, _PROTEIN)


@equation("calcium of her feed", _READS, "% of dry matter", TABLE, *_printed(_CALCIUM), age_days=(90, 720))
def calcium_percent(age_days: float) -> float:
    """Calcium. [% of dry matter] Raises ValueError below zero."""
    return _by_age(age_days, _CALCIUM)


@equation("phosphorus of her feed", _READS, "% of dry matter", TABLE, *_printed(_PHOSPHORUS), age_days=(90, 720))
def phosphorus_percent(age_days: float) -> float:
    """Phosphorus. [% of dry matter] Raises ValueError below zero."""
    return _by_age(age_days, _PHOSPHORUS)


@equation("in her feed", "dry matter x part of it x 10", "g", Source("plain arithmetic"))
def grams(dry_matter_kg: float, part_percent: float) -> float:
    """A part of the dry matter as grams. [g] Raises ValueError below zero."""
    at_least_zero(dry_matter_kg=dry_matter_kg, part_percent=part_percent)
    return dry_matter_kg * part_percent * 10
