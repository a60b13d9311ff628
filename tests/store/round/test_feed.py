"""Feed steps: how much is due, and how it is told at the bench."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from store.book.facts.feed import Portion, Told
from store.book.snapshot import Snapshot
from store.round.feed import due_feed
from store.round.steps import DueFeed, FeedStep
from tests.store.round.made import (
    NUTS,
    PULP,
    SCOOP,
    UNWEIGHED,
    dawn,
    dusk,
    moved,
    unhurried,
    with_portions,
)
from tests.store.round.named import feed_of, steps_of

KG_PER_LB = 0.45359237  # exact: NIST Handbook 44, Appendix C
SCOOPFUL_KG = st.floats(0.05, 20)


def told(due_kg: float, holds_kg: float | None, heads: int = 1) -> DueFeed:
    """A feed told in a scoop that holds so much."""
    return due_feed(Portion(NUTS, due_kg, replace(SCOOP, holds_kg=holds_kg)), heads)


def test_six_pounds_at_4_05_a_scoop_are_one_and_a_half_scoops_of_6_075_pounds() -> None:
    """6.0 / 4.05 = 1.48 scoops; 1 1/2 x 4.05 = 6.075. What is due stays 6.0."""
    due = told(6.0 * KG_PER_LB, 4.05 * KG_PER_LB)
    assert due.measures == 1.5
    assert due.as_shown_kg / KG_PER_LB == pytest.approx(6.075)
    assert due.due_kg / KG_PER_LB == pytest.approx(6.0)


@pytest.mark.parametrize(
    ("due_kg", "measures"),
    [(2.7, 4), (2.0, 3), (1.0125, 1.5), (0.675, 1), (0.34, 0.5), (0.16875, 0.25), (0.6, 1), (0.74, 1), (0.77, 1.25)],
)
def test_a_feed_is_told_in_the_nearest_quarter_of_its_measure(due_kg: float, measures: float) -> None:
    """A scoop of 0.675 kg: what is shown weighs so many of them."""
    due = told(due_kg, 0.675)
    assert due.measures == measures
    assert due.as_shown_kg == pytest.approx(measures * 0.675)
    assert due.due_kg == due_kg


@pytest.mark.parametrize("due_kg", [0.0, 0.01, 0.08, 0.0999])
def test_a_feed_of_which_next_to_nothing_is_due_is_told_by_weight(due_kg: float) -> None:
    """A quarter of a scoop of 0.8 kg is 0.2 kg, twice as much and more."""
    assert told(due_kg, 0.8) == DueFeed(NUTS, replace(SCOOP, holds_kg=0.8), due_kg, None, due_kg)


@pytest.mark.parametrize("due_kg", [0.11, 0.15, 0.19])
def test_a_feed_is_told_by_weight_where_a_quarter_is_more_than_is_due(due_kg: float) -> None:
    """A quarter of a scoop of 0.8 kg is 0.2 kg: nobody is to get more than is due by it."""
    due = told(due_kg, 0.8)
    assert due.measures is None
    assert due.as_shown_kg == due_kg


def test_a_feed_is_told_by_weight_while_nobody_weighed_its_measure() -> None:
    """What is due is what is shown; the measure is still known."""
    assert due_feed(Portion(NUTS, 1.2, UNWEIGHED), 1) == DueFeed(NUTS, UNWEIGHED, 1.2, None, 1.2)


def test_a_feed_without_a_measure_is_told_by_weight() -> None:
    """As planned."""
    assert due_feed(Portion(PULP, 1.2, None), 2) == DueFeed(PULP, None, 2.4, None, 2.4)


@unhurried
@given(SCOOPFUL_KG, st.floats(0, 50), st.integers(1, 9))
def test_what_is_shown_is_never_further_from_what_is_due_than_an_eighth(
    holds_kg: float, due_kg: float, heads: int
) -> None:
    """Told in quarters, and a quarter too far is told by weight: then it is exact."""
    due = told(due_kg, holds_kg, heads)
    assert due.due_kg == pytest.approx(due_kg * heads)
    assert abs(due.as_shown_kg - due.due_kg) <= holds_kg / 8 * (1 + 1e-9)
    if due.measures is not None:
        assert (due.measures * 4).is_integer()
        assert due.measures > 0
        assert due.as_shown_kg == pytest.approx(due.measures * holds_kg)


@unhurried
@given(SCOOPFUL_KG, st.integers(1, 80))
def test_a_whole_number_of_quarters_is_told_as_just_that(holds_kg: float, quarters: int) -> None:
    """What was planned in scoops is shown in those scoops."""
    assert told(quarters * holds_kg / 4, holds_kg).measures == quarters / 4


def hay(snapshot: Snapshot, pen: str) -> tuple[float, str]:
    """What a pen is due of hay, to the gram, and for whom."""
    step = feed_of(snapshot, pen)
    return round(step.due[0].due_kg, 3), " ".join(animal.name for animal in step.heads)


def test_a_pen_fed_as_one_counts_its_heads() -> None:
    """Two in the stall at 4.1 kg a head; two in the orchard at 5.125."""
    assert hay(dawn(), "Stall") == (8.2, "Fennel Hazel")
    assert hay(dawn(), "Orchard") == (10.25, "Sloe Tansy")


def test_what_is_due_follows_an_animal_that_moves() -> None:
    """Hazel gone to the orchard: a head less in the stall, a head more there."""
    after = moved(dawn(), "Hazel", "Orchard")
    assert hay(after, "Stall") == (4.1, "Fennel")
    assert hay(after, "Orchard") == (15.375, "Hazel Sloe Tansy")
    assert feed_of(after, "Orchard").due[0].measures == 7.5


def test_a_pen_that_is_empty_is_not_fed() -> None:
    """Its plan waits until somebody stands in it again."""
    after = moved(moved(dawn(), "Fennel", "Orchard"), "Hazel", None)
    assert "Stall" not in {step.name for step in steps_of(after, FeedStep)}
    assert hay(after, "Orchard") == (15.375, "Fennel Sloe Tansy")


def test_an_animal_gets_her_own_plan_once_wherever_she_stands() -> None:
    """Her step has her alone for a head."""
    step = feed_of(moved(dawn(), "Fennel", "Orchard"), "Fennel")
    assert [animal.name for animal in step.heads] == ["Fennel"]
    assert step.animal == step.heads[0]
    assert step.due == feed_of(dawn(), "Fennel").due


def test_a_pen_step_has_no_animal_of_its_own() -> None:
    """It is the pen that is fed."""
    assert feed_of(dawn(), "Stall").animal is None


def test_an_animal_without_a_plan_has_no_feed_step() -> None:
    """Tansy is dry and lives on the orchard's hay; Rook's plan, once ended, is no step."""
    names = {step.name for step in steps_of(dawn(), FeedStep)}
    assert names == {"Stall", "Fennel", "Hazel", "Rook", "Orchard", "Sloe"}
    rook = feed_of(dawn(), "Rook").subject.id
    assert "Rook" not in {step.name for step in steps_of(with_portions(dawn(), rook), FeedStep)}


def test_the_feeds_of_a_step_stand_in_the_order_of_the_plan() -> None:
    """Fennel: nuts, then the soaked lucerne, each in scoops of its own weight."""
    due = feed_of(dawn(), "Fennel").due
    assert [(one.feed.name, one.feed.soaked, one.measures) for one in due] == [
        ("dairy nuts", False, 4),
        ("lucerne pellets", True, 1),
    ]
    fennel = feed_of(dawn(), "Fennel").subject.id
    turned = with_portions(dawn(), fennel, *dawn().portions[fennel][::-1])
    assert [one.feed.name for one in feed_of(turned, "Fennel").due] == ["lucerne pellets", "dairy nuts"]


def test_a_feed_step_says_what_was_given_the_last_time_in_this_slot() -> None:
    """The morning before for the morning, not the evening in between."""
    before = feed_of(dawn(), "Fennel").before
    assert before is not None
    assert str(before.day) == "2026-03-10"
    assert sorted(before.given_kg.values()) == pytest.approx([0.9, 2.7])
    evening = feed_of(dusk(), "Fennel").before
    assert evening is not None
    assert str(evening.day) == "2026-03-09"


def test_a_feed_that_was_never_given_has_no_last_time() -> None:
    """Nothing is known, and nothing is made up."""
    assert feed_of(replace(dawn(), given_before={}), "Fennel").before is None


def test_a_measure_weighed_anew_changes_the_scoops_and_not_the_weight_due() -> None:
    """The plan is in kilograms; the scoop only tells it."""
    heavier = Told(SCOOP.id, "scoop", "scoops", 0.9)
    assert due_feed(Portion(NUTS, 2.7, SCOOP), 1).measures == 4
    assert due_feed(Portion(NUTS, 2.7, heavier), 1).measures == 3
    assert due_feed(Portion(NUTS, 2.7, heavier), 1).due_kg == 2.7
