"""The ration by keys: what another amount would do is seen at once, and nothing is written here."""

import pytest
from msgspec.structs import replace
from syrupy.assertion import SnapshotAssertion

from store.book.drafts import RowDraft, Subject
from store.book.words import Dialect, SettingName, Species
from store.ration.parts import Case, Missing
from tests.store.round.made import some_id
from tests.tui.keys import Keys, Sitting
from tests.tui.rations import (
    AMERICAN,
    CASES,
    DRY,
    HAY,
    HUNDRED,
    LONG,
    METRIC,
    MILK,
    NO_FEEDS,
    NO_PLAN,
    NUTS,
    PEN,
    SHEEP,
    STEERS,
    at_ration,
    ration_of,
    v,
)  # fmt: skip
from tui.farm.listing import Listing
from tui.farm.sheet_form import SheetForm
from tui.page import Size
from tui.ration.foot import care_words
from tui.ration.ration import Ration
from tui.ration.seen import Farm
from tui.ration.whose import Whose
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


def test_a_limit_that_is_broken_is_said_in_words(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press(*OVER)
    assert "biggest meal 4.1, your limit 3.0 kg OVER" in keys.text()
    assert "LIMIT" in keys.text()


def test_a_pen_of_a_hundred_says_what_all_of_them_take(sitting: Sitting) -> None:
    page = at_ration(sitting, HUNDRED).text()
    assert "100 heads, fed as one" in page
    assert "350 kg for all 100" in page


def test_a_name_of_forty_letters_is_whole(sitting: Sitting) -> None:
    page = at_ration(sitting, LONG).text()
    assert "BUTTERBLUME VOM OBEREN" in page
    assert "HINTERHOLZER HOF" in page


def test_why_walks_from_the_energy_needed_down(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK)
    names = [value.name for value in ration_of(keys).numbers()]
    keys.press("w", *["down"] * names.index("energy needed"), "enter")
    assert "her weight and milk" in keys.text()
    assert isinstance(keys.press("w").place, Ration)


def test_why_lists_the_marked_feed_first_and_no_two_lines_are_called_alike(sitting: Sitting) -> None:
    names = [value.name for value in ration_of(at_ration(sitting, MILK).press("down", "up")).numbers()]
    assert len(set(names)) == len(names)
    assert names[:3] == ["dairy nuts, most in a meal", "dairy nuts, most in a day", "dairy nuts, most more at one step"]
    assert {"energy given", "energy needed", "fibre at least", "fat at most"} <= set(names)
    assert not [name for name in names if "lucerne" in name]


def test_a_change_in_steps_keeps_the_caution_that_matters_and_needs_none_about_steps(sitting: Sitting) -> None:
    mineral = replace(NUTS, resembles="Mineral, see its tag")
    case = replace(MILK, feeds=(mineral, *MILK.feeds[1:]))
    seen = ration_of(at_ration(sitting, case, replace(METRIC, beside=frozenset({Species.SHEEP}))).press("3")).seen
    said = " ".join(care_words(seen, other=False))
    assert "Sheep stand with them" in said
    assert "in small steps" not in said


def test_what_comes_from_the_pen_is_counted_and_has_no_mark(sitting: Sitting) -> None:
    own = {cell: kg for cell, kg in MILK.now.items() if cell[1] != HAY.feed.id}
    beside = {cell: kg for cell, kg in MILK.now.items() if cell[1] == HAY.feed.id}
    keys = at_ration(sitting, replace(MILK, now=own, besides=beside))
    assert "4.1 + 4.1 from the pen" in keys.text()
    assert "short   79 %" in keys.text()
    assert "> dairy nuts" in keys.press("down", "down").text()


def test_a_caution_is_said_once_where_it_matters_and_who_has_to_check(sitting: Sitting) -> None:
    page = at_ration(sitting, MILK).text(120, 40)
    assert "A large change" not in page
    assert "checked by nobody but you" in page
    page = at_ration(sitting, MILK, replace(METRIC, checked_by="Kim")).press("5").text(120, 40)
    assert page.count("A large change") == 1
    assert "checked by nobody" not in page


def test_sheep_beside_cattle_bring_their_caution(sitting: Sitting) -> None:
    mineral = replace(NUTS, resembles="Mineral, see its tag")
    case = replace(MILK, feeds=(mineral, *MILK.feeds[1:]))
    assert "Sheep stand with them" not in at_ration(sitting, case).text(120, 40)
    beside = replace(METRIC, beside=frozenset({Species.SHEEP}))
    assert "Sheep stand with them" in at_ration(sitting, case, beside).text(120, 40)


def test_a_long_list_of_what_is_not_known_is_cut_short(sitting: Sitting) -> None:
    missing = tuple(Missing("weight", f"steer {at} has no weight: F, animals.") for at in range(100))
    assert "and 94 more of that kind" in at_ration(sitting, replace(HUNDRED, missing=missing)).text(120, 40)


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


def test_a_pen_of_steers_keeps_amounts_for_each_head(sitting: Sitting) -> None:
    keys = at_ration(sitting, PEN).press("down", "3", "enter")
    assert "3 scoops = 1.7 kg each" in keys.text(120, 36)


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


def test_two_amounts_with_their_measures_have_room_and_a_full_line_says_so(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("1 1/2 scoops + 10.25 kg", "enter")
    assert [round(kg, 3) for kg in ration_of(keys).tried.values()] == [1.013, 10.25]
    keys.press("1" * 41)
    assert "room for no more" in keys.said
    assert "1111_]" in keys.text(60, 18)


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


def test_why_keeps_the_keepers_names_and_says_a_quarter_point(sitting: Sitting) -> None:
    rows = [RowDraft("setting", {"name": SettingName.DIALECT, "value": Dialect.AMERICAN})]
    sitting.walker.change(rows, Subject(), "dialect")
    keys = at_ration(sitting, replace(MILK, heads=DRY.heads)).press("w")
    page = keys.text(80, 90)
    assert "dairy nuts, most in a meal" in page
    assert "pellets, most" not in page
    assert "3.25 points" in page


def test_another_feed_is_priced_in_the_farms_own_unit(sitting: Sitting) -> None:
    assert "0.14 USD a lb" in at_ration(sitting, MILK, AMERICAN).press("a").text()


def test_many_that_live_on_forage_do_not_fill_the_page(sitting: Sitting) -> None:
    heads = tuple(replace(each, forage_only=True, condition_goal=v(3.25), condition=v(3.25)) for each in STEERS)
    slipped = replace(heads[-1], condition=v(2.75, came="scored 1 Mar"))
    page = at_ration(sitting, replace(PEN, heads=(*heads[:-1], slipped))).text(120, 60)
    assert page.count("FORAGE ONLY") == 4
    assert page.index("She slipped to 2.75") < page.index("She holds it")
    assert "FORAGE ONLY  and 9 more. Each alone: G, its name, then J." in page


@pytest.mark.parametrize("name", ["dry, forage only", "a pen of steers", "in milk"])
def test_why_reaches_the_meal_limit_and_what_the_head_of_the_page_says(sitting: Sitting, name: str) -> None:
    case = CASES[name]
    listed = ration_of(at_ration(sitting, case)).numbers()
    head = case.heads[0]
    said = (
        case.meal_limit_kg,
        *((head.condition, head.condition_goal, head.weight_kg) if len(case.heads) == 1 else ()),
    )
    for value in said:
        assert value is None or (value.amount, value.unit) in [(each.amount, each.unit) for each in listed]


def test_a_note_from_a_ration_is_of_the_animal(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("j", "n")
    assert "NOTE  Hazel" in sitting.text()
