"""How a ration is opened: what is read of the book for its page."""

from collections.abc import Iterator

from store.book.drafts import Subject
from store.book.errors import NotKept
from store.book.reading.stock import read_settings
from store.book.register import Register, read_register
from store.book.turn import local
from store.book.words import SettingName, Species
from store.herd.animal import kept
from store.ration.asked import Asked
from store.ration.balance import balance
from store.ration.by_rule import proposed_by_rule
from store.ration.calf import read_calf
from store.ration.case import read_case
from store.ration.coming import coming
from store.ration.parts import Case
from store.ration.trend import Trend, read_trend
from tui.place import Place, Rooms
from tui.ration.day_lines import coming_words
from tui.ration.ration import Ration
from tui.ration.seen import Farm
from tui.ration.trend import trend_words
from tui.ration.whose import Whose
from tui.walker import Walker


def ration(rooms: Rooms, back: Place, subject: Subject) -> Place:
    """The ration of an animal or a pen, as it is fed now; where nobody is there to be fed, it is asked whose."""
    if subject.animal_id is None and subject.pen_id is None:
        return Whose(rooms, back)
    try:
        return Ration(rooms, back, lambda: _read(rooms.walker, subject))
    except NotKept as gone:
        return Whose(rooms, back).say(str(gone))


def _read(walker: Walker, subject: Subject) -> tuple[Case, Farm]:
    """As the book stands now."""
    desk, now = walker.book.desk, walker.book.clock.now()
    register = read_register(desk, now)
    case = read_case(desk, register, now, subject)
    checked = register.get("setting", SettingName.CHECKED_BY) or {}
    said = register.farm.units, register.farm.dialect, read_settings(desk, now).currency, checked.get("value", "")
    by_rule = (each.says for each in proposed_by_rule(register, case))
    trend = read_trend(desk, register, subject.animal_id) if subject.animal_id else Trend()  # a pen has none of its own
    calf = read_calf(Asked(desk, register, walker.snapshot, now), case, trend.gain_kg_day)
    today = local(register.at, register.farm.zone).date()
    trends = (*trend_words(trend, today, register.farm.units), *by_rule)
    return case, Farm(*said, trends, _beside(register, subject), calf, tuple(_coming(register, case)))


def _coming(register: Register, case: Case) -> Iterator[str]:
    """Where a change that is planned or under way ends, and what is broken there."""
    found = coming(register, case)
    if found:
        yield f"CHANGE  {coming_words(case, found, register.farm.units)}; M at the feed step ends it."
        broken = balance(case, {**case.now, **found.ends}).broken
        yield from (f"LIMIT  where that change ends, {each.says}" for each in broken)


def _beside(register: Register, subject: Subject) -> frozenset[Species]:
    """The kinds of animal in the pen."""
    stands = {row["animal_id"]: row["pen_id"] for row in register.all("standing")}
    pen_id = subject.pen_id or stands.get(subject.animal_id)
    beside = (row for row in kept(register) if stands.get(row["animal_id"]) == pen_id)
    return frozenset(row["species"] for row in beside) if pen_id else frozenset()
