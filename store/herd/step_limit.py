"""How far one step of a planned meal may go by what the farm itself has set; a starting value refuses nothing here."""

from collections.abc import Iterator
from uuid import UUID

from store.book.register import Register
from store.book.words import SettingName
from store.husbandry.change import last_day, least_step_kg, step_of_percent_kg, steps_needed


def days_needed(
    register: Register, feed_id: UUID, now_kg: float, wanted_kg: float, holds_kg: float | None
) -> tuple[int, float] | None:
    """Over how many days at least, and the most of one step. [kg] None: the farm has set no limit that holds here.

    holds_kg: of the measure that it is told in. The feed's own limit goes before the farm's; kilograms hold only what
    rises, the percent both ways.
    """
    limits = list(_limits(register, feed_id, now_kg, wanted_kg, holds_kg))
    if not limits or now_kg == wanted_kg:
        return None
    own = register.get("feed_limit", feed_id) or {}
    step_days = own.get("step_days") or _setting(register, SettingName.CHANGE_STEP_DAYS) or 1
    return int(last_day(steps_needed(now_kg, wanted_kg, min(limits)), step_days)), min(limits)


def _limits(
    register: Register, feed_id: UUID, now_kg: float, wanted_kg: float, holds_kg: float | None
) -> Iterator[float]:
    own = register.get("feed_limit", feed_id) or {}
    step_kg = own.get("step_kg") or _setting(register, SettingName.CHANGE_STEP_KG)
    percent = _setting(register, SettingName.CHANGE_STEP_PERCENT)
    if step_kg and wanted_kg > now_kg:
        yield step_kg
    if percent:
        yield max(step_of_percent_kg(now_kg, wanted_kg, percent), least_step_kg(holds_kg))


def _setting(register: Register, name: SettingName) -> float | None:
    row = register.get("setting", name)
    return float(row["value"]) if row else None
