"""Why something comes at that hour: what it is counted from, and by how many hours."""

from collections.abc import Iterable, Iterator
from datetime import datetime, timedelta

from msgspec.structs import replace

from store.book.facts.care import Treatment
from store.book.words import MORNING, State
from store.husbandry.moments import BEGAN, HOUR, later, moment, sooner
from store.husbandry.why import Value, given
from store.round.item import Item
from store.round.steps import DoseStep, SoakCheckStep, SoakStartStep
from store.round.where import where
from store.round.whys.asked import BEGINS, Asked
from store.round.whys.herd import ORDERED, let_in_by, longest_apart, shut_away_at
from store.round.whys.soak import least_h, past_value, ready_value, started

SAME = timedelta(seconds=1)


def coming_numbers(asked: Asked, items: Iterable[Item]) -> Iterator[Value]:
    """The hour of each thing that comes by the clock, in the order of the list."""
    yield from (_number(asked, item) for item in items)


def _number(asked: Asked, item: Item) -> Value:
    """Of what it is counted from, that which comes to this moment."""
    found = (each for each in _counted(asked, item) if abs(BEGAN + each.amount * HOUR - item.at) < SAME)
    made = next(found, None)
    return replace(made, name=item.words) if made else moment(item.at, item.words, _came(item))


def _came(item: Item) -> str:
    if item.watch:
        return "said at the last look"
    if item.is_round:
        return BEGINS
    return item.note or "the first milking that nothing withholds"


def _counted(asked: Asked, item: Item) -> Iterator[Value]:
    if isinstance(item.step, SoakStartStep | SoakCheckStep):
        yield from _soak(asked, item.step)
    yield from _calves(asked, item)
    yield from (_dose(each, asked, item) for each in asked.snapshot.treatments if each.product in item.words)


def _soak(asked: Asked, step: SoakStartStep | SoakCheckStep) -> Iterator[Value]:
    """The last moment to put it to soak; ready, and its limit, from when it was."""
    if step.limit is None:
        return
    turn = asked.snapshot.turn if isinstance(step, SoakCheckStep) else asked.snapshot.turn.after()
    begins = asked.snapshot.farm.round_begins(turn)
    if begins:
        until = moment(begins, f"the {turn.slot} round begins", BEGINS)
        yield sooner.of(until=until, by_h=least_h(step.limit))
    at = _put_to_soak(step)
    if at:
        yield from (ready_value(step.limit, started(at)), past_value(step.limit, started(at)))


def _put_to_soak(step: SoakStartStep | SoakCheckStep) -> datetime | None:
    if isinstance(step, SoakCheckStep):
        return step.batch.started_at if step.batch else None
    return step.entry.happened_at if step.entry and step.state is State.DONE else None


def _calves(asked: Asked, item: Item) -> Iterator[Value]:
    """Until when a calf may be apart; when its rule has it shut away."""
    turn = replace(asked.snapshot.turn, day=asked.snapshot.turn.day + timedelta(days=1), slot=MORNING)
    morning = asked.snapshot.farm.round_begins(turn)
    for share in asked.snapshot.shares:
        if asked.snapshot.names.get(share.calf_id, "") not in item.words:
            continue
        longest, last = longest_apart(share.longest_h), where(share, share.cow_id)
        if last:
            yield let_in_by(last, longest)
        if morning and share.rule:
            yield shut_away_at(morning, share.rule.apart_h, longest)


def _dose(treatment: Treatment, asked: Asked, item: Item) -> Value:
    """The last one that was given, and so many hours."""
    step = item.step if isinstance(item.step, DoseStep) else None
    every = given(treatment.every_h, "a dose every", "h", ORDERED)
    last = treatment.given_at[0] if treatment.given_at else None
    own = next((each.entry for each in asked.steps if isinstance(each, DoseStep) and each.entry
                and each.treatment.id == treatment.id and each.state is State.DONE), None)  # fmt: skip
    last = own.happened_at if own and step is None else last
    if last is None:
        return moment(treatment.first_at, "the first dose", ORDERED)
    return later.of(since=moment(last, "the last dose", "written when it was given"), by_h=every)
