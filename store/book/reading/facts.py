"""What changes slowly: farm, people, pens, animals, jobs; and the ids and days in found cells."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from typing import Any
from uuid import UUID

from msgspec.structs import fields, replace

from store.book.clock import micros, moment
from store.book.desk import FoundRow, ReadingDesk
from store.book.errors import DamagedBook
from store.book.facts.calves import Share
from store.book.facts.farm import Animal, FarmFacts, MilkLimits, Pen, Person
from store.book.facts.jobs import EVERY_DAY, Due, Job
from store.book.reading import sql
from store.book.turn import local
from store.book.words import EVENING, FIRST_SETTINGS, MORNING, Air, Dialect, SettingName, Species, Stage, Units

TIMES = {MORNING: SettingName.MORNING_AT, EVENING: SettingName.EVENING_AT}


def uid(value: Any) -> UUID:
    """The id in a found cell."""
    return UUID(bytes=bytes(value))


def maybe_uid(value: Any) -> UUID | None:
    """The id in a found cell that may be empty."""
    return None if value is None else uid(value)


def maybe_day(value: str | None) -> date | None:
    """The day in a found cell that may be empty."""
    return None if value is None else date.fromisoformat(value)


def read_facts(desk: ReadingDesk, now: datetime) -> FarmFacts:
    """The farm and its settings in force. Raises DamagedBook if the book has no farm, or lacks a setting."""
    farms = desk.rows(sql.FARM, {})
    if len(farms) != 1:
        raise DamagedBook(f"{desk.place} should hold one farm; {len(farms)} found.")
    setting: dict[str, str] = dict(desk.rows(sql.SETTINGS, {"at": micros(now)}))
    missing = [name for name in FIRST_SETTINGS if name not in setting]
    if missing:
        raise DamagedBook(f"{desk.place} lacks the farm's setting {missing[0]}.")
    try:
        return _facts(uid(farms[0][0]), setting)
    except ValueError as error:
        raise DamagedBook(f"{desk.place} holds a setting that cannot be used: {error}.") from error


def _facts(farm_id: UUID, setting: Mapping[str, str]) -> FarmFacts:
    return FarmFacts(
        id=farm_id,
        name=setting[SettingName.NAME],
        zone=setting[SettingName.ZONE],
        units=Units(setting[SettingName.UNITS]),
        evening_from_h=int(setting[SettingName.EVENING_FROM]),
        meal_limit_kg=float(setting[SettingName.MEAL_LIMIT_KG]) if SettingName.MEAL_LIMIT_KG in setting else None,
        air=Air(setting.get(SettingName.AIR, Air.MILD)),
        vet=setting.get(SettingName.VET, ""),
        times=tuple((slot, setting[name]) for slot, name in TIMES.items() if name in setting),
        milk_limits=_milk_limits(setting),
        dialect=Dialect(setting.get(SettingName.DIALECT) or _usual_dialect(setting[SettingName.UNITS])),
    )


def _milk_limits(setting: Mapping[str, str]) -> MilkLimits:
    """What the farm has set; the names of the limits are those of the settings."""
    usual = MilkLimits()
    given = {each.name: type(getattr(usual, each.name))(setting[each.name]) for each in fields(MilkLimits)
             if each.name in setting}  # fmt: skip
    return replace(usual, **given)


def _usual_dialect(units: str) -> Dialect:
    """Who counts in pounds and US gallons speaks so, until it is said otherwise."""
    return Dialect.AMERICAN if units == Units.US else Dialect.BRITISH


def last_written(desk: ReadingDesk) -> datetime | None:
    """When the newest entry was written; None in a book without entries. Not for a large book."""
    found = desk.rows(sql.LAST_WRITTEN, {})
    return moment(found[0][0]) if found else None


def people(found: Sequence[FoundRow]) -> tuple[Person, ...]:
    """Everybody, by name; who left is marked."""
    everybody = (Person(uid(id_), name, bool(adult), bool(here)) for id_, name, adult, here in found)
    return tuple(sorted(everybody, key=lambda person: (person.name, person.id.bytes)))


def pens(found: Sequence[FoundRow]) -> tuple[Pen, ...]:
    """Pens in walking order."""
    in_order = sorted(found, key=lambda row: (row[2], row[1], uid(row[0]).bytes))
    return tuple(Pen(uid(id_), name) for id_, name, _ in in_order)


def animals(found: Sequence[FoundRow]) -> tuple[Animal, ...]:
    """Animals by name."""
    everybody = (
        Animal(
            uid(id_), name, tag, Species(species), Stage(stage), maybe_day(born), maybe_day(calved), maybe_uid(pen),
            bool(adult_only), bool(two_people),
        )
        for id_, name, tag, species, stage, born, calved, pen, adult_only, two_people in found
    )  # fmt: skip
    return tuple(sorted(everybody, key=lambda animal: (animal.name, animal.id.bytes)))


def jobs(found: Sequence[FoundRow], zone: str) -> tuple[Job, ...]:
    """Standing tasks of every slot, in order."""
    in_order = sorted(found, key=lambda row: (row[6], row[1], uid(row[0]).bytes))
    return tuple(
        Job(uid(id_), name, maybe_uid(pen), bool(closing), slot, bool(adult_only), bool(two_people), _due(due, zone))
        for id_, name, pen, closing, adult_only, two_people, _, slot, *due in in_order
    )


def _due(found: Sequence[Any], zone: str) -> Due:
    """When a job comes; without a row of its own every day."""
    begins, every_days, once, until_on, first, last, stage = found
    if begins is None:
        return EVERY_DAY
    season = None if first is None else (first, last)
    since = local(moment(begins), zone).date()
    return Due(since, every_days, bool(once), maybe_day(until_on), season, None if stage is None else Stage(stage))


def _with_second(share: Share, second: tuple[UUID, datetime] | None) -> Share:
    """A pair with the other cow that the calf sucks and since when, while it is one."""
    if second is None or share.until:
        return share
    return replace(share, second_cow_id=second[0], second_since=second[1])
