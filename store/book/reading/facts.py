"""What changes slowly: farm, people, pens, animals, feeding plans, tasks."""

from collections.abc import Mapping, Sequence
from dataclasses import fields, replace
from datetime import date, datetime
from typing import Any
from uuid import UUID

from store.book.clock import micros, moment
from store.book.desk import FoundRow, ReadingDesk
from store.book.errors import DamagedBook
from store.book.facts.calves import ApartRule, Birth, Parting, Share
from store.book.facts.care import LastLook, Look, NotGiven, Treatment, Withdrawal
from store.book.facts.farm import Animal, FarmFacts, MilkLimits, Pen, Person
from store.book.facts.feed import Feed, PlanRow, Portion, SoakLimit, Substitute, Told
from store.book.facts.jobs import EVERY_DAY, Due, Job
from store.book.facts.milk import Pail, PastPail, QuarterFound, Withholding
from store.book.facts.span import span
from store.book.figures import LookedFigure
from store.book.reading import sql
from store.book.turn import Turn, local
from store.book.words import (
    EVENING,
    FIRST_SETTINGS,
    MORNING,
    Air,
    Apart,
    Asks,
    Dialect,
    Fate,
    Looks,
    Quarter,
    SaidBy,
    SettingName,
    Sign,
    Species,
    Stage,
    State,
    Units,
    Water,
)

TIMES = {MORNING: SettingName.MORNING_AT, EVENING: SettingName.EVENING_AT}


def uid(value: Any) -> UUID:
    """The id in a found cell."""
    return UUID(bytes=bytes(value))


def maybe_uid(value: Any) -> UUID | None:
    """The id in a found cell that may be empty."""
    return None if value is None else uid(value)


def _day(value: str | None) -> date | None:
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
            uid(id_), name, tag, Species(species), Stage(stage), _day(born), _day(calved), maybe_uid(pen),
            bool(adult_only), bool(two_people),
        )
        for id_, name, tag, species, stage, born, calved, pen, adult_only, two_people in found
    )  # fmt: skip
    return tuple(sorted(everybody, key=lambda animal: (animal.name, animal.id.bytes)))


def parting(found: FoundRow) -> Parting:
    """A calf shut away, let in, or out by itself."""
    state, at, since, cow, why = found
    return Parting(
        None if state is None else Apart(state), moment(at), None if since is None else moment(since), maybe_uid(cow),
        why,
    )  # fmt: skip


def feeds(found: Sequence[FoundRow], barred: Sequence[FoundRow]) -> dict[UUID, Feed]:
    """Every feed, by its id."""
    return {
        uid(id_): Feed(
            uid(id_), name, bool(soaked), bucket, bool(baled), bool(in_use),
            frozenset(Species(species) for feed, species in barred if feed == id_),
        )
        for id_, name, soaked, bucket, baled, in_use in found
    }  # fmt: skip


def told(measures: Sequence[FoundRow]) -> dict[tuple[UUID, UUID], Told]:
    """Every measure for every feed, by their ids."""
    return {
        (uid(id_), uid(feed)): Told(uid(id_), name, plural, holds_kg, None if weighed is None else moment(weighed))
        for id_, name, plural, feed, holds_kg, weighed in measures
    }


def portions(
    plans: Sequence[FoundRow],
    by_id: Mapping[UUID, Feed],
    told: Mapping[tuple[UUID, UUID], Told],
) -> dict[UUID, tuple[Portion, ...]]:
    """What each animal or pen gets, by its id, in showing order."""
    by_subject: dict[UUID, tuple[Portion, ...]] = {}
    for subject, feed, due_kg, measure, since, position in plans:
        if uid(feed) not in by_id or not by_id[uid(feed)].in_use:  # not there yet, or not any more
            continue
        measured = told.get((uid(measure), uid(feed))) if measure else None
        portion = Portion(by_id[uid(feed)], due_kg, measured, moment(since), position)
        by_subject[uid(subject)] = (*by_subject.get(uid(subject), ()), portion)
    return by_subject


def plan_rows(found: Sequence[FoundRow]) -> tuple[PlanRow, ...]:
    """One row for each beginning, oldest first. found: newest first, the one that counts before the others."""
    by_beginning: dict[int, float | None] = {}
    for begins, due_kg in found:
        by_beginning.setdefault(begins, due_kg)
    return tuple(PlanRow(moment(begins), due_kg) for begins, due_kg in sorted(by_beginning.items()))


def pail(id_: Any, name: str | None, empty_kg: float | None) -> Pail | None:
    """The pail a cow is milked into, if one is planned."""
    return None if id_ is None or name is None or empty_kg is None else Pail(uid(id_), name, empty_kg)


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
    return Due(since, every_days, bool(once), _day(until_on), season, None if stage is None else Stage(stage))


def look(found: FoundRow, last: LastLook | None) -> Look:
    """What falls due at an animal, and what it found the last time."""
    id_, animal, name, asks, slot, every_days, until_on = found
    return Look(uid(id_), uid(animal), name, Asks(asks), slot, every_days, _day(until_on), last)


