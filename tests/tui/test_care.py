"""What falls due at an animal, by keys: looks, figures, doses, quarters; and a cow that is not milked."""

from datetime import timedelta

from store.book.facts.care import Treatment
from store.book.figures import DosedFigure, LookedFigure, MilkedFigure, QuarterFigure
from store.book.words import Kind, Looks, Quarter, Sign, State
from tests.farm import MORNING, HandClock
from tests.tui.keys import Sitting
from tui.page import Size
from tui.place import Place


def page(place: Place) -> str:
    """The text of a place."""
    return place.draw(Size(160, 90)).text()


def spray(sitting: Sitting) -> Treatment:
    """The treatment that is under way."""
    return next(each for each in sitting.walker.snapshot.treatments if each.doses == 3)


def test_a_look_has_to_be_picked(cared: Sitting) -> None:
    cared.to_step("Sloe", "look").press("enter")
    assert cared.written() == 0
    assert "1 all right" in cared.said
    cared.press("4", "enter")
    found = cared.newest().the(LookedFigure)
    assert found
    assert (found.looks, cared.newest().kind) == (Looks.WORSE, Kind.LOOK)


def test_a_temperature_is_never_as_shown_and_read_before_it_is_written(cared: Sitting) -> None:
    cared.to_step("Sloe", "look", 1).press("enter")
    assert "never as shown" in cared.said
    cared.press("103", " f")
    assert "= 39.4 C" in cared.text()
    cared.press("enter")
    found = cared.newest().the(LookedFigure)
    assert found
    assert (round(found.temperature_c or 0, 2), found.typed) == (39.44, "103 f")


def test_a_figure_that_no_animal_has_stays_typed_and_is_not_written(cared: Sitting) -> None:
    cared.to_step("Tansy", "look").press("25", "enter")
    assert cared.written() == 0
    assert "no condition of an animal" in cared.said
    cared.press("backspace", ".5", "enter")
    found = cared.newest().the(LookedFigure)
    assert found
    assert found.condition_points == 2.5


def test_a_correction_of_a_look_begins_where_it_stands(cared: Sitting) -> None:
    cared.to_step("Sloe", "look").press("4", "enter").to_step("Sloe", "look")
    assert "> 4  worse" in cared.text()
    cared.press("2", "enter")
    found = cared.newest().the(LookedFigure)
    assert found
    assert found.looks is Looks.BETTER
    assert "left hind foot: worse" in page(cared.house.closing())


def test_a_dose_starts_the_clock_of_the_next_one(cared: Sitting, clock: HandClock) -> None:
    cared.to_step("Sloe", "dose").press("1", "enter")
    assert cared.newest().figures == (DosedFigure(spray(cared).id, 1, given=True),)
    clock.at = MORNING + timedelta(hours=12)
    cared.begin().press("3", "enter")
    assert "DUE  Sloe: foot spray, dose 2 of 3" in cared.text()


def test_another_number_than_the_doses_writes_nothing_and_promises_nothing(cared: Sitting) -> None:
    cared.to_step("Sloe", "dose").press("9")
    assert "Enter once 1 is typed" in cared.text()
    cared.press("enter")
    assert cared.written() == 0
    assert "Type 1 when dose 1 is given" in cared.said


def test_a_dose_too_early_says_so(cared: Sitting, clock: HandClock) -> None:
    cared.to_step("Sloe", "dose")
    assert "0 h 29 to go" in cared.text()
    clock.at = MORNING - timedelta(hours=2)
    assert "TOO EARLY by 2 h 29" in cared.text()


def test_a_quarter_is_marked_and_she_is_still_to_be_milked(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press("m", "2", "enter", "3", "enter", "1", "enter")
    assert sitting.newest().figures == (QuarterFigure(Quarter.LEFT_HIND, Sign.CLOTS),)
    assert "left hind: clots" in sitting.text()
    sitting.press("9.4", "enter")
    assert sitting.newest().the(MilkedFigure)
    assert "left hind: clots" in sitting.to_step("Hazel", "milk").press("v").text(height=40)


def test_a_quarter_can_be_taken_back(sitting: Sitting) -> None:
    sitting.to_step("Tansy", "udder").press("m", "1", "enter", "2", "enter", "3", "enter")
    assert "right front: hot" in sitting.text()
    sitting.press("u", "enter")
    assert "right front" not in sitting.to_step("Tansy", "udder").text()


def test_milk_that_the_calf_had_is_no_zero_and_no_skip(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Fennel", "milk").press("m", "4", "enter")
    entry = sitting.newest()
    assert (entry.state, entry.figures) == (State.DONE, (MilkedFigure(None, typed="the calf had it"),))
    assert "not milked: the calf had it" in sitting.to_step("Fennel", "milk").text()
    assert "not milked" in page(sitting.house.closing())
    sitting.press("down", "enter")
    assert "Milk is never as shown" in sitting.said
    clock.move(minutes=1)
    sitting.press("7.2", "enter")
    now = sitting.newest().the(MilkedFigure)
    assert now
    assert now.milk_kg


def test_doses_are_asked_for_when_the_last_round_was_on_paper(cared: Sitting, clock: HandClock) -> None:
    cared.press("enter")
    clock.at = MORNING + timedelta(hours=12)
    cared.begin().press("2", "enter")
    asked = []
    while "what was left undone" not in cared.text():
        asked.append(cared.text())
        cared.press("7:05" if "dose 1 of foot spray given to Sloe" in asked[-1] else "", "enter")
    assert any("dose 1 of foot spray given to Sloe" in each for each in asked)
    cared.press("enter")
    (step,) = [step for step in cared.walker.steps if step.kind is Kind.DOSE]
    assert spray(cared).given_at == (MORNING.replace(hour=7, minute=5),)
    assert step.state is State.OPEN


def test_a_dose_that_may_have_been_given_on_paper_says_so(cared: Sitting, clock: HandClock) -> None:
    cared.press("enter")
    clock.at = MORNING + timedelta(hours=12)
    cared.begin().press("2", "enter")
    while "ON PAPER" in cared.text():
        cared.press("enter")
    cared.to_step("Sloe", "dose")
    assert "DOSE 1 of 3" in cared.text()
    assert "look there first whether this dose was given" in cared.text(160, 40)
