"""In calf: for how long by breed, from when to when she may calve, and what is done before."""

from datetime import date, timedelta
from math import erf, sqrt

from msgspec import Struct

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import ARITHMETIC, Source, Sure, equation, example

SPREAD_DAYS = 4.96
"""One standard deviation within a breed. Source: Knott 1932, from the probable error of its mean, 0.063 of 2824."""
WINDOW_DAYS = 10
"""So many days either way hold 95 of 100 calvings: two standard deviations."""
DRY_DAYS, CLOSE_UP_DAYS = 60, 21
"""Before she is due: dried off, and fed for calving, unless the farm has set its own. [days]

Dry for 51 to 60 days is the long-used standard (J. Dairy Sci. 2003, 86:3027); three weeks close up is common practice.
"""
DRY_LEAST_DAYS = 45
"""Shorter than this costs milk in the next lactation. Common practice, from memory."""


class Gestation(Struct, frozen=True):
    """How long a breed carries. [days] heifer: with her first calf; cow: with a later one."""

    breed: str
    heifer_days: float
    cow_days: float
    source: Source

    def days(self, *, first_calf: bool) -> int:
        """In whole days."""
        return round(self.heifer_days if first_calf else self.cow_days)


_NORMAN = Source("Norman et al. 2009, J. Dairy Sci. 92:2259, ars.usda.gov/research/publications seqNo115=220178")
_NORMAN_RECALLED = Source("Norman et al. 2009, J. Dairy Sci. 92:2259", Sure.MEMORY)
_BEEF = Source("some factors affecting gestation length and birth weight of beef cattle, discovery.researcher.life")
_MANZANO = Source("manzanoangus.com, gestation length of the beef cow; within a breed 12 days either way")
ANY_BREED = Gestation("any breed", 283, 283, _MANZANO)
BREEDS = (
    Gestation("Holstein", 277.8, 279.4, _NORMAN),
    Gestation("Jersey", 278.4, 280.0, _NORMAN),
    Gestation("Milking Shorthorn", 279.3, 281.1, _NORMAN),
    Gestation("Ayrshire", 281.6, 281.7, _NORMAN_RECALLED),
    Gestation("Guernsey", 284.8, 285.7, _NORMAN_RECALLED),
    Gestation("Brown Swiss", 287.2, 287.5, _NORMAN_RECALLED),
    Gestation("Angus", 281.7, 281.7, _BEEF),
    Gestation("Hereford", 286.1, 286.1, _BEEF),
    Gestation("Shorthorn", 284.3, 284.3, _BEEF),
    Gestation("Charolais", 289, 289, _MANZANO),
    Gestation("Simmental", 289, 289, _MANZANO),
    Gestation("Limousin", 289, 289, _MANZANO),
)
"""Means. One cow of a breed differs by more than two breeds do. The longer name stands first."""


def gestation_of(breed: str) -> Gestation:
    """How long a breed carries. breed: in the keeper's words. A cross, or none that is listed: as any breed."""
    words = breed.lower()
    found = [each for each in BREEDS if each.breed.lower() in words]
    longest = [each for each in found if not any(each.breed in other.breed for other in found if other != each)]
    return longest[0] if len(longest) == 1 and not _crossed(words) else ANY_BREED


def _crossed(words: str) -> bool:
    return any(each in f" {words} " for each in (" x ", " cross", "-cross", "/", " and "))


def due_on(served_on: date, days: int) -> date:
    """When she calves, so many days after her service. Raises ValueError for days below zero."""
    at_least_zero(days=days)
    return served_on + timedelta(days=days)


def window(due: date) -> tuple[date, date]:
    """The first and the last day between which 95 of 100 calve."""
    return due - timedelta(days=WINDOW_DAYS), due + timedelta(days=WINDOW_DAYS)


def before(due: date, days: int) -> date:
    """The day so many days before she is due: when she is dried off, or fed for calving. Raises ValueError
    for days below zero."""
    at_least_zero(days=days)
    return due - timedelta(days=days)


@equation("days to calving", "days that her breed carries - days since her service", "days", ARITHMETIC)
def days_to_calving(gestation_days: float, since_service_days: float) -> float:
    """How long until she is due; below zero: she is over it. [days] Raises ValueError for anything below zero."""
    at_least_zero(gestation_days=gestation_days, since_service_days=since_service_days)
    return gestation_days - since_service_days


_KNOTT = Source(
    "Knott 1932, J. Dairy Sci. 15:87: of 2824 Holstein calvings round day 279.9, 1.7 % were before day 270 and 2.7 % "
    "from day 290 on. An even curve comes within 0.1 of it"
)


@equation(
    "calved by then", "the part of a normal curve of 4.96 days", "%", _KNOTT,
    example(1.7, 0.15, _KNOTT, days_after_due=269.5 - 279.9),
    example(100 - 2.7, 0.15, _KNOTT, days_after_due=289.5 - 279.9),
    days_after_due=(-14.0, 14.0),
)  # fmt: skip
def calved_by_percent(days_after_due: float) -> float:
    """Of 100 cows in calf, how many have calved so many days after the due day; below zero: before it. [%]"""
    return 50 * (1 + erf(days_after_due / SPREAD_DAYS / sqrt(2)))
