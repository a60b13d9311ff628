"""Why a round adds up to so much: each use of milk pail by pail, each feed step by step; of a jar, its pail."""

from collections.abc import Iterable, Iterator

from msgspec.structs import replace

from store.book.figures import FedFigure, MilkedFigure
from store.book.snapshot import Written
from store.book.words import Fate
from store.husbandry.milk.pail import litres
from store.husbandry.why import Value, given, total
from store.round.jars import Jar
from store.round.pails import Went
from store.round.summary import Summary
from store.round.whys.asked import Asked
from store.round.whys.milk import pail_value


def closing_numbers(asked: Asked, summary: Summary) -> Iterator[Value]:
    """The steps, the milk of each use, each feed."""
    yield _steps(summary)
    counts = asked.snapshot.counts()
    for each in summary.milk:
        pails = [pail for pail in summary.pails if pail.use is each.fate]
        yield from _milk(each.fate, [_pail(asked, pail, counts[pail.pailful.step_id]) for pail in pails])
    for fed in summary.fed:
        parts = (_given(step.name, figure) for step in summary.done for figure in _of(step.entry, fed.feed.id))
        yield total(f"{fed.feed.name} fed", "kg", parts)


def _steps(summary: Summary) -> Value:
    """Every step is in one state."""
    lists = (
        ("done", summary.done), ("skipped", summary.skipped), ("moved on", summary.moved_on),
        ("on paper", summary.on_paper), ("not recorded", summary.not_recorded),
    )  # fmt: skip
    return total("steps", "steps", (given(len(each), name, "steps", "counted") for name, each in lists if each))


def _milk(fate: Fate, pails: list[Value]) -> Iterator[Value]:
    together = total(f"milk, {fate.value}", "kg", pails)
    yield from (together, litres.of(f"litres, {fate.value}", milk_kg=together))


def _pail(asked: Asked, pail: Went, entry: Written) -> Value:
    """A cow's pail, as it was written. [kg]"""
    cow_id, figure = pail.pailful.cow_id, entry.the(MilkedFigure)
    name = f"{asked.snapshot.names.get(cow_id, 'a cow')}'s milk" if cow_id else "milk"
    found = pail_value(figure) if figure else given(pail.pailful.milk_kg, name, "kg", "written")
    return replace(found, name=name)


def _of(entry: Written | None, feed_id: object) -> Iterator[FedFigure]:
    yield from (each for each in (entry.of(FedFigure) if entry else ()) if each.feed_id == feed_id)


def _given(name: str, figure: FedFigure) -> Value:
    came = f"typed as «{figure.typed}»" if figure.typed else "given as shown"
    return given(figure.given_kg or 0.0, name, "kg", came)


def jar_numbers(asked: Asked, jars: Iterable[Jar]) -> Iterator[Value]:
    """The litres of each jar."""
    for jar in jars:
        pail = jar.went.pailful
        cow = asked.snapshot.names.get(pail.cow_id, "a cow") if pail.cow_id else "a cow"
        name = f"{cow}, {asked.when(pail.when.earliest)}"
        milk = given(pail.milk_kg, f"milk of {name}", "kg", "the pail of that milking")
        yield from (milk, litres.of(f"litres of {name}", milk_kg=milk))


def use_numbers(words: str, pails: Iterable[Went]) -> Iterator[Value]:
    """What of the milk of some days went to each use, pail by pail."""
    by_use: dict[Fate, list[Value]] = {}
    for pail in pails:
        on = pail.pailful.when.earliest
        came = f"the pail of {on:%a} {on.day} {on:%b}"
        by_use.setdefault(pail.use, []).append(given(pail.pailful.milk_kg, "milk", "kg", came))
    for fate, found in by_use.items():
        together = total(f"{words}: {fate.value}", "kg", found)
        yield from (together, litres.of(f"{words}: {fate.value}, litres", milk_kg=together))
