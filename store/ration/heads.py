"""One animal as her ration sees it: each figure with where it came from, and what is not known, with its key."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from uuid import UUID

from msgspec import Struct

from store.book.facts.farm import Animal
from store.book.reading.measured import Measured, read_measured
from store.book.words import Species, Stage
from store.husbandry.breeds import ANY, breed_of
from store.husbandry.why import Source, Value, given
from store.ration.asked import ASSUMED, Asked, days_between
from store.ration.in_calf import days_in_calf, of_calving
from store.ration.milk import calves_of, drunk_by, milk_of, why_unknown
from store.ration.parts import Head, Missing
from store.ration.weight import Weighed, is_old, slipped, weighings, weight_of

USUAL_GAIN_KG_DAY = {Stage.CALF: 0.6, Stage.HEIFER: 0.6, Stage.STEER: 0.7}
"""What is wanted of the young where the farm has set no goal, for small and middle breeds. Assumed. [kg a day]"""
GIVES_MILK = (Stage.IN_MILK, Stage.SUCKLER)


class Known(Struct, frozen=True):
    """A head, and what of it is not known."""

    head: Head
    missing: tuple[Missing, ...]


def known(asked: Asked, animal: Animal) -> Known:
    """Everything of one animal."""
    looks = read_measured(asked.desk, animal.id, asked.now)
    found = weighings(asked.register, animal.id, looks)
    calves = _calf_weights(asked, animal.id)
    head = _head(asked, animal, looks, weight_of(asked, found), calves)
    return Known(head, (*_of_weight(asked, head, found), *_of_milk(asked, head, calves), *of_calving(asked, animal)))


def _head(
    asked: Asked, animal: Animal, looks: tuple[Measured, ...], weight: Value | None, calves: Mapping[UUID, Value]
) -> Head:
    breeding = asked.register.get("breeding", animal.id) or {}
    goal = asked.register.get("feeding_goal", animal.id) or {}
    breed = breeding.get("breed", "")
    milks = animal.stage in GIVES_MILK
    return Head(
        animal,
        breed,
        weight_kg=weight,
        milk_kg=milk_of(asked, animal.id, calves) if milks else drunk_by(asked, animal.id, weight),
        milk_fat_percent=_part_of_milk(asked, animal, breed, "fat_percent") if milks else _fat_drunk(asked, animal.id),
        milk_protein_percent=_part_of_milk(asked, animal, breed, "protein_percent") if milks else None,
        days_in_milk=_days(asked, animal.calved_on, "days in milk", "calved") if milks else None,
        days_in_calf=days_in_calf(asked, animal),
        age_days=_days(asked, animal.born_on, "age", "born"),
        condition=_condition(asked, looks),
        condition_goal=_goal(goal.get("condition"), "condition wanted", "points"),
        gain_kg_day=_gain(animal, goal.get("gain_kg_day")),
        mature_kg=_goal(goal.get("mature_kg"), "grown weight", "kg") or _grown(breed),
        forage_only=bool(goal.get("forage_only")),
    )


def _calf_weights(asked: Asked, cow_id: UUID) -> Mapping[UUID, Value]:
    found: dict[UUID, Value] = {}
    for calf_id in calves_of(asked, cow_id):
        calf = asked.animal(calf_id)
        weight = (
            weight_of(asked, weighings(asked.register, calf_id, read_measured(asked.desk, calf_id, asked.now)))
            if calf
            else None
        )
        found |= {calf_id: weight} if weight else {}
    return found


def _part_of_milk(asked: Asked, animal: Animal, breed: str, column: str) -> Value:
    """Of her test of this lactation, else of her breed, else a starting value."""
    name = f"milk {column.removesuffix('_percent')}"
    test = asked.newest("milk_test", column, animal.id)
    if test and animal.is_of_now(asked.day(test["begins_at"])):
        return given(test[column], name, "%", f"your milk test of {asked.said(asked.day(test['begins_at']))}")
    usual = breed_of(breed)
    source: Source = getattr(usual or ANY, column.removesuffix("_percent"))
    said = f"starting value for {_a(breed)}" if usual else "a starting value"
    return given(getattr(usual or ANY, column), name, "%", said, source)


def _fat_drunk(asked: Asked, calf_id: UUID) -> Value | None:
    """Fat of the milk that a calf drinks, by the first cow that it shares."""
    cows = (
        asked.animal(cow_id) for share in asked.snapshot.shares if share.calf_id == calf_id for cow_id in share.cow_ids
    )
    cow = next(filter(None, cows), None)
    breed = (asked.register.get("breeding", cow.id) or {}).get("breed", "") if cow else ""
    return _part_of_milk(asked, cow, breed, "fat_percent") if cow else None


def _a(breed: str) -> str:
    return f"an {breed}" if breed[:1].upper() in "AEIOU" else f"a {breed}"


def _days(asked: Asked, since: date | None, name: str, word: str) -> Value | None:
    if since is None or since > asked.today:
        return None
    return given(days_between(since, asked.today), name, "days", f"{word} {asked.said(since)}")


def _condition(asked: Asked, looks: tuple[Measured, ...]) -> Value | None:
    scored = next((each for each in reversed(looks) if each.condition_points is not None), None)
    if scored is None or scored.condition_points is None:
        return None
    return given(scored.condition_points, "condition", "points", f"scored {asked.said(asked.day(scored.at))}")


def _goal(amount: float | None, name: str, unit: str) -> Value | None:
    return None if amount is None else given(amount, name, unit, "your goal")


def _gain(animal: Animal, wanted: float | None) -> Value | None:
    usual = USUAL_GAIN_KG_DAY.get(animal.stage)
    if wanted is None and usual is not None:
        return given(usual, "gain wanted", "kg a day", f"starting value for a {animal.stage}", ASSUMED)
    return _goal(wanted, "gain wanted", "kg a day")


def _grown(breed: str) -> Value:
    usual = breed_of(breed)
    said = f"starting value for {_a(breed)}" if usual else "a starting value"
    return given((usual or ANY).mature_kg, "grown weight", "kg", said, ASSUMED)


def _of_weight(asked: Asked, head: Head, found: tuple[Weighed, ...]) -> Iterator[Missing]:
    animal, name = head.animal, head.animal.name
    if animal.species is not Species.CATTLE:
        return
    if head.weight_kg is None:
        yield Missing("weight", f"{name} has no weight: F, animals, {name}, weight or heart girth.")
        return
    slip = slipped(asked.register, animal.id, found)
    if slip:
        yield Missing("weight", f"The weight of {name} can hardly be right. {slip} F, animals, {name}, weight.")
    elif is_old(asked, animal, found):
        days = days_between(asked.day(found[-1].at), asked.today)
        yield Missing("old weight", f"The weight of {name} is {days} days old: F, animals, {name}, weigh or tape anew.")


def _of_milk(asked: Asked, head: Head, calves: Mapping[UUID, Value]) -> Iterator[Missing]:
    if head.animal.stage is Stage.IN_MILK:
        yield from why_unknown(asked, head.animal.id, calves)


def lightest(heads: Sequence[Head]) -> Value | None:
    """The least weight of some heads, for limits that hang on it; None: of one it is not known, or there is none."""
    weights = [head.weight_kg for head in heads]
    known_kg = [each for each in weights if each]
    return min(known_kg, key=lambda each: each.amount) if known_kg and len(known_kg) == len(weights) else None
