"""Any change of two feeds that are no forage, in two meals: caps, measures, what comes besides, from any round on."""

from collections.abc import Iterator
from datetime import date
from math import inf

from hypothesis import strategies as st
from msgspec import Struct
from msgspec.structs import replace

from store.book.facts.feed import Feed, Told
from store.book.turn import Turn
from store.book.words import EVENING, FEEDING, MORNING, Stage
from store.ration.fed import day_kg
from store.ration.limits import biggest_meal
from store.ration.parts import Amounts, Case, Head, Limits, RationFeed
from store.ration.step_limits import Meal
from tests.store.ration.small_ration import COW, GRAIN, HAY, made_case, ration_feed, value
from tests.store.round.made import some_id

OTHER = Feed(some_id("other corn"), "corn", soaked=False)
MEALS = tuple((slot, feed.id) for slot in FEEDING for feed in (GRAIN, OTHER))
AMOUNTS_KG = st.sampled_from((0.0, 0.0, 0.5, 1.0, 1.5, 2.0, 2.5))


class Asked(Struct, frozen=True):
    """A case, what it is to come to, and from when on."""

    case: Case
    new: Amounts
    start: Turn


@st.composite
def asked(draw: st.DrawFn) -> Asked:
    """Any of them; caps as tight as the ends allow, so that whatever goes beyond both is seen."""
    now, new = draw(_amounts()), draw(_amounts())
    besides: Amounts = draw(st.one_of(st.just({}), _amounts(st.sampled_from((0.0, 0.5, 1.0)))))
    bare = replace(made_case(draw(_feeds(GRAIN)), draw(_feeds(OTHER)), now=now), besides=besides)
    feeds = tuple(replace(feed, limits=draw(_limits(bare, new, feed))) for feed in bare.feeds)
    meal_kg = draw(st.none() | st.just(max(biggest_meal(bare, each).amount for each in (now, new))))
    head = Head(replace(COW, stage=draw(st.sampled_from((Stage.IN_MILK, Stage.CALF)))), "")
    start = Turn(date(2026, 3, 28), draw(st.sampled_from((MORNING, EVENING))))
    limit = value(meal_kg) if meal_kg else None
    return Asked(replace(bare, feeds=(ration_feed(HAY), *feeds), heads=(head,), meal_limit_kg=limit), new, start)


@st.composite
def _feeds(draw: st.DrawFn, feed: Feed) -> RationFeed:
    holds_kg = draw(st.sampled_from((None, 0.4, 0.675, 1.0, 3.0)))
    return replace(ration_feed(feed), told=Told(some_id(f"measure {feed.id}"), "scoop", "scoops", holds_kg))


@st.composite
def _limits(draw: st.DrawFn, case: Case, new: Amounts, feed: RationFeed) -> Limits:
    """Of a day and of a meal: none, or the most that either end gives."""
    day_kg_ = max(day_kg(case, each).get(feed.feed.id, 0.0) for each in (case.now, new))
    meals = (each.get((slot, feed.feed.id), 0.0) + case.besides.get((slot, feed.feed.id), 0.0)
             for each in (case.now, new) for slot in FEEDING)  # fmt: skip
    day, meal = draw(st.none() | st.just(value(day_kg_))), draw(st.none() | st.just(value(max(meals))))
    return Limits(most_day_kg=day, most_meal_kg=meal)


def _amounts(kg: st.SearchStrategy[float] = AMOUNTS_KG) -> st.SearchStrategy[Amounts]:
    return st.fixed_dictionaries(dict.fromkeys(MEALS, kg))


def over_kg(case: Case, amounts: Amounts) -> Iterator[tuple[object, float]]:
    """By cap: how far what is given, all plans together, is above it; below it is no distance. [kg]"""
    total: dict[Meal, float] = {
        meal: amounts.get(meal, 0.0) + case.besides.get(meal, 0.0) for meal in (*MEALS, *amounts)
    }
    for feed in case.feeds:
        limits = feed.limits
        for slot in case.slots:
            most_kg = limits.most_meal_kg.amount if limits.most_meal_kg else inf
            yield (slot, feed.feed.id), max(total.get((slot, feed.feed.id), 0.0) - most_kg, 0.0)
        day = day_kg(case, amounts).get(feed.feed.id, 0.0)
        yield feed.feed.id, max(day - (limits.most_day_kg.amount if limits.most_day_kg else inf), 0.0)
    for slot in case.slots:
        meal = biggest_meal(replace(case, slots=(slot,)), amounts).amount
        yield slot, max(meal - (case.meal_limit_kg.amount if case.meal_limit_kg else inf), 0.0)


def no_further_over(case: Case, new: Amounts, amounts: Amounts) -> bool:
    """Whether some amounts are no further above any cap than one of the ends is."""
    now, end, on_the_way = (dict(over_kg(case, each)) for each in (case.now, new, amounts))
    return all(kg <= max(now[cap], end[cap]) + 1e-6 for cap, kg in on_the_way.items())
