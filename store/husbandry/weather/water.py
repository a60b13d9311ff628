"""What cattle drink."""

from collections.abc import Mapping

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import L_PER_US_GAL
from store.husbandry.why import Source, equation, example

_US_GAL: Mapping[str, tuple[float, float, float]] = {
    "calf": (6.5, 7.4, 10.6),  # 500 lb
    "growing": (9.3, 10.6, 14.0),  # 800 lb
    "dry": (10.8, 12.4, 17.6),
    "milking": (16.3, 17.9, 21.6),
}
DRINKS_L: Mapping[str, tuple[float, ...]] = {
    who: tuple(each * L_PER_US_GAL for each in row) for who, row in _US_GAL.items()
}
"""What one head of beef cattle drinks a day in air of 70, 80 and 90 F. [L] Source: TABLE, in US gallons."""
TABLE = Source(
    'beefmagazine.com, "Watch summer water" (National Research Council 1996, after Winchester and Morris 1956)'
)
LEAST_F, MIDDLE_F, MOST_F = 70.0, 80.0, 90.0


@equation(
    "drinks", "between the printed amounts at 70, 80 and 90 F", "L", TABLE,
    *(example(litres, 0.05 * L_PER_US_GAL, TABLE, air_f=air_f, at_70=row[0], at_80=row[1], at_90=row[2])
      for row in DRINKS_L.values() for air_f, litres in zip((LEAST_F, MIDDLE_F, MOST_F), row, strict=True)),
    air_f=(LEAST_F, MOST_F),
)  # fmt: skip
def drinks_l(air_f: float, at_70: float, at_80: float, at_90: float) -> float:
    """What one head drinks a day in warm air, by a row of DRINKS_L. [L]

    air_f: 70 to 90; outside of that nothing is printed. Raises ValueError there, and below zero.
    """
    if not LEAST_F <= air_f <= MOST_F:
        raise ValueError(f"air_f is {air_f}; it must be {LEAST_F} to {MOST_F}")
    at_least_zero(at_70=at_70, at_80=at_80, at_90=at_90)
    low, high, base_f = (at_70, at_80, LEAST_F) if air_f <= MIDDLE_F else (at_80, at_90, MIDDLE_F)
    return low + (high - low) * (air_f - base_f) / (MIDDLE_F - LEAST_F)


@equation(
    "drinks", "15.99 + 1.58 x dry matter + 0.90 x milk + 0.05 x sodium + 1.20 x lowest temperature", "L",
    Source("Murphy 1983, in dairyherd.com, Estimations of water use for California dairy cows"),
    dry_matter_kg=(10, 28), milk_kg=(10, 45), sodium_g=(10, 120), low_c=(0, 25),
)  # fmt: skip
def in_milk_l(dry_matter_kg: float, milk_kg: float, sodium_g: float, low_c: float) -> float:
    """A dairy cow in milk, of a trough. [L, of a kilogram] low_c: of the night; below 0 as at 0. Raises below zero."""
    at_least_zero(dry_matter_kg=dry_matter_kg, milk_kg=milk_kg, sodium_g=sodium_g)
    return 15.99 + 1.58 * dry_matter_kg + 0.90 * milk_kg + 0.05 * sodium_g + 1.20 * max(low_c, 0.0)


@equation(
    "drinks", "12.3 + 2.15 x dry matter + 0.73 x milk", "L",
    Source("Castle and Thomas 1975, scilit.com/publications/969ea1677e0bf91489a8be08d2e4366a, on feed of 83 to 90 % "
           "dry matter at 7 to 20 C"),
    dry_matter_kg=(4.6, 14.4), milk_kg=(13.7, 30),
)  # fmt: skip
def on_hay_l(dry_matter_kg: float, milk_kg: float) -> float:
    """A dairy cow in milk on dry feed in mild weather. [L, of a kilogram] Raises ValueError below zero."""
    at_least_zero(dry_matter_kg=dry_matter_kg, milk_kg=milk_kg)
    return 12.3 + 2.15 * dry_matter_kg + 0.73 * milk_kg
