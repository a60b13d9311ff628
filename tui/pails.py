"""Pails in words: what was poured together, and what all of it counts as."""

from collections.abc import Iterable, Iterator

from store.book.figures import CooledFigure
from store.book.words import Fate
from store.round.cool import is_late
from store.round.pails import Pailful, Went
from store.round.saying import weight
from store.round.steps import CoolStep
from tui.walker import Walker
from tui.words import clock, elapsed, when

ANEW = "G to it, T and Enter write it anew"


def mix_words(walker: Walker, went: Went) -> str:
    """`Fennel 5.0 kg withheld + Hazel 6.8 kg: 11.8 kg thrown away`."""
    parts = " + ".join(_part(walker, each) for each in went.mixed)
    return f"{parts}: {weight(sum(each.milk_kg for each in went.mixed), walker.farm.units)} {use_words(went.use)}"


def use_words(use: Fate) -> str:
    """Where milk goes, as the end of a sentence."""
    return use.value if use in (Fate.THROWN_AWAY, Fate.SOLD_OR_GIVEN) else f"to the {use.value}"


def mixes(pails: Iterable[Went]) -> Iterator[Went]:
    """One of each mix that was poured together, in the order of its first pail."""
    said = set[tuple[Pailful, ...]]()
    for each in pails:
        if len(each.mixed) > 1 and each.mixed not in said:
            said.add(each.mixed)
            yield each


def ice_words(walker: Walker, step: CoolStep) -> str:
    """When the milk was in ice: `08:01, 1 h 30 after the first pail: late, your limit 30 min; calves`.

    What no longer fits since a pail was corrected says so, and how it is written anew.
    """
    if step.entry is None:
        return ""
    at, cooled, zone = step.entry.happened_at, step.entry.the(CooledFigure), walker.farm.zone
    became = cooled.fate.value if cooled and cooled.fate else ""
    if step.first_at is None:
        return f"{clock(at, zone)}{f': {became}' if became else ''}"
    if at < step.first_at:
        return f"{clock(at, zone)}, BEFORE the first pail, {clock(step.first_at, zone)}: {ANEW}"
    first = f"{clock(at, zone)}, {elapsed(at - step.first_at)} after the first pail"
    if is_late(step, at):
        return f"{first}: late, your limit {step.within_min:g} min; {became or f'not asked about: {ANEW}'}"
    return f"{first}{f'; written as LATE, {became}: {ANEW}' if became else ''}"


def unsafe_words(walker: Walker, pails: Iterable[Went]) -> Iterator[str]:
    """What was put to people, and is now known to be withheld."""
    for each in pails:
        if each.unsafe and each.withheld:
            since = when(each.withheld.since, walker.farm.zone)
            yield f"{_part(walker, each.pailful)}, put {use_words(each.put)}: now known withheld since {since}"


def _part(walker: Walker, pailful: Pailful) -> str:
    name = walker.snapshot.names.get(pailful.cow_id, "milk") if pailful.cow_id else "milk"
    return f"{name} {weight(pailful.milk_kg, walker.farm.units)}{' withheld' if pailful.withheld else ''}"
