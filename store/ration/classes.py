"""Which arithmetic a class of cattle needs, and why one has none here. By the stage of each animal."""

from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress

from store.book.words import Species, Stage
from store.husbandry.body.condition import POINT_KG, REGAIN_DAYS, regain_kg_day
from store.husbandry.breeds import is_dairy
from store.husbandry.needs import dairy, growing, suckler
from store.husbandry.why import Value, given
from store.ration.asked import ASSUMED, Asked
from store.ration.forage_only import has_slipped
from store.ration.parts import Head, Missing
from store.round.saying import exact

Needs = Mapping[str, Value]
"""What a head needs, by the word of the arithmetic: energy, tdn_kg, protein_g, dry_matter_kg and so on."""
MIDDLE_OF_MILK = given(120.0, "days in milk", "days", "a starting value", ASSUMED)
"""Of a cow whose calving nobody knows: she eats as one past her first weeks."""
WEANED = given(300.0, "days since she calved", "days", "a starting value", ASSUMED)
"""Of a suckler whose calving nobody knows: her calf is weaned."""
ON_MILK_DAYS = 75.0
"""A calf younger than this, or one that shares a cow's milk, lives on milk. Common practice. [days]"""


def needs_of(asked: Asked, head: Head) -> Needs | None:
    """What one head needs; None: its class has no needs here, or something that they hang on is missing."""
    way = WAYS.get(head.animal.stage) if head.animal.species is Species.CATTLE else None
    if way is None or head.weight_kg is None or is_on_milk(asked, head):
        return None
    with suppress(ValueError):  # a gain that no feed makes
        return way(head, head.weight_kg)
    return None


def is_on_milk(asked: Asked, head: Head) -> bool:
    """Whether it is a calf that lives on milk: what it needs of feed says little yet."""
    if head.animal.stage is not Stage.CALF:
        return False
    young = head.age_days is not None and head.age_days.amount < ON_MILK_DAYS
    return young or any(share.calf_id == head.animal.id for share in asked.snapshot.shares)


def why_none(asked: Asked, head: Head) -> Iterator[Missing]:
    """Why a head has no needs here, where it is not that something of it is missing, which is said by itself."""
    animal, name = head.animal, head.animal.name
    if animal.species is not Species.CATTLE or animal.stage not in WAYS:
        word = animal.stage if animal.species is Species.CATTLE else animal.species
        yield Missing("needs", f"{name}: no needs are kept for a {word}; amounts, cost and limits only.")
    elif is_on_milk(asked, head):
        told = "only what it should gain is reckoned" if head.milk_kg else "what it drinks is not in the book"
        yield Missing("needs", f"{name} lives on milk: {told}; of feed amounts and cost.")
    elif head.weight_kg and head.gain_kg_day and animal.stage in GROWS and needs_of(asked, head) is None:
        gain = exact(head.gain_kg_day.amount, asked.register.farm.units)
        yield Missing("gain", f"No feed makes {name} gain {gain} a day: F, animals, {name}, what it is fed for.")


def _in_milk(head: Head, weight_kg: Value) -> Needs | None:
    if not (head.milk_kg and head.milk_fat_percent):
        return None
    return dairy.in_milk(
        weight_kg=weight_kg,
        milk_kg=head.milk_kg,
        fat_percent=head.milk_fat_percent,
        protein_percent=head.milk_protein_percent,
        days_in_milk=head.days_in_milk or MIDDLE_OF_MILK,
        days_in_calf=head.days_in_calf,
        gain_kg_day=_regain(head),
    )


def _dry(head: Head, weight_kg: Value) -> Needs:
    return dairy.dry(weight_kg=weight_kg, days_in_calf=head.days_in_calf)


def _regain(head: Head) -> Value | None:
    """What a cow in milk is to put on where she is below the condition wanted; None: she is not, or gives too much
    yet. A dry one is fed to hold what she has. Common practice."""
    fresh = (head.days_in_milk or MIDDLE_OF_MILK).amount <= MIDDLE_OF_MILK.amount
    goal, points = head.condition_goal, head.condition
    if fresh or not goal or not points or not has_slipped(head):
        return None
    return regain_kg_day.of(goal_points=goal, points=points, point_kg=POINT_KG, days=REGAIN_DAYS)


def _close_up(head: Head, weight_kg: Value) -> Needs:
    return dairy.close_up(weight_kg=weight_kg, days_in_calf=head.days_in_calf)


def _suckler(head: Head, weight_kg: Value) -> Needs:
    since = head.days_in_milk or WEANED
    return suckler.suckler(weight_kg=weight_kg, days_in_milk=since, days_in_calf=head.days_in_calf)


def _growing(head: Head, weight_kg: Value) -> Needs | None:
    """For the gain that is wanted. Raises ValueError for one that no feed makes."""
    if head.gain_kg_day is None or head.mature_kg is None:
        return None
    return growing.growing(
        weight_kg=weight_kg,
        gain_kg_day=head.gain_kg_day,
        mature_kg=head.mature_kg,
        days_in_calf=head.days_in_calf,
        heifer=head.animal.stage is Stage.HEIFER and is_dairy(head.breed),
    )


GROWS = (Stage.HEIFER, Stage.STEER, Stage.CALF)
WAYS: Mapping[Stage, Callable[[Head, Value], Needs | None]] = {
    Stage.IN_MILK: _in_milk,
    Stage.DRY: _dry,
    Stage.CLOSE_UP: _close_up,
    Stage.SUCKLER: _suckler,
    **dict.fromkeys(GROWS, _growing),
}