def last_look(found: Sequence[FoundRow]) -> LastLook | None:
    """The finding of one row, if there is one."""
    if not found:
        return None
    day, look_id, looks, *measured = found[0]
    figure = LookedFigure(uid(look_id), None if looks is None else Looks(looks), *measured)
    return LastLook(date.fromisoformat(day), figure)


def treatment(found: FoundRow, given: Sequence[FoundRow], not_given: Sequence[FoundRow]) -> Treatment:
    """A treatment, when its doses were given, and the rounds in which one was asked for and not given."""
    id_, animal, product, amount, route, why, batch, doses, every_h, first_at, in_use, *withdrawal = found
    spans = tuple(span(moment(at), None if since is None else moment(since)) for at, since in given)
    not_then = tuple(
        NotGiven(Turn(date.fromisoformat(day), slot), State(state), n) for day, slot, state, n in not_given
    )
    words = (product, amount, route, why, batch)
    times = (doses, every_h, moment(first_at), spans)
    return Treatment(uid(id_), uid(animal), *words, *times, bool(in_use), _withdrawal(*withdrawal), not_then)


def _withdrawal(id_: Any, *found: Any) -> Withdrawal | None:
    if id_ is None:
        return None
    *figures, said_by = found
    return replace(Withdrawal(*figures), said_by=None if said_by is None else SaidBy(said_by))


def past_pail(found: FoundRow) -> PastPail:
    """A milking of an earlier round."""
    at, since, kg, held, state, whole, day, slot, fate, typed, step_id = found
    return PastPail(
        moment(at), kg, bool(held), state == State.ON_PAPER, bool(whole), Turn(date.fromisoformat(day), slot),
        None if fate is None else Fate(fate), typed or "", uid(step_id), None if since is None else moment(since),
    )  # fmt: skip


def quarter_found(found: FoundRow) -> QuarterFound:
    """What was found at a quarter."""
    quarter, sign, at, day, slot = found
    return QuarterFound(Quarter(quarter), Sign(sign), moment(at), Turn(date.fromisoformat(day), slot))


def birth(found: Sequence[FoundRow]) -> Birth:
    """A calving of one row for each calf."""
    since, at, *_ = found[0]
    calves = tuple((maybe_uid(calf), bool(alive)) for _, _, calf, alive, *_ in found)
    return Birth(None if since is None else moment(since), moment(at), calves)


def shares(
    sharings: Sequence[FoundRow], rules: Sequence[FoundRow], seconds: Sequence[FoundRow], ended_after: datetime
) -> tuple[Share, ...]:
    """Who shares with whom, and who did until after a moment, by calf; what was written of them is not in it yet."""
    by_calf: dict[UUID, list[Share]] = {}
    for calf, cow, do_share, longest_h, begins in sharings:
        before, at = by_calf.setdefault(uid(calf), []), moment(begins)
        last = before[-1] if before and before[-1].until is None else None
        if last and do_share and last.cow_id == uid(cow):
            before[-1] = replace(last, longest_h=longest_h)
            continue
        if last:
            before[-1] = replace(last, until=at)
        if do_share:
            before.append(Share(uid(cow), uid(calf), longest_h, since=at))
    by_rule = {uid(id_): ApartRule(*rule) for id_, *rule in rules}
    second = {uid(id_): (uid(cow), moment(at)) for id_, cow, at in seconds}
    return tuple(
        _with_second(replace(each, rule=by_rule.get(calf)), second.get(calf))
        for calf, found in sorted(by_calf.items(), key=lambda pair: pair[0].bytes)
        for each in found
        if (each.until is None or each.until > ended_after) and each.until != each.since
    )


def _with_second(share: Share, second: tuple[UUID, datetime] | None) -> Share:
    """A pair with the other cow that the calf sucks and since when, while it is one."""
    if second is None or share.until:
        return share
    return replace(share, second_cow_id=second[0], second_since=second[1])


def substitutes(found: Sequence[FoundRow]) -> dict[UUID, Substitute]:
    """What replaces each soaked feed."""
    return {uid(feed): Substitute(uid(by), ratio, most_kg) for feed, by, ratio, most_kg in found}


def withheld(found: Sequence[FoundRow]) -> dict[UUID, tuple[Withholding, ...]]:
    """Whose milk is withheld, from when and until when, oldest first. Every row with an end holds until it; one without
    holds until the next row of hers that gives the same reason begins: what is about something else leaves it.
    """
    by_animal: dict[UUID, tuple[Withholding, ...]] = {}
    for animal, begins, ends, why in found:
        since, until = moment(begins), None if ends is None else moment(ends)
        before = tuple(
            replace(each, until=since) if each.until is None and each.why == why else each
            for each in by_animal.get(uid(animal), ())
        )
        by_animal[uid(animal)] = (*before, Withholding(since, until, why))
    return by_animal


def soak_limits(found: Sequence[FoundRow]) -> dict[UUID, SoakLimit]:
    """The farm's soak rule of each feed in today's air."""
    return {
        uid(id_): SoakLimit(Water(water), least_h, most_h, water_per_kg)
        for id_, water, least_h, most_h, water_per_kg in found
    }
