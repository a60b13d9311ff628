"""Every row of the shipped table: whole, or it says what it lacks; within what a feed can be."""

import pytest

from store.book.records.feeding import Composition
from store.husbandry.feeds.energy import energy_of
from store.husbandry.feeds.made import made
from store.husbandry.feeds.table import BY_NAME, FEEDS, PARTS, TableFeed

EACH = pytest.mark.parametrize("row", [pytest.param(feed, id=feed.name) for feed in FEEDS])


@EACH
def test_a_row_is_whole_or_says_what_it_lacks(row: TableFeed) -> None:
    """And none says that it lacks something where it has all."""
    assert bool(row.lacks) == any(getattr(row, part) is None for part in PARTS)
    assert all(row.source_of(part).words for part in PARTS)
    assert set(row.seen) <= set(PARTS)


@EACH
def test_a_row_can_be_written_into_the_book(row: TableFeed) -> None:
    assert len(row.name) <= 60
    assert set(PARTS) <= set(Composition.model_fields)
    assert all(0 <= (getattr(row, part) or 0) <= (200 if part == "tdn_percent" else 100) for part in PARTS)


@EACH
def test_the_parts_of_the_dry_matter_are_no_more_than_all_of_it(row: TableFeed) -> None:
    """Protein, fibre, fat and minerals lie beside each other."""
    together = row.cp_percent + row.ndf_percent + row.fat_percent + (row.ca_percent or 0) + (row.p_percent or 0)
    assert together <= 100


@EACH
def test_the_energy_of_a_row_agrees_with_its_tdn_by_the_one_edition(row: TableFeed) -> None:
    """Each printed energy within 3 % of what the equations make of the same row."""
    if row.nel_mcal and row.tdn_percent:
        found = made({}, "table", row.name)
        reckoned = energy_of(found["tdn_percent"], found["cp_percent"], found["fat_percent"])
        assert reckoned.amount == pytest.approx(row.nel_mcal, rel=0.03)
    else:
        assert row.lacks or row.nel_mcal == 0


def test_a_name_is_there_once() -> None:
    assert len(BY_NAME) == len(FEEDS)
