"""What the milk store says of its jars, and of where milk went."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from uuid import UUID

from store.book.words import Fate, Units
from store.round.jars import Group, Jar
from store.round.saying import weight
from tui.telling import turn_words
from tui.walker import Walker
from tui.words import elapsed, volume, when

GROUP_WORDS = {
    Group.TO_THROW_AWAY: "THROW AWAY, not to be drunk",
    Group.TO_USE: "TO USE, oldest first",
    Group.USED_UP: "USED UP",
}


def jar_words(walker: Walker, jar: Jar) -> str:
    """`Tue 10 Mar evening  Hazel   6.8 kg   6.6 L  cold in 22 min`; what must not be drunk says so."""
    units = walker.farm.units
    pails = (jar.went.pailful, *jar.went.mixed)
    cows = " + ".join(dict.fromkeys(_cow(walker, each.cow_id) for each in pails))
    kg = jar.went.pailful.milk_kg
    amount = f"{weight(kg, units):>8} {volume(kg, units):>7}"
    return f"{turn_words(jar.turn):<19} {cows:<10} {amount}  {_state(jar)}"


def _state(jar: Jar) -> str:
    if jar.used_up:
        return "used up"
    if jar.went.unsafe:
        return "THROW AWAY"
    if jar.cold_after is None:
        return "not in ice"
    return f"cold in {elapsed(jar.cold_after)}{', LATE' if jar.late else ''}"


def warnings(walker: Walker, jars: Iterable[Jar]) -> Iterator[str]:
    """What was put to the house and is now known to be withheld: what is left of each cow, and what is not left."""
    left = Counter[str]()
    gone: list[str] = []
    for jar in jars:
        if jar.went.unsafe and jar.went.withheld:
            known = f"{_name(walker, jar)}, now known withheld since {when(jar.went.withheld.since, walker.zone)}"
            if jar.used_up:
                gone.append(f"USED UP OR THROWN AWAY: {turn_words(jar.turn)}, {known}")
            else:
                left[known] += 1
    yield from (f"THROW AWAY: {many} {'jar' if many == 1 else 'jars'} of {known}" for known, many in left.items())
    yield from gone


def totals_words(name: str, kg: Mapping[Fate, float], units: Units) -> str:
    """`7 days: house 40.1 kg, 38.9 L; calves ...; all 60.2 kg, 58.4 L`."""
    parts = [f"{use.value} {weight(each, units)}, {volume(each, units)}" for use, each in kg.items()]
    both = f"all {weight(sum(kg.values()), units)}, {volume(sum(kg.values()), units)}"
    return f"{name}: {'; '.join([*parts, both])}" if parts else f"{name}: no milk"


def _name(walker: Walker, jar: Jar) -> str:
    return _cow(walker, jar.went.pailful.cow_id)


def _cow(walker: Walker, cow_id: UUID | None) -> str:
    return walker.snapshot.names.get(cow_id, "a cow") if cow_id else "a cow"
