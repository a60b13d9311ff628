"""A scoop weighed here and now: the plan is told in other measures, and its kilograms stay."""

import pytest
from msgspec.structs import replace

from store.book.drafts import weighing
from store.book.errors import DamagedBook
from store.book.opening import Book
from store.book.snapshot import Snapshot
from store.book.words import Units
from store.round.amount import Unreadable
from store.round.confirm import Doubtful
from store.round.measured import SCOOP_LEAST_KG, SCOOP_MOST_KG, scoop_weight
from tests.farm import morning
from tests.store.book.tools import all_rows
from tests.store.round.made import NUTS, SCOOP, UNWEIGHED, dawn, some_id
from tests.store.round.named import feed_of

KG_PER_LB = 0.45359237  # exact: NIST Handbook 44, Appendix C


def nuts(snapshot: Snapshot, name: str) -> tuple[float, float | None]:
    """What an animal is due of nuts, and in how many scoops."""
    due = feed_of(snapshot, name).due[0]
    return due.due_kg, due.measures


@pytest.mark.parametrize(("typed", "units", "kg"), [
    ("0.7", Units.METRIC, 0.7), ("700 g", Units.US, 0.7), ("1.5", Units.US, 1.5 * KG_PER_LB), ("1 1/2 lb", Units.METRIC,
     1.5 * KG_PER_LB), ("0,001", Units.METRIC, SCOOP_LEAST_KG), ("50!", Units.METRIC, SCOOP_MOST_KG),
])  # fmt: skip
def test_a_scoop_is_weighed_by_weight(typed: str, units: Units, kg: float) -> None:
    """Bare, it is the farm's own weight; never scoops."""
    assert scoop_weight(typed, NUTS, UNWEIGHED, units) == pytest.approx(kg)


@pytest.mark.parametrize(("typed", "asks"), [
    ("0.34", False), ("1.35", False), ("0.33", True), ("1.36", True), ("42", True), ("42!", False), ("0.3 !", False),
])  # fmt: skip
def test_a_weight_far_from_the_last_one_is_asked_about(typed: str, asks: bool) -> None:
    """The scoop held 0.675 kg: less than half or more than twice of it is often a slip of the keys."""
    if asks:
        with pytest.raises(Doubtful, match=r"before it was 0\.68 kg.*type !"):
            scoop_weight(typed, NUTS, SCOOP, Units.METRIC)
    else:
        assert scoop_weight(typed, NUTS, SCOOP, Units.METRIC) > 0


@pytest.mark.parametrize("typed", ["0", "0.0001", "501", "20 oz x", "1 scoop", "3 l", ""])
def test_what_no_scoop_weighs_is_refused_in_a_sentence(typed: str) -> None:
    """Nothing, too much, or no weight at all."""
    with pytest.raises(Unreadable, match=r"\.$"):
        scoop_weight(typed, NUTS, UNWEIGHED, Units.METRIC)


def test_a_first_weight_that_is_much_is_asked_about_and_what_nobody_lifts_is_refused() -> None:
    """500 g typed as 500; a bale may weigh so much, once it was said to be right."""
    hay = replace(NUTS, baled=True)
    for typed, feed in (("12", NUTS), ("500", hay), ("60", hay)):
        with pytest.raises(Doubtful, match=r"a jug, much for one measure of oat nuts\. If it is right, type !"):
            scoop_weight(typed, feed, UNWEIGHED, Units.METRIC)
        assert scoop_weight(f"{typed}!", feed, UNWEIGHED, Units.METRIC) == float(typed)
    with pytest.raises(Unreadable, match=r"One jug of oat nuts holds 0\.00 kg to 50\.0 kg"):
        scoop_weight("500!", NUTS, UNWEIGHED, Units.METRIC)
    assert scoop_weight("20", hay, UNWEIGHED, Units.METRIC) == 20


def test_a_scoop_weighed_anew_changes_the_measures_and_not_the_kilograms(book: Book) -> None:
    """It held 0.675 kg; now it holds 0.9: Fennel's 2.7 kg are three of them and not four."""
    before = morning(book)
    assert nuts(before, "Fennel") == (2.7, 4)
    due = feed_of(before, "Fennel").due[0]
    assert due.told is not None
    book.change([weighing(due.told.id, due.feed.id, 0.9)])
    after = morning(book)
    assert nuts(after, "Fennel") == (2.7, 3)
    assert nuts(after, "Hazel") == (2.0, 2.25)
    assert feed_of(after, "Fennel").due[1:] == feed_of(before, "Fennel").due[1:]


def test_a_weighing_says_when_it_was_made(book: Book) -> None:
    """So that the screen can say how old it is."""
    due = feed_of(morning(book), "Fennel").due[0]
    assert due.told is not None
    before = book.clock.now()
    book.change([weighing(due.told.id, due.feed.id, 0.9)])
    told = feed_of(morning(book), "Fennel").due[0].told
    assert told is not None
    assert told.weighed_at is not None
    assert before < told.weighed_at < book.clock.now()


def test_what_was_weighed_before_stays_in_the_book(book: Book) -> None:
    """One row more, and none changed; the older scoop is what an older round was told in."""
    before, due = all_rows(book.desk), feed_of(morning(book), "Fennel").due[0]
    assert due.told is not None
    book.change([weighing(due.told.id, due.feed.id, 0.9)])
    after = all_rows(book.desk)
    assert len(after.pop("weighing")) == len(before.pop("weighing")) + 1
    assert after == before


@pytest.mark.parametrize("holds_kg", [0.0, 500.5, -1.0])
def test_a_weight_that_the_book_cannot_keep_is_refused_in_a_sentence(book: Book, holds_kg: float) -> None:
    """And nothing is written."""
    due = feed_of(morning(book), "Fennel").due[0]
    assert due.told is not None
    before = all_rows(book.desk)
    with pytest.raises(DamagedBook, match=r"^Nothing was written: .*\.$"):
        book.change([weighing(due.told.id, due.feed.id, holds_kg)])
    with pytest.raises(DamagedBook, match=r"^Nothing was written: .*\.$"):
        book.change([weighing(some_id("a scoop of another farm"), due.feed.id, 0.9)])
    assert all_rows(book.desk) == before


def test_a_scoop_of_one_feed_says_nothing_of_another() -> None:
    """Lucerne in the same scoop weighs otherwise."""
    first, second = feed_of(dawn(), "Fennel").due
    assert first.told is not None
    assert second.told is not None
    assert first.told.id == second.told.id
    assert replace(first.told, holds_kg=0.9, weighed_at=second.told.weighed_at) == second.told
