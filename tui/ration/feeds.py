"""The feeds of a ration, a line each: now, new, in the measure of the feed; and what is known of the marked one."""

from collections.abc import Iterator

from msgspec import Struct

from store.book.words import Stage
from store.feedroom.delivery import money
from store.husbandry.why import Value
from store.ration.parts import Amounts, Balance, Part, RationFeed
from store.round.saying import weight
from tui.page import Line, Role, Size, Span, cut, line, wrapped
from tui.ration.said import figure, line_of, price, short
from tui.ration.seen import NO_MARK, Seen
from tui.ration.trial import changed, in_words, meals_kg, number, unit

LIMIT_OF_COWS = ", your limit is for cows"
MARK_CELLS, UNIT_CELLS, NAME_LEAST = 3, 7, 12
NONE = "No feed is planned. A adds one of those on hand."
NO_FEED = "No feed is set up. F opens my farm: FEEDS."


class Columns(Struct, frozen=True):
    """How wide the columns are; decimal: `2.5` for `2 1/2`, with_unit: the measure stands behind each amount."""

    name: int
    now: int
    new: int
    decimal: bool
    with_unit: bool


def feed_rows(seen: Seen, width: int) -> list[Line]:
    """The heads and a line for each feed, in so many cells."""
    if not seen.rows and not seen.beside:
        return wrapped(NONE if seen.case.feeds else NO_FEED, width, Role.WARNING)
    columns = _columns(seen, width)
    head = f"{'':{MARK_CELLS}}{'feed':<{columns.name}}{'now':<{columns.now}}{'new':<{columns.new}}"
    own = (_row(seen, at, each, columns) for at, each in enumerate(seen.rows))
    return [line(Span(head, Role.QUIET)), *own, *(_beside(seen, each, columns) for each in seen.beside)]


