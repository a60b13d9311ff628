"""Why the feed room says so much: what was weighed, came, was fed and lost; the rounds that it covers; its price."""

from collections.abc import Iterator
from datetime import date, timedelta

from msgspec.structs import replace

from store.book.needs import Needs
from store.book.stocks import FeedSettings, FeedStock
from store.book.turn import Turn, local
from store.book.words import FEEDING
from store.feedroom.lasting import DaysLeft
from store.feedroom.room import RoomLine
from store.feedroom.tub import TubIntake
from store.husbandry.intake import a_head_g
from store.husbandry.measures import one_of
from store.husbandry.moments import days_before, the_day
from store.husbandry.money import price_a_kg
from store.husbandry.stock import a_day_of, full_days, rounds_covered, short_by_kg, there_kg
from store.husbandry.why import Value, given, total
from store.round.whys import Asked
from store.round.whys.asked import BY_PLAN, YOUR_RULE


def line_numbers(asked: Asked, line: RoomLine, needs: Needs, settings: FeedSettings) -> Iterator[Value]:
    """Of one feed: what is there, how long it lasts, when to order, what a kilogram costs."""
    there = there_value(asked, line.stock)
    if there:
        yield there
        yield from _lasting(there, line.stock, line.left, needs, settings)
    if line.stock.soaking_kg:
        yield given(line.stock.soaking_kg, f"{line.stock.feed.name} soaking now, dry", "kg", "put to soak, not yet fed")
    price = price_value(asked, line.stock, settings.currency)
    yield from (price,) if price else ()


def there_value(asked: Asked, stock: FeedStock) -> Value | None:
    """What must be there of a feed; None: nobody knows. [kg]"""
    name, zone = stock.feed.name, asked.when
    if stock.since is None:
        return None
    weighed = (
        given(stock.weighed.kg, f"{name} weighed", "kg", f"weighed {zone(stock.weighed.at)}")
        if stock.weighed
        else given(0.0, f"{name} weighed", "kg", "never weighed: counted from the first delivery on")
    )
    came = [given(each.kg, "a delivery", "kg", f"came {zone(each.at)}") for each in stock.delivered]
    fed = [given(kg, f"fed {_day(on)}", "kg", "written in the rounds of that day") for on, kg in stock.fed_kg]
    lost = [given(each.kg, f"lost: {each.why or 'no reason'}", "kg", f"written {zone(each.at)}") for each in stock.lost]
    return there_kg.of(
        f"{name} there", weighed_kg=weighed, delivered_kg=_sum(f"{name} delivered since", came),
        fed_kg=_sum(f"{name} fed since", fed), lost_kg=_sum(f"{name} lost since", lost),
    )  # fmt: skip


def _sum(name: str, parts: list[Value]) -> Value:
    return total(name, "kg", parts) if parts else given(0.0, name, "kg", "nothing is written")


def _lasting(
    there: Value, stock: FeedStock, left: DaysLeft | None, needs: Needs, settings: FeedSettings
) -> Iterator[Value]:
    """The whole days, what lacks in the first short round, the day to order by; none where it is long enough."""
    if left is None or left.short is None:
        return
    name = stock.feed.name
    rounds = dict(_rounds(stock, left.short, needs))
    lasts = rounds_covered.of(f"rounds that {name} lasts", there_kg=there, **rounds)
    yield full_days.of(f"{name} lasts", rounds=lasts)
    yield short_by_kg.of(f"{name} short by then", there_kg=there, **rounds)
    if left.order_by and settings.lead_days is not None:
        short = the_day(left.short.day, "the first round that is short", f"the {left.short.slot} of that day")
        lead = given(settings.lead_days, "from ordering to having it", "days", YOUR_RULE)
        yield days_before.of(f"order {name} by", until=short, days=lead)


def _rounds(stock: FeedStock, short: Turn, needs: Needs) -> Iterator[tuple[str, Value]]:
    """What each round takes, from the next one not yet fed to the first that is short."""
    turn, take = needs.first(stock.feed.id), needs.by_round(stock.feed.id)
    while not short.is_before(turn):
        words = f"{_day(turn.day)} {turn.slot}"
        yield f"{turn.day:%m_%d}_{turn.slot}", given(take(turn), words, "kg", f"{BY_PLAN} for that round")
        turn = turn.after()


def price_value(asked: Asked, stock: FeedStock, currency: str) -> Value | None:
    """What a kilogram costs by its newest delivery with a price; None: not known. [money/kg]"""
    priced = stock.priced
    if priced is None or priced.price is None:
        return None
    came = f"came {asked.when(priced.at)}"
    price = given(priced.price, "the price of it", currency, f"typed, {came}")
    found = price_a_kg.of(
        f"price of {stock.feed.name}", price=price, kg=given(priced.kg, "the newest delivery with a price", "kg", came)
    )
    return in_money(found, f"{currency}/kg")


def hay_numbers(asked: Asked, stock: FeedStock, needs: Needs, settings: FeedSettings) -> Iterator[Value]:
    """Of hay by the bale: what a day takes of it, by the plans of a week to come; a bale, and how many there are."""
    bale = next((each for each in stock.deliveries if each.bag_kg), None)
    there, today = there_value(asked, stock), local(asked.now, asked.zone).date()
    if not stock.feed.baled or bale is None or there is None:
        return
    if settings.turnout_on is None or settings.turnout_on <= today:
        return
    yield given((settings.turnout_on - today).days, "until turnout", "days", "your day of turnout, set under F")
    turns = [Turn(today + timedelta(days=n), slot) for n in range(1, WEEK + 1) for slot in FEEDING]
    taken = (given(needs.kg(stock.feed.id, each), f"{_day(each.day)} {each.slot}", "kg", BY_PLAN) for each in turns)
    week = total("a week of rounds", "kg", taken)
    yield a_day_of.of(f"{stock.feed.name} put out a day", kg=week, days=given(WEEK, "days", "days", "of that week"))
    bags = given(bale.bags or 1, "bales", "bales", f"came {asked.when(bale.at)}")
    weighed = given(bale.kg, "the newest delivery in bales", "kg", f"came {asked.when(bale.at)}")
    yield one_of.of("a bale", total=weighed, measures=bags)


def tub_numbers(stock: FeedStock, taken: TubIntake | None) -> Iterator[Value]:
    """What each head took a day of what stands free, between the last two weighings."""
    if taken and taken.g is not None and taken.head_days:
        gone = given(taken.gone_kg, "gone", "kg", "by the book just before the weighing, less what was weighed")
        days = given(taken.head_days, "heads times days", "", "who stood in the pens where it stands, by the book")
        yield a_head_g.of(f"{stock.feed.name}, a head and day", gone_kg=gone, head_days=days)


def in_money(value: Value, unit: str) -> Value:
    """A number of the farm's own money."""
    return replace(value, unit=unit)


WEEK = 7
"""Over so many days to come what a day takes is averaged."""


def _day(on: date) -> str:
    return f"{on:%a} {on.day} {on:%b}"
