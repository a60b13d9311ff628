"""The weather to come, as somebody typed it in last."""

from datetime import datetime

from store.book.clock import micros, moment
from store.book.desk import ReadingDesk
from store.book.figures import ForecastFigure
from store.book.reading import sql


def last_forecast(desk: ReadingDesk, at: datetime) -> tuple[datetime, ForecastFigure] | None:
    """When it was typed, and what; None where nobody ever did."""
    found = desk.rows(sql.LAST_FORECAST, {"at": micros(at)})
    if not found:
        return None
    typed_at, low_c, wind_kmh, wet = found[0]
    return moment(typed_at), ForecastFigure(low_c, wind_kmh, bool(wet))
