"""Condition as a keeper types it: on the scale of her class, or on the other one by its name."""

from collections.abc import Callable, Iterator

from store.book.words import Stage, Units
from store.husbandry.body.condition import (
    BEEF_KG_A_POINT,
    BEEF_SCALE,
    DAIRY_KG_A_POINT,
    DAIRY_SCALE,
    TARGETS,
    beef_points,
    dairy_points,
    points_feed_kg,
)
from store.round.amount import Unreadable, number_and_unit
from store.round.saying import weight

BEEF = (Stage.SUCKLER, Stage.STEER, Stage.BULL)
"""Scored of 9; the others of 5, as dairy cows are. Common practice."""
MILKED = (Stage.IN_MILK, Stage.DRY, Stage.CLOSE_UP)
FOR_STAGE = {
    "dairy cow, dry-off and dry": MILKED, "dairy cow, calving": MILKED, "dairy cow, 30 to 60 days in milk": MILKED,
    "dairy cow, 200 days in milk to dry-off": MILKED, "suckler cow, before calving": (Stage.SUCKLER,),
}  # fmt: skip
"""By target: the classes that are told it."""
HAY_NEL_MCAL = 1.3
"""A kilogram of good grass hay, dry. Typical, from memory. [Mcal]"""


def scale_of(stage: Stage) -> tuple[float, float]:
    """The least and the most point of the scale that a class is scored on."""
    return BEEF_SCALE if stage in BEEF else DAIRY_SCALE


def points_words(points: float, stage: Stage) -> str:
    """`3.25 of 5`."""
    return f"{points:g} of {scale_of(stage)[1]:g}"


def points_say(stage: Stage, units: Units) -> Iterator[str]:
    """What is usual of a class, and what a point of its scale is worth in weight and in hay."""
    for each in (each for each in TARGETS if stage in FOR_STAGE.get(each.when, ())):
        points = f"{each.least:g}" if each.least == each.most else f"{each.least:g} to {each.most:g}"
        yield f"usual, {each.when}: {points} of {each.scale[1]:g}"
    least_kg, most_kg = (BEEF_KG_A_POINT, BEEF_KG_A_POINT) if stage in BEEF else DAIRY_KG_A_POINT
    worth = tuple(dict.fromkeys(weight(kg, units) for kg in (least_kg, most_kg)))
    hay = tuple(dict.fromkeys(weight(points_feed_kg(1, kg, HAY_NEL_MCAL), units) for kg in (least_kg, most_kg)))
    yield f"a point more is {' to '.join(worth)} of her, and takes {' to '.join(hay)} of dry hay beside what she needs"


def maybe_points(stage: Stage) -> Callable[[str], float | None]:
    """A condition, or nothing: `3.25`, `3 1/4 of 5`, `6 of 9`. It is told on the scale of that class."""

    def read(text: str) -> float | None:
        return _points(text, stage) if text.strip() else None

    return read


def _points(text: str, stage: Stage) -> float:
    number, _, named = text.lower().partition(" of ")
    points, word = number_and_unit(number)
    own, other = scale_of(stage), DAIRY_SCALE if stage in BEEF else BEEF_SCALE
    scale = {"": own, f"{own[1]:g}": own, f"{other[1]:g}": other}.get(named.strip())
    if word or scale is None or not scale[0] <= points <= scale[1]:
        raise Unreadable(
            f"«{text.strip()}» is no condition. Type 1 to {own[1]:g}, or of the other scale, as {_as(other)}."
        )
    if scale == own:
        return points
    return beef_points(points) if scale == DAIRY_SCALE else dairy_points(points)


def _as(scale: tuple[float, float]) -> str:
    return f"{sum(scale) / 2:g} of {scale[1]:g}"
