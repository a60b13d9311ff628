"""Cold and heat: how much more energy beef cattle outside need, and how much they drink.

The rules of cold are those that extension services print for beef cattle that live outside. For milking cows no such
term is published (NASEM 2021 has none), and none is known here for calves.
"""

from collections.abc import Mapping

from store.husbandry.bounds import at_least_zero

WET_F, AUTUMN_F, WINTER_F, HEAVY_F = 59.0, 45.0, 32.0, 18.0
"""Lower critical temperature of a wet or summer, a dry autumn, a dry winter and a dry heavy winter coat: below it she
burns feed to keep warm. [F] Source: thestockexchangenews.com, "Are your cows prepared for the winter cold"."""
DRY_PERCENT_A_DEGREE, WET_PERCENT_A_DEGREE = 1.0, 2.0
"""More energy for each degree F below it. Dry: ag.ndsu.edu, "Lower critical temperature for beef cattle". Wet: Kansas
State (Cottonwood Connections, January 2025) and Oklahoma State ("Cold weather boosts energy requirements"); the source
of the temperatures above counts 1 % for a wet coat too, and disagrees."""


def feels_like_f(air_f: float, wind_mph: float) -> float:
    """The temperature that wind makes of the air, roughly: degrees F less miles an hour. [F]

    air_f: any temperature. wind_mph: as it blows on her, 0 behind a wall. Raises ValueError below zero.
    Source: m.farms.com, "When do cows feel the cold". The printed chart gives 4 F for 25 F and 20 mph; this gives 5.
    """
    at_least_zero(wind_mph=wind_mph)
    return air_f - wind_mph


def extra_energy_percent(feels_f: float, critical_f: float, *, wet: bool = False) -> float:
    """So much more energy than in mild weather; 0 where it is not cold for her coat. [% of what she needs]

    feels_f: from feels_like_f. critical_f: of her coat while it is dry; a wet one counts from 59 F, and double.
    """
    if wet:
        return WET_PERCENT_A_DEGREE * max(WET_F - feels_f, 0.0)
    return DRY_PERCENT_A_DEGREE * max(critical_f - feels_f, 0.0)


DRINKS_US_GAL: Mapping[str, tuple[float, float, float]] = {
    "calf": (6.5, 7.4, 10.6),  # 500 lb
    "growing": (9.3, 10.6, 14.0),  # 800 lb
    "dry": (10.8, 12.4, 17.6),
    "milking": (16.3, 17.9, 21.6),
}
"""What one head of beef cattle drinks a day in air of 70, 80 and 90 F. [US gal] Source: beefmagazine.com, "Watch summer
water" (NRC 1996, after Winchester and Morris 1956)."""
LEAST_F, MIDDLE_F, MOST_F = 70.0, 80.0, 90.0


def drinks_us_gal(who: str, air_f: float) -> float:
    """What one head drinks a day in warm air, between the printed points. [US gal]

    who: calf, growing, dry or milking. air_f: 70 to 90; outside of that nothing is printed. Raises ValueError.
    """
    if not LEAST_F <= air_f <= MOST_F:
        raise ValueError(f"air_f is {air_f}; it must be {LEAST_F} to {MOST_F}")
    least, middle, most = DRINKS_US_GAL[who]
    low, high, base_f = (least, middle, LEAST_F) if air_f <= MIDDLE_F else (middle, most, MIDDLE_F)
    return low + (high - low) * (air_f - base_f) / (MIDDLE_F - LEAST_F)
