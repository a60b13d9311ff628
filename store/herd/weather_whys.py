"""Why tonight asks for so much hay: how cold they feel it, in what coat, and what holds the addition back."""

from collections.abc import Iterator

from msgspec.structs import replace

from store.herd.forecast import CRITICAL_F, Weather
from store.herd.more_hay import LEAST_PERCENT, Limits, More
from store.herd.outside import OutsidePen
from store.herd.proposal import heat_numbers
from store.herd.tonight import Tonight
from store.husbandry.measures import for_heads
from store.husbandry.units import KM_PER_MILE, fahrenheit
from store.husbandry.weather.cold import (
    COATS,
    WET_F,
    dry_coat_percent,
    feels_like_f,
    wet_coat_percent,
    with_cold,
)
from store.husbandry.why import LEAST, Value, given, of_all


def tonight_numbers(tonight: Tonight) -> Iterator[Value]:
    """What it feels like, what their coat holds to, the energy more, and the hay of each pen where that is more."""
    feels, holds, asked = _cold(tonight.weather)
    yield from (feels, holds)
    if asked.amount > 0:
        yield asked
        for more in tonight.more():
            pen = next(each for each in tonight.pens if more.hay in each.hay)
            yield _hay(more, pen, asked, tonight.limits)
    yield from heat_numbers(tonight.weather)


def _cold(weather: Weather) -> tuple[Value, Value, Value]:
    """The temperature that they feel, the one that their coat holds to, and so much more energy."""
    low = given(fahrenheit(weather.low_c), "the lowest tonight", "F", "typed from the forecast")
    wind = given((weather.wind_kmh or 0.0) / KM_PER_MILE, "the wind", "mph", "typed from the forecast, as they feel it")
    feels = feels_like_f.of("feels like", air_f=low, wind_mph=wind)
    critical_f = WET_F if weather.wet else CRITICAL_F[weather.coat]
    holds = given(
        critical_f, "their coat holds to", "F", "a wet coat" if weather.wet else f"a {weather.coat} coat", COATS
    )
    if weather.wet:
        return feels, holds, wet_coat_percent.of(feels_f=feels)
    return feels, holds, dry_coat_percent.of(feels_f=feels, critical_f=holds)


def _hay(more: More, pen: OutsidePen, asked: Value, limits: Limits) -> Value:
    """What all heads get of a hay in a slot then. [kg]"""
    hay, name = more.hay, f"{more.hay.name}, {more.hay.slot}"
    lasting = given(hay.course.lasting_kg, f"{hay.portion.feed.name} for one head", "kg", "your plan")
    percent = _held(more, pen, asked, limits)
    if percent.amount < LEAST_PERCENT:
        each = lasting
    else:
        each = replace(with_cold.of(f"{name}, one head", need=lasting, more_percent=percent), unit="kg")
    heads = given(hay.heads, "heads", "heads", "counted by the book")
    return for_heads.of(f"{name}: {hay.portion.feed.name}", a_head_kg=each, heads=heads)


def _held(more: More, pen: OutsidePen, asked: Value, limits: Limits) -> Value:
    """What the cold asks for, or less: the smallest of what holds it back. [%]"""
    held = [asked, given(limits.most_percent, "the most you allow", "%", "typed here, or your rule")]
    if pen.spare_percent is not None:
        came = "what cattle of their weight eat, less all that they get"
        held.append(given(pen.spare_percent, "all that they can eat", "%", came))
    if limits.step_kg is not None:
        percent = limits.step_kg / more.hay.course.lasting_kg * 100
        held.append(given(percent, "your limit for one step", "%", "your rule, of what a head gets now"))
    return of_all(LEAST, "so much more", "%", held)
