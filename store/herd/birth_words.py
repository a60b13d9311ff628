"""A calving in words: when it was, and by when what has to be looked at after it."""

from collections.abc import Iterable, Mapping
from datetime import datetime
from uuid import UUID

from store.book.drafts import Draft
from store.book.figures import WatchedFigure
from store.book.register import Register
from store.book.turn import local
from store.herd.days import day_words
from store.herd.moments import Happened


def when_words(when: Happened, zone: str) -> str:
    """`on 11 Mar 2026 between 02:30 and 05:50`; with both days where there are two."""
    at, since = local(when.at, zone), local(when.since, zone) if when.since else None
    if since is None:
        return f"on {day_words(at.date())} at {at:%H:%M}"
    if since.date() == at.date():
        return f"on {day_words(at.date())} between {since:%H:%M} and {at:%H:%M}"
    return f"between {day_words(since.date())} {since:%H:%M} and {day_words(at.date())} {at:%H:%M}"


def typed_when(when: Happened, zone: str) -> str:
    """As it can be typed again: `11 Mar 2026 02:30-05:50`."""
    at, since = local(when.at, zone), local(when.since, zone) if when.since else None
    if since is None:
        return f"{day_words(at.date())} {at:%H:%M}"
    of_day = "" if since.date() == at.date() else f"{day_words(at.date())} "
    return f"{day_words(since.date())} {since:%H:%M}-{of_day}{at:%H:%M}"


def after_words(register: Register, after: Iterable[Draft], names: Mapping[UUID, str]) -> list[str]:
    """`calf of Fennel: has sucked, by 06:30`; `Fennel: cleansing passed, 14:30-17:50`."""
    found: list[str] = []
    for draft in after:
        id_ = draft.subject.animal_id
        whose = names.get(id_, "") if id_ else ""
        for figure in draft.figures:
            if isinstance(figure, WatchedFigure) and figure.due_at:
                times = _times(figure.due_at, figure.due_until, register)
                found.append(f"look again  {whose or register.name('animal_as', id_)}: {figure.words}, {times}")
    milkings = register.farm.milk_limits.colostrum_milkings
    return [*found, f"her milk is for the calf, none for the house, for {milkings} milkings"] if milkings else found


def _times(due_at: datetime, due_until: datetime | None, register: Register) -> str:
    zone, today = register.farm.zone, local(register.at, register.farm.zone).date()
    at = local(due_at, zone)
    of_day = "" if at.date() == today else f"{day_words(at.date())} "
    return f"{of_day}{at:%H:%M}-{local(due_until, zone):%H:%M}" if due_until else f"by {of_day}{at:%H:%M}"
