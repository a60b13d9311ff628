"""Everything that the ration of one animal, or of a pen fed as one, hangs on, as the book stands at a moment."""

from collections.abc import Iterator, Sequence
from datetime import datetime
from uuid import UUID

from store.book.desk import Desk
from store.book.drafts import Subject
from store.book.errors import NotKept
from store.book.facts.farm import Animal
from store.book.reading import read_snapshot
from store.book.reading.stock import read_stock
from store.book.register import Register, Values
from store.book.turn import turn_at
from store.book.words import FEEDING, Species
from store.husbandry.ration.limits import meal_most
from store.husbandry.why import Value, given
from store.ration.asked import Asked, listed
from store.ration.classes import needs_of, why_none
from store.ration.cold import of_cold
from store.ration.feeds import Fed, ration_feeds
from store.ration.heads import Known, known, lightest
from store.ration.needs import apart, as_needs, gain_wanted, mean_needs
from store.ration.parts import Amounts, Case, Head, Missing, Need, RationFeed


def read_case(desk: Desk, register: Register, now: datetime, subject: Subject) -> Case:
    """Of an animal: her own plan, besides what her pen gets for each head. Of a pen: its plan, for the mean head.

    register: as it stands at `now`. Raises DamagedBook, and NotKept where nobody is there to be fed.
    """
    farm = register.farm
    asked = Asked(desk, register, read_snapshot(desk, turn_at(now, farm.zone, farm.evening_from_h), now), now)
    animals = _animals(asked, subject)
    found = tuple(known(asked, animal) for animal in animals)
    heads = tuple(each.head for each in found)
    pen_id = subject.pen_id or animals[0].pen_id
    plans = [row for row in register.all("feed_plan") if row["due_kg"] and _in_use(register, row["feed_id"])]
    own = [row for row in plans if (row["animal_id"], row["pen_id"]) == (subject.animal_id, subject.pen_id)]
    beside = [row for row in plans if row not in own and _is_besides(row, subject, animals)]
    planned = {row["feed_id"]: row["measure_id"] for row in (*beside, *own)}
    feeds = tuple(ration_feeds(asked, read_stock(desk, now), Fed(heads, pen_id, planned)))
    needs, missing = _needs(asked, found)
    return Case(
        subject,
        _name(register, subject),
        heads,
        feeds,
        FEEDING,
        _amounts(own, 1),
        needs,
        _meal_limit(register, heads),
        (*missing, *_not_counted(feeds)),
        _amounts(beside, max(len(heads), 1) if subject.pen_id else 1),
        farm.units,
    )


def _animals(asked: Asked, subject: Subject) -> tuple[Animal, ...]:
    if subject.pen_id:
        found = asked.snapshot.heads(subject.pen_id)
    else:
        found = tuple(each for each in asked.snapshot.animals if each.id == subject.animal_id)
    if not found:
        name = _name(asked.register, subject)
        raise NotKept(f"Nobody stands in {name} any more." if subject.pen_id else f"{name} is not kept any more.")
    return found


def _in_use(register: Register, feed_id: UUID) -> bool:
    """Whether a round still gives it: what is planned of a feed that is out of use is not fed."""
    row = register.get("feed_as", feed_id)
    return bool(row and row["in_use"])


def _name(register: Register, subject: Subject) -> str:
    return register.name("pen_as" if subject.pen_id else "animal_as", subject.id)


def _is_besides(row: Values, subject: Subject, animals: Sequence[Animal]) -> bool:
    """Whether the subject gets it by another plan: an animal by her pen's, the heads of a pen by their own."""
    of, ids = ("animal_id", {each.id for each in animals}) if subject.pen_id else ("pen_id", {animals[0].pen_id})
    return row[of] is not None and row[of] in ids


def _amounts(rows: Sequence[Values], heads: int) -> Amounts:
    """Together by slot and feed, for one of so many heads. [kg]"""
    found: dict[tuple[str, UUID], float] = {}
    for row in rows:
        key = (row["slot"], row["feed_id"])
        found[key] = found.get(key, 0.0) + row["due_kg"] / heads
    return found


def _meal_limit(register: Register, heads: Sequence[Head]) -> Value | None:
    kg = register.farm.meal_limit_kg
    if kg is not None:
        return given(kg, "most of a meal", "kg", "your limit")
    return meal_most(lightest(heads)) if all(head.animal.species is Species.CATTLE for head in heads) else None


def _needs(asked: Asked, found: Sequence[Known]) -> tuple[tuple[Need, ...], tuple[Missing, ...]]:
    """What the mean head needs, if all of them are reckoned; and what could not be."""
    heads = [each.head for each in found]
    reckoned = [needs for head in heads if (needs := needs_of(asked, head))]
    why = (
        *(each for head in found for each in head.missing),
        *(each for head in heads for each in why_none(asked, head)),
    )
    if not reckoned or len(reckoned) < len(heads):
        return tuple(gain_wanted([head for head in heads if head.milk_kg])) if len(heads) == 1 else (), (
            *why,
            *(_no_mean() if reckoned else ()),
        )
    missing = (*why, *_mixed(heads), *apart(reckoned), *of_cold(asked, heads))
    return (*as_needs(asked, mean_needs(reckoned)), *gain_wanted(heads)), missing


def _no_mean() -> Iterator[Missing]:
    """That the mean of some is not told: what is given is shared by all of them."""
    yield Missing("mixed", "Of some in here no needs are known, so no mean is told; each alone: G, its name, then J.")


def _mixed(heads: Sequence[Head]) -> Iterator[Missing]:
    """That what is shown is a mean, where unlike animals stand together."""
    if len({head.animal.stage for head in heads}) > 1:
        who = listed(f"{head.animal.name} ({head.animal.stage})" for head in heads)
        yield Missing(
            "mixed", f"Not all are of one class: {who}. What is needed is the mean; each alone: G, its name, then J."
        )


def _not_counted(feeds: Sequence[RationFeed]) -> Iterator[Missing]:
    """What stands free and is no forage: how much of it each takes is told by the feed room, and not counted here."""
    for each in feeds:
        if each.free and not each.forage:
            name = each.feed.name
            yield Missing(
                "free", f"{name} stands free: what each takes of it is not in here. D, {name}: a head and day."
            )
