"""The small farm with all that a ration hangs on, and cases made by hand."""

import shutil
from functools import cache
from pathlib import Path
from tempfile import mkdtemp

from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.facts.farm import Animal
from store.book.facts.feed import Feed
from store.book.folder.take_in import new_book_from
from store.book.opening import Book, open_book
from store.book.register import read_register
from store.book.words import FEEDING, MORNING, Origin, Species, Stage
from store.husbandry.why import Value, given
from store.ration.case import read_case
from store.ration.parts import Amounts, Case, Head, Limits, Line, Missing, Need, Part, RationFeed
from tests.farm import HandClock
from tests.store.book.folders import add, copy_farm
from tests.store.feedroom.made import named
from tests.store.round.made import some_id

NUTS_LIKE = "Compound: dairy or cattle nuts, mixed feed, 16 % protein"
Row = tuple[str, dict[str, str]]
KNOWN: tuple[Row, ...] = (
    ("body", {"id": "fennel-b", "animal_id": "fennel", "begins_at": "2026-02-20", "weight_kg": "450"}),
    ("body", {"id": "hazel-b", "animal_id": "hazel", "begins_at": "2026-02-20", "girth_cm": "180"}),
    ("body", {"id": "rook-b", "animal_id": "rook", "begins_at": "2026-03-01", "weight_kg": "60"}),
    ("body", {"id": "tansy-b", "animal_id": "tansy", "begins_at": "2025-11-20", "weight_kg": "530"}),
    ("breeding", {"id": "fennel-of", "animal_id": "fennel", "begins_at": "2026-01-30", "breed": "Jersey"}),
    ("breeding", {"id": "hazel-of", "animal_id": "hazel", "begins_at": "2026-01-30", "breed": "Ayrshire"}),
    ("milk_test", {"id": "fennel-t", "animal_id": "fennel", "begins_at": "2026-02-18", "fat_percent": "4.9",
                   "protein_percent": "3.7"}),
    ("composition", {"id": "nuts-is", "feed_id": "dairy-nuts", "begins_at": "2026-01-01", "origin": "tag",
                     "resembles": NUTS_LIKE, "cp_percent": "18.2", "tdn_percent": "74", "dm_percent": "88"}),
    ("composition", {"id": "lucerne-is", "feed_id": "lucerne", "begins_at": "2026-01-01", "origin": "table",
                     "resembles": "Lucerne (alfalfa) pellets, grade 20"}),
    ("feed_limit", {"id": "nuts-most", "feed_id": "dairy-nuts", "begins_at": "2026-01-01", "most_meal_kg": "3",
                    "most_day_kg": "6", "forage": "no"}),
    ("class_rule", {"id": "rule", "stage": "in milk", "feed_id": "dairy-nuts", "begins_at": "2026-01-01",
                    "fixed_kg": "0", "per_kg_milk": "0.25", "above_kg": "5", "weight_percent": "0"}),
)  # fmt: skip
"""What is known beside the small farm's own tables: weights, breeds, a milk test, what the feeds are made of."""


@cache
def _built(rows: tuple[tuple[str, tuple[tuple[str, str], ...]], ...]) -> Path:
    folder = Path(mkdtemp(prefix="penwalk-ration-"))
    farm = copy_farm(folder / "farm", past=True)
    for table, cells in rows:
        add(farm, f"{table}.csv", **dict(cells))
    new_book_from(farm, folder / "built.penwalk")
    return folder / "built.penwalk"


def ration_book(folder: Path, *more: Row) -> Book:
    """The farm's book, open on the pretend morning. more: rows beside what is known, by table."""
    rows = tuple((table, tuple(cells.items())) for table, cells in (*KNOWN, *more))
    place = Path(shutil.copy(_built(rows), folder / "ration.penwalk"))
    return open_book(str(place), HandClock(), "bench")


def case_of(book: Book, name: str) -> Case:
    """The case of an animal by its name."""
    return _case(book, Subject(animal_id=named(book, name)))


def pen_case(book: Book, name: str) -> Case:
    """The case of a pen by its name."""
    return _case(book, Subject(pen_id=named(book, name)))


def _case(book: Book, subject: Subject) -> Case:
    now = book.clock.now()
    return read_case(book.desk, read_register(book.desk, now), now, subject)


def said(missing: tuple[Missing, ...]) -> list[str]:
    """The sentences."""
    return [each.says for each in missing]


def line(lines: tuple[Line, ...], part: Part) -> Line:
    """The line of a part."""
    return next(each for each in lines if each.need.part is part)


HAY, GRAIN = Feed(some_id("hay"), "grass hay", soaked=False, baled=True), Feed(some_id("corn"), "corn", soaked=False)
COW = Animal(some_id("cow"), "Dapple", "", Species.CATTLE, Stage.IN_MILK, None, None, None)
MADE = {
    "grass hay": {"dm_percent": 85.0, "cp_percent": 12.0, "nel_mcal": 1.2, "ndf_percent": 60.0, "fat_percent": 2.5,
                  "ca_percent": 0.5, "p_percent": 0.25, "tdn_percent": 57.0},
    "corn": {"dm_percent": 90.0, "cp_percent": 10.0, "nel_mcal": 2.0, "ndf_percent": 10.0, "fat_percent": 4.0,
             "ca_percent": 0.05, "p_percent": 0.3, "tdn_percent": 88.0},
}  # fmt: skip


def value(amount: float, unit: str = "kg", came: str = "typed") -> Value:
    """A number by hand."""
    return given(amount, "a figure", unit, came)


def ration_feed(feed: Feed, *, without: str = "", free: bool = False, **limits: float) -> RationFeed:
    """Hay or corn by hand. without: a column that nobody knows. limits: the farm's own, by name."""
    made = {name: value(amount, "%") for name, amount in MADE[feed.name].items() if name != without}
    own = Limits(**{name: value(amount, came="your limit") for name, amount in limits.items()})
    return RationFeed(feed, made, Origin.TAG, "", feed.baled, value(0.3, ""), None, None, own, free=free)


def made_case(*feeds: RationFeed, now: Amounts = {}, meal_limit_kg: float | None = None) -> Case:  # noqa: B006
    """A cow that needs 20 Mcal, 1500 g protein, 50 % forage, at most 6 % fat, and can eat 15 kg."""
    needs = (
        Need(Part.DRY_MATTER, "kg", most=value(15)),
        Need(Part.ENERGY, "Mcal", least=value(20, "Mcal")),
        Need(Part.PROTEIN, "g", least=value(1500, "g")),
        Need(Part.FORAGE, "%", least=value(50, "%")),
        Need(Part.FAT, "%", most=value(6, "%")),
    )
    limit = None if meal_limit_kg is None else value(meal_limit_kg, came="your limit")
    subject = Subject(animal_id=COW.id)
    return Case(subject, COW.name, (Head(COW, ""),), feeds, FEEDING, now, needs, limit)


def barred(feed: RationFeed, why: str) -> RationFeed:
    """The same feed, that these heads must not get."""
    return replace(feed, barred=why)


def amounts(hay_kg: float, grain_kg: float, slot: str = MORNING) -> Amounts:
    """Hay and corn, in one slot."""
    return {(slot, HAY.id): hay_kg, (slot, GRAIN.id): grain_kg}
