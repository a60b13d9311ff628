"""What a ration is about goes: the animal is sold, the feed is out of use, the step that it was opened from moves."""

from store.book.drafts import RowDraft, Subject
from store.book.register import read_register
from tests.store.herd.filled import id_of, register
from tests.tui.keys import Sitting
from tui.ration.ration import Ration
from tui.ration.whose import Whose
from tui.walk.lamp import Lamp

SOLD = ("9", "enter", "1", "pagedown", "enter")


def changed(sitting: Sitting, table: str, name: str, **values: object) -> None:
    """A row of a thing from now on, written at this bench."""
    found = read_register(sitting.walker.book.desk, sitting.walker.book.clock.now())
    row = found.get(table, id_of(found, table, name)) or {}
    kept = {key: value for key, value in row.items() if key not in {"id", "begins_at", "written_at"}}
    sitting.walker.change([RowDraft(table, kept | values)], Subject(), "changed")


def test_who_was_sold_under_her_ration_is_said_and_it_goes_back(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("j", "f", *SOLD, "backspace", "backspace")
    assert isinstance(sitting.place, Lamp)
    assert sitting.said == "Hazel is not kept any more."
    assert sitting.place.step.name != "Hazel"


def test_in_a_past_round_who_was_sold_since_has_no_ration(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("f", *SOLD, "backspace", "backspace")
    sitting.walker.open_turn(sitting.walker.turn.before(), live=False)
    sitting.to_step("Hazel", "feed").press("j")
    assert isinstance(sitting.place, Whose)
    assert "Hazel is not kept any more." in sitting.text()


def test_a_planned_feed_that_is_out_of_use_is_not_in_the_ration_and_no_longer_tried(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "feed").press("j", "5", "enter")
    changed(sitting, "feed_as", "dairy nuts", in_use=False)
    assert isinstance(sitting.place, Ration)
    page = sitting.text()
    assert "lucerne pellets" in page
    assert "dairy nuts" not in page
    assert not sitting.place.half_typed


def test_a_step_is_found_again_where_others_came_and_went_before_it(sitting: Sitting) -> None:
    sitting.to_step("Sloe", "feed").press("j")
    changed(sitting, "animal_as", "Hazel", kept=False)
    sitting.press("escape")
    assert isinstance(sitting.place, Lamp)
    assert (sitting.place.step.name, sitting.place.step.kind) == ("Sloe", "feed")


def test_a_step_that_is_gone_below_the_ration_gives_way_to_the_first_that_is_open(sitting: Sitting) -> None:
    last = len(sitting.walker.steps) - 1
    lamp = sitting.house.lamp(last)
    assert isinstance(lamp, Lamp)
    sitting.place = sitting.house.ration(
        lamp, Subject(animal_id=id_of(register(sitting.walker.book), "animal_as", "Sloe"))
    )
    for name in ("Hazel", "Fennel", "Tansy"):
        changed(sitting, "animal_as", name, kept=False)
    sitting.press("escape").text()
    assert isinstance(sitting.place, Lamp)
