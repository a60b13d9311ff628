"""The curve of a lactation (Wood 1967): y = a x day^b x e^(-c x day), in kilograms a day. Day 1 follows calving."""

from math import exp, log

from store.husbandry.bounds import above_zero
from store.husbandry.why import Source, equation

FIRST_DAY, LAST_DAY = 5.0, 305.0
"""Before day 5 it is colostrum; the curves were fitted up to day 305."""
WOOD = Source(
    "Wood 1967, Nature 216:164; the form as printed in search.r-project.org, agridat, henderson.milkfat: "
    "alpha x week^beta x e^(gamma x week)"
)
SLOPE = Source("where the slope of the curve is nothing; the same as scipy.optimize finds")


@equation("her curve", "a x day^b x e^(-c x day)", "kg", WOOD, day=(FIRST_DAY, LAST_DAY))
def curve_kg(day: float, a: float, b: float, c: float) -> float:
    """Milk of one day. [kg] day: since calving, above 0. a above 0. Raises ValueError outside."""
    above_zero(day=day, a=a)
    return exp(log(a) + b * log(day) - c * day)


@equation("day of the peak", "b / c", "d", SLOPE)
def peak_day(b: float, c: float) -> float:
    """When she gives most; 0: from the first day on she gives less. [d] Raises ValueError for c not above 0."""
    above_zero(c=c)
    return max(b, 0.0) / c


@equation("most in a day", "a x (b / c)^b x e^(-b)", "kg", SLOPE)
def peak_kg(a: float, b: float, c: float) -> float:
    """What she gives on that day. [kg] Raises ValueError for b, c or a not above 0: no peak."""
    above_zero(b=b)
    return curve_kg(peak_day(b, c), a, b, c)
