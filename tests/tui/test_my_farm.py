"""My farm from the round: what shows opens its sheets, what a change changes is seen first, and the round follows."""

from contextlib import closing
from pathlib import Path

import pytest

from store.book.drafts import RowDraft, Subject
from store.book.folder.put_out import put_out
from store.book.folder.take_in import new_book_from
from store.book.opening import open_book
from store.book.words import SettingName
from tests.tui.keys import Sitting
from tui.farm.listing import Listing
from tui.walk.lamp import Lamp


@pytest.fixture
def at_hazel(sitting: Sitting) -> Sitting:
    """In front of a cow that is fed."""
    return sitting.to_step("Hazel", "feed")


def test_at_an_animals_step_her_own_sheets_come_first_and_my_farm_is_behind_them(at_hazel: Sitting) -> None:
    assert "name, class, pen, tag" in at_hazel.press("f").text()
    assert "MY FARM  Tumblewick. A round can be walked" in at_hazel.press("escape").text()
    at_hazel.press("escape")
    assert isinstance(at_hazel.place, Lamp)
    assert at_hazel.place.step.name == "Hazel"


@pytest.mark.parametrize(
    ("name", "kind", "first"),
    [
        ("Stall", "count", "name, and place in the walk"),
        ("lucerne pellets", "soak", "name, bales, soaking, whom it is never for"),
        ("Water trough runs", "task", "what is to be done"),
    ],
)
def test_a_pen_a_feed_and_a_job_open_theirs(sitting: Sitting, name: str, kind: str, first: str) -> None:
    assert first in sitting.to_step(name, kind).press("f").text()


def test_a_move_says_what_it_changes_before_it_is_written(at_hazel: Sitting) -> None:
    """And one key takes it back out: nothing is written yet."""
    before = at_hazel.written()
    at_hazel.press("f", "4", "enter", "o", "enter", "pagedown")
    page = at_hazel.text(80, 40)
    assert "morning  Hazel milk: in Orchard, was in Stall" in page
    assert "morning  Orchard: 3 heads, was 2" in page
    assert "morning  Stall: 1 head, was 2" in page
    at_hazel.press("escape")
    assert "is answered and not written" in at_hazel.said
    at_hazel.press("escape")
    assert isinstance(at_hazel.place, Listing)
    assert at_hazel.written() == before


def test_the_round_goes_on_at_the_same_step_after_a_move(at_hazel: Sitting) -> None:
    """She keeps her steps, and what changed is told with who did it."""
    at_hazel.press("f", "4", "enter", "o", "pagedown", "enter", "escape", "escape")
    assert isinstance(at_hazel.place, Lamp)
    assert (at_hazel.place.step.name, at_hazel.place.step.place) == ("Hazel", "Orchard")
    assert "Hazel: moved to Orchard" in at_hazel.text(80, 30)


def test_a_step_that_is_gone_leads_to_the_first_that_is_open(at_hazel: Sitting) -> None:
    """She was sold in the middle of the round."""
    at_hazel.press("f", "9", "enter", "1", "pagedown", "enter", "escape", "escape")
    assert isinstance(at_hazel.place, Lamp)
    assert at_hazel.place.index == at_hazel.walker.first_open()
    assert all(step.name != "Hazel" for step in at_hazel.walker.steps)


def test_what_is_typed_stays_where_an_answer_cannot_be_read(at_hazel: Sitting) -> None:
    at_hazel.press("f", "6", "enter", "heavy", "enter")
    assert "«heavy» is no amount" in at_hazel.said
    assert "heavy_" in at_hazel.text()


def test_the_first_letter_takes_the_place_of_what_stands_there_and_backspace_mends_it(at_hazel: Sitting) -> None:
    at_hazel.press("f", "1", "enter", "backspace")
    assert "Haze_" in at_hazel.text()
    at_hazel.press("down", "up", "W")
    assert "W_" in at_hazel.text()


def test_nothing_changed_is_said(at_hazel: Sitting) -> None:
    at_hazel.press("f", "1", "enter", "pagedown", "enter")
    assert "Nothing here differs from what the book holds" in at_hazel.said


def test_ctrl_q_does_not_lose_an_answer(at_hazel: Sitting) -> None:
    at_hazel.press("f", "1", "enter", "Holly")
    assert at_hazel.place is not None
    form = at_hazel.place
    assert form.press("ctrl+q", None) is form
    assert "«Holly» is answered and not written" in form.said


def test_the_closing_tells_what_was_changed_in_my_farm(at_hazel: Sitting) -> None:
    at_hazel.press("f", "4", "enter", "o", "pagedown", "enter", "escape", "escape", "e")
    assert " MY FARM " in at_hazel.text(100, 60)


def test_the_times_of_the_rounds_say_when_to_put_to_soak(sitting: Sitting) -> None:
    """The farm's own hours and its own limits: 5 to 16 h before the evening round."""
    rows = [RowDraft("setting", {"name": SettingName.EVENING_AT, "value": "17:30"})]
    sitting.walker.change(rows, Subject(), "times")
    page = sitting.to_step("lucerne pellets", "soak", 1).text()
    assert "FOR     the evening round at 17:30: put to soak between 01:30 and 12:30" in page
    assert "17:30  evening round" in sitting.press("e").text(80, 60)


