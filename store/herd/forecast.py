"""The weather to come as the keeper has it, and what it means: how cold they feel it, in which air the soak stands."""

import re
from collections.abc import Callable

from msgspec import Struct

from store.book.words import LOW_C, WIND_MOST_KMH, Air, Coat, Units
from store.husbandry.units import KM_PER_MILE, celsius, fahrenheit
from store.husbandry.weather.cold import (
    AUTUMN_F,
    HEAVY_F,
    WET_F,
    WINTER_F,
    dry_coat_percent,
    feels_like_f,
    wet_coat_percent,
)
from store.round.amount import Unreadable, number_and_unit

CRITICAL_F = {Coat.SUMMER: WET_F, Coat.AUTUMN: AUTUMN_F, Coat.WINTER: WINTER_F, Coat.HEAVY: HEAVY_F}
HOT_FROM_C, MILD_FROM_C, FREEZES_C = 21.0, 10.0, 0.0
"""A soak keeps for hours less from 21 C on (70 F in an article on beet pulp: ntro.it.com, "How long is beet pulp good
for once soaked"); below 10 C is common practice. [degrees C of the lowest of the night: by day it is warmer]"""
_TEMPERATURE = re.compile(r"^(-|minus)? ?(\d{1,3}(?:[.,]\d{1,2})?) ?(?:°|deg(?:rees)?)? ?([cf])?$")


class Weather(Struct, frozen=True):
    """Tonight: the lowest, the wind, whether they get wet, and the coat they have. [degrees C, km/h]"""

    low_c: float
    wind_kmh: float | None
    wet: bool
    coat: Coat

    @property
    def feels_c(self) -> float:
        """What wind makes of it, roughly."""
        return celsius(self._feels_f)

    @property
    def _feels_f(self) -> float:
        return feels_like_f(fahrenheit(self.low_c), (self.wind_kmh or 0.0) / KM_PER_MILE)

    @property
    def critical_c(self) -> float:
        """Below this they burn feed to keep warm."""
        return celsius(WET_F if self.wet else CRITICAL_F[self.coat])

    @property
    def more_percent(self) -> float:
        """So much more energy than in mild weather."""
        if self.wet:
            return wet_coat_percent(self._feels_f)
        return dry_coat_percent(self._feels_f, CRITICAL_F[self.coat])

    @property
    def air(self) -> Air:
        """The air in which a soak stands outside tonight."""
        return Air.HOT if self.low_c >= HOT_FROM_C else Air.MILD if self.low_c >= MILD_FROM_C else Air.COLD


def degrees(temperature_c: float, units: Units) -> str:
    """`-8 C`; on a US farm `18 F`."""
    number, sign = (fahrenheit(temperature_c), "F") if units is Units.US else (temperature_c, "C")
    return f"{round(number)} {sign}"


def a_low(units: Units) -> Callable[[str], float]:
    """The lowest of a night: `-8`, `minus 8`, `18 F`; a bare number is F on a US farm. [degrees C]"""

    def read(text: str) -> float:
        sign = "f" if units is Units.US else "c"
        found = _TEMPERATURE.match(" ".join(text.lower().replace("\u2212", "-").split()))
        if found is None:
            raise Unreadable(f"«{text.strip()}» is no temperature. Type it as -8, or with its sign: -8 C, 18 F.")
        number = float(found[2].replace(",", ".")) * (-1 if found[1] else 1)
        low_c = celsius(number) if (found[3] or sign) == "f" else number
        if not LOW_C[0] <= low_c <= LOW_C[1]:
            least, most = (degrees(each, units) for each in LOW_C)
            raise Unreadable(f"«{text.strip()}» is {degrees(low_c, units)}; expected {least} to {most}. Type it again.")
        return low_c

    return read


def maybe_wind(units: Units) -> Callable[[str], float | None]:
    """The wind: `20`, `20 km/h`, `12 mph`, `6 m/s`; nothing is not known. A bare number is mph on a US farm. [km/h]"""
    size = {"km/h": 1.0, "kmh": 1.0, "kph": 1.0, "mph": KM_PER_MILE, "m/s": 3.6}

    def read(text: str) -> float | None:
        if not text.strip():
            return None
        number, word = number_and_unit(text)
        unit = word or ("mph" if units is Units.US else "km/h")
        if unit not in size:
            raise Unreadable(f"«{word}» is no unit of wind. Type it as 20 km/h, 12 mph or 6 m/s.")
        wind_kmh = number * size[unit]
        if wind_kmh > WIND_MOST_KMH:
            raise Unreadable(f"«{text.strip()}» is {wind_kmh:.0f} km/h; no more than {WIND_MOST_KMH:.0f} is expected.")
        return wind_kmh

    return read
