"""What the feed room says of one feed: why there is so much, and what has to be done about it."""

from collections.abc import Iterator
from datetime import date, datetime

from store.book.desk import Desk
from store.book.reading.needs import read_needs
from store.book.reading.stock import read_settings, told_at
from store.book.stocks import FeedStock
from store.book.turn import local
from store.book.words import Units
from store.feedroom.delivery import money
from store.feedroom.hay import a_day_kg, hay_left, hay_words
from store.feedroom.lasting import DaysLeft, days_left_words
from store.feedroom.room import RoomLine, read_room
from store.feedroom.saying import by_day_words
from store.feedroom.tub import tub_intake
from store.husbandry.units import KG_PER_LB
from store.round.saying import exact, weight
from tui.feed_room.lately import lately
from tui.walker import Walker
from tui.words import day, when

NOT_KNOWN = "not known"
NEVER = "Nothing of it was ever weighed or delivered by the book. Enter opens it: weigh what is there."
DAYS = 7
"""Over so many days to come what a day takes is averaged."""
NEAR_DAYS = 14
"""What is short within so many days is told at the closing. Common practice."""


def room_words(walker: Walker, line: RoomLine) -> str:
    """One feed in a line: name, what is there, how long it lasts."""
    name, kg = line.stock.feed.name, line.stock.kg
    if kg is None or line.left is None:
        return f"{name:<18} {NOT_KNOWN}"
    return f"{name:<18} {weight(kg, walker.farm.units):>9}  {_days(walker, line.left)}"


def _days(walker: Walker, left: DaysLeft) -> str:
    """In a few words: whole days, and by when to order."""
    if left.short is None:
        return days_left_words(left, today(walker), walker.farm.units)
    order = f", order {by_day_words(left.order_by, today(walker))}" if left.order_by else ""
    return f"{left.days} full {'day' if left.days == 1 else 'days'}{order}"


def today(walker: Walker) -> date:
    """On the farm's own clock."""
    return local(walker.book.clock.now(), walker.farm.zone).date()


def shortages(walker: Walker) -> list[str]:
    """The feeds that are short before long; where nobody knows what is there, nothing is said."""
    lines = ((line.stock.feed.name, line.left) for line in read_room(walker.book.desk, walker.book.clock.now()))
    near = ((name, left) for name, left in lines if left and left.short and left.days <= NEAR_DAYS)
    return [f"{name}: {days_left_words(left, today(walker), walker.farm.units)}" for name, left in near]


def feed_lines(walker: Walker, line: RoomLine, desk: Desk, now: datetime) -> Iterator[str]:
    """All that is known of one feed."""
    stock, units = line.stock, walker.farm.units
    yield why(walker, stock)
    if line.left and line.left.short:
        yield days_left_words(line.left, today(walker), units)
    if stock.soaking_kg:
        yield f"{weight(stock.soaking_kg, units)} of it are soaking now"
    if line.to_weigh:
        names = told_at(desk, now)
        scoops = ", ".join(names[id_, stock.feed.id].name for id_ in line.to_weigh)
        yield f"A new bag came: weigh a level {scoops} of it before it is fed (4 here, or M at the step)."
    currency = read_settings(desk, now).currency
    if stock.priced and stock.priced.price_per_kg is not None:
        size, sign = (KG_PER_LB, "lb") if units is Units.US else (1.0, "kg")
        came = day(local(stock.priced.at, walker.farm.zone))
        yield f"{money(stock.priced.price_per_kg * size, currency)} a {sign}, by the delivery of {came}"
    if stock.feed.baled:
        yield from _hay(walker, stock, desk, now)
    yield from _tub(walker, stock, desk)
    yield from lately(walker, stock, desk, now)


def why(walker: Walker, stock: FeedStock) -> str:
    """What was weighed, and what came and went since: the sum that is shown."""
    units, zone = walker.farm.units, walker.farm.zone
    if stock.kg is None or stock.since is None:
        return NEVER
    began = f"{exact(stock.weighed.kg, units)} weighed {when(stock.weighed.at, zone)}" if stock.weighed else "nothing"
    moves = (
        ("+", "delivered", sum(each.kg for each in stock.delivered)),
        ("-", "fed", sum(kg for _, kg in stock.fed_kg)),
        ("-", "lost", sum(each.kg for each in stock.lost)),
    )
    said = "".join(f" {sign} {exact(kg, units)} {word}" for sign, word, kg in moves if kg)
    return f"{began}{said} = {exact(stock.kg, units)}"


def _hay(walker: Walker, stock: FeedStock, desk: Desk, now: datetime) -> Iterator[str]:
    """By the bales it came in. What is planned is what is put out: not all of it is eaten."""
    bale_kg = next((each.bag_kg for each in stock.deliveries if each.bag_kg), None)
    settings = read_settings(desk, now)
    if bale_kg is None or stock.kg is None:
        return
    a_day = a_day_kg(read_needs(desk, now), stock.feed.id, today(walker), DAYS)
    left = hay_left(stock.kg, bale_kg, a_day, today(walker), settings)
    if left:
        eaten = "" if left.eaten_kg is None else f" ({weight(left.eaten_kg, walker.farm.units)} eaten)"
        words = f"{weight(a_day, walker.farm.units)} a day put out{eaten}"
        bales = f"in bales of {weight(bale_kg, walker.farm.units)}"
        yield f"Until turnout, {left.days} days, at {words}, {bales}: {hay_words(left)}"


def _tub(walker: Walker, stock: FeedStock, desk: Desk) -> Iterator[str]:
    taken = tub_intake(desk, stock)
    if taken and taken.g is not None and taken.head_days:
        days = (taken.until - taken.since).days
        gone = weight(taken.gone_kg, walker.farm.units)
        yield f"Standing free: {gone} in {days} days, {taken.g:.0f} g a head and day"
