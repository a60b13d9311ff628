"""Condition: how fat she is, on the scale of 1 to 5 for dairy cows and of 1 to 9 for beef cows."""

from msgspec import Struct

from store.husbandry.bounds import above_zero, at_least_zero
from store.husbandry.why import ARITHMETIC, Source, Sure, equation, example, given

DAIRY_SCALE, BEEF_SCALE = (1.0, 5.0), (1.0, 9.0)
DAIRY_KG_A_POINT, BEEF_KG_A_POINT = (45.0, 64.0), 34.0
"""What a point of each scale is worth, the dairy one from the least to the most. [kg]

Sources: progressivedairy.com/topics/herd-health/0706-pd-body-condition-scoring (100 to 140 lb) and
beef.unl.edu/using-body-condition-score-to-manage-the-nutritional-program (75 lb).
"""
NEL_MCAL_A_KG_GAINED = 5.12
"""Energy for milk (NEL) that a kilogram put on takes while she is milked. [Mcal/kg] NRC 1989, from memory."""

_SCALES = Source("Ferguson, Body condition scoring, scribd.com/document/355071895: dairy = (beef + 1) / 2")


@equation(
    "condition on the beef scale", "2 x dairy points - 1", "points of 1 to 9", _SCALES,
    example(5, 0.05, _SCALES, dairy_points=3), example(7, 0.05, _SCALES, dairy_points=4),
    dairy_points=DAIRY_SCALE,
)  # fmt: skip
def beef_points(dairy_points: float) -> float:
    """A score of 1 to 5 as one of 1 to 9. Raises ValueError below zero."""
    at_least_zero(dairy_points=dairy_points)
    return 2 * dairy_points - 1


@equation(
    "condition on the dairy scale", "(beef points + 1) / 2", "points of 1 to 5", _SCALES,
    example(2.5, 0.05, _SCALES, beef_points=4), example(5, 0.05, _SCALES, beef_points=9),
    beef_points=BEEF_SCALE,
)  # fmt: skip
def dairy_points(beef_points: float) -> float:
    """A score of 1 to 9 as one of 1 to 5. Raises ValueError below zero."""
    at_least_zero(beef_points=beef_points)
    return (beef_points + 1) / 2


@equation(
    "feed for a better condition", "points x weight of a point x 5.12 Mcal / energy of the feed", "kg of dry matter",
    Source("Nutrient Requirements of Dairy Cattle, 6th edition (1989)", Sure.MEMORY),
    nel_mcal=(0.9, 2.2),
)  # fmt: skip
def points_feed_kg(points: float, point_kg: float, nel_mcal: float) -> float:
    """Dry matter that so many points take in all, over whatever time, above what she needs. [kg]

    nel_mcal: energy for milk (NEL) of a kilogram of it. Raises ValueError below zero, and for a feed of no energy.
    """
    at_least_zero(points=points, point_kg=point_kg)
    above_zero(nel_mcal=nel_mcal)
    return points * point_kg * NEL_MCAL_A_KG_GAINED / nel_mcal


POINT_KG = given(
    sum(DAIRY_KG_A_POINT) / 2, "weight of a point", "kg", "a table",
    Source("progressivedairy.com/topics/herd-health/0706-pd-body-condition-scoring: 100 to 140 lb, the middle of it"),
)  # fmt: skip
REGAIN_DAYS = given(
    75.0, "days to regain it", "days", "a starting value", Source("60 to 90 days, the middle of them", Sure.ASSUMED)
)


@equation("gain back to her goal", "(goal - condition) x weight of a point / days", "kg a day", ARITHMETIC)
def regain_kg_day(goal_points: float, points: float, point_kg: float, days: float) -> float:
    """What one that is thinner than wanted is to put on; 0 for any other. [kg a day] Raises ValueError below zero,
    and for no days."""
    at_least_zero(goal_points=goal_points, points=points, point_kg=point_kg)
    above_zero(days=days)
    return max(goal_points - points, 0.0) * point_kg / days


class Target(Struct, frozen=True):
    """The condition that is aimed at. scale: its least and its most point. least, most: points of it."""

    when: str
    scale: tuple[float, float]
    least: float
    most: float
    source: Source


_DRY = Source("agweb.com, achieving optimum dry cow body condition; hoards.com/blog_balancing-act")
_BEEF = Source("beef.unl.edu/using-body-condition-score-to-manage-the-nutritional-program, targets before calving")
_RECALLED = Source("dairy extension services", Sure.MEMORY)
TARGETS = (
    Target("dairy cow, dry-off and dry", DAIRY_SCALE, 3.25, 3.75, _DRY),
    Target("dairy cow, calving", DAIRY_SCALE, 3.0, 3.5, _RECALLED),
    Target("dairy cow, 30 to 60 days in milk", DAIRY_SCALE, 2.5, 3.0, _RECALLED),
    Target("dairy cow, 200 days in milk to dry-off", DAIRY_SCALE, 3.0, 3.5, _RECALLED),
    Target("suckler cow, before calving", BEEF_SCALE, 5.0, 5.0, _BEEF),
    Target("first-calf heifer, before calving", BEEF_SCALE, 6.0, 6.0, _BEEF),
)
"""By stage. A cow in early milk should not lose more than 0.75 of a dairy point (from memory)."""
