"""Something else that was given beside the plan."""

import pytest

from store.book.figures import FedFigure
from store.book.opening import Book
from store.book.snapshot import Snapshot
from store.round.amount import Unreadable
from store.round.extra import extra_fed
from store.round.plan import BESIDES, plan
from store.round.steps import FeedStep, PastStep
from store.round.summary import summarise
from tests.farm import HandClock, hand, morning, step_of


def hazels(snapshot: Snapshot) -> FeedStep:
    """Her meal."""
    step = step_of(snapshot, "Hazel", "feed")
    assert isinstance(step, FeedStep)
    return step


def give(book: Book, typed: str) -> None:
    """Something to Hazel."""
    snapshot = morning(book)
    book.append(extra_fed(hand(book, snapshot), hazels(snapshot), snapshot.feeds.values(), typed))


def test_it_counts_in_her_day_and_leaves_her_own_meal_open(book: Book) -> None:
    give(book, "0.5 kg lucerne")
    steps = plan(morning(book))
    (besides,) = [step for step in steps if isinstance(step, PastStep)]
    assert (besides.name, besides.place) == ("Hazel", BESIDES)
    assert hazels(morning(book)).entry is None
    assert {total.feed.name: total.given_kg for total in summarise(morning(book), steps).fed} == {
        "lucerne pellets": 0.5
    }


def test_it_is_not_what_she_got_the_last_time(book: Book, clock: HandClock) -> None:
    """LAST is told of what was planned."""
    before = hazels(morning(book)).before
    assert before is not None
    clock.move(hours=-24)
    give(book, "0.5 kg lucerne")
    clock.move(hours=24)
    after = hazels(morning(book)).before
    assert after is not None
    assert after.given_kg.keys() == before.given_kg.keys()


@pytest.mark.parametrize(
    ("typed", "kg"),
    [("1/3 kg lucerne", 1 / 3), ("1 1/2 kg Lucerne", 1.5), ("½ kg lucerne", 0.5), (" 7,4kg lucerne", 7.4)],
)
def test_an_amount_is_read_as_everywhere(book: Book, typed: str, kg: float) -> None:
    """A third of a kilogram is no decimal that could be read again."""
    snapshot = morning(book)
    draft = extra_fed(hand(book, snapshot), hazels(snapshot), snapshot.feeds.values(), typed)
    assert [figure.given_kg for figure in draft.figures if isinstance(figure, FedFigure)] == [pytest.approx(kg)]


@pytest.mark.parametrize(
    ("typed", "words"),
    [("1/3 l lucerne", "L is a volume"), ("1/3 kq lucerne", "«kq» is no unit"),
     ("2 kg apples", "«apples» is no feed here; there are"), ("apples", "is no amount"), ("2 kg", "«» is no feed here"),
     ("2 l lucerne", "is a volume"), ("2 lucerne", "«» is no feed here")],
)  # fmt: skip
def test_what_cannot_be_read_is_said(book: Book, typed: str, words: str) -> None:
    with pytest.raises(Unreadable, match=words):
        give(book, typed)
