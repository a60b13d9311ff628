"""What an animal weighs by the tape around the heart, right behind the elbows."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import CM_PER_INCH, KG_PER_LB
from store.husbandry.why import Source, Sure, equation, example

TAPE_SPREAD_PERCENT = 10.0
"""A weight by the tape may be so far off either way. Common practice; two people differ by 2.2 cm, which is 3 to 4 %
(acemap.info/paper/133432090, Holstein heifers of 42 to 590 kg)."""

_HEIFERS = Source(
    "Heinrichs 1992, Holstein heifers of 42 to 590 kg; found valid again by Heinrichs 2017, J. Dairy Sci. 100:8451",
    Sure.MEMORY,
)
_AFRICAN_TAPE = Source(
    "biznakenya.com, weight without a weighing scale: a tape of 135 cm reads 214 kg. East African cattle, another "
    "tape, so that it is held to the 10 % that a tape is told to"
)
_STEER = Source(
    "thewhitehousefarmohio.blogspot.com/2012/01/measure-of-cow.html: a Holstein steer of 69 inches has about 940 lb. "
    "No heifer, so that it is held to the 10 % that a tape is told to"
)


@equation(
    "weight by heart girth", "102.71 - 2.876 x girth + 0.02655 x girth^2", "kg", _HEIFERS,
    example(214.0, 21.4, _AFRICAN_TAPE, girth_cm=135.0),
    example(940 * KG_PER_LB, 94 * KG_PER_LB, _STEER, girth_cm=69 * CM_PER_INCH),
    girth_cm=(80.0, 200.0),
)  # fmt: skip
def weight_by_girth_kg(girth_cm: float) -> float:
    """What she weighs by her heart girth. [kg] girth_cm: 80 to 200.

    Below that the curve flattens and turns, so that small calves have to be weighed; Jerseys weigh more than it says.
    Raises ValueError below zero.
    """
    at_least_zero(girth_cm=girth_cm)
    return 102.71 - 2.876 * girth_cm + 0.02655 * girth_cm**2


def spread_kg(weight_kg: float) -> tuple[float, float]:
    """Between what a weight by the tape may lie. [kg] Raises ValueError below zero."""
    at_least_zero(weight_kg=weight_kg)
    part = TAPE_SPREAD_PERCENT / 100
    return weight_kg * (1 - part), weight_kg * (1 + part)
