"""Heat: the index of temperature and humidity (THI), and from where on it weighs on cattle."""

from itertools import count

from store.husbandry.bounds import percent
from store.husbandry.units import celsius
from store.husbandry.why import Source, Sure, equation, example

LOSSES = Source(
    "dairyherd.com/dairy-resources/Economics-of-heat-stress-145896435.html, 72 at three pairs; the index lies up "
    "to 0.6 below them"
)
METER = Source("kestrelmeters.com/blogs/news/thi-temperature-humidity-index-cows, 78 at two pairs")
BANDS = Source("eagle.direct, What is the THI; its own form of the index, 0.14 below this one")


LEAST_C = 15
FELT_FROM, HARD_FROM = 68.0, 80.0
"""From so high an index on cows in milk react to heat, and it is severe. Source: eagle.direct, What is the THI; high
producers react from 68 (dairyherd.com as above), others from 72."""


@equation(
    "heat index", "(1.8 x C + 32) - (0.55 - 0.0055 x humidity) x (1.8 x C - 26)", "",
    Source("National Research Council 1971, A guide to environmental research on animals", Sure.MEMORY),
    example(72, 0.5, LOSSES, air_c=celsius(72), humidity_percent=100),
    example(72, 0.5, LOSSES, air_c=celsius(77), humidity_percent=50),
    example(72, 0.65, LOSSES, air_c=celsius(82), humidity_percent=20),
    example(78, 0.5, METER, air_c=31, humidity_percent=40), example(78, 0.5, METER, air_c=27, humidity_percent=80),
    example(75.9, 0.15, BANDS, air_c=32, humidity_percent=22), air_c=(LEAST_C, 45), humidity_percent=(0, 100),
)  # fmt: skip
def heat_index(air_c: float, humidity_percent: float) -> float:
    """Air as it weighs on cattle. air_c: any temperature. Raises ValueError for what is not 0 to 100 % of humidity."""
    percent(humidity_percent=humidity_percent)
    return 1.8 * air_c + 32 - (0.55 - 0.0055 * humidity_percent) * (1.8 * air_c - 26)


def reached_at_c(index: float, humidity_percent: float) -> int:
    """The first whole degree C at which an index is reached, from 15 on. Raises ValueError as `heat_index`."""
    return next(air_c for air_c in count(LEAST_C) if heat_index(air_c, humidity_percent) >= index)
