"""What a cold night adds to the energy that cattle outside need, by the forecast that was typed today."""

from collections.abc import Iterator, Sequence

from store.book.reading.weather import last_forecast
from store.book.words import Coat, SettingName
from store.herd.forecast import Weather
from store.herd.outside import by_the_rule
from store.ration.asked import Asked
from store.ration.parts import Head, Missing


def of_cold(asked: Asked, heads: Sequence[Head]) -> Iterator[Missing]:
    """How much more they need tonight if they are outside, which the book does not hold: it is in no need here."""
    last = last_forecast(asked.desk, asked.now)
    pen_id = heads[0].animal.pen_id
    together = asked.snapshot.heads(pen_id) if pen_id else ()
    if last is None or asked.day(last[0]) != asked.today or not together or not by_the_rule(together):
        return
    row = asked.register.get("setting", SettingName.COAT)
    figure, coat = last[1], Coat(row["value"]) if row else Coat.WINTER
    percent = Weather(figure.low_c, figure.wind_kmh, figure.wet, coat).more_percent
    if percent > 0:
        more = f"cattle out there need about {percent:.0f} % more energy tonight, which is not in here"
        yield Missing("cold", f"Who is outside: {more}. C, weather, asks for hay.")
