"""A sitting at the bench: a farm that has said its hours, the round ended, the clock set on."""

from datetime import datetime, timedelta

from store.book.clock import new_id
from store.book.opening import Book
from store.book.records.farm import Setting
from store.book.words import SettingName
from tests.farm import MORNING as SIX_31
from tests.farm import HandClock
from tests.store.book.seeing import put
from tests.tui.keys import Sitting
from tui.bench.bench import Bench

LONG_AGO = SIX_31 - timedelta(days=30)


def set_to(book: Book, name: SettingName, value: str, since: datetime = LONG_AGO) -> None:
    """The farm has a setting, since long ago."""
    put(book.desk, Setting, id=new_id(SIX_31), name=name, value=value, begins_at=since)


def clock_of(sitting: Sitting) -> HandClock:
    """Its clock."""
    clock = sitting.walker.book.clock
    assert isinstance(clock, HandClock)
    return clock


def ended(sitting: Sitting) -> Sitting:
    """The morning is ended; its soak was fed, its calf let in, and nothing else done. At the bench."""
    sitting.to_step("lucerne pellets", "soak").press("enter")
    sitting.to_step("Rook", "apart").press("enter")
    sitting.place = sitting.house.closing()
    return sitting.press("e", "enter", "i")


def at(sitting: Sitting, hour: int, minute: int = 0) -> Sitting:
    """Later that day, with nobody at the keys."""
    clock_of(sitting).at = SIX_31.replace(hour=hour, minute=minute)
    return sitting


def bench_of(sitting: Sitting) -> Bench:
    """The place, which is the bench."""
    assert isinstance(sitting.place, Bench)
    return sitting.place
