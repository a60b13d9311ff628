"""How an animal grows: what she gains between two weights, and where she should stand at her age."""

from collections.abc import Sequence
from itertools import pairwise

from store.husbandry.bounds import above_zero, at_least_zero
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import ARITHMETIC, Printed, Source, Sure, equation, example

LINE_KG = ((6.0, 167.2), (12.0, 299.1), (18.0, 420.6), (24.0, 516.2))
"""Holstein heifers by months of age: means of 5723 in 163 herds. [kg]"""
WANTED_PERCENT = ((6.0, 30.0), (15.0, 60.0), (22.0, 90.0))
"""Of her mature weight by months of age: half a year old, at service, before she calves. [%]"""
LIKELY_PERCENT = ((0.0, 7.0), *WANTED_PERCENT, (36.0, 100.0))
"""The same from birth until it is grown, of either sex. Common practice. [%]"""

_PENNSYLVANIA = Source(
    "Heinrichs and Hargrove 1987, J. Dairy Sci. 70:653, pure.psu.edu/en/publications/"
    "standards-of-weight-and-height-for-holstein-heifers"
)
_IRISH = Source("agriland.ie/farming-news/are-your-heifers-achieving-their-targets: 570 kg mature, 171 kg at 6 months")
_IRISH_IN_CALF = Source("agriland.ie/farming-news/are-your-heifers-achieving-their-targets: 399 kg is 70 % of 570 kg")
_OHIO = Source("thecattlesite.com/articles/919, target weights for a heifer of 1100 lb, in whole per cent")
_OHIO_GAIN = Source("thecattlesite.com/articles/919, (675 - 450) / 160 = 1.4 lb a day")
_OKLAHOMA = Source(
    "ziacommodities.com/evaluating-calf-weight-gain: 80 lb at birth, 500 lb after 200 days, 2.1 lb a day"
)
_STAGES = Source("agproud.com/articles/57922, gains of a heifer of 1300 lb mature between weaning, service and calving")
_BRAUNVIEH = Source("original-braunvieh.com/Calculation.htm: 95 lb at birth, 800 lb after 210 days, 3.36 lb a day")
_BREEDING = Source("agproud.com/articles/57922, 65 % of 1400 lb is 910 lb, of 1100 lb 715 lb")


def _gained(lb: float, within: float, source: Source, between: tuple[float, float, float]) -> Printed:
    """A printed gain in pounds a day. between: pounds before, pounds then, days."""
    before, now, days = between
    return example(lb * KG_PER_LB, within * KG_PER_LB, source, before_kg=before * KG_PER_LB, now_kg=now * KG_PER_LB,
                   days=days)  # fmt: skip


@equation(
    "gain a day", "(weight now - weight before) / days between", "kg a day",
    Source("wiki.icar.org, Glossary: Average daily weight gain"),
    _gained(1.4, 0.05, _OHIO_GAIN, (450, 675, 160)), _gained(2.1, 0.05, _OKLAHOMA, (80, 500, 200)),
    _gained(1.13, 0.005, _STAGES, (585, 845, 230)), _gained(0.92, 0.005, _STAGES, (845, 1105, 283)),
    _gained(3.36, 0.005, _BRAUNVIEH, (95, 800, 210)),
    days=(7.0, 1000.0),
)  # fmt: skip
def gain_kg_day(before_kg: float, now_kg: float, days: float) -> float:
    """What she gained a day between two weights; below zero: she lost. [kg a day] Raises ValueError for no days.

    What is in her rumen makes 5 % and more of a weight, so that less than a week says little (common practice).
    """
    at_least_zero(before_kg=before_kg, now_kg=now_kg, days=days)
    if days == 0:
        raise ValueError("days is 0; two weights of one day say nothing of a gain")
    return (now_kg - before_kg) / days


@equation(
    "part of her mature weight", "100 x weight / mature weight", "%", ARITHMETIC,
    *(example(percent, 0.5, _OHIO, weight_kg=lb, mature_kg=1100.0)
      for lb, percent in ((450, 41), (500, 45), (684, 62), (880, 80), (927, 84), (1012, 92))),
    example(65, 0.05, _BREEDING, weight_kg=910, mature_kg=1400),
    example(65, 0.05, _BREEDING, weight_kg=715, mature_kg=1100),
    example(70, 0.1, _IRISH_IN_CALF, weight_kg=399, mature_kg=570),
)  # fmt: skip
def part_of_mature_percent(weight_kg: float, mature_kg: float) -> float:
    """How much of her mature weight she has. [%] Raises ValueError for a mature weight of nothing."""
    at_least_zero(weight_kg=weight_kg)
    above_zero(mature_kg=mature_kg)
    return 100 * weight_kg / mature_kg


@equation(
    "weight wanted at her age", "30 % of mature weight at 6 months, 60 % at 15, 90 % at 22, evenly between", "kg",
    Source("Irish and British heifer targets, as agriland.ie has them for 6 months", Sure.PRACTICE),
    example(171, 0.5, _IRISH, age_months=6, mature_kg=570),
    age_months=(6.0, 22.0),
)  # fmt: skip
def wanted_kg(age_months: float, mature_kg: float) -> float:
    """What a heifer should weigh at an age, by her mature weight. [kg] age_months: 6 to 22; beyond, the nearer end.
    Raises ValueError below zero."""
    at_least_zero(age_months=age_months, mature_kg=mature_kg)
    return on_a_line(WANTED_PERCENT, age_months) / 100 * mature_kg


@equation(
    "likely weight at its age", "7 % of grown weight at birth, 30 % at 6 months, 60 % at 15, 90 % at 22, all at 36",
    "kg",
    Source("heifer targets, drawn on to birth and to grown", Sure.PRACTICE),
    age_months=(0.0, 240.0),
)  # fmt: skip
def likely_kg(age_months: float, mature_kg: float) -> float:
    """About what one that grows weighs, of either sex: to ask about a weight, not to feed by. [kg]
    Raises ValueError below zero."""
    at_least_zero(age_months=age_months, mature_kg=mature_kg)
    return on_a_line(LIKELY_PERCENT, age_months) / 100 * mature_kg


@equation(
    "weight of Holstein heifers", "means of a table, evenly between its rows", "kg", _PENNSYLVANIA,
    *(example(kg, 0.05, _PENNSYLVANIA, age_months=months) for months, kg in LINE_KG),
    age_months=(6.0, 24.0),
)  # fmt: skip
def holstein_heifer_kg(age_months: float) -> float:
    """What Holstein heifers weigh at an age, in the mean. [kg] age_months: 6 to 24; beyond, the nearer end.
    Raises ValueError below zero."""
    at_least_zero(age_months=age_months)
    return on_a_line(LINE_KG, age_months)


def on_a_line(points: Sequence[tuple[float, float]], at: float) -> float:
    """The height of a line through points at a place, evenly between them; outside of them, that of the nearer end."""
    inside = min(max(at, points[0][0]), points[-1][0])
    for (left, low), (right, high) in pairwise(points):
        if inside <= right:
            return low + (high - low) * (inside - left) / (right - left)
    raise ValueError("points is one point; a line has at least two")
