"""What a ration supplies a head in a day, each part with what it is made of."""

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from store.husbandry.bounds import above_zero, at_least_zero
from store.husbandry.money import cost_of
from store.husbandry.units import KG_PER_LB
from store.husbandry.why import ARITHMETIC, Source, Value, equation, example, total

MONTANA = Source("animalrangeextension.montana.edu/beef/articles/pearson-sqaures.html, the squares proved")
CATTLE_SITE = Source("thecattlesite.com/articles/3154/how-much-forage-does-a-beef-cow-consume-each-day")
SOUTHEAST = Source("progressivecattle.com, regional roundup southeast, forage intake in beef cattle")
BEEF_COWS = Source("beefmagazine.com/Cows_Daily_Feed_Consumption: 28 lb of dry matter are 32 lb of hay")


class Given(Struct, frozen=True):
    """What a head gets of one feed in a day. kg: as it lies, a soaked feed dry. made: of `feeds.made`."""

    name: str
    made: Mapping[str, Value]
    kg: Value
    forage: bool = False
    price_per_kg: Value | None = None


@equation(
    "dry matter", "feed x its dry matter %", "kg", ARITHMETIC,
    example(24 * KG_PER_LB, 0.5 * KG_PER_LB, CATTLE_SITE, kg=27 * KG_PER_LB, dm_percent=88.0),
    example(22 * KG_PER_LB, 0.05 * KG_PER_LB, SOUTHEAST, kg=24.7 * KG_PER_LB, dm_percent=89.0),
    example(28 * KG_PER_LB, 0.5 * KG_PER_LB, BEEF_COWS, kg=32 * KG_PER_LB, dm_percent=88.0),
)  # fmt: skip
def dry(kg: float, dm_percent: float) -> float:
    """Dry matter of so much feed. [kg] dm_percent: of the feed as it lies. Raises ValueError below zero."""
    at_least_zero(kg=kg, dm_percent=dm_percent)
    return kg * dm_percent / 100


@equation(
    "part", "dry matter x what it holds %", "kg", ARITHMETIC,
    example(1.69, 0.005, MONTANA, dry_kg=13.8, percent=12.25), example(9.31, 0.005, MONTANA, dry_kg=86.2, percent=10.8),
    example(8.71, 0.005, MONTANA, dry_kg=97.3, percent=8.95), example(1.08, 0.005, MONTANA, dry_kg=2.7, percent=40.0),
)  # fmt: skip
def part_kg(dry_kg: float, percent: float) -> float:
    """What so much dry matter holds of something. [kg] Raises ValueError below zero."""
    at_least_zero(dry_kg=dry_kg, percent=percent)
    return dry_kg * percent / 100


@equation("part in grams", "dry matter x what it holds % x 10", "g", ARITHMETIC)
def part_g(dry_kg: float, percent: float) -> float:
    """What so much dry matter holds of something. [g] Raises ValueError below zero."""
    return part_kg(dry_kg, percent) * 1000


@equation("energy", "dry matter x net energy of a kilogram", "Mcal", ARITHMETIC)
def energy(dry_kg: float, nel_mcal: float) -> float:
    """Net energy in so much dry matter. [Mcal] Raises ValueError below zero."""
    at_least_zero(dry_kg=dry_kg, nel_mcal=nel_mcal)
    return dry_kg * nel_mcal


@equation("share of the dry matter", "part / dry matter x 100", "%", ARITHMETIC)
def share(kg: float, dry_kg: float) -> float:
    """How much of the dry matter a part is. [%] Raises ValueError below zero, or where there is no dry matter."""
    at_least_zero(kg=kg)
    above_zero(dry_kg=dry_kg)
    return kg / dry_kg * 100


@equation("calcium to phosphorus", "calcium / phosphorus", ": 1", ARITHMETIC)
def ca_to_p(ca_g: float, p_g: float) -> float:
    """How many times the phosphorus the calcium is. Raises ValueError below zero, or where there is no phosphorus."""
    at_least_zero(ca_g=ca_g)
    above_zero(p_g=p_g)
    return ca_g / p_g