def _columns(seen: Seen, width: int) -> Columns:
    """As much as there is room for: fractions and measures, else without the measures, else decimals."""
    for decimal, with_unit in ((False, True), (False, False), (True, False)):
        besides = (_numbers(seen, each, seen.case.besides, decimal=decimal) for each in seen.beside)
        own = (_now(seen, each, decimal=decimal) for each in seen.rows)
        now = 1 + max(map(len, (*own, *besides, "now")))
        new = 1 + max(map(len, (*(_new(seen, at, each, decimal=decimal) for at, each in enumerate(seen.rows)), "new")))
        name = width - MARK_CELLS - now - new - (UNIT_CELLS if with_unit else 0)
        if name >= NAME_LEAST:
            break
    name = max(name, NAME_LEAST // 2)
    return Columns(name, now, min(new, width - MARK_CELLS - name - now), decimal, with_unit)


def _row(seen: Seen, at: int, feed: RationFeed, columns: Columns) -> Line:
    here = at == seen.marked
    is_twice = seen.case.subject.animal_id is not None and feed in seen.beside
    name = cut(f"own {feed.feed.name}" if is_twice else feed.feed.name, columns.name - 1)
    told = unit(feed, seen.farm.units) if columns.with_unit and not feed.free else ""
    return line(
        Span(" > " if here else "   ", Role.HERE if here else Role.TEXT),
        Span(f"{name:<{columns.name}}", Role.STRONG if here else Role.TEXT),
        f"{_now(seen, feed, decimal=columns.decimal):<{columns.now}}",
        Span(
            f"{_ending(_new(seen, at, feed, decimal=columns.decimal), columns.new):<{columns.new}}",
            _role(seen, feed, here=here),
        ),
        Span(told, Role.QUIET),
    )


def _beside(seen: Seen, feed: RationFeed, columns: Columns) -> Line:
    """What comes by another plan: it is counted, and not changed here."""
    name, told = cut(feed.feed.name, columns.name - 1), _numbers(seen, feed, seen.case.besides, decimal=columns.decimal)
    by = "from the pen" if seen.case.subject.animal_id else "by own plans"
    return line(Span(f"   {name:<{columns.name}}{told:<{columns.now}}{by}", Role.QUIET))


def _now(seen: Seen, feed: RationFeed, *, decimal: bool) -> str:
    return "free" if feed.free else _numbers(seen, feed, seen.case.now, decimal=decimal)


def _new(seen: Seen, at: int, feed: RationFeed, *, decimal: bool) -> str:
    """The new amounts; of the marked feed the marked meal in brackets, or what is typed for it."""
    if feed.free:
        return "free"
    if at == seen.marked and "+" in seen.typed:
        return f"[{seen.typed}_]"
    numbers = _each(seen, feed, seen.new, decimal=decimal)
    if at == seen.marked and seen.meal != NO_MARK:
        numbers[seen.meal] = f"[{f'{seen.typed}_' if seen.typed else numbers[seen.meal]}]"
    return " + ".join(numbers)


def _ending(words: str, cells: int) -> str:
    """The end of what is typed, where all of it has no room."""
    return words if len(words) <= cells else f"…{words[1 - cells :]}"


def _role(seen: Seen, feed: RationFeed, *, here: bool) -> Role:
    if here and seen.typed:
        return Role.TYPED
    tried = changed(seen.case, {**seen.tried, **seen.reading.amounts})
    return Role.AMOUNT if any(cell[1] == feed.feed.id for cell in tried) else Role.TEXT


def _numbers(seen: Seen, feed: RationFeed, amounts: Amounts, *, decimal: bool) -> str:
    return " + ".join(_each(seen, feed, amounts, decimal=decimal))


def _each(seen: Seen, feed: RationFeed, amounts: Amounts, *, decimal: bool) -> list[str]:
    return [number(kg, feed, seen.farm.units, decimal=decimal) for kg in meals_kg(amounts, feed, seen.case.slots)]


def sum_rows(seen: Seen) -> Iterator[Line]:
    """What it costs a day, how much is eaten, and the biggest meal, now and new."""
    now, new = _cost(seen, seen.before), _cost(seen, seen.after)
    each = " each" if len(seen.case.heads) > 1 else ""
    yield line(f"   cost a day{each} {now}" if now == new else f"   cost a day{each} {now}, new {new}")
    most = line_of(seen.after, Part.DRY_MATTER)
    of = f" of {short(most.need.most, seen.farm.units)}" if most and most.need.most else ""
    yield line(
        f"   eats {short(seen.after.eaten_kg, seen.farm.units)}{of} {weight(0, seen.farm.units).split()[1]} dry matter"
    )
    yield _biggest_meal(seen)


def _biggest_meal(seen: Seen) -> Line:
    """Of loose feed."""
    meal, limit = seen.after.biggest_meal_kg, seen.case.meal_limit_kg
    over = limit is not None and meal.amount > limit.amount
    is_calf = all(head.animal.stage is Stage.CALF for head in seen.case.heads)
    said = f", your limit {weight(limit.amount, seen.farm.units)}" if limit else ", no limit set"
    said = LIMIT_OF_COWS if limit and is_calf and not over else said
    words = f"   biggest meal {weight(meal.amount, seen.farm.units).split()[0]}{said}"
    return line(Span(f"{words} OVER" if over else words, Role.WARNING if over else Role.TEXT))


def _cost(seen: Seen, balance: Balance) -> str:
    return "not known" if balance.cost is None else money(balance.cost.amount, seen.farm.currency)


def marked_lines(seen: Seen, size: Size) -> list[Line]:
    """What is known of the marked feed: the meal by weight, what it is read as while it is typed, limits, stock."""
    feed = seen.feed
    if feed is None:
        return []
    if seen.reading.problem:
        return wrapped(seen.reading.problem, size.width, Role.WARNING, "   ")
    told = f"{feed.feed.name}, {', '.join(_known(seen, feed))}"
    return wrapped(told, size.width, Role.TYPED if seen.typed else Role.STRONG, "   ")


def _known(seen: Seen, feed: RationFeed) -> Iterator[str]:
    units, heads = seen.farm.units, len(seen.case.heads)
    if feed.barred:
        yield f"NOT FOR THEM: {feed.barred}"
    if feed.free:
        yield "stands free: eaten until they are full"
    else:
        kg = seen.new.get((seen.slot, feed.feed.id), 0.0)
        yield f"{seen.slot}: {in_words(kg, feed, units)}{' each' if heads > 1 else ''}"
        if heads > 1:
            yield f"{weight(kg * heads, units)} for all {heads}"
    for limit, of in (
        (_meal_limit(seen, feed), "a meal"),
        (feed.limits.most_day_kg, "a day"),
        (feed.limits.share_percent, "of all dry matter"),
    ):
        if limit is not None:
            yield f"{limit.came} {figure(limit, units)} {of}"
    if feed.there_kg is not None:
        yield f"{weight(feed.there_kg.amount, units)} there"
    yield from _price(seen, feed)


def _meal_limit(seen: Seen, feed: RationFeed) -> Value | None:
    """Its own of one meal, where that is less than of all that is fed in it, which stands above."""
    own, of_all = feed.limits.most_meal_kg, seen.case.meal_limit_kg
    return None if own and of_all and own.amount >= of_all.amount else own


def _price(seen: Seen, feed: RationFeed) -> Iterator[str]:
    if feed.price_per_kg is not None:
        yield price(feed.price_per_kg, seen.farm)
    elif feed.there_kg is not None:
        yield "no price: D, a delivery with its price"
    if not feed.made:
        yield "what it is made of is not known: F, FEEDS, its label"
