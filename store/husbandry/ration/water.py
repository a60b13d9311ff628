"""Water that goes with a ration. [kg a day; a kilogram is a litre]"""

from msgspec import Struct

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import L_PER_US_GAL
from store.husbandry.why import Source, equation

MURPHY = Source("Murphy et al. 1983, as dairyherd.com, estimations of water use for California dairy cows, prints it")
CASTLE = Source("Castle and Thomas 1975, scilit.com/publications/969ea1677e0bf91489a8be08d2e4366a, dry feeds")
BEEF = Source("beefmagazine.com/cowcalfweekly/watch-summer-water, after Winchester and Morris 1956")


@equation(
    "water she drinks", "15.99 + 1.58 x dry matter + 0.90 x milk + 0.05 x sodium + 1.20 x lowest of the day", "kg",
    MURPHY,
    dry_kg=(10.0, 27.0), milk_kg=(5.0, 45.0), low_c=(-5.0, 30.0),
)  # fmt: skip
def drunk(dry_kg: float, milk_kg: float, sodium_g: float, low_c: float) -> float:
    """A milking cow's water, by dry matter eaten and the lowest temperature of the day. [kg] Raises below zero."""
    at_least_zero(dry_kg=dry_kg, milk_kg=milk_kg, sodium_g=sodium_g)
    return max(15.99 + 1.58 * dry_kg + 0.90 * milk_kg + 0.05 * sodium_g + 1.20 * low_c, 0.0)


@equation(
    "water she drinks on dry feed", "12.3 + 2.15 x dry matter + 0.73 x milk", "kg", CASTLE,
    dry_kg=(4.6, 14.4), milk_kg=(13.7, 30.0),
)  # fmt: skip
def drunk_on_dry_feed(dry_kg: float, milk_kg: float) -> float:
    """A milking cow's water at 7 to 20 degrees C on feeds of 83 to 90 % dry matter. [kg] Raises below zero."""
    at_least_zero(dry_kg=dry_kg, milk_kg=milk_kg)
    return 12.3 + 2.15 * dry_kg + 0.73 * milk_kg


class Drinks(Struct, frozen=True):
    """What a kind of beef animal drinks a day at 21, 27 and 32 degrees C. [L]"""

    who: str
    at_21_c: float
    at_27_c: float
    at_32_c: float


def _drinks(who: str, *gallons: float) -> Drinks:
    mild, warm, hot = (round(each * L_PER_US_GAL, 1) for each in gallons)
    return Drinks(who, mild, warm, hot)


BEEF_DRINKS = (
    _drinks("calf of 227 kg", 6.5, 7.4, 10.6),
    _drinks("growing, 363 kg", 9.3, 10.6, 14.0),
    _drinks("dry cow in calf", 10.8, 12.4, 17.6),
    _drinks("cow with a calf", 16.3, 17.9, 21.6),
)
"""BEEF, at 70, 80 and 90 degrees F."""
