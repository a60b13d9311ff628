"""The usual limits of feeds behind the farm's own."""

from pathlib import Path

import pytest
from msgspec.structs import replace

from store.book.words import MORNING
from store.ration.balance import balance
from store.ration.heads import lightest
from store.ration.parts import Case
from tests.store.ration.small_ration import Row, case_of, ration_book

LIKE_OIL = ("composition", {"id": "nuts-oil", "feed_id": "dairy-nuts", "begins_at": "2026-01-02", "origin": "table",
                            "resembles": "Vegetable oil, rice bran oil"})  # fmt: skip


def of_fennel(folder: Path, *more: Row) -> Case:
    """Her case, with more rows in the book."""
    book = ration_book(folder, *more)
    found = case_of(book, "Fennel")
    book.close()
    return found


@pytest.fixture
def case(tmp_path: Path) -> Case:
    """As the small farm has her."""
    return of_fennel(tmp_path)


def test_the_farms_own_limit_goes_before_the_usual_one(tmp_path: Path) -> None:
    usual = of_fennel(tmp_path, LIKE_OIL)
    found = next(each for each in usual.feeds if each.feed.name == "dairy nuts").limits
    assert found.most_day_kg is not None
    assert found.share_percent is not None
    assert (found.most_day_kg.came, found.share_percent.came) == ("your limit", "the usual limit")


def test_a_usual_limit_that_is_broken_says_that_it_is_the_usual_one(tmp_path: Path) -> None:
    usual = of_fennel(tmp_path, LIKE_OIL)
    nuts = next(each for each in usual.feeds if each.feed.name == "dairy nuts")
    broken = balance(usual, {(MORNING, nuts.feed.id): 1.0}).broken
    assert any("the usual limit is 1.5 %" in each.says for each in broken)


def test_the_lightest_of_some_heads(case: Case) -> None:
    head = case.heads[0]
    assert lightest([head, head]) == head.weight_kg
    assert lightest([head, replace(head, weight_kg=None)]) is None
    assert lightest([]) is None
