"""What the numbers of a step are made of: built when somebody asks why, by the equations that the plan is drawn by."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from store.husbandry.why import Value
from store.round.steps import (
    ApartStep,
    CoolStep,
    CountStep,
    DoseStep,
    FeedStep,
    MilkStep,
    SoakCheckStep,
    SoakStartStep,
    Step,
)
from store.round.whys.asked import Asked
from store.round.whys.feed import feed_numbers
from store.round.whys.herd import apart_numbers, cool_numbers, count_numbers, dose_numbers
from store.round.whys.milk import milk_numbers
from store.round.whys.soak import check_numbers, start_numbers

__all__ = ["Asked", "step_numbers"]


NUMBERS: Mapping[type[Step], Callable[[Asked, Any], Iterator[Value]]] = {
    FeedStep: feed_numbers,
    MilkStep: milk_numbers,
    SoakStartStep: start_numbers,
    SoakCheckStep: check_numbers,
    ApartStep: apart_numbers,
    CoolStep: cool_numbers,
    DoseStep: dose_numbers,
    CountStep: count_numbers,
}
"""By the kind of step."""


def step_numbers(asked: Asked, step: Step) -> tuple[Value, ...]:
    """The numbers of a step, in the order of its screen; none where nothing of it is reckoned."""
    numbers = NUMBERS.get(type(step))
    return tuple(numbers(asked, step)) if numbers else ()
