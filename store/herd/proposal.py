"""What tonight's weather asks for at the bench, in lines: hay, soak, water. A proposal; nothing here writes."""

from collections.abc import Iterator, Mapping, Sequence
from uuid import UUID

from store.book.register import Register
from store.book.words import Air, Stage, Units
from store.herd.forecast import FREEZES_C, HOT_FROM_C, Weather, degrees
from store.herd.more_hay import More
from store.herd.outside import OutsidePen
from store.husbandry.units import L_PER_US_GAL, celsius
from store.husbandry.weather import LEAST_F, MOST_F, drinks_us_gal
from store.round.saying import bare, weight

FOR_WHOM = (
    "The rule is for beef cattle outside; none is published for milking cows, and none is known here for calves. "
    "Forage only: never more grain at once. Thin, old and sick ones need your eye; your vet decides."
)
DRINKS = {
    Stage.IN_MILK: "milking", Stage.SUCKLER: "milking", Stage.DRY: "dry", Stage.CLOSE_UP: "dry", Stage.CALF: "calf",
    Stage.HEIFER: "growing", Stage.STEER: "growing", Stage.BULL: "milking", Stage.OTHER: "dry",
}  # fmt: skip
"""By which printed row each drinks; a bull by the largest. Common practice."""


def cold_lines(weather: Weather, pens: Sequence[OutsidePen], found: Sequence[More], units: Units) -> Iterator[str]:
    """How cold it feels, what more hay that is, and what holds it back."""
    feels, critical = degrees(weather.feels_c, units), degrees(weather.critical_c, units)
    coat = "a wet coat" if weather.wet else f"a {weather.coat} coat"
    if weather.more_percent <= 0:
        yield f"HAY  no more: it feels like {feels}, and {coat} holds to {critical}"
        yield from (_line(more, units) for more in found if more.hay.passing)
        return
    yield f"COLD  feels like {feels}; with {coat} they need more below {critical}: +{weather.more_percent:.0f} % energy"
    yield from _hay_lines(found, units)
    for pen in pens:
        yield from (f"{pen.pen.name}: {feed} stands free, keep it full" for feed in pen.free)
    if any(more.limit for more in found):
        yield "More than that is not eaten, or you do not allow it: give this much now, the rest over the days after."
    yield FOR_WHOM


def _hay_lines(found: Sequence[More], units: Units) -> Iterator[str]:
    if not found:
        yield "HAY  no pen that you picked gets hay by its plan"
    yield from (_line(more, units) for more in found)


def _line(more: More, units: Units) -> str:
    """`HAY  Orchard, evening: grass hay 10.2 -> 11.7 kg, +14 %`."""
    was, now = (weight(kg * more.hay.heads, units) for kg in (more.hay.lasting_kg, more.kg))
    limit = f", {more.limit}" if more.limit else ""
    what = f"HAY  {more.hay.name}, {more.hay.slot}: {more.hay.portion.feed.name}"
    if more.kg == more.hay.lasting_kg:
        return f"{what} stays {was}{limit}"
    return f"{what} {was} -> {now}, +{more.percent:.0f} %{limit}"


def soak_lines(weather: Weather, register: Register, feeds: Mapping[UUID, str], set_to: Air) -> Iterator[str]:
    """In which air the soak stands, by the farm's own hours. feeds: those that are soaked, by name."""
    if not feeds:
        return
    air = weather.air
    rules = ((name, register.get("soak_rule", id_, air)) for id_, name in feeds.items())
    hours = ", ".join(f"{name} {rule['most_h']:g} h" for name, rule in rules if rule)
    other = f"; you have it set to {set_to}" if air != set_to else ""
    yield f"SOAK  stands in {air} air tonight{other}. Thrown out by your rule after: {hours or 'no rule yet'}"
    if weather.low_c <= FREEZES_C:
        yield "SOAK  can freeze: stand it indoors, never feed it frozen"
    if air is Air.HOT:
        yield "SOAK  by day it is warmer still: smell it, and make it for one meal only"


def water_lines(weather: Weather, pens: Sequence[OutsidePen], units: Units) -> Iterator[str]:
    """Ice, or what they drink in the heat."""
    if weather.low_c <= FREEZES_C:
        yield "WATER  break the ice at every round, take it out, see that it runs: who drinks little eats little"
    if weather.low_c >= HOT_FROM_C:
        least, most = (degrees(celsius(each), units) for each in (LEAST_F, MOST_F))
        for pen in pens:
            litres = [_drinks_l(pen, air_f) for air_f in (LEAST_F, MOST_F)]
            words = " to ".join(_volume(each, units) for each in litres)
            yield f"WATER  {pen.pen.name}: about {words} a day ({least} to {most}). Shade, and full troughs"


def _drinks_l(pen: OutsidePen, air_f: float) -> float:
    return sum(drinks_us_gal(DRINKS[animal.stage], air_f) for animal in pen.heads) * L_PER_US_GAL


def _volume(litres: float, units: Units) -> str:
    return f"{bare(litres / L_PER_US_GAL)} gal" if units is Units.US else f"{bare(litres)} l"
