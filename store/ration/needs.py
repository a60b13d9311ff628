"""What a head needs in a day, by the class that it is of; of a pen fed as one what the mean head needs."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from msgspec.structs import replace

from store.book.words import SettingName, Species, Stage
from store.husbandry.mean import mean_of
from store.husbandry.needs import dairy
from store.husbandry.why import Source, Sure, Value, given, total
from store.ration.asked import ASSUMED, Asked
from store.ration.parts import Head, Missing, Need, Part

RATIO = Source("Nutrient Requirements of Beef Cattle (2000): 1 to 7 is tolerated", Sure.MEMORY)
LEAST_RATIO, MOST_RATIO = (
    given(amount, f"calcium to phosphorus at {word}", "to 1", "a table", RATIO)
    for amount, word in ((1.0, "least"), (7.0, "most"))
)
MIDDLE_OF_MILK = given(120.0, "days in milk", "days", "a starting value", ASSUMED)
"""Of a cow whose calving nobody knows: she eats as one past her first weeks."""
LEAST = {
    "energy": (Part.ENERGY, "Mcal"), "protein_g": (Part.PROTEIN, "g"), "fibre_percent": (Part.FIBRE, "%"),
    "forage_percent": (Part.FORAGE, "%"), "calcium_g": (Part.CALCIUM, "g"), "phosphorus_g": (Part.PHOSPHORUS, "g"),
}  # fmt: skip
MOST = {"fat_percent": (Part.FAT, "%"), "dry_matter_kg": (Part.DRY_MATTER, "kg")}
"""By the word of the arithmetic: the part, its unit, and whether it is asked at least or at most."""
OWN = {"fat_percent": SettingName.FAT_MOST_PERCENT, "forage_percent": SettingName.FORAGE_LEAST_PERCENT}
"""What the farm can set for itself."""
Needs = Mapping[str, Value]


def needs_of(asked: Asked, head: Head) -> Needs | None:
    """What one head needs, by the word of the arithmetic; None: it has none here, or something is missing."""
    way = WAYS.get(head.animal.stage) if head.animal.species is Species.CATTLE else None
    found = way(head) if way and head.weight_kg else None
    return None if found is None else {**found, **dict(_own(asked, found))}


def as_needs(found: Needs) -> tuple[Need, ...]:
    """Part by part, with the ratio of calcium to phosphorus."""
    return (
        *(Need(part, unit, least=found[word]) for word, (part, unit) in LEAST.items() if word in found),
        *(Need(part, unit, most=found[word]) for word, (part, unit) in MOST.items() if word in found),
        Need(Part.CA_TO_P, "to 1", LEAST_RATIO, MOST_RATIO),
    )


def mean_needs(found: Sequence[Needs]) -> Needs:
    """What the mean of some heads needs; of what is not known of every one of them, nothing."""
    if len(found) == 1:
        return found[0]
    words = [word for word in found[0] if all(word in each for each in found)]
    return {word: _mean([each[word] for each in found]) for word in words}


def without_needs(heads: Iterable[Head]) -> Iterator[Missing]:
    """Those whose class has no needs here."""
    for head in heads:
        animal = head.animal
        word = animal.stage if animal.species is Species.CATTLE else animal.species
        if animal.species is not Species.CATTLE or animal.stage not in WAYS:
            yield Missing("needs", f"{animal.name}: no needs are kept for a {word}; amounts, cost and limits only.")


def _mean(values: Sequence[Value]) -> Value:
    together = total(values[0].name, values[0].unit, values)
    mean = mean_of.of(values[0].name, together=together, count=given(len(values), "heads", "", "counted"))
    return replace(mean, unit=values[0].unit, came=f"mean of {len(values)} heads")


def _own(asked: Asked, found: Needs) -> Iterator[tuple[str, Value]]:
    for word, name in OWN.items():
        row = asked.register.get("setting", name)
        if row and word in found:
            yield word, given(float(row["value"]), found[word].name, found[word].unit, "your setting")


def _in_milk(head: Head) -> Needs | None:
    if not (head.weight_kg and head.milk_kg and head.milk_fat_percent):
        return None
    return dairy.in_milk(
        weight_kg=head.weight_kg,
        milk_kg=head.milk_kg,
        fat_percent=head.milk_fat_percent,
        protein_percent=head.milk_protein_percent,
        days_in_milk=head.days_in_milk or MIDDLE_OF_MILK,
        days_in_calf=head.days_in_calf,
    )


def _dry(head: Head) -> Needs | None:
    return dairy.dry(weight_kg=head.weight_kg, days_in_calf=head.days_in_calf) if head.weight_kg else None


def _close_up(head: Head) -> Needs | None:
    return dairy.close_up(weight_kg=head.weight_kg, days_in_calf=head.days_in_calf) if head.weight_kg else None


WAYS: Mapping[Stage, Callable[[Head], Needs | None]] = {
    Stage.IN_MILK: _in_milk,
    Stage.DRY: _dry,
    Stage.CLOSE_UP: _close_up,
}
