"""How condition and weight have gone, in words."""

from datetime import date

from store.book.words import Units
from store.ration.trend import Trend, Went
from tests.store.ration.small_ration import value
from tui.ration.trend import trend_words

TODAY = date(2026, 3, 11)
DOWN = Went(date(2026, 1, 12), 3.25, date(2026, 3, 4), 2.5, at_calving=True)
UP = Went(date(2026, 1, 11), 580.0, date(2026, 2, 20), 612.0)


def test_condition_is_told_since_calving_with_the_days() -> None:
    assert list(trend_words(Trend(condition=DOWN), TODAY, Units.METRIC)) == [
        "CONDITION  2.5 on Wed 4 Mar, 3.25 at calving on Mon 12 Jan: down 0.75 in 51 days."
    ]


def test_a_weight_is_told_with_what_that_is_a_day() -> None:
    gains, loses = Trend(weight=UP, gain_kg_day=value(0.8)), Trend(weight=UP, gain_kg_day=value(-0.2))
    assert list(trend_words(gains, TODAY, Units.METRIC)) == [
        "WEIGHT  612 kg on Fri 20 Feb, 580 kg on Sun 11 Jan: gains 0.80 kg a day."
    ]
    assert next(trend_words(loses, TODAY, Units.US)).endswith("loses 0.44 lb a day.")


def test_a_score_that_is_due_names_its_key() -> None:
    due = Trend(score_due_on=date(2026, 3, 4))
    assert list(trend_words(due, TODAY, Units.METRIC)) == ["CONDITION  A score is due since Wed 4 Mar: M scores her."]
    assert list(trend_words(Trend(score_due_on=date(2026, 3, 12)), TODAY, Units.METRIC)) == []
