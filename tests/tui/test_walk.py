"""What a key does to a step."""

import pytest

from store.book.figures import FedFigure, MilkedFigure
from store.book.words import Fate, Kind, State
from tests.tui.keys import Sitting
from tui.walk.lamp import Lamp


def test_enter_writes_the_feed_as_shown_and_goes_on(sitting: Sitting) -> None:
    sitting.looked().to_step("Fennel", "feed").press("enter")
    assert [line.due_kg for line in sitting.newest().of(FedFigure)] == [2.7, 0.9]
    assert [line.given_kg for line in sitting.newest().of(FedFigure)] == pytest.approx([2.7, 0.9])
    assert [line.typed for line in sitting.newest().of(FedFigure)] == ["", ""]
    assert "MILK" in sitting.text().splitlines()[3]


def test_a_typed_amount_is_kept_beside_what_was_due_and_as_typed(sitting: Sitting) -> None:
    sitting.looked().to_step("Fennel", "feed").press("3 1/2", "down", "7,4 oz", "enter")
    nuts, lucerne = sitting.newest().of(FedFigure)
    assert (nuts.due_kg, nuts.typed, lucerne.typed) == (2.7, "3 1/2", "7,4 oz")
    assert nuts.given_kg == pytest.approx(3.5 * 0.675)
    assert lucerne.given_kg == pytest.approx(7.4 * 0.45359237 / 16)


def test_letters_belong_to_the_amount_once_a_digit_stands(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "feed").press("2s")
    assert sitting.place is not None
    assert sitting.place.half_typed == "2s"
    sitting.press("backspace", "backspace", "s")
    assert "SKIP" in sitting.text()


def test_a_milk_step_never_takes_enter_without_a_figure(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("enter")
    assert sitting.written() == 0
    assert sitting.said == "Milk is never as shown. Type what the scale says, or S to skip."


def test_milk_is_the_pail_on_the_scale_less_the_empty_pail(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("7.2", "down", "down", "enter")
    milked = sitting.newest().the(MilkedFigure)
    assert milked is not None
    assert (milked.gross_kg, milked.empty_kg) == (7.2, 1.4)
    assert milked.milk_kg == pytest.approx(5.8)
    assert (milked.fate, milked.typed) == (Fate.OTHER_ANIMALS, "7.2")


@pytest.mark.parametrize("typed", ["7.2.1", "3 stone", "1", "900"])
def test_what_cannot_be_read_is_said_and_stays_typed_and_nothing_is_written(sitting: Sitting, typed: str) -> None:
    sitting.to_step("Fennel", "milk").press(typed, "enter")
    assert sitting.written() == 0
    assert sitting.said.endswith(".")
    assert sitting.place is not None
    assert sitting.place.half_typed == typed


def test_leafing_writes_nothing_and_the_first_enter_after_it_only_takes_the_step_up(sitting: Sitting) -> None:
    sitting.press("right", "right", "enter")
    assert sitting.written() == 0
    assert sitting.said == "This step is taken up. Enter again writes what is shown."
    sitting.press("enter")
    assert sitting.written() == 1
    assert sitting.states().index(State.DONE) == 2


def test_enter_on_a_step_that_is_written_goes_on_and_writes_nothing(sitting: Sitting) -> None:
    sitting.press("enter", "left", "enter", "enter")
    assert sitting.written() == 1


def test_typing_over_a_written_step_is_the_correction_and_the_first_value_is_kept(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("enter")
    sitting.to_step("Hazel", "feed").press("4", "enter")
    first, now = sitting.walker.snapshot.entries
    assert [entry.of(FedFigure)[0].given_kg for entry in (first, now)] == pytest.approx([2.025, 2.7])
    assert now.replaces_id == first.id
    assert sitting.states().count(State.DONE) == 1


def test_skipping_needs_a_picked_reason_then_enter(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "milk").press("s", "enter")
    assert sitting.written() == 0
    sitting.press("2", "enter")
    entry = sitting.newest()
    assert (entry.state, entry.reason) == (State.SKIPPED, "not here")
    milked = entry.the(MilkedFigure)
    assert milked is not None
    assert milked.milk_kg is None


def test_a_list_is_left_without_writing(sitting: Sitting) -> None:
    sitting.press("s", "3", "backspace", "u", "left")
    assert sitting.written() == 0
    assert "SKIP" not in sitting.text()
    assert "UNDO" not in sitting.text()


def test_undo_shows_first_and_opens_the_step_again(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("enter", "u")
    assert sitting.written() == 1
    assert "dairy nuts 2.0 kg" in sitting.text()
    sitting.press("enter")
    assert sitting.newest().state is State.OPEN
    assert "HAZEL" not in sitting.said
    assert State.DONE not in sitting.states()


def test_undo_reaches_the_one_before(sitting: Sitting) -> None:
    sitting.press("enter", "2", "enter", "u", "down", "enter")
    assert sitting.states()[0] is State.OPEN
    assert sitting.states()[1] is State.DONE


@pytest.mark.parametrize("where", ["m", "n"])
def test_what_nobody_planned_is_taken_back_where_we_stand(sitting: Sitting, where: str) -> None:
    """A calf that had got out, and a note."""
    sitting.to_step("Fennel", "milk").press(*{"m": ("m", "1", "enter"), "n": ("n", "lame", "enter")}[where])
    sitting.press("u", "enter")
    assert isinstance(sitting.place, Lamp)
    assert (sitting.place.step.name, sitting.place.step.kind) == ("Fennel", Kind.MILK)
    assert sitting.said.startswith("Taken back, kept as history: ")
    assert {"m": "Rook: got out", "n": "lame"}[where] in sitting.said
    assert sitting.newest().state is State.OPEN


def test_undo_away_from_the_steps_stays_there(sitting: Sitting) -> None:
    sitting.press("n", "lame", "enter", "e", "u", "enter")
    assert sitting.said.startswith("Taken back, kept as history: ")
    assert "CLOSING" in sitting.text()


def test_undo_with_nothing_written_says_so(sitting: Sitting) -> None:
    sitting.press("u", "enter")
    assert sitting.written() == 0
    assert "nothing is written in this round yet" in sitting.text()


@pytest.mark.parametrize("key", ["q", "right", "left"])
def test_what_is_half_typed_is_not_lost_by_leaving(sitting: Sitting, key: str) -> None:
    sitting.to_step("Fennel", "milk").press("7.2")
    assert sitting.place is not None
    lamp = sitting.place
    sitting.place = lamp.press("ctrl+q", None) if key == "q" else lamp.press(key, None)
    assert sitting.place is lamp
    assert "«7.2» is typed and not written" in sitting.said


def test_q_leaves(sitting: Sitting) -> None:
    assert sitting.press("q").place is None


def test_no_letter_alone_writes(sitting: Sitting) -> None:
    for letter in "abcdefgijklmnoprtvwxyz ":
        sitting.press(letter)
        assert sitting.written() == 0
        sitting.place = sitting.house.first()


def test_a_step_that_another_bench_wrote_first_is_not_written_over(sitting: Sitting) -> None:
    other = Sitting(sitting.house.__class__(sitting.walker.__class__(sitting.walker.book, sitting.walker.farm)))
    other.press("enter")
    sitting.press("enter")
    assert sitting.written() == 1
    assert "Another bench wrote this step first" in sitting.said
