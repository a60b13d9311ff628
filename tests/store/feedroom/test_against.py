"""Book against scale: the explanations in order, none forced."""

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.stocks import Delivered, Row, Weighed
from store.book.turn import Turn
from store.book.words import State, Units
from store.feedroom.against import Cause, Why, compare, comparison_words, explanation_words
from store.feedroom.case import Case, Measured
from store.feedroom.causes import bag_causes, causes, delivery_causes, measure_causes, row_causes
from store.feedroom.open_rows import OpenRow
from tests.farm import MORNING
from tests.store.feedroom.made import TODAY, came, stock_by_hand
from tests.store.round.made import SCOOP, dawn, some_id

MONDAY = Turn(TODAY, "evening")
ROW = OpenRow(MONDAY, "Fennel", 2.5)
LOSS = Cause(Why.LOSS, "2.6 kg lost", -2.6, fitted=True)
CAUSES = st.builds(Cause, st.sampled_from(Why), st.just("words"), st.floats(-50, 50), st.booleans())


def said(book: float, weighed: float, *found: Cause) -> list[str]:
    """Every explanation in words."""
    return [explanation_words(each, Units.METRIC) for each in compare(book, weighed, found).explanations]


def test_a_row_that_was_not_fed_fits() -> None:
    """39.2 kg if the open row was fed, 41.7 if not; 41.6 are weighed."""
    found = compare(41.7, 41.6, row_causes((ROW,)))
    assert (
        comparison_words(found, Units.METRIC) == "fits: Fennel on the evening of Wednesday 11 March not fed (diff -0.1)"
    )
    assert [round(each.remaining_kg, 6) for each in found.explanations] == [-0.1, 2.4]
    assert [each.fits for each in found.explanations] == [True, False]


def test_a_row_that_was_fed_and_not_written_fits() -> None:
    """39.3 are weighed."""
    assert said(41.7, 39.3, *row_causes((ROW,)), Cause(Why.LOSS, "2.4 kg lost", -2.4, fitted=True)) == [
        "fits: Fennel on the evening of Wednesday 11 March fed, and not written (diff +0.1)",
        "would fit: 2.4 kg lost (diff 0.0)",
        "does not fit: Fennel on the evening of Wednesday 11 March not fed (diff -2.4)",
    ]


def test_where_none_fits_that_is_said() -> None:
    """Plain loss only names the rest."""
    found = compare(41.7, 30.0, (*row_causes((ROW,)), Cause(Why.LOSS, "11.7 kg lost", -11.7, fitted=True)))
    assert found.best is None
    assert comparison_words(found, Units.METRIC) == "none fits within 0.3 kg"
    assert comparison_words(compare(100, 90, ()), Units.US) == "none fits within 2.0 lb"


def test_book_and_scale_that_agree_need_no_explanation() -> None:
    """Within the larger of 0.3 kg and 1 %."""
    assert comparison_words(compare(41.7, 41.4, ()), Units.METRIC) == "book and scale agree"
    assert compare(251, 248.6, ()).agrees
    assert not compare(251, 248.4, ()).agrees


def test_what_would_have_to_be_just_so_comes_after_what_is_known_to_fit() -> None:
    """However exactly it fits: a free size always does."""
    scoop = Cause(Why.MEASURE, "a scoop", -2.6, fitted=True)
    first, second, third, fourth = said(41.7, 39.1, LOSS, scoop, *row_causes((ROW,)))
    assert "fed, and not written" in first
    assert second.startswith("would fit: a scoop")
    assert third.startswith("would fit: 2.6 kg lost")
    assert "does not fit" in fourth


@given(st.floats(0, 500), st.floats(0, 500), st.lists(CAUSES, max_size=7))
def test_no_explanation_is_forced(book: float, weighed: float, found: list[Cause]) -> None:
    """Each tells what it leaves over; one fits just where that is little; those that fit by a known size come first."""
    explained = compare(book, weighed, found).explanations
    assert len(explained) == len(found)
    for each in explained:
        assert book + each.cause.kg + each.remaining_kg == pytest.approx(weighed, abs=1e-6)
        assert each.fits == (abs(each.remaining_kg) <= compare(book, weighed, ()).within_kg)
    known = [each for each in explained if not each.cause.fitted and each.cause.why is not Why.LOSS]
    assert [abs(each.remaining_kg) for each in known] == sorted(abs(each.remaining_kg) for each in known)


def test_several_open_rows_are_taken_singly_by_the_round_and_all_together() -> None:
    """Or none of them was fed."""
    rows = (ROW, OpenRow(MONDAY, "Hazel", 2.0), OpenRow(MONDAY.after(), "Fennel", 3.0))
    assert [cause.kg for cause in row_causes(rows)] == [0.0, -2.5, -2.0, -3.0, -4.5, -7.5]
    assert list(row_causes(())) == []


def case(book_kg: float, weighed_kg: float, *deliveries: Delivered) -> Case:
    """A difference of oat nuts. deliveries: newest first."""
    stock = stock_by_hand(book_kg - sum(each.kg for each in deliveries), *deliveries)
    return Case(stock, weighed_kg, dawn().farm)


def test_a_delivery_that_was_not_written_down() -> None:
    """A quarter ton more than the book has."""
    found = compare(300, 549.5, causes(case(300, 549.5, came(250, days_ago=3))))
    assert found.best
    assert found.best.cause.words == "a delivery like the last one not written down"


def test_a_delivery_that_was_written_twice() -> None:
    """Two alike within a week; two a month apart are two."""
    twice = case(600, 350, came(250, days_ago=1), came(250, days_ago=2))
    found = compare(600, 350, causes(twice))
    assert found.best
    assert found.best.cause.words == "the delivery of Tuesday 10 March written twice"
    apart = case(600, 350, came(250, days_ago=1), came(250, days_ago=20))
    assert not any("twice" in cause.words for cause in delivery_causes(apart))


def test_bags_that_held_less_than_was_written() -> None:
    """Ten of 25 kg, six kilograms too few; 60 too few would have been seen."""
    (found,) = bag_causes(case(300, 294, came(250, 10, lot="L-204", days_ago=3)))
    assert found.words == "each of the 10 bags of lot L-204 held 24.40 kg, not 25.00 kg"
    assert list(bag_causes(case(300, 240, came(250, 10)))) == []
    assert list(bag_causes(case(300, 294, came(250)))) == []


def test_only_what_was_fed_by_a_measure_is_told_in_it() -> None:
    """30 kg since the last weighing, 10 of them since the scoop itself was weighed; what was skipped is none of it."""
    subject, scoop = Subject(animal_id=some_id("a cow")), SCOOP.id
    rows = tuple(
        Row(MONDAY, subject, state, scoop, kg, kg, None, MORNING - timedelta(days=days))
        for state, kg, days in ((State.DONE, 20.0, 9), (State.DONE, 10.0, 2), (State.SKIPPED, 99.0, 1))
    )
    weighings = (Weighed(MORNING - timedelta(days=5), 0.5), Weighed(MORNING - timedelta(days=90), 0.4))
    measures = (Measured(scoop, "scoop", weighings),)
    found = [cause.words for cause in measure_causes(replace(case(300, 295), rows=rows, measures=measures))]
    assert found == [
        "a scoop held 0.58 kg, not 0.50 kg, since Wednesday 11 February",
        "a scoop held 0.75 kg, not 0.50 kg, since Friday 6 March",
    ]


def test_nothing_told_in_a_measure_says_nothing_of_it() -> None:
    """The other explanations stand."""
    assert list(measure_causes(case(300, 294))) == []
