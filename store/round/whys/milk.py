"""Why a milking says so much: the pail, the hours since she was emptied, her last pails; and until when it is kept."""

from collections.abc import Iterator
from datetime import datetime
from itertools import islice
from uuid import UUID

from msgspec.structs import replace

from store.book.facts.milk import Withholding
from store.book.facts.span import span
from store.book.figures import MilkedFigure
from store.book.words import State
from store.husbandry.measures import change_percent
from store.husbandry.milk.ends import LEAST, MIDDLE, MOST, an_hour_kg
from store.husbandry.milk.pail import litres, milk_in_pail
from store.husbandry.milk.udder import day_kg, filled_h
from store.husbandry.milk.usual import MOST_PAILS, usual_pail
from store.husbandry.moments import hours_between, later, moment
from store.husbandry.why import Value, given
from store.round.emptied import sharing
from store.round.judging import judged_draft
from store.round.measured import holding
from store.round.steps import MilkStep
from store.round.timed import TimedPail, timed_pails
from store.round.whys.asked import Asked
from store.round.withholding import doses_given

SAME_H = 1 / 60
"""Closer than this is the same minute. [h]"""


def milk_numbers(asked: Asked, step: MilkStep) -> Iterator[Value]:
    """The pail, where one is written; the hours, and what is usual after them; until when none is kept."""
    written = step.entry.the(MilkedFigure) if step.entry and step.state is State.DONE else None
    at = step.entry.happened_at if written and step.entry else asked.now
    milk = pail_value(written) if written and written.milk_kg is not None else None
    yield from (milk, litres.of("litres of it", milk_kg=milk)) if milk else ()
    if step.emptied_at and step.emptied_at < at:
        elapsed = elapsed_value(step.emptied_at, at)
        yield elapsed
        if milk:
            yield from _judged(asked, step, milk, elapsed)
        yield from _usual(asked, step, elapsed)
    held = holding(step.withheld, step.entry.when if step.entry else span(at))
    if held:
        yield from _kept_from(asked, step.animal.id, held)


def pail_value(written: MilkedFigure) -> Value:
    """The milk of a pail: from the scale, or as it was typed. [kg]"""
    if written.gross_kg is None or written.empty_kg is None:
        return given(written.milk_kg or 0.0, "milk", "kg", f"typed as «{written.typed}»")
    gross = given(written.gross_kg, "pail on the scale", "kg", f"typed as «{written.typed}»")
    empty = given(written.empty_kg, "the empty pail", "kg", "weighed, as the book had it then")
    return milk_in_pail.of("milk", gross_kg=gross, empty_kg=empty)


def elapsed_value(emptied_at: datetime, at: datetime) -> Value:
    """How long she filled. [h]"""
    begun = moment(emptied_at, "her udder was empty", "her last milking, or her calf shut away after it")
    return hours_between.of(
        "since she was emptied", since=begun, until=moment(at, "milked", "the time of this milking")
    )


def _judged(asked: Asked, step: MilkStep, milk: Value, elapsed: Value) -> Iterator[Value]:
    """A pail by its hours; in a day and against her usual only where it compares."""
    yield an_hour_kg.of("milk an hour", milk_kg=milk, hours=elapsed)
    found = judged_draft(step, step.entry) if step.entry else None
    if found and found.day_kg is not None:
        yield day_kg.of("milk of a day", milk_kg=milk, elapsed_h=elapsed)
    if found and found.percent is not None:
        middle = MIDDLE.of(full_h=_full(elapsed), **dict(_rates(asked, step)))
        yield from (middle, change_percent.of("against her usual", before=middle, now=milk))


def _usual(asked: Asked, step: MilkStep, elapsed: Value) -> Iterator[Value]:
    """What her last pails come to after these hours; none with too few, or after too long."""
    if usual_pail(step.rates_kg_h, elapsed.amount):
        rates = dict(_rates(asked, step))
        yield from (each.of(full_h=_full(elapsed), **rates) for each in (LEAST, MOST))


def _rates(asked: Asked, step: MilkStep) -> Iterator[tuple[str, Value]]:
    """Her last pails that compare, newest first."""
    shares = sharing(asked.snapshot, step.animal.id)
    compared = (each for each in timed_pails(step.animal.id, shares, step.milking.pails_before) if not each.why_not)
    for at, each in enumerate(islice(compared, MOST_PAILS), 1):
        yield f"rate_{at}", rate_value(asked, each)


def rate_value(asked: Asked, each: TimedPail) -> Value:
    """A pail of hers for an hour at full rate. [kg/h]"""
    milk = given(each.pail.milk_kg or 0.0, "milk", "kg", f"written {asked.when(each.pail.at)}")
    full = _full(elapsed_value(each.emptied_at or each.pail.at, each.pail.at))
    return an_hour_kg.of(f"pail of {asked.when(each.pail.at)}", milk_kg=milk, hours=full)


def _full(elapsed: Value) -> Value:
    """The hours that count: an udder fills more slowly the fuller it is. [h]"""
    return filled_h.of("hours at full rate", elapsed_h=elapsed)


def _kept_from(asked: Asked, cow_id: UUID, held: Withholding) -> Iterator[Value]:
    """Until when none is kept: so many hours after a last dose; else as the withholding says it.

    Where milkings are asked for too, it is not known yet, and the hours alone are told.
    """
    by_hours = list(_by_hours(asked, cow_id))
    if held.until is None:
        yield from (replace(each, name=f"{each.name}, by the hours alone") for each in by_hours)
        return
    until = moment(held.until, "none kept before", held.why)
    yield next((each for each in by_hours if abs(each.amount - until.amount) < SAME_H), until)


def _by_hours(asked: Asked, cow_id: UUID) -> Iterator[Value]:
    """Of each of her treatments that withholds by the hour."""
    for treatment in asked.snapshot.treatments:
        doses, rule = doses_given(asked.snapshot, treatment), treatment.withdrawal
        if treatment.animal_id == cow_id and doses and rule and rule.milk_h is not None:
            last = moment(doses[-1].latest, f"the last dose of {treatment.product}", "written when it was given")
            hours = given(rule.milk_h, "milk withheld after it", "h", "as label or vet have it, typed under F")
            yield later.of("none kept before", since=last, by_h=hours)
