"""The weather to come, as somebody typed it in last; and the air that the soak will stand in."""

from collections.abc import Mapping
from datetime import datetime

from store.book.clock import micros, moment
from store.book.desk import ReadingDesk
from store.book.figures import ForecastFigure
from store.book.reading import sql
from store.book.words import Air, SettingName


def last_forecast(desk: ReadingDesk, at: datetime) -> tuple[datetime, ForecastFigure] | None:
    """When it was typed, and what; None where nobody ever did."""
    found = desk.rows(sql.LAST_FORECAST, {"at": micros(at)})
    if not found:
        return None
    typed_at, low_c, wind_kmh, wet = found[0]
    return moment(typed_at), ForecastFigure(low_c, wind_kmh, bool(wet))


def airs_to_come(desk: ReadingDesk, at: datetime, until: datetime) -> Mapping[datetime, Air]:
    """The air that the soak stands in from later moments on, oldest first; what is no air is left out."""
    found = desk.rows(sql.SETTINGS_TO_COME, {"name": SettingName.AIR, "at": micros(at)})
    return {moment(begins): Air(value) for value, begins in found if value in set(Air) and moment(begins) <= until}
