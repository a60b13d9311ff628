"""The farm's own limits for rations and for the time round a calving: how each is asked, and what it starts with."""

from collections.abc import Callable
from typing import Any

from msgspec import Struct

from store.book.words import SettingName
from store.herd.answers import a_count, a_number, maybe
from store.husbandry import starting
from store.husbandry.why import Value


class Started(Struct, frozen=True):
    """A setting with a starting value. asked: in a few words. read: what is typed. start: what counts until then."""

    name: SettingName
    asked: str
    read: Callable[[str], Any]
    start: Value

    @property
    def hint(self) -> str:
        """`% of the dry matter; 6 if left empty, only a starting value`."""
        return f"{self.start.unit}; {self.start.amount:g} if left empty, only a starting value"


def _percent(least: float, most: float) -> Callable[[str], Any]:
    return maybe(a_number(least, most, "%"))


def _days(least: int, most: int) -> Callable[[str], Any]:
    return maybe(a_count(least, most, "days"))


RATION = (
    Started(SettingName.FAT_MOST_PERCENT, "most fat in a ration", _percent(1, 12), starting.FAT_MOST_PERCENT),
    Started(SettingName.FORAGE_LEAST_PERCENT, "least forage in a ration", _percent(0, 100),
            starting.FORAGE_LEAST_PERCENT),
    Started(SettingName.CHANGE_STEP_PERCENT, "most change in one step", _percent(1, 100), starting.CHANGE_STEP_PERCENT),
    Started(SettingName.CHANGE_STEP_DAYS, "from one step to the next", _days(1, 30), starting.CHANGE_STEP_DAYS),
    Started(SettingName.COLD_MOST_PERCENT, "most more hay for cold", _percent(0, 200), starting.COLD_MOST_PERCENT),
    Started(SettingName.CALF_MILK_PERCENT, "milk a calf drinks", _percent(1, 40), starting.CALF_MILK_PERCENT),
    Started(SettingName.DRY_DAYS, "dried off before calving", _days(0, 200), starting.DRY),
    Started(SettingName.CLOSE_UP_DAYS, "fed for it before calving", _days(0, 60), starting.CLOSE_UP),
)  # fmt: skip
WEAN_STARTER_KG = (0.1, 5.0)
"""Between these lies what a calf is to eat before it is weaned. [kg a day] Common practice."""
