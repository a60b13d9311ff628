"""What matters beside the amounts of a feed step: forage, soak, a change under way, what was given the last time."""

from collections.abc import Iterator

from store.book.facts.feed import PlanRow
from store.book.turn import local
from store.book.words import Kind, Soak, State
from store.husbandry.soak import hours_soaked
from store.round.change import change_of, step_after_hold
from store.round.saying import weight
from store.round.soaked import is_short
from store.round.steps import DueFeed, FeedStep, SoakCheckStep
from tui.page import Line, Role, Size, wrapped
from tui.walk.shown import Shown
from tui.walk.soak_words import short_words, thrown_out_words
from tui.words import clock, day, hours, in_quarters, measured

Words = tuple[str, Role]


def context(shown: Shown, step: FeedStep, size: Size) -> list[Line]:
    """A few kinds of line, each only where there is something to say."""
    told = [
        *_change(shown, step), *_forage(shown, step), *_soak(shown, step), *_new_bag(shown, step),
        _last_time(shown, step),
    ]  # fmt: skip
    return [row for words, role in told for row in wrapped(words, size.width, role, "  ")]


def _forage(shown: Shown, step: FeedStep) -> Iterator[Words]:
    """Forage before grain: whether the pen has had its hay in this round."""
    hay = [each for each in shown.walker.steps if each.kind is Kind.HAY and each.place == step.place]
    if step.kind is Kind.HAY or not hay:
        return
    given = next((each.entry for each in hay if each.entry and each.state is State.DONE), None)
    if given:
        yield f"HAY     given {clock(given.happened_at, shown.walker.farm.zone)}: good, forage first", Role.TEXT
    else:
        yield "HAY     not given here yet: forage first", Role.WARNING


def _soak(shown: Shown, step: FeedStep) -> Iterator[Words]:
    """How long the soaked feeds of a step stood, whether anybody looked, whether it is enough; what replaces them."""
    checks = {each.feed.id: each for each in shown.walker.steps if isinstance(each, SoakCheckStep)}
    for part in step.soaked:
        if part.found is Soak.THROWN_OUT:
            yield f"SOAK    {thrown_out_words(part, shown.units)}", Role.WARNING
            continue
        stood = _stood(shown, checks[part.feed.id]) if part.feed.id in checks else part.feed.name
        looked = ", NOT LOOKED AT yet" if part.found is None else ""
        yield f"SOAK    {stood}{looked}", Role.WARNING if looked else Role.TEXT
        if is_short(part):
            yield f"SOAK    {short_words(part, shown.units)}", Role.WARNING


def _stood(shown: Shown, check: SoakCheckStep) -> str:
    if check.batch is None:
        return f"{check.feed.name}: put to soak when is not known"
    stood_h = hours_soaked(check.batch.started_at, shown.now)
    limit = f", your limit {check.limit.most_h:g} h" if check.limit else ""
    return f"{check.feed.name}: {hours(stood_h)}{limit}"


def _new_bag(shown: Shown, step: FeedStep) -> Iterator[Words]:
    """A bag of another lot came since the scoop was weighed: it may hold a third more."""
    for due in step.due:
        came_at = shown.walker.snapshot.new_bags.get(due.feed.id)
        if due.told and came_at and (due.told.weighed_at is None or due.told.weighed_at < came_at):
            when = day(local(came_at, shown.walker.farm.zone))
            yield f"NEW BAG {due.feed.name}, {when}: weigh a level {due.told.name} first. M", Role.WARNING


def _change(shown: Shown, step: FeedStep) -> Iterator[Words]:
    """Where a change of an amount stands, or that it is held today."""
    for due in step.due:
        change = change_of(due.rows, shown.now, shown.walker.zone)
        after_hold = step_after_hold(due.rows, shown.now, shown.walker.zone)
        if after_hold:
            words = f"CHANGE  {due.feed.name}, HELD today: as the day before"
            yield f"{words}{_then(shown, step, due, after_hold)}. Loose dung: M", Role.TEXT
        elif change:
            was = _number(due, change.was_kg * len(step.heads), shown) if change.was_kg else "none"
            words = f"CHANGE  {due.feed.name}, day {change.day} of {change.days}: was {was}"
            yield f"{words}{_then(shown, step, due, change.next)}. Loose dung: M", Role.TEXT


def _then(shown: Shown, step: FeedStep, due: DueFeed, coming: PlanRow | None) -> str:
    """The next step of a change, and from when."""
    if coming is None or coming.due_kg is None:
        return ""
    when = day(local(coming.begins_at, shown.walker.farm.zone))
    return f", {when} {_number(due, coming.due_kg * len(step.heads), shown)}"


def _number(due: DueFeed, kg: float, shown: Shown) -> str:
    """Without the name of the measure, which stands beside the amount above."""
    told = _told_as(due, kg, shown)
    return told.removesuffix(due.told.plural).removesuffix(due.told.name).strip() if due.told else told


def _last_time(shown: Shown, step: FeedStep) -> Words:
    if step.before is None:
        return (f"LAST    no {shown.walker.turn.slot} is recorded yet", Role.QUIET)
    given = [
        f"{_told_as(due, step.before.given_kg[due.feed.id], shown)} {due.feed.name}"
        for due in step.due
        if due.feed.id in step.before.given_kg
    ]
    when = f"{day(step.before.day)} {shown.walker.turn.slot}"
    return (f"LAST    {when}: {' + '.join(given) or 'other feeds'}", Role.TEXT)


def _told_as(due: DueFeed, kg: float, shown: Shown) -> str:
    """In today's measure where that comes out even; else by weight, as its measure may have been weighed anew."""
    number = round(kg / due.told.holds_kg, 2) if due.told and due.told.holds_kg else 0.1
    return measured(number, due.told) if due.told and in_quarters(number) else weight(kg, shown.units)
