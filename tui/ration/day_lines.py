"""A change in lines: what each meal gives on each day, what holds a step back, how long it takes."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from store.book.turn import Turn
from store.book.words import Units
from store.husbandry.why import Value
from store.ration.change import Change, DayPlan
from store.ration.coming import Coming
from store.ration.parts import Amounts, Case, RationFeed
from store.ration.step_limits import Meal, feed_of
from store.round.saying import exact, weight
from tui.words import day, in_quarters, measured

NOTHING = "none"
DAY_CELLS, SLOT_CELLS = 20, 9


def turn_said(turn: Turn) -> str:
    """`Thu 12 Mar, morning`."""
    return f"{day(turn.day)}, {turn.slot}"


def course_lines(case: Case, days: Sequence[DayPlan], units: Units) -> Iterator[str]:
    """What it is now, then by day each meal that is otherwise from then on."""
    first, before = days[0].on if days else date.min, case.now
    yield from _day("now", case, case.now, _changing(case, [day.amounts for day in days]), units)
    for each in days:
        title = f"day {(each.on - first).days + 1:<3} {day(each.on)}"
        meals = [meal for meal in each.amounts if each.amounts[meal] != before.get(meal, 0.0)]
        yield from _day(title, case, each.amounts, meals, units)
        before = each.amounts


def _changing(case: Case, amounts: Sequence[Amounts]) -> list[Meal]:
    """The meals that are not the same on all days."""
    meals = dict.fromkeys(meal for each in amounts for meal in each)
    return [meal for meal in meals if any(each.get(meal, 0.0) != case.now.get(meal, 0.0) for each in amounts)]


def _day(title: str, case: Case, amounts: Amounts, meals: Sequence[Meal], units: Units) -> Iterator[str]:
    """A line for each meal; the day and the slot only where they begin."""
    before = ""
    for slot, feed_id in sorted(meals, key=lambda meal: case.slots.index(meal[0])):
        feed = feed_of(case, feed_id)
        kg = amounts.get((slot, feed_id), 0.0)
        about = _about(feed, kg) if amounts is case.now else ""
        said = f"{feed.feed.name} {amount_words(feed, kg, units)}{about}"
        yield f"{title:<{DAY_CELLS}}{'' if slot == before else slot:<{SLOT_CELLS}}{said}"
        title, before = "", slot


def _about(feed: RationFeed, kg: float) -> str:
    """` (about 1 1/2 scoops)`, where it does not come out even: the steps behind it are told in scoops."""
    holds_kg = feed.told.holds_kg if feed.told else None
    if feed.told is None or not holds_kg:
        return ""
    quarters = round(4 * kg / holds_kg) / 4
    is_even = in_quarters(round(kg / holds_kg, 3))
    return f" (about {measured(quarters, feed.told)})" if quarters and not is_even else ""


def amount_words(feed: RationFeed, kg: float, units: Units) -> str:
    """`1 1/4 scoops (0.84 kg)`; by weight where its measure does not come out even."""
    holds_kg = feed.told.holds_kg if feed.told else None
    number = round(kg / holds_kg, 3) if holds_kg else None
    if not kg:
        return NOTHING
    if feed.told and number is not None and in_quarters(number):
        return f"{measured(number, feed.told)} ({exact(kg, units)})"
    return exact(kg, units)


def coming_words(case: Case, found: Coming, units: Units) -> str:
    """`dairy nuts will still step to 3 1/2 scoops (2.36 kg) + 3 scoops (2.02 kg) by Fri 20 Mar`."""
    ends = {**case.now, **found.ends}
    feeds = [feed_of(case, feed_id) for feed_id in dict.fromkeys(feed_id for _, feed_id in found.ends)]
    said = (
        f"{feed.feed.name} will still step to "
        + " + ".join(amount_words(feed, ends.get((slot, feed.feed.id), 0.0), units) for slot in case.slots)
        for feed in feeds
    )
    return f"{', '.join(said)} by {day(found.on)}"


def length_words(found: Change) -> str:
    """`4 steps, the last on day 4`."""
    steps = "1 step" if found.steps == 1 else f"{found.steps} steps"
    if not found.days:
        return "nothing is changed"
    return f"{steps}, the last on day {(found.days[-1].on - found.days[0].on).days + 1}"


def started_words(found: Change) -> str:
    """`the change is started, day 1 is Thu 12 Mar, morning; 4 steps, the last on day 4`."""
    return f"the change is started, day 1 is {turn_said(found.start)}; {length_words(found)}"


def limit_lines(found: Change, units: Units) -> Iterator[str]:
    """What holds the steps back; of several meals alike one line."""
    said: dict[str, list[str]] = {}
    for limit in found.limits:
        said.setdefault(f"{exact(limit.amount, units)} at one step: {_whose(limit, units)}", []).append(limit.name)
    yield from (f"{' and '.join(names)}: at most {words}" for words, names in said.items())
    if found.steps and found.biggest.amount:  # forage is in no meal that a limit counts
        yield f"{found.biggest.name}: {weight(found.biggest.amount, units)}, {found.biggest.came}"


def _whose(limit: Value, units: Units) -> str:
    """`25 % of the meal, a starting value`."""
    percent, most = limit.inputs.get("percent"), limit.inputs.get("most_kg")
    if percent:
        return f"{percent.amount:g} % of the meal, {percent.came}"
    return f"{exact(most.amount, units)} {most.name}, {most.came}" if most else limit.came


def change_said(case: Case, new: Mapping[Meal, float], found: Change, units: Units) -> str:
    """In a sentence, for the note: `dairy nuts, morning 1.01 kg -> 0.68 kg; 2 steps, the last on day 2, from ...`."""
    meals = [meal for meal in dict.fromkeys((*case.now, *new)) if case.now.get(meal, 0.0) != new.get(meal, 0.0)]
    said = (
        f"{feed_of(case, feed_id).feed.name}, {slot} "
        f"{exact(case.now.get((slot, feed_id), 0.0), units)} -> {exact(new.get((slot, feed_id), 0.0), units)}"
        for slot, feed_id in meals
    )
    return f"{'; '.join(said)}; {length_words(found)}, from {turn_said(found.start)}"
