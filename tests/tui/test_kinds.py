"""What each kind of step takes, refuses and writes."""

import pytest

from store.book.figures import (
    CountedFigure,
    FedFigure,
    FeltFigure,
    MilkedFigure,
    PartedFigure,
    SoakedFigure,
    StrungFigure,
)
from store.book.words import Apart, Fill, Kind, Soak, State
from tests.tui.keys import Sitting


def test_a_count_is_never_as_shown(sitting: Sitting) -> None:
    sitting.to_step("Stall", "count").press("enter")
    assert sitting.written() == 0
    assert sitting.said == "A head count is never as shown. Type how many you see, or S to skip."


def test_a_short_count_stays_open_and_is_kept(sitting: Sitting) -> None:
    sitting.to_step("Stall", "count").press("1", "enter")
    assert sitting.newest().the(CountedFigure) == CountedFigure(2, 1)
    assert sitting.newest().state is State.OPEN
    assert "1 MISSING" in sitting.text()
    sitting.press("enter")
    assert "HAY" in sitting.text()
    sitting.to_step("Stall", "count").press("2", "enter")
    assert sitting.newest().state is State.DONE


@pytest.mark.parametrize("typed", ["1.5", "2 kg", "1000"])
def test_a_count_that_is_no_count_is_refused(sitting: Sitting, typed: str) -> None:
    sitting.to_step("Stall", "count").press(typed, "enter")
    assert sitting.written() == 0
    assert "is no number of heads" in sitting.said


def test_strings_are_counted_beside_the_hay(sitting: Sitting) -> None:
    sitting.to_step("Stall", "hay").press("down", "4", "enter")
    assert sitting.newest().the(StrungFigure) == StrungFigure(4)
    hay = sitting.newest().the(FedFigure)
    assert hay is not None
    assert hay.given_kg == pytest.approx(8.2)


def test_the_soaked_feed_is_fit_or_thrown_out(sitting: Sitting) -> None:
    sitting.press("enter")
    found = sitting.newest().the(SoakedFigure)
    assert found is not None
    assert found.act is Soak.FIT
    sitting.to_step("lucerne pellets", "soak").press("m", "1", "enter")
    found = sitting.newest().the(SoakedFigure)
    assert found is not None
    assert found.act is Soak.THROWN_OUT


def test_what_is_put_to_soak_is_dry_weight_with_its_water(sitting: Sitting) -> None:
    sitting.to_step("lucerne pellets", "soak", 1).press("1.2", "enter")
    soaked = sitting.newest().the(SoakedFigure)
    assert soaked is not None
    assert (soaked.act, soaked.due_kg, soaked.dry_kg, soaked.typed) == (Soak.STARTED, 0.9, 1.2, "1.2")
    assert soaked.water_kg == pytest.approx(2.4)


def test_the_calf_is_let_in_and_the_milking_then_says_so(sitting: Sitting) -> None:
    sitting.to_step("Rook", "apart").press("enter")
    parted = sitting.newest().the(PartedFigure)
    assert parted is not None
    assert parted.state is Apart.LET_IN
    assert "let in, since 06:31: not compared" in sitting.to_step("Fennel", "milk").text()


def test_a_calf_that_got_out_is_written_with_both_ends(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("m", "1", "enter")
    entry = sitting.newest()
    assert entry.kind is Kind.APART
    assert entry.happened_from is not None
    assert entry.happened_from < entry.happened_at
    assert "usual: not known" in sitting.text()


def test_held_back_is_marked_on_the_pail(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("m", "2", "enter")
    assert "MARKED  held back" in sitting.text()
    sitting.press("4.0", "enter")
    milked = sitting.newest().the(MilkedFigure)
    assert milked is not None
    assert milked.held_back


def test_an_udder_needs_a_finding(sitting: Sitting) -> None:
    sitting.to_step("Tansy", "udder").press("enter")
    assert sitting.written() == 0
    assert "Enter once it is picked" in sitting.text()
    assert "LAST    slack, Tue 10 Mar 18:07. Felt now: dry" in sitting.text()
    assert "Enter write it" in sitting.press("4").text()
    sitting.press("enter")
    felt = sitting.newest().the(FeltFigure)
    assert felt is not None
    assert felt.fill is Fill.TIGHT


def test_more_than_the_meal_limit_is_asked_once_then_written(sitting: Sitting) -> None:
    sitting.looked().to_step("Fennel", "feed").press("6", "enter")
    assert sitting.written() == 1
    assert "your limit is 3.50 kg. If it is right, type ! behind it, then Enter." in sitting.said
    sitting.press("enter")
    assert sitting.written() == 1
    sitting.press("!", "enter")
    fed = sitting.newest().the(FedFigure)
    assert fed is not None
    assert fed.given_kg == pytest.approx(6 * 0.675)


def test_a_changed_amount_is_asked_about_again(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "feed").press("6", "enter", "0", "enter")
    assert sitting.written() == 0


def test_what_was_left_is_kept_beside_what_was_given(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("m", "1", "enter", "0.6 kg", "enter")
    fed = sitting.newest().the(FedFigure)
    assert fed is not None
    assert fed.given_kg == pytest.approx(2.025)
    assert fed.left_kg == 0.6


def test_more_left_than_given_is_refused(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("m", "1", "enter", "9 kg", "enter")
    assert sitting.written() == 0
    assert "is more than the 2.03 kg that was given" in sitting.said


def test_a_scoop_weighed_here_counts_at_once_and_the_plan_keeps_its_kilograms(sitting: Sitting) -> None:
    sitting.looked().to_step("Fennel", "feed").press("m", "2", "enter", "0.9 kg", "enter")
    assert "three" in sitting.text()
    sitting.press("enter")
    fed = sitting.newest().the(FedFigure)
    assert fed is not None
    assert fed.due_kg == 2.7
    assert fed.given_kg == pytest.approx(2.7)


@pytest.mark.parametrize("typed", ["2.0", "16"])
def test_a_pail_far_from_her_usual_is_asked_about(sitting: Sitting, typed: str) -> None:
    sitting.to_step("Fennel", "milk").press(typed, "enter")
    assert sitting.written() == 0
    assert "kg of milk; usual is 4.9 to 6.4 kg. If it is right, type ! behind it" in sitting.said
    assert "write to HOUSE, it is right" in sitting.press("!").text()
    sitting.press("enter")
    milked = sitting.newest().the(MilkedFigure)
    assert milked is not None
    assert milked.typed == typed


def test_a_calf_let_in_is_not_expected_in_its_pen_any_more(sitting: Sitting) -> None:
    sitting.to_step("Rook", "apart").press("enter").to_step("Calf pen", "count")
    assert "of 0 expected" in sitting.text()
    assert "nobody now: the calf is with its cow" in sitting.text()
