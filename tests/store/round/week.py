"""Hazel, treated on 9 and 10 March and milked twice a day: any round of that fortnight, as the book holds it then."""

from collections.abc import Sequence
from datetime import UTC, datetime

from msgspec.structs import replace

from store.book.facts.care import Treatment, Withdrawal
from store.book.facts.milk import PastPail, Withholding
from store.book.facts.span import span
from store.book.snapshot import Snapshot
from store.book.turn import turn_at
from store.book.words import Fate, SaidBy
from store.round.measured import fates_of
from store.round.withholding import withheld_of
from tests.store.round.made import animal_named, dawn, some_id
from tests.store.round.named import milk_of

HAZEL = animal_named(dawn(), "Hazel")
ZONE = dawn().farm.zone


def at(day: int, clock: str) -> datetime:
    """A time of a day in March, when the farm's wall clock shows UTC; of April below, an hour of summer time."""
    hour, minute = map(int, clock.split(":"))
    return datetime(2026, 3, day, hour, minute, tzinfo=UTC)


DOSES = (at(9, "18:20"), at(10, "06:20"), at(10, "18:20"))
MILKINGS = tuple(at(day, clock) for day in range(9, 20) for clock in ("06:30", "17:50"))
LABEL = Withdrawal(milk_h=96, milkings=6, said_by=SaidBy.LABEL)
TUBE = Treatment(
    some_id("tube"), HAZEL.id, "udder tube", "one tube", "udder", "clots", "", 3, 12.0, DOSES[0], withdrawal=LABEL
)


def pail(milked_at: datetime, fate: Fate = Fate.THROWN_AWAY) -> PastPail:
    """Her pail of a moment."""
    turn = turn_at(milked_at, ZONE, dawn().farm.evening_from_h)
    return PastPail(milked_at, 8.5, held_back=False, turn=turn, fate=fate, step_id=some_id(str(milked_at)))


def week(
    now: datetime,
    treatment: Treatment = TUBE,
    doses: Sequence[datetime] = DOSES,
    milkings: Sequence[datetime] = MILKINGS,
    fate: Fate = Fate.THROWN_AWAY,
) -> Snapshot:
    """The round of a moment, as the book holds it then: the doses and milkings before it are written."""
    turn = turn_at(now, ZONE, dawn().farm.evening_from_h)
    before = [pail(each, fate) for each in sorted(milkings, reverse=True) if each < now and pail(each).turn != turn]
    given_then = tuple(span(each) for each in sorted((each for each in doses if each <= now), reverse=True))
    return replace(
        dawn(),
        turn=turn,
        treatments=(replace(treatment, given=given_then),),
        pails={HAZEL.id: tuple(before)},
        milkings={HAZEL.id: replace(dawn().milkings[HAZEL.id], pails_before=tuple(before))},
    )


def may_be_kept(snapshot: Snapshot, now: datetime) -> bool:
    """Whether the house is among the uses of her milk at a moment."""
    return Fate.HOUSE in fates_of(milk_of(snapshot, "Hazel"), span(now))


def one(snapshot: Snapshot) -> Withholding:
    """The one thing that withholds her milk."""
    (found,) = withheld_of(snapshot, HAZEL.id)
    return found
