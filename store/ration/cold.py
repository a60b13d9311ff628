"""What a cold night adds to the energy that cattle outside need, by the forecast that was typed today."""

from collections.abc import Iterator

from msgspec.structs import replace

from store.book.facts.farm import Animal
from store.book.reading.weather import last_forecast
from store.book.words import Coat, SettingName, Species
from store.herd.forecast import Weather
from store.herd.outside import by_the_rule
from store.husbandry.starting import COLD_MOST_PERCENT
from store.husbandry.weather.cold import with_cold as in_the_cold
from store.husbandry.why import Value, given
from store.ration.asked import Asked
from store.ration.classes import Needs

WORDS = ("energy", "tdn_kg")


def with_cold(asked: Asked, animals: tuple[Animal, ...], found: Needs) -> Needs:
    """The needs with so much more energy. animals: all that stand in the pen, which is told by them to be outside."""
    percent = more_percent(asked, animals)
    return {**found, **dict(_colder(found, percent))} if percent else found


def more_percent(asked: Asked, animals: tuple[Animal, ...]) -> Value | None:
    """So much more energy tonight, no more than the farm allows; None: none, or nobody typed a forecast today."""
    last = last_forecast(asked.desk, asked.now)
    if last is None or asked.day(last[0]) != asked.today or not _are_outside(animals):
        return None
    row = asked.register.get("setting", SettingName.COAT)
    coat = Coat(row["value"]) if row else Coat.WINTER
    figure = last[1]
    percent = Weather(figure.low_c, figure.wind_kmh, figure.wet, coat).more_percent
    most = asked.setting(SettingName.COLD_MOST_PERCENT, COLD_MOST_PERCENT)
    if percent > most.amount:
        return replace(most, name="more for the cold, the most of it")
    return given(percent, "more for the cold", "%", "today's forecast") if percent else None


def _are_outside(animals: tuple[Animal, ...]) -> bool:
    cattle = any(animal.species is Species.CATTLE for animal in animals)
    return cattle and by_the_rule(animals)


def _colder(found: Needs, percent: Value) -> Iterator[tuple[str, Value]]:
    for word in WORDS:
        if word in found:
            need = in_the_cold.of(found[word].name, need=found[word], more_percent=percent)
            yield word, replace(need, unit=found[word].unit)
