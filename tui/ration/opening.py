"""How a ration is opened: what is read of the book for its page."""

from datetime import datetime

from store.book.desk import Desk
from store.book.drafts import Subject
from store.book.reading.measured import read_measured
from store.book.reading.stock import read_settings
from store.book.register import Register, read_register
from store.book.turn import local
from store.book.words import SettingName
from store.ration.case import read_case
from store.ration.parts import Case
from tui.place import Place, Rooms
from tui.ration.ration import Ration
from tui.ration.seen import Farm
from tui.ration.trend import Score, trend_words
from tui.ration.whose import Whose
from tui.walker import Walker


def ration(rooms: Rooms, back: Place, subject: Subject) -> Place:
    """The ration of an animal or a pen that stands in the walk; of anything else it is asked whose."""
    walker = rooms.walker
    if not _eats(walker, subject):
        return Whose(rooms, back)
    return Ration(rooms, back, lambda: _read(walker, subject))


def _eats(walker: Walker, subject: Subject) -> bool:
    snapshot = walker.snapshot
    if subject.pen_id:
        return bool(snapshot.heads(subject.pen_id))
    return any(each.id == subject.animal_id for each in snapshot.animals)


def _read(walker: Walker, subject: Subject) -> tuple[Case, Farm]:
    """As the book stands now."""
    desk, now = walker.book.desk, walker.book.clock.now()
    register = read_register(desk, now)
    checked = register.get("setting", SettingName.CHECKED_BY) or {}
    said = register.farm.units, register.farm.dialect, read_settings(desk, now).currency, checked.get("value", "")
    return read_case(desk, register, now, subject), Farm(*said, trends=_trends(desk, register, now, subject))


def _trends(desk: Desk, register: Register, now: datetime, subject: Subject) -> tuple[str, ...]:
    """Of one animal; a pen has none of its own."""
    if subject.animal_id is None:
        return ()
    zone, goal = register.farm.zone, register.get("feeding_goal", subject.animal_id) or {}
    found = read_measured(desk, subject.animal_id, now)
    scores = [Score(local(each.at, zone).date(), each.condition_points) for each in found if each.condition_points]
    return tuple(trend_words(scores, goal.get("score_every_days"), local(now, zone).date()))
