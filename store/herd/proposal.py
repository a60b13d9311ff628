"""What tonight's weather asks for at the bench, in lines: hay, soak, water. A proposal; nothing here writes."""

from collections.abc import Iterator, Mapping, Sequence
from uuid import UUID

from store.book.register import Register
from store.book.words import Air, Species, Stage, Units
from store.herd.forecast import FREEZES_C, HOT_FROM_C, MILD_FROM_C, Weather, degrees
from store.herd.more_hay import More
from store.herd.outside import OutsidePen
from store.husbandry.units import L_PER_US_GAL, celsius
from store.husbandry.weather.heat import FELT_FROM, HARD_FROM, heat_index, reached_at_c
from store.husbandry.weather.water import DRINKS_L, LEAST_F, MOST_F, drinks_l
from store.husbandry.why import Value, given
from store.round.saying import bare, weight

FOR_WHOM = (
    "A rule for beef cattle outside, forage only: none is published for milking cows, none is known here for calves. "
    "Thin, old and sick ones need your eye, and your vet."
)
THE_REST = "That is not all that the cold takes: give this much now, the rest over the days after."
PERCENT = "\u00a0%"
"""Stays in one row with its number."""
DRINKS = {
    Stage.IN_MILK: "milking", Stage.SUCKLER: "milking", Stage.DRY: "dry", Stage.CLOSE_UP: "dry", Stage.CALF: "calf",
    Stage.HEIFER: "growing", Stage.STEER: "growing", Stage.BULL: "milking", Stage.OTHER: "dry",
}  # fmt: skip
"""By which printed row each drinks; a bull by the largest. Common practice."""
HUMIDITY = {"damp": 100.0, "half damp": 50.0, "dry": 20.0}
"""As the index is printed for them. [%]"""


def cold_lines(weather: Weather, pens: Sequence[OutsidePen], found: Sequence[More], units: Units) -> Iterator[str]:
    """How cold it feels, what more hay that is, and what holds it back."""
    feels, critical = degrees(weather.feels_c, units), degrees(weather.critical_c, units)
    coat = "a wet coat" if weather.wet else f"a {weather.coat} coat"
    if weather.more_percent <= 0:
        yield f"HAY  no more: it feels like about {feels}, and {coat} holds to {critical}"
        yield from _hay_lines([more for more in found if more.changes], units)
        return
    more = f"+{weather.more_percent:.0f}{PERCENT} energy"
    yield f"COLD  feels like about {feels}; with {coat} they need more below {critical}: {more}"
    yield from _hay_lines(found, units) if found else ("HAY  no pen that you picked gets hay by its plan",)
    for pen in pens:
        yield from (f"{pen.pen.name}: {feed} stands free, keep it full" for feed in pen.free)
    if any(more.limit for more in found):
        yield THE_REST
    yield FOR_WHOM


def _hay_lines(found: Sequence[More], units: Units) -> Iterator[str]:
    """`HAY  Orchard, morning and evening: grass hay 10.2 -> 11.7 kg, +14 %`: a line for all slots where it is one."""
    slots: dict[tuple[str, str], list[str]] = {}
    for more in found:
        slots.setdefault((more.hay.name, _amount(more, units)), []).append(more.hay.slot)
    for (name, amount), at in slots.items():
        yield f"HAY  {name}, {' and '.join(at)}: {amount}"


def _amount(more: More, units: Units) -> str:
    course, feed = more.hay.course, more.hay.portion.feed.name
    lasting, more_of, now = (weight(kg * more.hay.heads, units) for kg in (course.lasting_kg, more.kg, course.now_kg))
    limit = f", {more.limit}" if more.limit else ""
    limit += f" (now {now})" if course.now_kg != course.lasting_kg else ""
    if more.kg == course.lasting_kg:
        word = "stays" if course.now_kg == course.lasting_kg else "goes back to"
        return f"{feed} {word} {lasting}{limit}"
    return f"{feed} {lasting} -> {more_of}, +{more.percent:.0f}{PERCENT}{limit}"


def soak_lines(weather: Weather, register: Register, feeds: Mapping[UUID, str], set_to: Air) -> Iterator[str]:
    """In which air the soak stands, by the farm's own hours. feeds: those that are soaked, by name."""
    if not feeds:
        return
    air = weather.air
    rules = ((name, register.get("soak_rule", id_, air)) for id_, name in feeds.items())
    hours = ", ".join(f"{name} {rule['most_h']:g} h" for name, rule in rules if rule)
    other = f"; you have it set to {set_to}" if air != set_to else ""
    yield f"SOAK  {air} air tonight, unless it stands indoors{other}"
    yield f"SOAK  thrown out by your rule in {air} air after: {hours or 'no rule yet'}"
    if weather.low_c <= FREEZES_C:
        yield "SOAK  can freeze: stand it indoors, never feed it frozen"
    if air is Air.HOT:
        yield "SOAK  by day it is warmer still: smell it, and make it for one meal only"


def water_lines(weather: Weather, pens: Sequence[OutsidePen], units: Units) -> Iterator[str]:
    """Ice, or what they drink in the heat."""
    if weather.low_c <= FREEZES_C:
        yield "WATER  break the ice and take it out; lukewarm is drunk best; who drinks little eats little"
    if weather.low_c >= HOT_FROM_C:
        least, most = (degrees(celsius(each), units) for each in (LEAST_F, MOST_F))
        for pen in pens:
            litres = [_drinks_l(pen, air_f) for air_f in (LEAST_F, MOST_F)]
            words = " to ".join(_volume(each, units) for each in litres)
            yield f"WATER  {pen.pen.name}: about {words} a day ({least} to {most}). Shade, and full troughs"


def heat_lines(weather: Weather, units: Units) -> Iterator[str]:
    """From which air on cows in milk feel heat, where the days may come to that: nobody types how damp it will be."""
    if weather.low_c >= MILD_FROM_C:
        felt, hard = (
            [degrees(reached_at_c(index, damp), units) for damp in HUMIDITY.values()]
            for index in (FELT_FROM, HARD_FROM)
        )
        airs = ", ".join(f"{air} in {words} air" for air, words in zip(felt, HUMIDITY, strict=True))
        yield f"HEAT  by day cows in milk feel it from about {airs}; it is hard on them from {', '.join(hard)}"


def heat_numbers(weather: Weather) -> Iterator[Value]:
    """The index at each of these."""
    for words, damp in HUMIDITY.items() if weather.low_c >= MILD_FROM_C else ():
        humidity = given(damp, f"humidity of {words} air", "%", "as it is said here")
        for index in (FELT_FROM, HARD_FROM):
            air = given(reached_at_c(index, damp), f"{words} air", "C", "the first whole degree that reaches it")
            yield heat_index.of(f"heat index, {words} air", air_c=air, humidity_percent=humidity)


def _drinks_l(pen: OutsidePen, air_f: float) -> float:
    cattle = (animal for animal in pen.heads if animal.species is Species.CATTLE)
    return sum(drinks_l(air_f, *DRINKS_L[DRINKS[animal.stage]]) for animal in cattle)


def _volume(litres: float, units: Units) -> str:
    return f"{bare(litres / L_PER_US_GAL)} gal" if units is Units.US else f"{bare(litres)} l"
