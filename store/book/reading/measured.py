"""What looks found that can be counted: condition scores and heart girths. Not on the way to the first frame."""

from datetime import datetime, timedelta
from uuid import UUID

from msgspec import Struct

from store.book.clock import micros, moment
from store.book.desk import ReadingDesk
from store.book.reading import care_sql

LOOKED_BACK = timedelta(days=800)
"""Two lactations: what was scored longer ago says nothing of this one."""


class Measured(Struct, frozen=True):
    """A look that counted something. condition_points: as scored. None: not looked at. [points, cm]"""

    at: datetime
    condition_points: float | None
    girth_cm: float | None


def read_measured(desk: ReadingDesk, animal_id: UUID, now: datetime) -> tuple[Measured, ...]:
    """The scores and girths of an animal, oldest first."""
    values = {"subject": animal_id.bytes, "at": micros(now), "long_ago": micros(now - LOOKED_BACK)}
    return tuple(Measured(moment(at), *rest) for at, *rest in desk.rows(care_sql.MEASURED, values))