def test_a_farm_set_up_by_keys_comes_out_and_back_in_byte_for_byte(at_hazel: Sitting, tmp_path: Path) -> None:
    """After a move, a sale and a birth: every row is one that the importer takes."""
    at_hazel.press("f", "4", "enter", "o", "pagedown", "enter", "escape", "escape")
    at_hazel.to_step("Tansy", "udder").press("f", "5", "enter", "Wren", "pagedown", "enter", "escape", "escape")
    book = at_hazel.walker.book
    put_out(book.desk, tmp_path / "once")
    new_book_from(tmp_path / "once", tmp_path / "again.penwalk")
    with closing(open_book(str(tmp_path / "again.penwalk"), book.clock)) as again:
        put_out(again.desk, tmp_path / "twice")
    assert files(tmp_path / "once") == files(tmp_path / "twice")


def files(folder: Path) -> dict[str, bytes]:
    """Every file, byte for byte."""
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_a_rule_of_ones_own_is_tried_and_changes_nothing(sitting: Sitting) -> None:
    """So much for each kilogram of milk above some, by the mean of the last week."""
    before = sitting.to_step("Hazel", "feed").written()
    sitting.press("f", "escape", "5", "enter", "up", "enter", "0.25 per kg milk over 5 kg")
    page = sitting.text(100, 30)
    assert "Hazel: " in page
    assert "milk a day in 7 days" in page
    sitting.press("enter")
    assert "nothing is changed" in sitting.said
    assert sitting.written() == before


def test_a_scoop_weighed_at_the_step_says_what_every_plan_comes_to(at_hazel: Sitting) -> None:
    """Three together; a third more in each."""
    at_hazel.press("m", "2", "enter", "3 scoops 2.7")
    page = at_hazel.text(100, 30)
    assert "0.90 kg, before 0.68 kg: +33.3 %" in page
    assert "Hazel morning: " in page
    at_hazel.press("enter")
    assert "The new weight counts" in at_hazel.said
    assert "F, U." in at_hazel.press("u").text()
    at_hazel.press("escape", "f", "escape", "u")
    assert "one scoop of dairy nuts weighs 0.90 kg now, before 0.68 kg" in at_hazel.text()
    at_hazel.press("enter")
    assert at_hazel.said.startswith("Taken back: one scoop of dairy nuts")


def test_a_move_is_taken_back_by_u_and_enter(at_hazel: Sitting) -> None:
    """The round is as it was; both stay in the book."""
    before = [(step.name, step.place) for step in at_hazel.walker.steps]
    at_hazel.press("f", "4", "enter", "o", "pagedown", "enter")
    assert [(step.name, step.place) for step in at_hazel.walker.steps] != before
    at_hazel.press("u")
    assert "moved to Orchard" in at_hazel.text()
    at_hazel.press("enter")
    assert at_hazel.said == "Taken back: moved to Orchard."
    assert [(step.name, step.place) for step in at_hazel.walker.steps] == before


def test_what_was_set_up_anew_is_taken_back_by_its_end(at_hazel: Sitting) -> None:
    """A second cow by mistake: she is in no round and in no list."""
    names = {animal.name for animal in at_hazel.walker.snapshot.animals}
    at_hazel.press("f", "escape", "2", "enter", "aWillow", "pagedown", "enter", "u", "enter")
    assert {animal.name for animal in at_hazel.walker.snapshot.animals} == names


def test_a_sale_is_taken_back_with_her_milking(at_hazel: Sitting) -> None:
    before = [step.step_id for step in at_hazel.walker.steps]
    at_hazel.press("f", "9", "enter", "1", "pagedown", "enter", "u", "enter")
    assert [step.step_id for step in at_hazel.walker.steps] == before


def test_nothing_to_take_back_is_said(at_hazel: Sitting) -> None:
    assert "Nothing of my farm was changed" in at_hazel.press("f", "u").said


def test_how_she_leaves_has_to_be_said_before_anything_is_written(at_hazel: Sitting) -> None:
    """Right and Left pick from nothing too."""
    at_hazel.press("f", "9", "enter", "pagedown")
    assert "«how» needs an answer. Pick one: a digit, or Left and Right." in at_hazel.said
    assert "sold" in at_hazel.press("right").text().splitlines()[4]
    assert "Hazel" in {animal.name for animal in at_hazel.walker.snapshot.animals}


def test_what_cannot_be_taken_back_says_that_it_stays(at_hazel: Sitting) -> None:
    """Milk is withheld on somebody's word: that is let go at its own sheet, and never by U."""
    at_hazel.press("f", *["down"] * 10, "enter", "the vet", "pagedown", "enter", "u", "enter")
    assert at_hazel.said.startswith("It stays: milk withheld until further notice: the vet.")
    at_hazel.press("u")
    assert "Nothing of my farm was changed in this sitting." in at_hazel.said
