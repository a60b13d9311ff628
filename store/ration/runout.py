"""A feed that will not last until a change is over: from which round on, and what the farm puts in its place."""

from collections.abc import Sequence
from datetime import date, timedelta

from msgspec import Struct
from msgspec.structs import replace

from store.book.desk import ReadingDesk
from store.book.facts.feed import Substitute
from store.book.reading.needs import read_needs
from store.book.reading.stock import stock_of
from store.book.register import Register
from store.book.turn import Turn
from store.book.words import SLOTS, Units
from store.feedroom.lasting import days_left_of
from store.feedroom.saying import round_words
from store.husbandry.soak import replaced
from store.ration.change import DayPlan
from store.ration.parts import Amounts, Case, RationFeed
from store.ration.step_limits import fits
from store.round.saying import bare, weight

NOT_FED = "it is not among the feeds in use."
ABOVE = "{} would be above a limit of a meal or a day."
AT_ONCE = "all at once, not in steps."


class RunsOut(Struct, frozen=True):
    """A feed, the first round that is short of it, and by how much for the whole yard. [kg]

    instead: what stands in for it; None: the farm has set nothing, or, by why_not, it cannot be given.
    """

    feed: RationFeed
    short: Turn
    short_kg: float
    instead: Substitute | None
    why_not: str = ""


def runs_out(desk: ReadingDesk, register: Register, case: Case, days: Sequence[DayPlan]) -> tuple[RunsOut, ...]:
    """Every feed of a change that is short before its last step. desk: of the book as it will be with its rows.

    What nobody weighed is not known, and not said. Raises DamagedBook.
    """
    needs = read_needs(desk, register.at)
    wanted = {feed_id for day in days for (_, feed_id), kg in day.amounts.items() if kg > 0}
    found = []
    for feed in case.feeds if days else ():
        stock = stock_of(desk, feed.feed, register.at, register.farm.zone) if feed.feed.id in wanted else None
        left = days_left_of(stock, needs) if stock else None
        if left and left.short and left.short_kg is not None and left.short.day < days[-1].on:
            found.append(_if_safe(case, days, RunsOut(feed, left.short, left.short_kg, _instead(register, feed))))
    return tuple(found)


def _instead(register: Register, feed: RationFeed) -> Substitute | None:
    row = register.get("substitute", feed.feed.id)
    return Substitute(row["by_id"], row["ratio"], row["most_kg"]) if row else None


def _if_safe(case: Case, days: Sequence[DayPlan], found: RunsOut) -> RunsOut:
    """Without what stands in where these heads must not get it, or where it would break a limit on the way."""
    if found.instead is None:
        return found
    by = next((each for each in case.feeds if each.feed.id == found.instead.by_id), None)
    if by is None or by.barred:
        return replace(found, instead=None, why_not=by.barred if by else NOT_FED)
    made = _made_up(case, days, found)
    if fits(case, days[-1].amounts, (day.amounts for day in made)):
        return found
    return replace(found, instead=None, why_not=ABOVE.format(by.feed.name))


def made_up(case: Case, days: Sequence[DayPlan], found: Sequence[RunsOut]) -> tuple[DayPlan, ...]:
    """The same days with what stands in for a feed, from its first short round until the last step."""
    for each in found:
        days = _made_up(case, days, each) if each.instead else days
    return tuple(days)


def _made_up(case: Case, days: Sequence[DayPlan], found: RunsOut) -> tuple[DayPlan, ...]:
    """From the day of the first short round on; that of the next one too, as only an evening may be short."""
    first = found.short.day
    begun = [day for day in days if day.on <= first]
    own = DayPlan(first, begun[-1].amounts if begun else case.now)
    second = DayPlan(first + timedelta(days=1), own.amounts)
    all_days = {day.on: day for day in (own, second, *days)}
    return tuple(
        replace(day, amounts=_swapped(day, found)) if first <= day.on < days[-1].on else day
        for _, day in sorted(all_days.items())
    )


def _swapped(day: DayPlan, found: RunsOut) -> Amounts:
    """The amounts of a day with what stands in, from the short round on."""
    amounts, rule, feed_id = dict(day.amounts), found.instead, found.feed.feed.id
    for slot in SLOTS:
        kg = amounts.get((slot, feed_id), 0.0)
        if rule and kg and not Turn(day.on, slot).is_before(found.short):
            amounts[slot, feed_id] = 0.0
            more_kg = replaced(kg, rule.ratio, rule.most_kg, heads=1).kg
            amounts[slot, rule.by_id] = amounts.get((slot, rule.by_id), 0.0) + more_kg
    return amounts


def runs_out_words(case: Case, found: RunsOut, today: date, units: Units) -> str:
    """When it is short, and what stands in or how that is set."""
    short = f"{found.feed.feed.name} is short by {weight(found.short_kg, units)} {round_words(found.short, today)}"
    if found.why_not:
        return f"{short}, before the change is over. What your rule puts in its place is not planned: {found.why_not}"
    if found.instead is None:
        return f"{short}, before the change is over. Nothing stands in for it: F, the feed, sets what is given instead."
    name = next(each.feed.name for each in case.feeds if each.feed.id == found.instead.by_id)
    most = found.instead.most_kg
    cap = f", at most {weight(most, units)} a head and meal" if most is not None else ""
    rule = f"{bare(found.instead.ratio)} for 1{cap}, your rule"
    return f"{short}: {name} from then on until the last step, {rule}; {AT_ONCE}"
