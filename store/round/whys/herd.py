"""Why a calf is shut away at that hour, a dose falls due then, milk has to be cold by then, so many heads are there."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from msgspec.structs import replace

from store.book.facts.calves import Parting
from store.book.figures import MilkedFigure
from store.book.turn import Turn
from store.book.words import MORNING, Apart
from store.husbandry.milk.pail import litres
from store.husbandry.moments import hours_between, later, moment, sooner
from store.husbandry.why import LEAST, Value, given, of_all, total
from store.round.pails import FOR_PEOPLE, mixed, pailfuls, withheld_in
from store.round.steps import ApartStep, CoolStep, CountStep, DoseStep
from store.round.whys.asked import BEGINS, YOUR_RULE, Asked
from store.round.whys.milk import pail_value

ORDERED = "as label or vet have it"


def count_numbers(asked: Asked, step: CountStep) -> Iterator[Value]:
    """Who stands there by the book."""
    names = ", ".join(animal.name for animal in step.heads)
    yield replace(asked.heads(step.heads), name="heads expected", came=f"by the book: {names or 'nobody'}")


def dose_numbers(asked: Asked, step: DoseStep) -> Iterator[Value]:
    """When it is due, counted from the last one that was given."""
    treatment = step.treatment
    if not treatment.given_at:
        yield moment(treatment.first_at, "due", f"the first dose, {ORDERED}")
        return
    last = moment(treatment.given_at[0], "the last dose", "written when it was given")
    due = later.of("due", since=last, by_h=given(treatment.every_h, "a dose every", "h", ORDERED))
    yield due
    now = moment(asked.now, "now", "the clock")
    yield hours_between.of("since the last dose", since=last, until=now)


def apart_numbers(asked: Asked, step: ApartStep) -> Iterator[Value]:
    """The hour of its rule; how long it has been shut away, and until when it may be."""
    calf, last = step.calf, step.calf.last
    longest = longest_apart(calf.longest_h)
    begins = asked.snapshot.farm.round_begins(Turn(asked.snapshot.turn.day + timedelta(days=1), MORNING))
    if step.shut_at and calf.rule and begins:
        yield replace(shut_away_at(begins, calf.rule.apart_h, longest), name=f"shut {step.name} away")
    if last and last.state:
        since = moment(last.at, last.state.value, "written when it happened")
        yield hours_between.of("so long", since=since, until=moment(asked.now, "now", "the clock"))
    if last and last.state is Apart.SHUT_AWAY:
        yield replace(let_in_by(last, longest), name=f"let {step.name} in by")


def longest_apart(longest_h: float) -> Value:
    """The farm's rule. [h]"""
    return given(longest_h, "the longest time apart", "h", YOUR_RULE)


def shut_away_at(begins: datetime, apart_h: float, longest: Value) -> Value:
    """So long before the morning round that a calf is apart the hours of its rule, and no longer than the most."""
    rule = given(apart_h, "hours apart", "h", YOUR_RULE)
    hours = of_all(LEAST, "hours apart, at most the longest", "h", (rule, longest))
    return sooner.of(until=moment(begins, "the morning round begins", BEGINS), by_h=hours)


def let_in_by(last: Parting, longest: Value) -> Value:
    """Until when a calf that was shut away may be apart."""
    return later.of(since=moment(last.earliest, "shut away", "the earliest that it can have been"), by_h=longest)


def cool_numbers(asked: Asked, step: CoolStep) -> Iterator[Value]:
    """How long it is since the first pail for people, until when it has to be cold, and how much it is."""
    if step.first_at is None:
        return
    first = moment(step.first_at, "the first pail for people", "written when she was milked")
    limit = given(step.within_min / 60, "cold within", "h", YOUR_RULE)
    at = step.entry.happened_at if step.entry else asked.now
    yield hours_between.of("since the first pail", since=first, until=moment(at, "into ice", "the clock"))
    yield later.of("in ice by", since=first, by_h=limit)
    kept = total("milk for people", "kg", _kept(asked))
    yield from (kept, litres.of("litres of it", milk_kg=kept))


def _kept(asked: Asked) -> Iterator[Value]:
    """Each pail of the round that is for people. [kg]"""
    counts = asked.snapshot.counts()
    written = pailfuls(counts.values(), withheld_in(asked.snapshot, tuple(asked.steps)))
    for each in mixed(tuple(written)):
        figure = counts[each.pailful.step_id].the(MilkedFigure)
        if each.use in FOR_PEOPLE and figure:
            name = asked.snapshot.names.get(each.pailful.cow_id, "a cow") if each.pailful.cow_id else "a cow"
            yield replace(pail_value(figure), name=f"{name}'s milk")
