"""Condition as a keeper types it: on the scale of her class, or on the other one by its name."""

from collections.abc import Callable

from store.book.words import Stage
from store.husbandry.body.condition import BEEF_SCALE, DAIRY_SCALE, beef_points, dairy_points
from store.round.amount import Unreadable, number_and_unit

BEEF = (Stage.SUCKLER, Stage.STEER, Stage.BULL)
"""Scored of 9; the others of 5, as dairy cows are. Common practice."""


def scale_of(stage: Stage) -> tuple[float, float]:
    """The least and the most point of the scale that a class is scored on."""
    return BEEF_SCALE if stage in BEEF else DAIRY_SCALE


def points_words(points: float, stage: Stage) -> str:
    """`3.25 of 5`."""
    return f"{points:g} of {scale_of(stage)[1]:g}"


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
