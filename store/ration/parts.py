"""What a ration is made of, as frozen values: the heads, the feeds, what is given, and how that balances.

The way of a number: register and stocks (`case.py`) -> Case -> with some amounts -> Balance -> the screen. Amounts are
for one head, as the feed lies, soaked feeds dry. [kg]
"""

from collections.abc import Mapping
from enum import StrEnum
from typing import TypeAlias
from uuid import UUID

from msgspec import Struct

from store.book.drafts import Subject
from store.book.facts.farm import Animal
from store.book.facts.feed import Feed, Told
from store.book.words import Origin, Units
from store.husbandry.feeds.density import pours
from store.husbandry.why import Value

Amounts: TypeAlias = Mapping[tuple[str, UUID], float]
"""What a head gets: by slot and feed, in kilograms. What is not in it is nothing."""


class Part(StrEnum):
    """What a need, a supply or a limit is told of."""

    DRY_MATTER = "dry matter"
    ENERGY = "energy"
    PROTEIN = "protein"
    FIBRE = "fibre"
    FORAGE = "forage"
    FAT = "fat"
    CALCIUM = "calcium"
    PHOSPHORUS = "phosphorus"
    CA_TO_P = "calcium to phosphorus"
    GAIN = "gain"


class Missing(Struct, frozen=True):
    """Something that is not known. says: a plain sentence that ends with the key that supplies it."""

    what: str
    says: str


class Head(Struct, frozen=True):
    """One animal, as its ration sees it. None: not known, and then in Case.missing where something hangs on it.

    milk_kg: a day, what the calf takes included; of a calf what it drinks, and the fat of that. condition: as scored,
    of 5 for dairy, of 9 for beef.
    """

    animal: Animal
    breed: str
    weight_kg: Value | None = None
    milk_kg: Value | None = None
    milk_fat_percent: Value | None = None
    milk_protein_percent: Value | None = None
    days_in_milk: Value | None = None
    days_in_calf: Value | None = None
    age_days: Value | None = None
    condition: Value | None = None
    condition_goal: Value | None = None
    gain_kg_day: Value | None = None  # wanted
    mature_kg: Value | None = None
    forage_only: bool = False


class Limits(Struct, frozen=True):
    """The limits of one feed for one head, the farm's own before the usual ones; None: neither."""

    most_meal_kg: Value | None = None
    most_day_kg: Value | None = None
    share_percent: Value | None = None
    step_kg: Value | None = None
    step_days: Value | None = None


class RationFeed(Struct, frozen=True):
    """A feed in use: what it is made of, what a kilogram of it costs, what there is, its measure, its limits.

    made: by column of the composition (dm_percent, cp_percent, ...), those that are known. barred: why these heads must
    not get it; empty: they may. free: it stands free, and is eaten until they are full.
    """

    feed: Feed
    made: Mapping[str, Value]
    origin: Origin | None
    resembles: str
    forage: bool
    price_per_kg: Value | None
    there_kg: Value | None
    told: Told | None
    limits: Limits
    barred: str = ""
    free: bool = False

    @property
    def loose(self) -> bool:
        """Whether it counts in a meal: all that is not baled, and of forage what is poured, as pellets of it."""
        return not self.feed.baled and (not self.forage or pours(self.resembles))


class Need(Struct, frozen=True):
    """What a head needs of one part: at least, at most, or both."""

    part: Part
    unit: str
    least: Value | None = None
    most: Value | None = None


class Case(Struct, frozen=True):
    """Everything that the ration of one animal, or of a pen fed as one, hangs on.

    needs: of the mean head. now: what its own plan gives a head today. missing: what could not be reckoned, and the
    key. besides: what it gets by another plan: an animal her share of her pen's feeding, the heads of a pen on the mean
    what each has for itself; it is counted in the balance, and not changed here.
    """

    subject: Subject
    name: str
    heads: tuple[Head, ...]
    feeds: tuple[RationFeed, ...]
    slots: tuple[str, ...]
    now: Amounts
    needs: tuple[Need, ...]
    meal_limit_kg: Value | None
    missing: tuple[Missing, ...] = ()
    besides: Amounts = {}
    units: Units = Units.METRIC


class Verdict(StrEnum):
    """How what is given stands to what is needed."""

    SHORT = "short"
    ENOUGH = "enough"
    OVER = "over"
    NOT_KNOWN = "not known"


class Line(Struct, frozen=True):
    """One part of the balance. percent: given of what is needed at least, where nothing is: of what is at most.

    unknown_by: the feeds of which nobody knows this part.
    """

    need: Need
    has: Value | None
    verdict: Verdict
    percent: float | None = None
    unknown_by: tuple[str, ...] = ()


class Broken(Struct, frozen=True):
    """A limit that is broken. of: what is over it, in two words. never: they must not get it at all."""

    of: str
    says: str
    never: bool = False


class Balance(Struct, frozen=True):
    """A ration for one head and day against its needs.

    biggest_meal_kg: of loose feed. eaten_kg: dry matter, of the feeds of which it is known.
    """

    lines: tuple[Line, ...]
    eaten_kg: Value
    cost: Value | None
    biggest_meal_kg: Value
    forage_percent: Value | None
    broken: tuple[Broken, ...] = ()
    missing: tuple[Missing, ...] = ()
