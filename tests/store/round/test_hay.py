"""Hay: a feed step where strings have to come off, and how many came off."""

import pytest
from msgspec.structs import replace

from store.book.facts.feed import Feed, Portion
from store.book.figures import FedFigure, StrungFigure
from store.book.opening import Book
from store.book.words import Kind
from store.round.amount import Unreadable
from store.round.confirm import skipped
from store.round.measured import STRINGS_MOST, fed, left_over
from tests.farm import hand as hand_at
from tests.farm import morning
from tests.store.round.made import NUTS, dawn, hand, pen_named, some_id, with_portions, wrote
from tests.store.round.named import feed_of

STRAW = Feed(some_id("straw"), "oat straw", soaked=False, baled=True)


def test_a_step_with_a_baled_feed_is_hay() -> None:
    """Whatever else goes with it; without one it is feed."""
    orchard, stall = pen_named(dawn(), "Orchard").id, pen_named(dawn(), "Stall").id
    assert feed_of(dawn(), "Stall").kind is Kind.HAY
    both = with_portions(dawn(), orchard, Portion(NUTS, 1.0, None), Portion(STRAW, 2.0, None))
    assert feed_of(both, "Orchard").kind is Kind.HAY
    assert feed_of(with_portions(dawn(), stall, Portion(NUTS, 1.0, None)), "Stall").kind is Kind.FEED


def test_the_strings_that_came_off_are_written_behind_the_feeds() -> None:
    """A number of their own."""
    draft = fed(hand(dawn()), feed_of(dawn(), "Stall"), {}, "2")
    assert isinstance(draft.figures[0], FedFigure)
    assert draft.figures[1:] == (StrungFigure(2),)


@pytest.mark.parametrize(("strings", "count"), [("0", 0), ("1", 1), (" 3 ", 3), (str(STRINGS_MOST), STRINGS_MOST)])
def test_strings_are_a_whole_number(strings: str, count: int) -> None:
    """None at all, too: somebody looked."""
    draft = fed(hand(dawn()), feed_of(dawn(), "Stall"), {}, strings)
    assert draft.figures[-1] == StrungFigure(count)


@pytest.mark.parametrize("strings", ["1.5", "-1", "two", "100", "2 kg", "1/2", "999999"])
def test_what_is_no_number_of_strings_is_refused_in_a_sentence(strings: str) -> None:
    """And the hay with it: nothing is half written."""
    with pytest.raises(Unreadable, match=r"is no (number of strings|amount)\. Type a "):
        fed(hand(dawn()), feed_of(dawn(), "Stall"), {}, strings)


def test_strings_that_nobody_counted_are_no_zero() -> None:
    """There is no line of them."""
    draft = fed(hand(dawn()), feed_of(dawn(), "Stall"), {})
    assert not any(isinstance(figure, StrungFigure) for figure in draft.figures)


def test_hay_that_was_not_given_had_no_strings() -> None:
    """Skipped: what was due is kept."""
    draft = skipped(hand(dawn()), feed_of(dawn(), "Stall"), "ran out")
    assert [type(figure) for figure in draft.figures] == [FedFigure]


def test_what_was_left_of_the_hay_leaves_the_strings_as_they_were() -> None:
    """Two came off; an hour later something is left; still two came off."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Stall"), {}, "2"))
    step = feed_of(after, "Stall")
    assert left_over(hand(after), step, step.due[0], "1 kg").figures[1:] == (StrungFigure(2),)


def test_a_correction_of_the_hay_leaves_the_strings_as_they_were() -> None:
    """As it leaves the other feeds."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Stall"), {}, "2"))
    step = feed_of(after, "Stall")
    draft = fed(hand(after), step, {step.due[0].feed.id: "3 flakes"})
    assert draft.figures[1:] == (StrungFigure(2),)


def test_strings_come_back_from_the_book(book: Book) -> None:
    """Beside the hay they were on."""
    found = morning(book)
    draft = fed(hand_at(book, found), feed_of(found, "Stall"), {}, "2")
    book.append(draft)
    entry = feed_of(morning(book), "Stall").entry
    assert entry is not None
    assert entry.figures == draft.figures
    assert entry.the(StrungFigure) == StrungFigure(2)


def test_a_hay_step_keeps_its_name_when_only_the_amount_changes() -> None:
    """More of it, or of another baled feed: the same step of the pen."""
    stall = pen_named(dawn(), "Stall").id
    changed = with_portions(dawn(), stall, Portion(replace(STRAW, name="barley straw"), 3.0, None))
    assert feed_of(changed, "Stall").step_id == feed_of(dawn(), "Stall").step_id
