"""Where a feed stands free: one yes or no a pen."""

from store.book.opening import Book
from store.herd.free import FreeSheet
from store.herd.sheet import Question
from tests.farm import HandClock
from tests.store.herd.filled import filled, id_of, register, write


def nuts(book: Book) -> FreeSheet:
    """Of a feed that stands free nowhere yet."""
    found = register(book)
    return FreeSheet(found, id_of(found, "feed_as", "dairy nuts"))


def asked(sheet: FreeSheet, pen: str) -> Question:
    """About one pen."""
    return next(question for question in sheet.questions() if question.words == f"stands free in {pen}")


def test_every_pen_in_use_is_asked_about_in_walking_order(book: Book) -> None:
    words = [question.words for question in nuts(book).questions()]
    assert words == [f"stands free in {pen}" for pen in ("Stall", "Calf pen", "Orchard")] + ["counts from"]


def test_only_the_pens_that_changed_are_written_and_it_goes_away_again(book: Book, clock: HandClock) -> None:
    sheet = nuts(book)
    orchard = id_of(register(book), "pen_as", "Orchard")
    rows = sheet.rows(filled(sheet, **{asked(sheet, "Orchard").name: "yes"}).answers())
    assert [(row.values["pen_id"], row.values["offered"]) for row in rows] == [(orchard, True)]
    book.change(rows)
    clock.move(minutes=1)
    again = nuts(book)
    assert asked(again, "Orchard").first == "yes"
    typed = {asked(again, "Orchard").name: "no"}
    assert again.told(filled(again, **typed).answers()) == "dairy nuts stands free nowhere"
    write(book, again, **typed)
    clock.move(minutes=1)
    assert asked(nuts(book), "Orchard").first == "no"
