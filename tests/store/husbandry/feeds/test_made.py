"""A feed of the keeper: its label part by part, below that the table, and what is reckoned of both."""

import pytest
from hypothesis import given, strategies

from store.husbandry.feeds.energy import CHAPTER_2
from store.husbandry.feeds.made import made
from store.husbandry.feeds.table import BY_NAME, DAIRY_2001, DISTILLERS, FEEDS, PARTS, VIRGINIA_2001, TableFeed

BARLEY, HAY = "Barley, rolled", "Grass hay, mid (55-60 % NDF)"


def test_a_feed_of_the_table_is_the_table() -> None:
    found = made({}, "table", BARLEY)
    assert {part: value.amount for part, value in found.items()} == {
        part: getattr(BY_NAME[BARLEY], part) for part in PARTS
    }
    assert found["cp_percent"].came == "table: Barley, rolled, give or take 15 %"


def test_the_keepers_own_figures_lie_on_top_part_by_part() -> None:
    found = made({"dm_percent": 86.0, "cp_percent": 11.2, "fat_percent": None}, "test", HAY)
    assert found["cp_percent"].came == "your test"
    assert found["fat_percent"].came.startswith("table: Grass hay, mid")
    assert found["fat_percent"].amount == 2.6


def test_a_figure_that_was_filled_in_from_the_table_is_the_tables() -> None:
    typed = {part: getattr(BY_NAME[BARLEY], part) for part in PARTS}
    found = made(typed | {"cp_percent": 13.0}, "tag", BARLEY)
    assert [part for part, value in found.items() if value.came == "your label"] == ["cp_percent"]


def test_energy_is_reckoned_from_the_keepers_own_tdn_not_taken_from_the_table() -> None:
    found = made({"tdn_percent": 75.0}, "tag", BARLEY)
    assert found["nel_mcal"].equation is not None
    assert found["nel_mcal"].amount < (BY_NAME[BARLEY].nel_mcal or 0)
    assert {each.came for each in found["nel_mcal"].inputs["metabolisable_mcal"].inputs.values()} >= {"reckoned"}


def test_energy_that_a_label_tells_is_the_labels() -> None:
    assert made({"nel_mcal": 1.7, "tdn_percent": 75.0}, "tag", BARLEY)["nel_mcal"].came == "your label"


def test_an_energy_that_was_copied_from_an_older_table_is_not_used() -> None:
    assert made({"nel_mcal": 1.17}, "table", HAY)["nel_mcal"].amount == pytest.approx(1.051, abs=0.001)
    assert "nel_mcal" not in made({"nel_mcal": 1.17}, "table", "a feed that the table had once")


@given(strategies.dictionaries(strategies.sampled_from(PARTS), strategies.none()), strategies.sampled_from(["tag", ""]))
def test_what_nobody_told_is_not_there_and_never_zero(typed: dict[str, None], origin: str) -> None:
    assert made(typed, origin, "") == {}


@pytest.mark.parametrize("row", [pytest.param(feed, id=feed.name) for feed in FEEDS])
def test_every_row_has_energy_but_a_calfs_milk(row: object) -> None:
    name = getattr(row, "name", "")
    assert ("nel_mcal" in made({}, "table", name)) == (name != "Whole milk, for calves")


def test_a_feed_whose_fat_nobody_told_is_taken_as_not_fatty_and_says_so() -> None:
    found = made({"tdn_percent": 70.0, "cp_percent": 10.0}, "tag", "")
    assert "not told" in {value.came for value in found["nel_mcal"].inputs.values()}


@pytest.mark.parametrize("row", [pytest.param(feed, id=feed.name) for feed in FEEDS if feed.nel_mcal])
def test_every_energy_of_the_table_is_of_the_one_edition(row: TableFeed) -> None:
    found = made({}, "table", row.name)["nel_mcal"].sources()
    assert set(found) & {CHAPTER_2, DAIRY_2001, VIRGINIA_2001, DISTILLERS}
