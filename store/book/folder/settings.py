"""What each setting holds: checked for farm.toml and setting.csv alike, before a book is made of it."""

from collections.abc import Callable

import pendulum

from store.book.words import Air, SettingName, Units


def _is_limit(text: str) -> bool:
    try:
        return 0 < float(text) <= 500
    except ValueError:
        return False


HOLDS: dict[SettingName, tuple[Callable[[str], bool], str]] = {
    SettingName.NAME: (lambda text: 0 < len(text) <= 60, "text of 1 to 60 letters"),
    SettingName.ZONE: (lambda text: text in pendulum.timezones(), "a time zone as Europe/Dublin"),
    SettingName.UNITS: (lambda text: text in list(Units), "one of: " + ", ".join(Units)),
    SettingName.EVENING_FROM: (lambda text: text in map(str, range(4, 24)), "an hour from 4 to 23"),
    SettingName.MEAL_LIMIT_KG: (_is_limit, "kilograms above 0, with a point, as 3.5"),
    SettingName.AIR: (lambda text: text in list(Air), "one of: " + ", ".join(Air)),
    SettingName.VET: (lambda text: 0 < len(text) <= 200, "text of 1 to 200 letters"),
}
"""By setting: whether a value fits, and in words what fits."""


def misfit(name: SettingName, value: str) -> str | None:
    """What was expected instead, where a value does not fit its setting."""
    fits, expected = HOLDS[name]
    return None if fits(value) else expected
