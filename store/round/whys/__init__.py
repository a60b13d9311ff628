"""What the numbers of a step are made of: built when somebody asks why, by the equations that the plan is drawn by."""

from store.husbandry.why import Value
from store.round.steps import FeedStep, SoakCheckStep, SoakStartStep, Step
from store.round.whys.asked import Asked
from store.round.whys.feed import feed_numbers
from store.round.whys.soak import check_numbers, start_numbers

__all__ = ["Asked", "step_numbers"]


def step_numbers(asked: Asked, step: Step) -> tuple[Value, ...]:
    """The numbers of a step, in the order of its screen; none where nothing of it is reckoned."""
    if isinstance(step, FeedStep):
        return tuple(feed_numbers(asked, step))
    if isinstance(step, SoakStartStep):
        return tuple(start_numbers(asked, step))
    if isinstance(step, SoakCheckStep):
        return tuple(check_numbers(asked, step))
    return ()
