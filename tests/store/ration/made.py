"""Cases of the small farm, made from its register as far as a change needs them."""

from typing import Any
from uuid import UUID

from store.book.drafts import Subject
from store.book.facts.feed import Feed, Told
from store.book.opening import Book
from store.book.register import Register
from store.husbandry.why import Value, given
from store.ration.parts import Case, Head, Limits, RationFeed
from tests.farm import morning
from tests.store.herd.filled import register
from tests.store.round.made import animal_named


def kg(amount: float, came: str = "your limit of this feed") -> Value:
    """A figure of the farm's own."""
    return given(amount, "limit", "kg", came)


def feed_of_book(found: Register, name: str, *, told: bool = True, **of: Any) -> RationFeed:
    """A feed of the book in the scoop that it was weighed with. of: what it is besides."""
    row = next(row for row in found.all("feed_as") if row["name"] == name)
    weighed = next((each for each in found.all("weighing") if each["feed_id"] == row["feed_id"]), None)
    measure = found.get("measure_as", weighed["measure_id"]) if weighed and told else None
    scoop = Told(measure["measure_id"], measure["name"], measure["plural"], weighed["holds_kg"]) \
        if measure and weighed else None  # fmt: skip
    limits = of.pop("limits", Limits())
    return RationFeed(
        Feed(row["feed_id"], name, row["soaked"]), {}, None, "", of.pop("forage", row["baled"]), None, None, scoop,
        limits, **of,
    )  # fmt: skip


def case_of(book: Book, name: str, *feeds: RationFeed, meal_limit_kg: float | None = None) -> Case:
    """What an animal gets of some feeds by its plan, and nothing else of it."""
    found, animal = register(book), animal_named(morning(book), name)
    plans = (row for row in found.all("feed_plan") if row["animal_id"] == animal.id and row["due_kg"] is not None)
    now = {(row["slot"], row["feed_id"]): row["due_kg"] for row in plans}
    known = {each.feed.id for each in feeds}
    return Case(
        Subject(animal_id=animal.id), name, (Head(animal, ""),), feeds, ("morning", "evening"),
        {meal: amount for meal, amount in now.items() if meal[1] in known}, (),
        None if meal_limit_kg is None else kg(meal_limit_kg),
    )  # fmt: skip


def id_of(case: Case, name: str) -> UUID:
    """A feed of a case."""
    return next(each.feed.id for each in case.feeds if each.feed.name == name)