SUMMED = {
    "TDN": ("tdn_percent", "kg"), "protein": ("cp_percent", "g"), "NDF": ("ndf_percent", "kg"),
    "fat kg": ("fat_percent", "kg"), "calcium": ("ca_percent", "g"), "phosphorus": ("p_percent", "g"),
}  # fmt: skip
"""By the key of the supply: the column that it comes from, and the unit of the sum."""
SHARES = {"fibre": "NDF", "forage": "forage kg", "fat": "fat kg", "forage fibre": "forage NDF"}
"""Told in % of the dry matter, by the key of what they are a part of."""


def supply(ration: Sequence[Given]) -> Mapping[str, Value]:
    """What a ration supplies in a day, by the word for it; what cannot be reckoned is not in it (`lacking` says why).

    `dry matter`, `TDN`, `NDF`, `forage NDF`, `forage kg`, `fat kg` in kg; `energy` in Mcal (NEL); `protein`, `calcium`,
    `phosphorus` in g; `fibre` (NDF), `forage`, `fat`, `forage fibre` in % of the dry matter; `calcium to phosphorus`.
    Raises ValueError below zero.
    """
    found = dict(_sums([each for each in ration if each.kg.amount]))
    whole = found.get("dry matter")
    for name, of in SHARES.items() if whole and whole.amount else ():
        if of in found and whole:
            found[name] = share.of(name, kg=found[of], dry_kg=whole)
    if "calcium" in found and "phosphorus" in found and found["phosphorus"].amount:
        found["calcium to phosphorus"] = ca_to_p.of(ca_g=found["calcium"], p_g=found["phosphorus"])
    return found


def lacking(ration: Sequence[Given], part: str) -> tuple[str, ...]:
    """The feeds whose column `part` (or dry matter) nobody told, so that a sum with them cannot be reckoned."""
    return tuple(each.name for each in ration if each.kg.amount and not {part, "dm_percent"} <= each.made.keys())


def cost(ration: Sequence[Given]) -> Value | None:
    """What a ration costs a day, in the farm's money. None: a price is not known, or nothing is given."""
    given = [each for each in ration if each.kg.amount]
    costs = [
        cost_of.of(f"cost of {each.name}", kg=each.kg, price_per_kg=each.price_per_kg)
        for each in given
        if each.price_per_kg
    ]
    return total("cost", "", costs) if costs and len(costs) == len(given) else None


def _sums(ration: Sequence[Given]) -> Iterator[tuple[str, Value]]:
    if lacking(ration, "dm_percent"):
        return
    dries = [dry.of(f"dry matter of {each.name}", kg=each.kg, dm_percent=each.made["dm_percent"]) for each in ration]
    yield "dry matter", total("dry matter", "kg", dries)
    forage = [kg for each, kg in zip(ration, dries, strict=True) if each.forage]
    yield "forage kg", total("forage", "kg", forage)
    for name, (part, unit) in SUMMED.items():
        if not lacking(ration, part):
            yield name, total(name, unit, _parts(ration, dries, part, unit))
    grass = [each for each in ration if each.forage]
    if not lacking(grass, "ndf_percent"):
        yield "forage NDF", total("fibre from forage", "kg", _parts(grass, forage, "ndf_percent", "kg"))
    if not lacking(ration, "nel_mcal"):
        yield "energy", _energy(ration, dries)


def _parts(ration: Sequence[Given], dries: Sequence[Value], part: str, unit: str) -> list[Value]:
    made = part_g if unit == "g" else part_kg
    return [
        made.of(f"{each.made[part].name} in {each.name}", dry_kg=kg, percent=each.made[part])
        for each, kg in zip(ration, dries, strict=True)
    ]


def _energy(ration: Sequence[Given], dries: Sequence[Value]) -> Value:
    parts = [
        energy.of(f"energy in {each.name}", dry_kg=kg, nel_mcal=each.made["nel_mcal"])
        for each, kg in zip(ration, dries, strict=True)
    ]
    return total("energy", "Mcal", parts)
