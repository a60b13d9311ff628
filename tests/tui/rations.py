"""Rations made by hand for the screen: cases of every kind, and the place at each of them. Figures are invented."""

from collections.abc import Sequence
from uuid import UUID

from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.facts.farm import Animal
from store.book.facts.feed import Feed, Told
from store.book.words import Dialect, Origin, Species, Stage, Units
from store.husbandry.why import Value, given
from store.ration.parts import Case, Head, Limits, Missing, Need, Part, RationFeed
from tests.store.round.made import some_id
from tests.tui.keys import Keys, Sitting
from tui.ration.ration import Ration
from tui.ration.seen import Farm

SLOTS = ("morning", "evening")
METRIC = Farm(Units.METRIC, Dialect.BRITISH, "EUR")
AMERICAN = Farm(Units.US, Dialect.AMERICAN, "USD")
LONG_NAME = "Butterblume vom Oberen Hinterholzer Hof"
"""39 letters."""
COLUMNS = {
    "dm_percent": "dry matter", "nel_mcal": "energy for milk", "cp_percent": "protein", "ndf_percent": "fibre",
    "fat_percent": "fat", "ca_percent": "calcium", "p_percent": "phosphorus", "tdn_percent": "digestible",
}  # fmt: skip


def v(amount: float, name: str = "made up", unit: str = "kg", came: str = "your setting") -> Value:
    """A number with its why."""
    return given(amount, name, unit, came)


def feed(
    name: str, made: Sequence[float] = (), *, scoop_kg: float | None = None, forage: bool = False, price: float = 0.0,
    there_kg: float | None = 60.0, limits: Limits | None = None, barred: str = "", free: bool = False,
    soaked: bool = False,
) -> RationFeed:  # fmt: skip
    """A feed: what it is made of in the order of COLUMNS, in a scoop of so much where it has one."""
    told = Told(some_id(f"{name} scoop"), "scoop", "scoops", scoop_kg) if scoop_kg else None
    parts = {
        column: v(amount, words, "Mcal" if column == "nel_mcal" else "%", "its label")
        for (column, words), amount in zip(COLUMNS.items(), made, strict=False)
    }
    cost = v(price, "price", "", "delivery") if price else None
    there = None if there_kg is None else v(there_kg, "what is there", "kg", "weighed")
    named = Feed(some_id(name), name, soaked)
    return RationFeed(
        named, parts, Origin.TAG, "", forage, cost, there, told, limits or Limits(), barred=barred, free=free
    )


NUTS = feed("dairy nuts", (88, 1.78, 18.2, 26, 3.4, 0.9, 0.6, 74), scoop_kg=0.675, price=0.38,
            limits=Limits(most_meal_kg=v(3.0), most_day_kg=v(6.0), step_kg=v(0.35)))  # fmt: skip
LUCERNE = feed("lucerne pellets", (90, 1.38, 22, 42, 3.7, 1.74, 0.3, 62), scoop_kg=0.9, price=0.42, forage=True,
               soaked=True)  # fmt: skip
HAY = feed("grass hay", (86, 1.27, 11.2, 60.5, 2.5, 0.48, 0.26, 57), price=0.2, forage=True, there_kg=900.0)
FREE_HAY = replace(HAY, free=True)
BARLEY = feed("rolled barley", (91, 1.9, 12.4, 20.8, 2.2, 0.06, 0.39, 82.7), scoop_kg=0.55, price=0.31)
UNKNOWN = feed("neighbour's mash", there_kg=12.0)
MINERAL = feed("cattle mineral", (97, 0, 0, 0, 0, 16, 6, 0), price=1.4, barred="Copper in cattle mineral kills sheep.")


def head(name: str, stage: Stage = Stage.IN_MILK, species: Species = Species.CATTLE, **known: Value | bool) -> Head:
    """An animal, with what is known of it."""
    animal = Animal(some_id(name), name, "", species, stage, None, None, None)
    return Head(animal, "", **known)  # type: ignore[arg-type]


