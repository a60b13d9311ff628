"""When a calf eats enough to do without milk: so much dry feed on so many days running."""

from collections.abc import Sequence
from itertools import takewhile

from store.husbandry.bounds import at_least_zero

DAYS_RUNNING = 3
"""Source: WSU FS288E, How much starter grain should a pre-weaned calf eat (fdocuments.us): 2 lb on three days running.
A programme in steps asks for 3 lb in its seventh and eighth, 4 to 5 lb in its ninth and tenth week (vet.cornell.edu,
NYSCHAP, liquid feed management): how much is the keeper's own."""


def days_enough(eaten_kg: Sequence[float | None], least_kg: float) -> int:
    """Days running, up to the last one, on which it ate so much dry feed.

    eaten_kg: a day, newest first; None: nobody looked, and the run ends. Raises ValueError below zero.
    """
    at_least_zero(least_kg=least_kg)
    return sum(1 for _ in takewhile(lambda eaten: eaten is not None and eaten >= least_kg, eaten_kg))


def ready(eaten_kg: Sequence[float | None], least_kg: float) -> bool:
    """Whether it has eaten enough on three days running. [kg a day, newest first]"""
    return days_enough(eaten_kg, least_kg) >= DAYS_RUNNING
