"""A feed that is gone before a change is over: the first short round, and what the farm puts in its place."""

from datetime import date

import pytest
from msgspec.structs import replace

from store.book.drafts import RowDraft
from store.book.opening import Book
from store.book.reading.stock import stock_of
from store.book.turn import Turn
from store.book.words import Units
from store.feedroom.drafts import weighed
from store.ration.change import DayPlan, steps
from store.ration.dated import rows
from store.ration.parts import Case, Limits
from store.ration.runout import RunsOut, made_up, runs_out, runs_out_words
from store.ration.step_limits import rules_of
from tests.farm import HandClock, morning
from tests.store.feedroom.made import feed_hand
from tests.store.herd.filled import register
from tests.store.ration.made import case_of, feed_of_book, id_of, kg
from tests.store.round.named import feed_of

TODAY = date(2026, 3, 11)
TOMORROW = Turn(date(2026, 3, 12), "morning")
SCOOP_KG = 0.675


def less_nuts(book: Book, kg_there: float) -> tuple[Case, tuple[DayPlan, ...]]:
    """Sloe goes from a scoop and a half of nuts to a half in four days, with so much there for the whole yard."""
    found = register(book)
    case = case_of(book, "Sloe", feed_of_book(found, "dairy nuts"), feed_of_book(found, "lucerne pellets", told=False))
    stock = stock_of(book.desk, case.feeds[0].feed, book.clock.now(), "Europe/Dublin")
    book.append(weighed(feed_hand(book), stock, kg_there, f"{kg_there} kg"))
    new = {("morning", id_of(case, "dairy nuts")): 0.5 * SCOOP_KG}
    return case, steps(case, new, rules_of(register(book)), TOMORROW)


def short(book: Book, case: Case, days: tuple[DayPlan, ...]) -> tuple[RunsOut, ...]:
    """What runs out with the rows of the change in the book."""
    found = register(book)
    return book.trial(rows(found, case, days), lambda desk: runs_out(desk, found, case, days))


def instead(book: Book, case: Case, most_kg: float | None = None) -> None:
    """Lucerne stands in for nuts, 0.8 for 1."""
    nuts, lucerne = (id_of(case, name) for name in ("dairy nuts", "lucerne pellets"))
    book.change([RowDraft("substitute", {"feed_id": nuts, "by_id": lucerne, "ratio": 0.8, "most_kg": most_kg})])


def test_what_lasts_longer_than_the_change_is_not_said(book: Book) -> None:
    case, days = less_nuts(book, 200)
    assert short(book, case, days) == ()


def test_the_first_short_round_is_said_before_the_start_and_what_would_set_a_substitute(book: Book) -> None:
    """By hand: 9.4275 kg today, 9.25875 tomorrow, 5.715 on Friday morning, of 20 kg."""
    case, days = less_nuts(book, 20)
    (found,) = short(book, case, days)
    assert found.short == Turn(date(2026, 3, 13), "morning")
    assert found.short_kg == pytest.approx(4.40125)
    words = runs_out_words(case, found, TODAY, Units.METRIC)
    assert words.startswith("dairy nuts is short by 4.4 kg on Friday morning")
    assert words.endswith("Nothing stands in for it: F, the feed, sets what is given instead.")


def test_the_farms_substitute_makes_up_the_rest_at_its_ratio_until_the_last_step(book: Book, clock: HandClock) -> None:
    case, days = less_nuts(book, 20)
    instead(book, case)
    (found,) = short(book, case, days)
    made = made_up(case, days, (found,))
    nuts, lucerne = (("morning", id_of(case, name)) for name in ("dairy nuts", "lucerne pellets"))
    given = {day.on.day: (day.amounts.get(nuts, 0), day.amounts.get(lucerne, 0)) for day in made}
    assert given == {
        12: pytest.approx((1.25 * SCOOP_KG, 0)), 13: pytest.approx((0, 1.0 * SCOOP_KG * 0.8)),
        14: pytest.approx((0, 0.75 * SCOOP_KG * 0.8)), 15: pytest.approx((0.5 * SCOOP_KG, 0)),
    }  # fmt: skip
    book.change(rows(register(book), case, made))
    clock.move(days=2)
    (due,) = feed_of(morning(book), "Sloe").due
    assert (due.feed.name, round(due.due_kg, 2)) == ("lucerne pellets", 0.54)
    clock.move(days=2)
    assert [each.feed.name for each in feed_of(morning(book), "Sloe").due] == ["dairy nuts"]


def test_no_more_of_the_substitute_than_the_farm_allows_a_head(book: Book) -> None:
    case, days = less_nuts(book, 20)
    instead(book, case, most_kg=0.3)
    made = made_up(case, days, short(book, case, days))
    assert max(day.amounts.get(("morning", id_of(case, "lucerne pellets")), 0) for day in made) == 0.3


def test_what_they_must_not_get_does_not_stand_in_and_that_is_said(book: Book) -> None:
    case, days = less_nuts(book, 20)
    instead(book, case)
    nuts, lucerne = case.feeds
    case = replace(case, feeds=(nuts, replace(lucerne, barred="lucerne pellets are not for Sloe.")))
    (found,) = short(book, case, days)
    assert found.instead is None
    assert "is not planned: lucerne pellets are not for Sloe." in runs_out_words(case, found, TODAY, Units.METRIC)
    assert made_up(case, days, (found,)) == days


def test_what_would_be_above_a_limit_does_not_stand_in_and_that_is_said(book: Book) -> None:
    """By hand: a scoop of nuts is 0.54 kg of lucerne, of which a meal may have 0.5 kg."""
    case, days = less_nuts(book, 20)
    instead(book, case)
    nuts, lucerne = case.feeds
    case = replace(case, feeds=(nuts, replace(lucerne, limits=Limits(most_meal_kg=kg(0.5)))))
    (found,) = short(book, case, days)
    words = runs_out_words(case, found, TODAY, Units.METRIC)
    assert words.endswith("is not planned: lucerne pellets would be above a limit of a meal or a day.")
    assert made_up(case, days, (found,)) == days


def test_what_stands_in_is_said_to_come_at_once(book: Book) -> None:
    case, days = less_nuts(book, 20)
    instead(book, case)
    (found,) = short(book, case, days)
    assert runs_out_words(case, found, TODAY, Units.METRIC).endswith("your rule; all at once, not in steps.")
