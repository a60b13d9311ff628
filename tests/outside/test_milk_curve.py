"""The curve and its fit against scipy, on printed series and on one that is known; and how far forecasts were off."""

from collections.abc import Sequence
from math import inf, log

import numpy as np
import pytest
from scipy.optimize import curve_fit, minimize_scalar

from store.husbandry.milk.curve import curve_kg, peak_day, peak_kg
from store.husbandry.milk.own_curve import RANGE_PERCENT, Beforehand, Weighed, coming_kg, own_curve
from store.husbandry.milk.shapes import FIRST, LATER, Shape, shape_of
from store.husbandry.why import Source, example
from tests.outside.test_milk_usual import EVENING_KG, MORNING_KG

FAT_KG = (
    0.31, 0.39, 0.50, 0.58, 0.59, 0.64, 0.68, 0.66, 0.67, 0.70, 0.72, 0.68, 0.65, 0.64, 0.57, 0.48, 0.46, 0.45, 0.31,
    0.33, 0.36, 0.30, 0.26, 0.34, 0.29, 0.31, 0.29, 0.20, 0.15, 0.18, 0.11, 0.07, 0.06, 0.01, 0.01,
)  # fmt: skip
"""Fat of one cow by week. [kg a day] Source: Henderson and McCulloch 1990, Transform or link?, Cornell BU-1049-MA."""
MILK_KG = tuple(morning + evening for morning, evening in zip(MORNING_KG, EVENING_KG, strict=True))
FALLS_A_MONTH = (0.07, 0.10)

HENDERSON = Source("Henderson and McCulloch 1990, Cornell BU-1049-MA, fat by week; fitted by scipy.optimize.curve_fit")
JERSEY = Source("doBy data set milkman, cow 8211, lactation 2, by week; fitted by scipy.optimize.curve_fit")
HERD_RULE = Source(
    "generalidadesdelaganaderiabovina.blogspot.com 2014/10, ordeno: 7 to 10 % less a month after the peak"
)
CHECKED = {
    "milk": (
        example(7.5046, 0.00005, HENDERSON), example(0.15614, 0.000005, JERSEY), example(0.085, 0.015, HERD_RULE),
    )
}  # fmt: skip
"""The week of the peak; b; what a month takes."""
UNKNOWN = Beforehand(Shape(1.0, 0.5, 0.05, HENDERSON), 1e4, 1e4, 1e4)
"""Nothing is known beforehand."""


def weeks(series: Sequence[float]) -> list[Weighed]:
    """By week."""
    return [Weighed(week, kg) for week, kg in enumerate(series, start=1)]


def fitted(series: Sequence[float]) -> Shape:
    """By all weeks alike, and nothing beforehand."""
    found = own_curve(weeks(series), UNKNOWN, inf)
    assert found is not None
    return found


@pytest.mark.parametrize("series", [FAT_KG, MILK_KG], ids=["fat", "milk"])
def test_her_own_curve_is_that_of_scipy_where_nothing_is_known_beforehand(series: Sequence[float]) -> None:
    """By least squares on the logarithms."""
    by_week = np.arange(1, len(series) + 1)
    theirs, _ = curve_fit(lambda n, la, b, c: la + b * np.log(n) - c * n, by_week, np.log(series), p0=(0, 0.5, 0.05))
    ours = fitted(series)
    assert (log(ours.a), ours.b, ours.c) == pytest.approx(tuple(theirs), rel=1e-4)


def test_the_fits_of_both_series_are_what_was_found_before() -> None:
    """The week of the peak of the fat, and the rise of the milk."""
    fat, milk = fitted(FAT_KG), fitted(MILK_KG)
    assert peak_day(fat.b, fat.c) == pytest.approx(7.5046, abs=0.001)
    assert milk.b == pytest.approx(0.15614, abs=0.00005)
    made_kg = 7 * sum(curve_kg(week, milk.a, milk.b, milk.c) for week in range(1, len(MILK_KG) + 1))
    assert made_kg == pytest.approx(7 * sum(MILK_KG), rel=0.01)


def test_a_curve_that_is_known_is_found_again() -> None:
    """Of forty days without any scatter; and of three, where its shape was known beforehand."""
    true = LATER["holstein"]
    days = [Weighed(day, curve_kg(day, true.a, true.b, true.c)) for day in range(5, 205, 5)]
    free = own_curve(days, UNKNOWN, inf)
    few = own_curve(days[-3:], Beforehand(true))
    assert free is not None
    assert few is not None
    assert (free.a, free.b, free.c) == pytest.approx((true.a, true.b, true.c), rel=1e-3)
    assert (few.a, few.b, few.c) == pytest.approx((true.a, true.b, true.c), rel=1e-3)


@pytest.mark.parametrize("shape", [*FIRST.values(), *LATER.values()])
def test_the_peak_is_where_scipy_finds_it(shape: Shape) -> None:
    """To a hundredth of a day."""
    found = minimize_scalar(lambda day: -curve_kg(day, shape.a, shape.b, shape.c), bounds=(1, 200), method="bounded")
    assert peak_day(shape.b, shape.c) == pytest.approx(found.x, abs=0.01)
    assert peak_kg(shape.a, shape.b, shape.c) == pytest.approx(-found.fun)


def test_after_the_peak_a_month_takes_what_is_printed() -> None:
    """Of the three breeds the Danish Red falls within it, the other two more slowly: 6 to 7 %."""
    least, most = FALLS_A_MONTH
    fall = {
        breed: 1 - curve_kg(180, shape.a, shape.b, shape.c) / curve_kg(150, shape.a, shape.b, shape.c)
        for breed, shape in LATER.items()
    }
    assert least < fall["danish red"] < most
    assert 0.06 < fall["jersey"] < least
    assert 0.06 < fall["holstein"] < least


def test_nine_of_ten_forecasts_of_a_month_lie_in_their_range() -> None:
    """Of one Jersey, from each week on: told from the weeks before, her breed known, in days."""
    days = [Weighed(7 * week - 3, kg) for week, kg in enumerate(MILK_KG, start=1)]
    off = []
    for at in range(3, len(days) - 4):
        found = own_curve(days[:at], Beforehand(shape_of("Jersey")))
        assert found is not None
        told = coming_kg(days[at].day, 28, found.a, found.b, found.c)
        off.append(abs(sum(each.kg for each in days[at : at + 4]) / 4 / told - 1))
    assert np.mean([each < RANGE_PERCENT / 100 for each in off]) >= 0.85
