"""What was left of a feed: typed when the bucket is looked into again, beside what was given."""

import pytest
from msgspec.structs import replace

from store.book.drafts import Draft
from store.book.figures import FedFigure
from store.book.opening import Book
from store.book.words import State
from store.round.amount import Unreadable
from store.round.measured import fed, left_over
from tests.farm import hand as hand_at
from tests.farm import morning
from tests.store.round.made import dawn, hand, wrote
from tests.store.round.named import feed_of


def feeds(draft: Draft) -> list[FedFigure]:
    """The feeds of a draft."""
    return [figure for figure in draft.figures if isinstance(figure, FedFigure)]


def test_what_was_left_stands_beside_what_was_given_of_that_feed_alone() -> None:
    """Fennel left half a scoop of nuts; the lucerne she finished, or nobody looked."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Fennel"), {}))
    step = feed_of(after, "Fennel")
    nuts, lucerne = feeds(left_over(hand(after), step, step.due[0], "1/2"))
    assert nuts.due_kg == 2.7
    assert [nuts.given_kg, nuts.left_kg] == pytest.approx([2.7, 0.3375])
    assert lucerne == feeds(fed(hand(dawn()), feed_of(dawn(), "Fennel"), {}))[1]
    assert lucerne.left_kg is None


def test_what_was_given_otherwise_than_planned_stays_so() -> None:
    """Two scoops were typed; half of one is left of the two."""
    step = feed_of(dawn(), "Hazel")
    after = wrote(dawn(), fed(hand(dawn()), step, {step.due[0].feed.id: "2"}))
    (nuts,) = feeds(left_over(hand(after), feed_of(after, "Hazel"), step.due[0], "0.3 kg"))
    assert nuts.typed == "2"
    assert [nuts.given_kg, nuts.left_kg] == pytest.approx([1.35, 0.3])


def test_what_was_left_of_one_feed_stays_when_the_other_is_looked_at() -> None:
    """First the nuts, then the lucerne."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Fennel"), {}))
    for which, typed in ((0, "1/2"), (1, "0.2 kg")):
        step = feed_of(after, "Fennel")
        after = wrote(after, left_over(hand(after), step, step.due[which], typed))
    entry = feed_of(after, "Fennel").entry
    assert entry is not None
    assert [figure.left_kg for figure in entry.of(FedFigure)] == pytest.approx([0.3375, 0.2])


@pytest.mark.parametrize("typed", ["3.1", "2.1 kg", "5 lb"])
def test_more_than_was_given_cannot_be_left(typed: str) -> None:
    """A sentence with both weights."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Hazel"), {}))
    step = feed_of(after, "Hazel")
    with pytest.raises(Unreadable, match=r"^2\.\d\d kg is more than the 2\.0. kg that was given\. Type what was left"):
        left_over(hand(after), step, step.due[0], typed)


@pytest.mark.parametrize(("typed", "left_kg"), [("3", 2.025), ("0", 0.0)])
def test_all_of_it_may_be_left_and_none_of_it(typed: str, left_kg: float) -> None:
    """Nothing left is a finding, unlike nobody looked."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Hazel"), {}))
    step = feed_of(after, "Hazel")
    (nuts,) = feeds(left_over(hand(after), step, step.due[0], typed))
    assert nuts.left_kg == pytest.approx(left_kg)


def test_what_was_left_is_no_change_of_what_was_given_and_no_meal_of_its_own() -> None:
    """However large a meal it was, nothing is asked again."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Fennel"), {}))
    step = feed_of(after, "Fennel")
    draft = left_over(replace(hand(after), meal_limit_kg=0.1), step, step.due[0], "1/4")
    assert draft.state is State.DONE
    assert draft.shown == after.entries[0].id


def test_what_was_left_comes_back_from_the_book(book: Book) -> None:
    """As it was typed in, with the entry it replaces."""
    book.append(fed(hand_at(book, morning(book)), feed_of(morning(book), "Hazel"), {}))
    found = morning(book)
    step = feed_of(found, "Hazel")
    draft = left_over(hand_at(book, found), step, step.due[0], "0.4 kg")
    book.append(draft)
    entry = feed_of(morning(book), "Hazel").entry
    assert entry is not None
    assert entry.figures == draft.figures
    assert entry.replaces_id == found.entries[-1].id
