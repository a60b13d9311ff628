"""What stands in for a soaked feed: set by keys, capped, ended, and what it would change."""

import pytest

from store.book.facts.feed import Substitute
from store.book.opening import Book
from store.book.snapshot import Snapshot
from store.herd.effects import differences
from store.herd.sheet import Wrong
from store.herd.substitute import SubstituteSheet, substitute_words
from tests.farm import morning
from tests.store.herd.filled import filled, id_of, register, write

LUCERNE, NUTS = "lucerne pellets", "dairy nuts"


def sheet(book: Book) -> SubstituteSheet:
    """The sheet of the soaked feed."""
    found = register(book)
    return SubstituteSheet(found, id_of(found, "feed_as", LUCERNE))


def rule(book: Book, snapshot: Snapshot) -> Substitute | None:
    """What a round has for it."""
    return snapshot.substitutes.get(id_of(register(book), "feed_as", LUCERNE))


def test_the_rule_is_written_changed_and_ended(book: Book) -> None:
    """By nothing, it stands in no more."""
    nuts = id_of(register(book), "feed_as", NUTS)
    assert rule(book, write(book, sheet(book), by_id=NUTS, ratio="0.8", most_kg="2 kg")) == Substitute(nuts, 0.8, 2.0)
    assert substitute_words(register(book), id_of(register(book), "feed_as", LUCERNE)) == "dairy nuts, 0.80 for 1"
    assert rule(book, write(book, sheet(book), most_kg="")) == Substitute(nuts, 0.8, None)
    assert rule(book, write(book, sheet(book), by_id="nothing")) is None
    assert substitute_words(register(book), id_of(register(book), "feed_as", LUCERNE)) == "nothing yet"


def test_nothing_that_soaks_stands_in_for_it(book: Book) -> None:
    """Least of all the feed itself: it would have to be put to soak first."""
    words = [word for word, _ in sheet(book).questions()[0].choices]
    assert LUCERNE not in words
    assert {"nothing", NUTS} <= set(words)


def test_left_at_nothing_it_writes_nothing(book: Book) -> None:
    """There was no rule, and there is none."""
    assert list(sheet(book).rows(filled(sheet(book), ratio="0.5").answers())) == []


@pytest.mark.parametrize(("name", "typed"), [("ratio", "0"), ("ratio", "a lot"), ("most_kg", "0"), ("most_kg", "9 l")])
def test_what_cannot_be_is_said(book: Book, name: str, typed: str) -> None:
    """In a sentence, at its question."""
    with pytest.raises(Wrong) as problem:
        filled(sheet(book), by_id=NUTS, **{name: typed}).answers()
    assert problem.value.question == name


@pytest.mark.parametrize("typed", ["0.8", "0.8 kg", "0.8 lb"])
def test_the_ratio_is_the_same_in_either_unit(book: Book, typed: str) -> None:
    assert filled(sheet(book), by_id=NUTS, ratio=typed).answers()["ratio"] == 0.8


def test_what_it_changes_is_said_for_what_the_round_feeds(book: Book) -> None:
    """0.9 kg at 0.8 are 0.72 kg; capped at 0.4 kg, which stand for 0.5 kg, 0.4 kg are left to hay."""
    before = morning(book)
    free = write(book, sheet(book), by_id=NUTS, ratio="0.8")
    assert list(differences(before, free)) == ["lucerne pellets, 0.90 kg thrown out: 0.72 kg dairy nuts"]
    capped = write(book, sheet(book), most_kg="0.4")
    assert list(differences(free, capped)) == [
        "lucerne pellets, 0.90 kg thrown out: 0.40 kg dairy nuts, and 0.40 kg hay"
    ]
    ended = write(book, sheet(book), by_id="nothing")
    assert list(differences(capped, ended)) == ["lucerne pellets, 0.90 kg thrown out: nothing stands in for it"]
    assert list(differences(ended, ended)) == []
