"""The farm's own day counts round a calving: what it has set, else what it starts with."""

from store.book.register import Register
from store.book.words import SettingName
from store.husbandry.starting import CLOSE_UP, DRY


def dry_days(register: Register) -> int:
    """So many days before she is due she is dried off."""
    return _days(register, SettingName.DRY_DAYS, DRY.amount)


def close_up_days(register: Register) -> int:
    """So many days before she is due she is fed for calving."""
    return _days(register, SettingName.CLOSE_UP_DAYS, CLOSE_UP.amount)


def _days(register: Register, name: SettingName, start: float) -> int:
    row = register.get("setting", name)
    return int(row["value"]) if row else int(start)
