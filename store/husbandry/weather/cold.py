"""Cold: how much more energy beef cattle outside need.

The rules are those that extension services print for beef cattle that live outside. For milking cows no such term is
published (the edition of 2021 has none), and none is known here for calves.
"""

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import Source, equation, example

WET_F, AUTUMN_F, WINTER_F, HEAVY_F = 59.0, 45.0, 32.0, 18.0
"""Lower critical temperature of a wet or summer, a dry autumn, a dry winter and a dry heavy winter coat: below it she
burns feed to keep warm. [F] Source: thestockexchangenews.com, "Are your cows prepared for the winter cold"."""
COATS = Source(
    'thestockexchangenews.com, "Are your cows prepared for the winter cold"; it counts 1 % for a wet coat too, and '
    "disagrees there"
)
DAKOTA = Source('ag.ndsu.edu/livestockextension, "Lower critical temperature for beef cattle"')
KANSAS = Source("Kansas State, Cottonwood Connections, January 2025, page 9")
OKLAHOMA = Source('Oklahoma State, "Cold weather boosts energy requirements", cattlenetwork.com 113972029')
CHART = Source(f"{DAKOTA.words}, its wind chart; the rough rule lies a degree above it")


@equation(
    "feels like", "degrees F less miles an hour", "F", Source('m.farms.com, "When do cows feel the cold"'),
    example(4.0, 1.0, CHART, air_f=25, wind_mph=20), air_f=(-40, 60), wind_mph=(0, 30),
)  # fmt: skip
def feels_like_f(air_f: float, wind_mph: float) -> float:
    """The temperature that wind makes of the air, roughly. [F]

    air_f: any temperature. wind_mph: as it blows on her, 0 behind a wall. Raises ValueError below zero.
    """
    at_least_zero(wind_mph=wind_mph)
    return air_f - wind_mph


@equation(
    "more energy for cold", "1 % for each degree F below the critical temperature of her coat", "%", DAKOTA,
    example(14, 0.5, DAKOTA, feels_f=4, critical_f=HEAVY_F), example(15, 0.5, COATS, feels_f=17, critical_f=WINTER_F),
    example(10, 0.5, KANSAS, feels_f=22, critical_f=WINTER_F),
    example(28, 0.5, OKLAHOMA, feels_f=4, critical_f=WINTER_F), feels_f=(-40, 60), critical_f=(HEAVY_F, WET_F),
)  # fmt: skip
def dry_coat_percent(feels_f: float, critical_f: float) -> float:
    """More than in mild weather, in a dry coat; 0 where it is not cold for it. [% of what she needs]"""
    return max(critical_f - feels_f, 0.0)


@equation(
    "more energy for cold", "2 % for each degree F below 59", "%", KANSAS,
    example(74, 0.5, KANSAS, feels_f=22), example(110, 0.5, OKLAHOMA, feels_f=4), feels_f=(-40, 60),
)  # fmt: skip
def wet_coat_percent(feels_f: float) -> float:
    """More than in mild weather, in a wet coat; 0 where it is not cold for it. [% of what she needs]"""
    return 2.0 * max(WET_F - feels_f, 0.0)


@equation(
    "with what the cold takes", "need x (1 + more / 100)", "as the need", DAKOTA,
    example(14.48, 0.005, DAKOTA, need=12.7, more_percent=14), example(13.2, 0.05, KANSAS, need=12.0, more_percent=10),
    example(20.5, 0.05, OKLAHOMA, need=16, more_percent=28),
)  # fmt: skip
def with_cold(need: float, more_percent: float) -> float:
    """An energy need in the cold; protein stays as it is. Any unit, out as in. Raises ValueError below zero."""
    at_least_zero(need=need, more_percent=more_percent)
    return need * (1 + more_percent / 100)
