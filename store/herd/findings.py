"""What of a farm's facts deserves a second look. It is said, never refused: two valid books always merge.

Every finding is a whole sentence. Set-up asks each function alone, an import asks all of them.
"""

from collections import Counter
from collections.abc import Iterable, Iterator
from statistics import median

from store.book.reading.yard import Weighed, Yard
from store.husbandry.bounds import DENSEST_KG_PER_L

SLIPS_BY = 1000
"""Grams for kilograms, or a point that was lost: so many times the usual. Common practice."""


def findings(yard: Yard) -> tuple[str, ...]:
    """Everything about a yard that deserves a second look."""
    return (
        *same_tags(yard.tagged),
        *same_names("animals", (name for name, _ in yard.tagged)),
        *same_names("pens", yard.pens),
        *same_names("feeds", yard.feeds),
        *(
            f"{whose} is planned to get {feed}, which is not in use any more."
            for whose, feed in yard.plans_without_feed
        ),
        *(said for each in yard.weighed if (said := too_heavy(each))),
        *odd_deliveries(yard.delivered),
    )


def same_tags(tagged: Iterable[tuple[str, str]]) -> Iterator[str]:
    """Animals with one tag. tagged: name and tag of each; no tag is none."""
    listed = [(name, tag.strip()) for name, tag in tagged if tag.strip()]
    for tag, count in _by_letters(tag for _, tag in listed):
        if count > 1:
            names = (name for name, its in listed if its.casefold() == tag.casefold())
            yield f"{' and '.join(names)} have the same tag, {tag}."


def same_names(what: str, names: Iterable[str]) -> Iterator[str]:
    """Things of one kind with one name, whatever the case of its letters. what: as `pens`."""
    for name, count in _by_letters(names):
        if count > 1:
            yield f"{count} {what} in use are called {name}."


def too_heavy(found: Weighed) -> str | None:
    """A measure that was weighed heavier than any feed of its volume could be."""
    most_kg = found.holds_l * DENSEST_KG_PER_L
    if found.holds_kg <= most_kg:
        return None
    return (
        f"A {found.measure} of {found.feed} is weighed at {found.holds_kg:g} kg, and holds {found.holds_l:g} L: "
        f"no feed is heavier than {DENSEST_KG_PER_L:g} kg to the litre, {most_kg:.3g} kg."
    )


def odd_deliveries(delivered: Iterable[tuple[str, tuple[float, ...]]]) -> Iterator[str]:
    """Deliveries of a thousand times the usual, or a thousandth. delivered: by feed. [kg]

    The usual is the middle one of all others of that feed; where it came only once, of all others of the farm.
    """
    listed = [(feed, kg) for feed, kgs in delivered for kg in kgs if kg > 0]
    for at, (feed, kg) in enumerate(listed):
        others = [(name, other_kg) for other, (name, other_kg) in enumerate(listed) if other != at]
        same = [other_kg for name, other_kg in others if name == feed] or [other_kg for _, other_kg in others]
        if same and (kg >= SLIPS_BY * median(same) or kg * SLIPS_BY <= median(same)):
            yield f"{kg:g} kg of {feed} came at once; {median(same):g} kg is usual."


def _by_letters(words: Iterable[str]) -> Iterator[tuple[str, int]]:
    """Each word as it is written first, and how often it stands there."""
    listed = [word.strip() for word in words]
    first = {word.casefold(): word for word in reversed(listed)}
    for letters, count in Counter(word.casefold() for word in listed).items():
        yield first[letters], count
