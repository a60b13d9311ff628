"""The feed room read on both kinds of desk: the same numbers, which are those of the small farm's folder."""

from datetime import UTC, date, datetime

import pytest

from store.book.desk import Desk
from store.book.reading.needs import read_needs
from store.book.reading.stock import names_at, read_rows, read_stock, read_weighings
from store.book.reading.stood import read_free, read_stood
from store.book.stocks import FeedStock
from store.book.stood import so_at
from store.book.turn import Turn
from store.book.words import State
from tests.farm import FOLDER, MORNING
from tests.store.book.folders import lines_of
from tests.store.book.seeing import TODAY

WEIGHED_AT = datetime(2026, 3, 2, 10, 30, tzinfo=UTC)


def fed_kg(feed: str) -> float:
    """What was fed of a feed in the folder's rounds: all of them are after the weighing."""
    return sum(float(line["given_kg"]) for line in lines_of(FOLDER / "fed.csv")
               if line["feed_id"] == feed and line["given_kg"])  # fmt: skip


def stock(desk: Desk, name: str) -> FeedStock:
    """What is there of a feed on the pretend morning."""
    return next(stock for stock in read_stock(desk, MORNING) if stock.feed.name == name)


def test_the_nuts_of_the_small_farm(still_desk: Desk) -> None:
    """263.5 kg weighed, less what the week of rounds fed; what came and was lost before the weighing is in it."""
    nuts = stock(still_desk, "dairy nuts")
    lost_kg = sum(each.kg for each in nuts.lost)
    assert nuts.weighed is not None
    assert (nuts.weighed.kg, nuts.weighed.at) == (263.5, nuts.since)
    assert nuts.kg == pytest.approx(263.5 - fed_kg("dairy-nuts") - lost_kg)
    assert [(each.kg, each.bags, each.price, each.lot) for each in nuts.deliveries] == [(250.0, 10, 95.0, "L-204")]


def test_hay_was_never_weighed_nor_delivered(still_desk: Desk) -> None:
    """So that nobody knows."""
    assert stock(still_desk, "grass hay").kg is None


def test_the_rows_of_a_week_are_those_of_the_folder(still_desk: Desk) -> None:
    """Done, each once, with its measure."""
    rows = read_rows(still_desk, stock(still_desk, "dairy nuts").feed.id, date(2026, 3, 1), TODAY)
    done = [row for row in rows if row.state is State.DONE]
    assert sum(row.given_kg or 0 for row in done) == pytest.approx(fed_kg("dairy-nuts"))
    assert {row.turn.day for row in rows} == {date(2026, 3, day) for day in range(4, 11)}
    assert all(row.subject.animal_id and row.measure_id for row in rows)


def test_plans_and_weighings_are_read(still_desk: Desk) -> None:
    """feed_plan.csv and weighing.csv."""
    feed_id = stock(still_desk, "dairy nuts").feed.id
    needs = read_needs(still_desk, MORNING)
    assert needs.kg(feed_id, Turn(TODAY, "evening")) == pytest.approx(2.025 + 1.35)
    (measure_id,) = needs.measures(feed_id)
    assert [each.holds_kg for each in read_weighings(still_desk, measure_id, feed_id, MORNING)] == [0.675, 0.64]


def test_where_animals_stood_is_read(still_desk: Desk) -> None:
    """standing.csv; and hay stood free nowhere."""
    stood = read_stood(still_desk, WEIGHED_AT, MORNING)
    names = {name: id_ for id_, name in names_at(still_desk, MORNING).items()}
    assert names["Fennel"] in stood.heads([names["Stall"]], MORNING)
    assert names["Fennel"] not in stood.heads([names["Orchard"]], MORNING)
    free = read_free(still_desk, stock(still_desk, "grass hay").feed.id, MORNING)
    assert so_at(free, names["Orchard"], MORNING) is False
    assert so_at(free, names["Stall"], MORNING) is None
