"""What each setting holds: checked for farm.toml and setting.csv alike, before a book is made of it."""

from collections.abc import Callable, Iterable
from datetime import date
from re import fullmatch

import pendulum

from store.book.words import LEAP_YEAR, Air, Coat, Dialect, SettingName, Units


def _is_number(least: float, most: float) -> Callable[[str], bool]:
    def fits(text: str) -> bool:
        try:
            return least <= float(text) <= most
        except ValueError:
            return False

    return fits


def _is_limit(text: str) -> bool:
    return _is_number(0, 500)(text) and float(text) > 0


def _is_whole(least: int, most: int) -> Callable[[str], bool]:
    return lambda text: fullmatch("[0-9]{1,4}", text) is not None and least <= int(text) <= most


def _is_hour(text: str) -> bool:
    return fullmatch("([01][0-9]|2[0-3]):[0-5][0-9]", text) is not None


def _is_day_of_year(text: str) -> bool:
    try:
        return fullmatch("[0-9]{2}-[0-9]{2}", text) is not None and bool(date.fromisoformat(f"{LEAP_YEAR}-{text}"))
    except ValueError:
        return False


def _one_of(words: Iterable[str]) -> tuple[Callable[[str], bool], str]:
    known = list(words)
    return known.__contains__, "one of: " + ", ".join(known)


def _letters(most: int) -> tuple[Callable[[str], bool], str]:
    return lambda text: 0 < len(text) <= most, f"text of 1 to {most} letters"


KILOGRAMS = (_is_limit, "kilograms above 0, with a point, as 3.5")
TIME_OF_DAY = (_is_hour, "a time of day as 06:30")
HOLDS: dict[SettingName, tuple[Callable[[str], bool], str]] = {
    SettingName.NAME: _letters(60),
    SettingName.ZONE: (lambda text: text in pendulum.timezones(), "a time zone as Europe/Dublin"),
    SettingName.UNITS: _one_of(Units),
    SettingName.EVENING_FROM: (lambda text: text in map(str, range(4, 24)), "an hour from 4 to 23"),
    SettingName.MEAL_LIMIT_KG: KILOGRAMS,
    SettingName.AIR: _one_of(Air),
    SettingName.VET: _letters(200),
    SettingName.DIALECT: _one_of(Dialect),
    SettingName.MORNING_AT: TIME_OF_DAY,
    SettingName.EVENING_AT: TIME_OF_DAY,
    SettingName.CHANGE_STEP_KG: KILOGRAMS,
    SettingName.LEAD_DAYS: (_is_whole(0, 60), "whole days from 0 to 60"),
    SettingName.TURNOUT_ON: (_is_day_of_year, "a month and a day as 04-20"),
    SettingName.HAY_LOSS_PERCENT: (_is_number(0, 60), "percent from 0 to 60"),
    SettingName.COAT: _one_of(Coat),
    SettingName.CURRENCY: _letters(8),
    SettingName.COLD_WITHIN_MIN: (_is_whole(5, 600), "whole minutes from 5 to 600"),
    SettingName.COLOSTRUM_MILKINGS: (_is_whole(0, 40), "whole milkings from 0 to 40"),
    SettingName.SUCKED_WITHIN_H: (_is_number(0.5, 24), "hours from 0.5 to 24"),
    SettingName.CLEANSING_WITHIN_H: (_is_number(1, 72), "hours from 1 to 72"),
    SettingName.DROP_PERCENT: (_is_number(5, 80), "percent from 5 to 80"),
    SettingName.JAR_DAYS: (_is_whole(1, 30), "whole days from 1 to 30"),
    SettingName.FAT_MOST_PERCENT: (_is_number(1, 12), "percent from 1 to 12"),
    SettingName.FORAGE_LEAST_PERCENT: (_is_number(0, 100), "percent from 0 to 100"),
    SettingName.CHANGE_STEP_PERCENT: (_is_number(1, 100), "percent from 1 to 100"),
    SettingName.CHANGE_STEP_DAYS: (_is_whole(1, 30), "whole days from 1 to 30"),
    SettingName.COLD_MOST_PERCENT: (_is_number(0, 200), "percent from 0 to 200"),
    SettingName.CALF_MILK_PERCENT: (_is_number(1, 40), "percent from 1 to 40"),
    SettingName.DRY_DAYS: (_is_whole(0, 200), "whole days from 0 to 200"),
    SettingName.CLOSE_UP_DAYS: (_is_whole(0, 60), "whole days from 0 to 60"),
    SettingName.WEAN_STARTER_KG: (_is_number(0.1, 5), "kilograms from 0.1 to 5"),
    SettingName.CHECKED_BY: _letters(60),
}
"""By setting: whether a value fits, and in words what fits."""


def misfit(name: SettingName, value: str) -> str | None:
    """What was expected instead, where a value does not fit its setting."""
    fits, expected = HOLDS[name]
    return None if fits(value) else expected
