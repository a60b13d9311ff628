"""What was found must reach somebody: the milk that is not for the house, the closing, the next person."""

from datetime import timedelta

from store.book.figures import CountedFigure, DosedFigure, MilkedFigure, NotedFigure
from store.book.turn import turn_at
from store.book.words import Fate, State
from tests.farm import MORNING, HandClock
from tests.tui.keys import Sitting
from tui.walk.lamp import Lamp

CLOTS = ("m", "2", "enter", "3", "enter", "1", "enter")


def wide(sitting: Sitting) -> str:
    """The whole page."""
    return sitting.text(160, 90)


def in_the_evening(sitting: Sitting, clock: HandClock) -> Sitting:
    """The round is ended, and the next one begun."""
    sitting.place = sitting.house.closing()
    sitting.press("e", "enter")
    clock.at = MORNING + timedelta(hours=12)
    return sitting.begin()


def test_milk_behind_clots_goes_away_unless_another_use_is_picked(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press(*CLOTS)
    assert "> THROWN AWAY" in sitting.text()
    sitting.press("9.4", "enter")
    milked = sitting.newest().the(MilkedFigure)
    assert milked
    assert milked.fate is Fate.THROWN_AWAY


def test_a_mark_that_is_undone_leaves_her_milk_as_it_was(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press(*CLOTS, "u", "enter").to_step("Hazel", "milk")
    assert "> HOUSE" in sitting.text()
    assert "look at it again" not in wide(sitting)


def test_clear_again_once_keeps_her_milk_from_the_house_until_the_next_round_says_so_too(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press(*CLOTS, "m", "2", "enter", "3", "enter", "7", "enter")
    assert "> THROWN AWAY" in sitting.to_step("Hazel", "milk").text()
    assert "LEFT HIND was clots Wed morning, clear again Wed morning: look at it again" in wide(sitting)


def test_held_back_stays_marked_when_a_quarter_is_marked_too(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press("m", "1", "enter", *CLOTS, "9.4", "enter")
    milked = sitting.newest().the(MilkedFigure)
    assert milked
    assert milked.held_back


def test_the_closing_and_the_next_person_hear_of_it(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Hazel", "milk").press(*CLOTS, "m", "3", "enter")
    sitting.to_step("Fennel", "milk").press("m", "1", "enter")
    sitting.to_step("Tansy", "udder").press("4", "enter")
    sitting.place = sitting.house.closing()
    found = wide(sitting)
    assert "FOUND        06:31 Ann   Hazel: left hind: clots" in found
    assert "Rook: got out" in found
    assert "Tansy: tight" in found
    assert "NOT MILKED   Hazel: not milked: left for the next round" in found
    in_the_evening(sitting, clock)
    assert "FOUND  Hazel: left hind: clots" in wide(sitting)
    assert "QUARTER LEFT HIND was clots Wed morning: look at it again" in wide(sitting.to_step("Hazel", "milk"))
    assert "LEFT HIND was clots Wed morning; how is it now?" in sitting.to_step("Hazel", "look").text()


def test_a_short_count_is_still_short_when_the_round_has_ended(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Stall", "count").press("1", "enter")
    sitting.place = sitting.house.closing()
    assert "Stall (count): 1 of 2 seen" in wide(sitting)
    in_the_evening(sitting, clock)
    assert "NOT RECORDED  Stall (count): 1 of 2 heads, still open" in wide(sitting)
    counted = [entry.the(CountedFigure) for entry in sitting.walker.snapshot.last.left(State.OPEN)]
    assert CountedFigure(2, 1) in counted


def test_a_scoop_far_off_is_asked_about_and_a_new_one_leaves_a_trace(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "feed").press("m", "2", "enter", "42", "enter")
    assert "before it was 0.68 kg" in sitting.said
    assert sitting.written() == 0
    sitting.press("backspace", "backspace", "0.7", "enter")
    noted = sitting.newest().the(NotedFigure)
    assert noted
    assert noted.words == "one scoop of dairy nuts weighs 0.70 kg now, before 0.68 kg"


def test_a_dose_that_was_not_given_can_be_said_from_the_sheet(cared: Sitting, clock: HandClock) -> None:
    cared.press("enter")
    clock.at = MORNING + timedelta(hours=12)
    cared.begin().press("2", "enter")
    while "ON PAPER" in cared.text():
        cared.press("no" if "dose 1" in cared.text() else "", "enter")
    morning = turn_at(MORNING, cared.walker.zone, cared.walker.evening_from_h)
    cared.walker.open_turn(morning, live=False)
    (dose,) = [entry for entry in cared.walker.snapshot.entries if entry.of(DosedFigure)]
    assert (dose.state, dose.reason) == (State.SKIPPED, "not given")


def test_a_calf_whose_evening_is_on_paper_is_not_known(sitting: Sitting, clock: HandClock) -> None:
    in_the_evening(sitting, clock).press("enter")
    sitting.to_step("Stall", "count").press("2", "enter")
    clock.at = MORNING + timedelta(hours=24)
    sitting.begin()
    while not isinstance(sitting.place, Lamp):
        sitting.press("2" if "What" in sitting.text() else "", "enter")
    sitting.to_step("Fennel", "milk")
    assert "Rook: where it was is not known" in sitting.text()
    assert "hours since it was emptied: not known" in sitting.text()


def test_escape_takes_the_whole_figure_away(sitting: Sitting) -> None:
    for name, kind in (("Stall", "count"), ("Fennel", "feed"), ("Fennel", "milk")):
        sitting.to_step(name, kind).press("12.5 kg", "escape")
        assert isinstance(sitting.place, Lamp)
        assert sitting.place.half_typed == ""


def test_e_goes_to_the_closing_from_any_step_and_writes_nothing(sitting: Sitting) -> None:
    assert "CLOSING THE MORNING" in sitting.press("e").text()
    assert sitting.written() == 0
    sitting.to_step("Stall", "count").press("12", "e")
    assert "CLOSING" not in sitting.text()
    assert isinstance(sitting.place, Lamp)
    assert sitting.place.half_typed == "12e"


def test_a_note_that_is_too_long_says_so_while_it_is_typed(sitting: Sitting) -> None:
    sitting.press("n", "x" * 500)
    assert sitting.said == ""
    sitting.press("y")
    assert "No more than 500 letters" in sitting.said
    sitting.press("enter")
    noted = sitting.newest().the(NotedFigure)
    assert noted
    assert noted.words == "x" * 500


def test_a_small_window_shows_every_feed_that_enter_writes(sitting: Sitting) -> None:
    small = sitting.to_step("Fennel", "feed").text(60, 18)
    assert "DAIRY NUTS" in small
    assert "LUCERNE PELLETS" in small
    assert "GOES TO > HOUSE" in sitting.to_step("Fennel", "milk").text(60, 18)
    assert "UDDER" in sitting.press("pagedown").text(60, 18)
