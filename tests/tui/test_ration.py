"""The ration by keys: what another amount would do is seen at once, and nothing is written here."""

import pytest
from msgspec.structs import replace
from syrupy.assertion import SnapshotAssertion

from tests.store.round.made import some_id
from tests.tui.keys import Sitting
from tests.tui.rations import (
    AMERICAN,
    CASES,
    DRY,
    HAY,
    METRIC,
    MILK,
    NO_FEEDS,
    NO_PLAN,
    NUTS,
    PEN,
    SHEEP,
    at_ration,
    ration_of,
)  # fmt: skip
from tui.page import Size
from tui.ration.ration import Ration
from tui.ration.seen import Farm
from tui.walk.lamp import Lamp

OVER = ("6", "enter")
SCREENS: dict[str, tuple[str, Farm, tuple[str, ...], Size]] = {
    "in milk": ("in milk", METRIC, (), Size(80, 24)),
    "in milk, an amount typed": ("in milk", METRIC, ("5 + 4",), Size(80, 24)),
    "in milk, wide": ("in milk", METRIC, ("5", "enter"), Size(120, 36)),
    "in milk, zoomed": ("in milk", METRIC, (), Size(60, 18)),
    "dry, forage only": ("dry, forage only", METRIC, (), Size(80, 24)),
    "a pen of steers": ("a pen of steers", METRIC, ("down", "3"), Size(80, 24)),
    "no weight": ("no weight", METRIC, (), Size(80, 24)),
    "over a limit": ("in milk", METRIC, OVER, Size(80, 24)),
    "over a limit, zoomed": ("in milk", METRIC, OVER, Size(60, 18)),
    "over a limit, wide": ("in milk", METRIC, OVER, Size(120, 36)),
    "in US units": ("in milk", AMERICAN, ("down", "down"), Size(80, 24)),
    "sheep": ("sheep", METRIC, (), Size(80, 24)),
    "no feeds": ("no feeds", METRIC, (), Size(80, 24)),
    "a long name": ("a long name", METRIC, (), Size(80, 24)),
    "what can be added": ("in milk", METRIC, ("a", "2"), Size(80, 24)),
    "more": ("dry, forage only", METRIC, ("m",), Size(80, 24)),
    "why": ("in milk", METRIC, ("w",), Size(80, 24)),
}


@pytest.mark.parametrize("name", SCREENS)
def test_the_screen_is_as_kept(sitting: Sitting, screen: SnapshotAssertion, name: str) -> None:
    case, farm, keys, size = SCREENS[name]
    assert at_ration(sitting, CASES[case], farm).press(*keys).text(size.width, size.height) == screen


def test_the_verdict_moves_with_each_digit_and_the_figures_of_now_stay(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK)
    assert "short   79 %" in keys.text()
    keys.press("6")
    assert "[6_] + 3" in keys.text()
    assert "4 + 3" in keys.text()
    assert "short   88 %" in keys.text()
    assert "cost a day 4.19 EUR, new 4.70 EUR" in keys.text()


