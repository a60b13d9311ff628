"""What a feed is made of: of figures as the feed lies only those typed anew are told of its dry matter."""

import pytest

from store.book.opening import Book
from store.herd.composition import CompositionSheet
from store.herd.sheet import Wrong
from tests.farm import HandClock
from tests.store.herd.filled import filled, id_of, register, write

HAY, NUTS = "grass hay", "dairy nuts"
AS_IT_LIES = "as it lies, as on most labels"


def sheet(book: Book, name: str = HAY) -> CompositionSheet:
    """Of the hay, whose parts the small farm knows of a test; or of its nuts, of which it knows none."""
    found = register(book)
    return CompositionSheet(found, id_of(found, "feed_as", name))


def parts(book: Book, name: str = HAY) -> dict[str, float]:
    """What the book holds of it."""
    found = register(book).get("composition", id_of(register(book), "feed_as", name)) or {}
    return {name: found[name] for name in ("dm_percent", "cp_percent", "tdn_percent", "ndf_percent")}


def test_only_the_part_that_is_typed_from_a_tag_is_told_of_the_dry_matter(book: Book, clock: HandClock) -> None:
    before = parts(book)
    write(book, sheet(book), of_dry=AS_IT_LIES, cp_percent="9")
    clock.move(minutes=1)
    assert parts(book) == before | {"cp_percent": pytest.approx(9 / before["dm_percent"] * 100, abs=1e-4)}


def test_the_line_before_it_is_written_says_the_parts_that_are_others(book: Book) -> None:
    found = sheet(book)
    told = found.told(filled(found, of_dry=AS_IT_LIES, dm_percent="90", cp_percent="9").answers())
    assert told == "what it is made of, from the test: dry matter 90 %, before 85 %; protein 10 %, before 11 %"


def test_a_first_tag_is_told_of_the_dry_matter_whole(book: Book, clock: HandClock) -> None:
    found = sheet(book, NUTS)
    typed = filled(found, dm_percent="80", cp_percent="8", ndf_percent="48")
    assert found.told(typed.answers()).endswith(": dry matter 80 %; protein 10 %; fibre (NDF) 60 %")
    write(book, found, dm_percent="80", cp_percent="8", ndf_percent="48")
    clock.move(minutes=1)
    assert parts(book, NUTS) == {"dm_percent": 80, "cp_percent": 10, "tdn_percent": None, "ndf_percent": 60}


def test_a_part_that_cannot_be_is_refused_at_its_question(book: Book) -> None:
    found = sheet(book, NUTS)
    with pytest.raises(Wrong, match=r"protein would be 180 % of the dry matter") as wrong:
        found.rows(filled(found, dm_percent="50", cp_percent="90").answers())
    assert wrong.value.question == "cp_percent"
