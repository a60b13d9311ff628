"""What changes slowly: farm, people, pens, animals, feeding plans, tasks."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from typing import Any
from uuid import UUID

from store.book.clock import micros, moment
from store.book.desk import Desk, FoundRow
from store.book.errors import DamagedBook
from store.book.reading import sql
from store.book.snapshot import Animal, FarmFacts, Feed, Job, Pail, Pen, Person, Portion, Told
from store.book.words import SettingName, Species, Stage, Units


def uid(value: Any) -> UUID:
    """The id in a found cell."""
    return UUID(bytes=bytes(value))


def maybe_uid(value: Any) -> UUID | None:
    """The id in a found cell that may be empty."""
    return None if value is None else uid(value)


def _day(value: str | None) -> date | None:
    return None if value is None else date.fromisoformat(value)


def read_facts(desk: Desk, now: datetime) -> FarmFacts:
    """The farm and its settings in force. Raises DamagedBook if the book has no farm, or lacks a setting."""
    farms = desk.rows(sql.FARM, {})
    if len(farms) != 1:
        raise DamagedBook(f"{desk.place} should hold one farm; {len(farms)} found.")
    setting: dict[str, str] = dict(desk.rows(sql.SETTINGS, {"at": micros(now)}))
    missing = [name for name in SettingName if name not in setting]
    if missing:
        raise DamagedBook(f"{desk.place} lacks the farm's setting {missing[0]}.")
    return FarmFacts(
        id=uid(farms[0][0]),
        name=setting[SettingName.NAME],
        zone=setting[SettingName.ZONE],
        units=Units(setting[SettingName.UNITS]),
        evening_from_h=int(setting[SettingName.EVENING_FROM]),
    )


def last_written(desk: Desk) -> datetime | None:
    """When the newest entry was written; None in a book without entries. Not for a large book."""
    found = desk.rows(sql.LAST_WRITTEN, {})
    return moment(found[0][0]) if found else None


def people(found: Sequence[FoundRow]) -> tuple[Person, ...]:
    """Everybody, by name; who left is marked."""
    return tuple(Person(uid(id_), name, bool(here)) for id_, name, here in found)


def pens(found: Sequence[FoundRow]) -> tuple[Pen, ...]:
    """Pens in walking order."""
    return tuple(Pen(uid(id_), name) for id_, name in found)


def animals(found: Sequence[FoundRow], shared: Sequence[FoundRow]) -> tuple[Animal, ...]:
    """Animals by name, each cow with the calves that share her milk."""
    calves: dict[UUID, tuple[UUID, ...]] = {}
    for cow, calf in shared:
        calves[uid(cow)] = (*calves.get(uid(cow), ()), uid(calf))
    return tuple(
        Animal(
            uid(id_), name, tag, Species(species), Stage(stage), _day(born), _day(calved), maybe_uid(pen),
            calves.get(uid(id_), ()),
        )
        for id_, name, tag, species, stage, born, calved, pen in found
    )  # fmt: skip


def feeds(found: Sequence[FoundRow]) -> dict[UUID, Feed]:
    """Every feed, by its id."""
    return {uid(id_): Feed(uid(id_), name, bool(soaked)) for id_, name, soaked in found}


def portions(
    plans: Sequence[FoundRow], by_id: Mapping[UUID, Feed], measures: Sequence[FoundRow]
) -> dict[UUID, tuple[Portion, ...]]:
    """What each animal or pen gets, by its id, in showing order."""
    told = {
        (uid(id_), uid(feed)): Told(uid(id_), name, plural, holds_kg) for id_, name, plural, feed, holds_kg in measures
    }
    by_subject: dict[UUID, tuple[Portion, ...]] = {}
    for subject, feed, due_kg, measure in plans:
        portion = Portion(by_id[uid(feed)], due_kg, told.get((uid(measure), uid(feed))) if measure else None)
        by_subject[uid(subject)] = (*by_subject.get(uid(subject), ()), portion)
    return by_subject


def pail(id_: Any, name: str | None, empty_kg: float | None) -> Pail | None:
    """The pail a cow is milked into, if one is planned."""
    return None if id_ is None or name is None or empty_kg is None else Pail(uid(id_), name, empty_kg)


def jobs(found: Sequence[FoundRow]) -> tuple[Job, ...]:
    """Standing tasks in order."""
    return tuple(Job(uid(id_), name, maybe_uid(pen), bool(closing)) for id_, name, pen, closing in found)
