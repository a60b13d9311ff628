"""What a ration says: limits, cautions, what comes by the pen, and the why of its numbers."""

import pytest
from msgspec.structs import replace

from store.book.drafts import RowDraft, Subject
from store.book.words import Dialect, SettingName, Species
from store.ration.parts import Missing
from tests.tui.keys import Sitting
from tests.tui.rations import (
    AMERICAN,
    CASES,
    DRY,
    HAY,
    HUNDRED,
    LONG,
    METRIC,
    MILK,
    NUTS,
    PEN,
    STEERS,
    at_ration,
    ration_of,
    v,
)  # fmt: skip
from tui.ration.foot import care_words
from tui.ration.ration import Ration


def test_a_limit_that_is_broken_is_said_in_words(sitting: Sitting) -> None:
    keys = at_ration(sitting, MILK).press("6", "enter")
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
