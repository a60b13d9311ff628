"""What a head needs in a day, as lines of the balance; of a pen fed as one, what its mean head needs."""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from store.book.words import SettingName
from store.husbandry.mean import mean_of
from store.husbandry.starting import FAT_MOST_PERCENT, FORAGE_LEAST_PERCENT
from store.husbandry.why import Source, Sure, Value, given, total
from store.ration.asked import Asked
from store.ration.classes import GROWS, Needs
from store.ration.parts import Head, Missing, Need, Part

RATIO = Source("Nutrient Requirements of Beef Cattle (2000): 1 to 7 is tolerated", Sure.MEMORY)
LEAST_RATIO, MOST_RATIO = (
    given(amount, f"calcium to phosphorus at {word}", "to 1", "a table", RATIO)
    for amount, word in ((1.0, "least"), (7.0, "most"))
)
TDN = "kg TDN"
"""The unit of energy of beef cattle and of the young; that of dairy cows is Mcal."""
LEAST = {
    "energy": (Part.ENERGY, "Mcal"), "tdn_kg": (Part.ENERGY, TDN), "protein_g": (Part.PROTEIN, "g"),
    "fibre_percent": (Part.FIBRE, "%"), "forage_percent": (Part.FORAGE, "%"), "calcium_g": (Part.CALCIUM, "g"),
    "phosphorus_g": (Part.PHOSPHORUS, "g"),
}  # fmt: skip
MOST = {"fat_percent": (Part.FAT, "%"), "dry_matter_kg": (Part.DRY_MATTER, "kg")}
"""By the word of the arithmetic: the part and its unit, asked at least or at most."""
LIMITS = {
    "fat_percent": (SettingName.FAT_MOST_PERCENT, FAT_MOST_PERCENT),
    "forage_percent": (SettingName.FORAGE_LEAST_PERCENT, FORAGE_LEAST_PERCENT),
}
"""What the farm sets for every class, with its starting value."""


def as_needs(asked: Asked, found: Needs) -> tuple[Need, ...]:
    """Part by part, with the farm's own limits, and the ratio of calcium to phosphorus."""
    own = {word: asked.setting(name, start) for word, (name, start) in LIMITS.items()}
    of = {**found, **own}
    return (
        *(Need(part, unit, least=replace(of[word], unit=unit)) for word, (part, unit) in LEAST.items() if word in of),
        *(Need(part, unit, most=replace(of[word], unit=unit)) for word, (part, unit) in MOST.items() if word in of),
        Need(Part.CA_TO_P, "to 1", LEAST_RATIO, MOST_RATIO),
    )


def mean_needs(found: Sequence[Needs]) -> Needs:
    """What the mean of some heads needs; of what is not told alike of every one of them, nothing."""
    if len(found) == 1:
        return found[0]
    words = [word for word in found[0] if all(word in each for each in found)]
    return {word: _mean([each[word] for each in found]) for word in words}


def gain_wanted(heads: Sequence[Head]) -> Iterator[Need]:
    """Of one that grows and is fed alone: the gain, which the balance holds against what it gets makes of it."""
    if len(heads) == 1 and heads[0].weight_kg and heads[0].animal.stage in GROWS and heads[0].gain_kg_day:
        yield Need(Part.GAIN, "kg a day", least=heads[0].gain_kg_day)


def apart(found: Sequence[Needs]) -> Iterator[Missing]:
    """That energy is not told, where cows and beef cattle, which are counted in unlike units, stand together."""
    if found and not any(all(word in each for each in found) for word in ("energy", "tdn_kg")):
        yield Missing("energy", "Energy is counted in Mcal for dairy cows and in TDN for the others: see each alone.")


def _mean(values: Sequence[Value]) -> Value:
    together = total(values[0].name, values[0].unit, values)
    mean = mean_of.of(values[0].name, together=together, count=given(len(values), "heads", "", "counted"))
    return replace(mean, unit=values[0].unit, came=f"mean of {len(values)} heads")