def test_both_meals_are_typed_with_a_plus(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("4 1/2 + 4", "enter")
    morning, evening = (ration_of(keys).tried[slot, NUTS.feed.id] for slot in MILK.slots)
    assert (morning, evening) == pytest.approx((4.5 * 0.675, 4 * 0.675))


def test_an_arrow_to_the_side_marks_the_other_meal(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("right", "5")
    assert "4 + [5_]" in keys.text()


def test_a_weight_is_read_where_a_unit_stands_behind_it(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("1.35 kg", "enter")
    assert "[2] + 3" in keys.text()


def test_what_cannot_be_read_is_said_and_stays_whatever_is_pressed(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("3 bushels", "down")
    assert "«bushels» is no unit known here" in keys.said
    assert "3 bushels_" in keys.text()
    assert ration_of(keys).row == 0


def test_three_meals_of_two_are_refused(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("1 + 2 + 3", "enter")
    assert "has 3 amounts; the meals are morning and evening" in keys.said


def test_an_arrow_takes_what_is_typed_and_a_letter_belongs_to_it(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("2 scoops", "down")
    assert ration_of(keys).tried == {("morning", NUTS.feed.id): pytest.approx(1.35)}
    assert "> lucerne" in keys.text()


def test_equals_puts_back_what_is_given_now(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("6", "enter", "=")
    assert "[4] + 3" in keys.text()
    assert "new 4" not in keys.text()


@pytest.mark.parametrize("key", ["q", "escape"])
def test_what_is_tried_is_not_lost_by_one_key(sitting: Sitting, key: str) -> None:
    keys = at_ration(sitting, MILK).press("6", "enter", key)
    assert "New amounts are tried here" in keys.said
    assert isinstance(keys.place, Ration)
    assert isinstance(keys.press("=", "escape").place, Lamp)


def test_a_second_escape_leaves_what_is_tried_and_another_key_between_asks_again(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("6", "enter", "escape", "down", "escape")
    assert isinstance(keys.place, Ration)
    assert isinstance(keys.press("escape").place, Lamp)


def test_escape_takes_a_half_typed_amount_away_first(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("6", "escape")
    assert isinstance(keys.place, Ration)
    assert not keys.place.half_typed


def test_back_from_the_day_it_starts_what_is_tried_still_stands(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("j", "5", "enter", "enter", "escape")
    assert isinstance(sitting.place, Ration)
    assert "[5]" in sitting.text()


def test_enter_without_a_change_starts_nothing(sitting: Sitting) -> None:
    assert "Nothing is changed yet" in at_ration(sitting, MILK).press("enter").said


def test_a_half_typed_amount_is_said_by_the_key_that_leaves(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("6")
    assert keys.place is not None
    keys.place.leave()
    assert "«6» is typed and not taken yet" in keys.said


def test_nothing_is_written_here(sitting: Sitting) -> None:
    before = sitting.written()
    at_ration(sitting, MILK).press(
        "6", "enter", "down", "2", "enter", "a", "1", "enter", "3", "enter", "enter", "escape"
    )
    assert sitting.written() == before


def test_a_feed_that_stands_free_is_not_measured(sitting: Sitting) -> None:
    keys = at_ration(sitting, DRY).press("3")
    assert "grass hay stands free" in keys.said
    assert not ration_of(keys).half_typed


def test_without_a_feed_a_digit_says_what_to_do(sitting: Sitting) -> None:
    assert "A adds one of those on hand" in at_ration(sitting, NO_FEEDS).press("3").said
    assert "No feed is planned. A adds one" in at_ration(sitting, NO_PLAN).text()
    assert "every feed that is set up has a line already" in at_ration(sitting, NO_FEEDS).press("a").text()


def test_another_feed_has_a_line_with_the_mark_on_it(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("a", "1", "enter", "2")
    assert "> rolled barley" in keys.text()
    assert "[2_] + 0" in keys.text()
    assert "rolled barley, morning: 2 scoops = 1.1 kg" in keys.text(120, 36)


def test_a_feed_that_they_must_not_get_says_why_and_has_no_line(sitting: Sitting) -> None:
    keys = at_ration(sitting, SHEEP).press("a", "1")
    assert "NOT FOR THEM" in keys.text()
    assert keys.press("enter").said == "Copper in cattle mineral kills sheep."
    assert "cattle mineral" not in keys.press("escape").text()


def test_the_first_step_is_tried_from_the_list(sitting: Sitting) -> None:
    keys = at_ration(sitting, DRY)
    assert "First step: 0.35 kg dairy nuts a day" in keys.text()
    keys.press("m", "2", "enter")
    assert ration_of(keys).tried == {("evening", NUTS.feed.id): pytest.approx(0.35)}


def test_while_she_can_eat_more_the_first_step_is_hay(sitting: Sitting) -> None:
    hungry = replace(DRY, feeds=(NUTS, HAY), now=dict.fromkeys(((slot, HAY.feed.id) for slot in DRY.slots), 3.0))
    keys = at_ration(sitting, hungry)
    assert "She can eat more: forage first. First step: 1.0 kg" in " ".join(keys.text(120, 36).split())
    keys.press("m", "2", "enter")
    assert ration_of(keys).tried == {("evening", HAY.feed.id): pytest.approx(4)}


def test_a_pen_of_steers_keeps_amounts_for_each_head(sitting: Sitting) -> None:
    keys = at_ration(sitting, PEN).press("down", "3", "enter")
    assert "3 scoops = 1.7 kg each" in keys.text(120, 36)


def test_two_amounts_with_their_measures_have_room_and_a_full_line_says_so(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("1 1/2 scoops + 10.25 kg", "enter")
    assert [round(kg, 3) for kg in ration_of(keys).tried.values()] == [1.013, 10.25]
    keys.press("1" * 41)
    assert "room for no more" in keys.said
    assert "1111_]" in keys.text(60, 18)


def test_the_marked_feed_stays_in_sight(sitting: Sitting) -> None:
    many = tuple(replace(NUTS, feed=replace(NUTS.feed, id=some_id(f"nuts {at}"), name=f"nuts {at}")) for at in range(9))
    case = replace(MILK, feeds=many, now=dict.fromkeys((("morning", each.feed.id) for each in many), 0.675))
    keys = at_ration(sitting, case).press(*["down"] * 8)
    assert "> nuts 8" in keys.text(60, 18)
    assert "[7_]" in keys.press("7").text(60, 18)
    keys.press("escape", *["pagedown"] * 5).text(60, 18)
    keys.press("up").text(60, 18)
    assert "> nuts 7" in keys.text(60, 18)
    assert "> nuts 0" in keys.press(*["up"] * 7).text(60, 18)
