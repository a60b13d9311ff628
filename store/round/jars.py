"""The milk store: every pail put to the house in the last days, how soon it was cold, and whether it is used up."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date, datetime, timedelta
from enum import IntEnum
from uuid import UUID, uuid5

from msgspec import Struct

from store.book.drafts import Draft, Subject
from store.book.figures import UsedUpFigure
from store.book.reading.milk import MilkRound, Use
from store.book.snapshot import Written
from store.book.turn import Turn
from store.book.words import Fate, Kind, State
from store.round.pails import FOR_PEOPLE, Went, Withheld, went


class Jar(Struct, frozen=True):
    """The house milk of one milking. cold_after None: that it is in ice is not written, or only before it was milked.
    use: what is written of the jar."""

    turn: Turn
    went: Went
    cold_after: timedelta | None
    late: bool
    use: Use | None = None

    @property
    def step_id(self) -> UUID:
        """The jar's own name: the same for the same milking, on any bench."""
        return step_id_of(self.went)

    @property
    def used_up(self) -> bool:
        """Whether nothing is left of it."""
        return self.use is not None and self.use.used_up


class Group(IntEnum):
    """What is to be done with a jar, the most urgent first."""

    TO_THROW_AWAY = 0
    TO_USE = 1
    USED_UP = 2


def group_of(jar: Jar) -> Group:
    """What is to be done with a jar; of one that is used up nothing, whatever it was."""
    if jar.used_up:
        return Group.USED_UP
    return Group.TO_THROW_AWAY if jar.went.unsafe else Group.TO_USE


def step_id_of(pail: Went) -> UUID:
    """The name of the jar of a pail."""
    return uuid5(pail.pailful.step_id, Kind.JAR)


def jars(
    rounds: Iterable[MilkRound], withheld: Withheld, within_min: float, uses: Mapping[UUID, Use]
) -> tuple[Jar, ...]:
    """The jars of some rounds, oldest first; also what is now known to be withheld. within_min: the farm's limit."""
    found = (jar for each in rounds for jar in _of_round(each, withheld, within_min, uses))
    return tuple(sorted(found, key=lambda jar: (jar.went.pailful.when.earliest, jar.step_id)))


def _of_round(each: MilkRound, withheld: Withheld, within_min: float, uses: Mapping[UUID, Use]) -> Iterator[Jar]:
    pails = went(each.entries, withheld)
    cold_at = _cold_at(each.entries)
    first_at = min((pail.pailful.when.earliest for pail in pails if pail.put in FOR_PEOPLE), default=None)
    late = bool(cold_at and first_at and cold_at - first_at > timedelta(minutes=within_min))
    for pail in pails:
        if pail.put is Fate.HOUSE:
            milked_at = pail.pailful.when.earliest
            cold_after = cold_at - milked_at if cold_at and cold_at >= milked_at else None
            yield Jar(each.turn, pail, cold_after, late, uses.get(step_id_of(pail)))


def _cold_at(entries: Iterable[Written]) -> datetime | None:
    iced = (entry for entry in entries if entry.kind is Kind.COOL and entry.state is State.DONE)
    return next((entry.happened_at for entry in iced), None)


def pails_since(rounds: Iterable[MilkRound], withheld: Withheld, first: date) -> tuple[Went, ...]:
    """Every pail from a day on, and where it went."""
    return tuple(pail for each in rounds if each.turn.day >= first for pail in went(each.entries, withheld))


def used_up(person_id: UUID, now: datetime, jar: Jar) -> Draft:
    """Nothing is left of a jar; or, if that is written, it is taken back and the jar is there again."""
    figures = () if jar.used_up else (UsedUpFigure(jar.went.pailful.step_id),)
    return Draft(
        jar.step_id,
        Kind.JAR,
        Subject(animal_id=jar.went.pailful.cow_id),
        None,
        State.OPEN if jar.used_up else State.DONE,
        now,
        person_id,
        jar.use.entry_id if jar.use else None,
        figures=figures,
    )