FENNEL = head(
    "Fennel", weight_kg=v(450, "weight", "kg", "weighed 20 Feb"), condition=v(3, "condition", "points", "scored 1 Mar"),
    condition_goal=v(2.75, "condition wanted", "points"), milk_kg=v(17, "milk", "kg", "calf reckoned, +- 2"),
    days_in_milk=v(61, "days in milk", "days", "calved 9 Jan"),
)  # fmt: skip
TANSY = head(
    "Tansy", Stage.DRY, weight_kg=v(520, "weight"), condition=v(3.0, "condition", "points", "scored 1 Mar"),
    condition_goal=v(3.25, "condition wanted", "points"), forage_only=True, days_in_calf=v(240, "days in calf", "days"),
)  # fmt: skip
MILK_NEEDS = (
    Need(Part.ENERGY, "Mcal", least=v(23.4, "energy needed", "Mcal", "her weight and milk")),
    Need(Part.PROTEIN, "g", least=v(1930, "protein needed", "g")),
    Need(Part.FIBRE, "%", least=v(28, "fibre", "%")),
    Need(Part.FORAGE, "%", least=v(50, "forage", "%")),
    Need(Part.FAT, "%", most=v(6, "fat", "%")),
    Need(Part.CALCIUM, "g", least=v(62, "calcium", "g")),
    Need(Part.PHOSPHORUS, "g", least=v(41, "phosphorus", "g")),
    Need(Part.CA_TO_P, "to 1", least=v(1.2, "ratio", "to 1"), most=v(3, "ratio", "to 1")),
    Need(Part.DRY_MATTER, "kg", most=v(16.1, "appetite")),
)
DRY_NEEDS = (
    Need(Part.ENERGY, "Mcal", least=v(14.1, "energy needed", "Mcal"), most=v(16, "energy", "Mcal")),
    Need(Part.PROTEIN, "g", least=v(1200, "protein needed", "g")),
    Need(Part.DRY_MATTER, "kg", most=v(11.5, "appetite")),
)
GAIN_NEEDS = (
    Need(Part.ENERGY, "Mcal", least=v(9.1, "energy needed", "Mcal")),
    Need(Part.GAIN, "kg/d", least=v(0.7, "gain wanted", "kg/d")),
    Need(Part.DRY_MATTER, "kg", most=v(8.9, "appetite")),
)


def amounts(*rows: tuple[RationFeed, float, float]) -> dict[tuple[str, UUID], float]:
    """Feeds with what they give in the morning and in the evening. [kg]"""
    return {(slot, each.feed.id): kg for each, *kgs in rows for slot, kg in zip(SLOTS, kgs, strict=True)}


MILK = Case(
    Subject(animal_id=FENNEL.animal.id), "Fennel", (FENNEL,), (NUTS, LUCERNE, HAY, BARLEY, UNKNOWN), SLOTS,
    amounts((NUTS, 2.7, 2.025), (LUCERNE, 0.9, 0.9), (HAY, 4.1, 4.1)), MILK_NEEDS, v(3.0, "meal limit"),
)  # fmt: skip
DRY = Case(
    Subject(animal_id=TANSY.animal.id), "Tansy", (TANSY,), (FREE_HAY, NUTS), SLOTS, {}, DRY_NEEDS, v(3.0, "meal limit")
)
STEERS = tuple(
    head(f"steer {at}", Stage.STEER, weight_kg=v(300 + at, "weight"), gain_kg_day=v(0.7, "gain", "kg/d"))
    for at in range(1, 13)
)
PEN = Case(
    Subject(pen_id=some_id("Long field")), "Long field", STEERS, (HAY, BARLEY), SLOTS,
    amounts((HAY, 3.5, 3.5), (BARLEY, 1.1, 0)), GAIN_NEEDS, v(1.5, "meal limit"),
)  # fmt: skip
HUNDRED = replace(PEN, heads=tuple(replace(STEERS[0], animal=STEERS[0].animal) for _ in range(100)))
NO_WEIGHT = replace(
    MILK, heads=(replace(FENNEL, weight_kg=None),),
    needs=(),
    missing=(Missing("weight", "Nobody weighed Fennel, so what she needs is not known. M, weigh her."),),
)  # fmt: skip
SHEEP = Case(
    Subject(pen_id=some_id("Paddock")), "Paddock",
    (head("Gorse", Stage.OTHER, Species.SHEEP), head("Whin", Stage.OTHER, Species.SHEEP)),
    (HAY, MINERAL), SLOTS, amounts((HAY, 1.0, 0)), (), None,
)  # fmt: skip
NO_PLAN = replace(MILK, now={})
NO_FEEDS = replace(MILK, now={}, feeds=())
LONG = replace(MILK, name=LONG_NAME)
CASES = {
    "in milk": MILK, "dry, forage only": DRY, "a pen of steers": PEN, "a hundred": HUNDRED, "no weight": NO_WEIGHT,
    "sheep": SHEEP, "no plan": NO_PLAN, "no feeds": NO_FEEDS, "a long name": LONG,
}  # fmt: skip


def at_ration(sitting: Sitting, case: Case, farm: Farm = METRIC) -> Keys:
    """At the ration of a case made by hand, over the first step."""
    assert sitting.place is not None
    return Keys(Ration(sitting.house, sitting.house.first(), lambda: (case, farm)))


def ration_of(keys: Keys) -> Ration:
    """The place, which is the ration."""
    assert isinstance(keys.place, Ration)
    return keys.place
