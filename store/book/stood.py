"""Where animals stood over some time, as frozen values."""

from collections.abc import Collection, Mapping
from datetime import datetime
from typing import Any
from uuid import UUID

from msgspec import Struct

Changes = Mapping[UUID, tuple[tuple[datetime, Any], ...]]
"""By id what was so from a moment on, oldest first."""


class Stood(Struct, frozen=True):
    """Where animals stood and which of them were kept, from a moment until another."""

    since: datetime
    until: datetime
    pens: Changes
    kept: Changes

    def heads(self, pen_ids: Collection[UUID], at: datetime) -> tuple[UUID, ...]:
        """The animals that stood in some pens at a moment."""
        stood = (id_ for id_ in self.pens if so_at(self.pens, id_, at) in pen_ids and so_at(self.kept, id_, at))
        return tuple(sorted(stood, key=lambda id_: id_.bytes))


def so_at(changes: Changes, id_: UUID, at: datetime) -> Any:
    """What was so at a moment; None: nothing was said yet."""
    return next((value for since, value in reversed(changes.get(id_, ())) if since <= at), None)
