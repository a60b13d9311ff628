"""From where a ration is opened, where it leads, and what becomes of what is tried on the way."""

import pytest

from store.book.drafts import Subject
from store.ration.parts import Case
from tests.tui.keys import Keys, Sitting
from tests.tui.rations import (
    METRIC,
    MILK,
    at_ration,
)  # fmt: skip
from tui.farm.listing import Listing
from tui.farm.sheet_form import SheetForm
from tui.ration.ration import Ration
from tui.ration.seen import Farm
from tui.ration.whose import Whose
from tui.walk.lamp import Lamp


class Counted:
    """A case, and how often it was read."""

    def __init__(self, case: Case) -> None:
        """Never yet."""
        self.case, self.times = case, 0

    def __call__(self) -> tuple[Case, Farm]:
        """Once more."""
        self.times += 1
        return self.case, METRIC


def test_no_key_and_no_painting_reads_the_book_and_a_write_reads_it_once(sitting: Sitting) -> None:
    counted = Counted(MILK)
    keys = Keys(Ration(sitting.house, sitting.house.first(), counted))
    keys.press("5", "down", "2", "enter", "=", "w", "escape").text()
    keys.text(120, 36)
    assert counted.times == 1
    sitting.walker.look()
    keys.text()
    keys.text()
    assert counted.times == 2


def test_what_is_tried_stays_when_the_book_was_written_meanwhile(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("6", "enter")
    sitting.walker.look()
    assert "[6] + 3" in keys.text()


def test_j_at_a_step_of_an_animal_is_her_ration(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("j")
    assert isinstance(sitting.place, Ration)
    assert sitting.place.concerns() == Subject(animal_id=sitting.place.case.heads[0].animal.id)
    assert isinstance(sitting.press("escape").place, Lamp)


@pytest.mark.parametrize(("name", "kind"), [("Fennel", "feed"), ("Fennel", "milk"), ("Orchard", "hay")])
def test_the_key_line_of_an_animal_or_a_pen_offers_its_ration(sitting: Sitting, name: str, kind: str) -> None:
    assert "J ration" in sitting.to_step(name, kind).text()
    assert "Locks the keys for wiping" in sitting.press("h").text(120, 60)


def test_the_key_line_of_a_job_offers_the_lock(sitting: Sitting) -> None:
    page = sitting.to_step("Feed room shut and chained", "task").text()
    assert "Z lock" in page
    assert "J ration" not in page


def test_j_at_a_step_of_a_pen_is_its_ration(sitting: Sitting) -> None:
    sitting.to_step("Orchard", "hay").press("j")
    assert isinstance(sitting.place, Ration)
    assert sitting.place.case.name == "Orchard"


def test_where_nobody_stands_it_is_asked_whose_and_letters_narrow(sitting: Sitting) -> None:
    sitting.place = sitting.house.closing()
    sitting.press("j")
    assert isinstance(sitting.place, Whose)
    sitting.press("fenn", "enter")
    assert isinstance(sitting.place, Ration)
    assert sitting.place.case.name == "Fennel"


def test_letters_that_are_in_no_name_are_said(sitting: Sitting) -> None:
    sitting.place = sitting.house.closing()
    sitting.press("j", "xyz", "enter")
    assert "«xyz» is in no name or tag" in sitting.said


def test_my_farm_opens_what_the_ration_is_about_and_comes_back_to_it(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("j", "f")
    assert "Fennel" in sitting.text()
    sitting.press("escape", "escape")
    assert isinstance(sitting.place, Ration)


def test_a_weight_is_typed_over_the_ration_and_counts_at_once(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press(
        "j", "m", "2", "enter", *["backspace"] * 9, "512", *["pagedown"] * 2, "enter"
    )
    assert isinstance(sitting.place, Ration)
    assert "512 kg" in sitting.text()


def test_half_typed_in_the_step_below_keeps_the_sitting_open(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("m", "2", "enter", "j", "q")
    assert "is not written" in sitting.said


def test_a_score_that_is_due_is_typed_at_its_own_step(cared: Sitting) -> None:
    cared.to_step("Tansy", "udder").press("j", "m", "3", "enter")
    assert isinstance(cared.place, Lamp)
    assert (cared.place.step.name, cared.place.step.kind) == ("Tansy", "look")


def test_without_a_look_at_her_condition_the_sheet_that_begins_one_opens(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("j", "m", "3", "enter")
    assert isinstance(sitting.place, SheetForm)
    assert isinstance(sitting.press("escape").place, Ration)


def test_my_farm_leads_to_her_ration_and_back(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("f", "up", "enter")
    assert isinstance(sitting.place, Ration)
    assert isinstance(sitting.press("escape").place, Listing)


def test_the_bench_asks_whose_ration(sitting: Sitting) -> None:
    sitting.press("i", "j")
    assert isinstance(sitting.place, Whose)


def test_the_help_lists_the_keys_of_the_ration(sitting: Sitting) -> None:
    page = at_ration(sitting, MILK).press("h").text(120, 40)
    assert "4 + 4 for both meals" in page
    assert "Takes away all that is tried." in page


def test_what_is_tried_is_not_lost_by_scoring_her(cared: Sitting) -> None:
    cared.to_step("Tansy", "udder").press("j", "a", "1", "enter", "2", "enter", "m")
    row = next(row for row in cared.text().splitlines() if "score Tansy" in row)
    cared.press(row.split()[0].strip(">"), "enter")
    assert isinstance(cared.place, Ration)
    assert "New amounts are tried here" in cared.said
    assert cared.place.tried


def test_only_a_mark_in_the_step_below_is_said_as_that(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("m", "2", "enter", "j", "a", "1", "enter", "q")
    assert "What is picked or marked here is not written" in sitting.said


def test_a_note_from_a_ration_is_of_the_animal(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("j", "n")
    assert "NOTE  Hazel" in sitting.text()
