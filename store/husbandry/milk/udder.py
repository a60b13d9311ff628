"""How an udder fills with the hours, and what a pail is in a day."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import Source, equation, example

FULL_RATE_H, FULL_H = 8.0, 35.0
"""Milk is made at full rate for 8 to 10 h, then ever more slowly, and no more at about 35 h. [h]"""
UNSURE_H = 16.0
"""Past this some cows slow down much more than others (Elliott et al. 1960, J. Dairy Res. 27:293). [h]"""
ESTIMATE_MOST_H = 24.0
"""After longer gaps the rate itself has fallen, and stays low for most of a day (the same). [h]"""
HOURS_A_DAY = 24.0

SECRETION = Source(
    "University of Illinois, ANSC 438, rate of milk secretion (ansci.illinois.edu/static/ansc438/Lactation/"
    "secretionrate.html): slows from 8 to 10 h on, stops at about 35 h; the even fall between them is assumed"
)
STRAIGHT = Source("Elliott et al. 1960, J. Dairy Res. 27:293 (abstract): about linear up to 16 h")


@equation(
    "hours at full rate", "h up to 8 h, then h - (h - 8)^2 / 54", "h", SECRETION,
    example(8.0, 0.5, SECRETION, elapsed_h=8.0), example(10.0, 0.5, SECRETION, elapsed_h=10.0),
    elapsed_h=(0.0, UNSURE_H),
)  # fmt: skip
def filled_h(elapsed_h: float) -> float:
    """Hours at full rate that make the milk of so many hours since an udder was emptied. [h]

    elapsed_h: 0 to 24, unsure past 16. Full rate up to 8 h, falling evenly from there to nothing at 35 h. Raises
    ValueError outside.
    """
    at_least_zero(elapsed_h=elapsed_h)
    if elapsed_h > ESTIMATE_MOST_H:
        raise ValueError(f"elapsed_h is {elapsed_h}; no estimate past {ESTIMATE_MOST_H:g} h")
    slowed_h = max(elapsed_h - FULL_RATE_H, 0.0)
    return elapsed_h - slowed_h**2 / (2 * (FULL_H - FULL_RATE_H))


@equation("milk of 24 hours", "pail x 24 / hours", "kg", STRAIGHT, elapsed_h=(0.0, UNSURE_H))
def day_kg(milk_kg: float, elapsed_h: float) -> float:
    """What a pail is in 24 hours, where she was milked out at both ends of the hours that it filled. [kg]

    Linear: pail x 24 / hours; about linear up to 16 h. One pail of a cow milked twice gives her
    day within 10 to 20 % (tests/outside). Raises ValueError below zero and for no hours.
    """
    at_least_zero(milk_kg=milk_kg, elapsed_h=elapsed_h)
    if not elapsed_h:
        raise ValueError("elapsed_h is 0; it must be more than 0")
    return milk_kg * HOURS_A_DAY / elapsed_h
