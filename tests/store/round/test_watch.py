"""What is looked at again: one step, each look at it an entry, and the newest counts."""

from datetime import timedelta

from store.book.drafts import Subject
from store.book.opening import Book
from store.book.reading.watches import Watch, open_watches
from store.book.words import Looks
from store.herd.leaving import LeavingSheet
from store.round.watch import looked_again, watched
from tests.farm import MORNING, HandClock, hand, morning
from tests.store.herd.filled import animal, register, write

EIGHT_30 = MORNING.replace(hour=8, minute=30)


def there(book: Book) -> tuple[Watch, ...]:
    """What is still to be looked at."""
    return open_watches(book.desk, book.clock.now())


def watch(book: Book, words: str = "left hind foot", subject: Subject | None = None) -> Watch:
    """Somebody will look again at half past eight."""
    of = subject or Subject(animal_id=animal(book, "Sloe"))
    book.append(watched(hand(book, morning(book)), of, words, EIGHT_30))
    return next(each for each in there(book) if each.words == words)


def test_what_is_to_be_looked_at_is_there_until_it_was(book: Book, clock: HandClock) -> None:
    found = watch(book)
    assert (found.due_at, found.looks) == (EIGHT_30, None)
    assert not found.is_due(clock.now())
    clock.at = EIGHT_30
    assert found.is_due(clock.now())
    assert found.is_late(clock.now())
    book.append(looked_again(hand(book, morning(book)), found, Looks.RIGHT, None))
    assert there(book) == ()


def test_a_look_that_says_again_keeps_its_step_and_says_how_it_was(book: Book, clock: HandClock) -> None:
    first = watch(book)
    clock.at = EIGHT_30
    later = EIGHT_30 + timedelta(hours=2)
    book.append(looked_again(hand(book, morning(book)), first, Looks.WORSE, later))
    (again,) = there(book)
    assert (again.step_id, again.words, again.looks, again.due_at) == (
        first.step_id,
        first.words,
        Looks.WORSE,
        later,
    )
    assert again.entry_id != first.entry_id


def test_the_soonest_comes_first_and_a_pen_or_the_whole_yard_can_be_watched(book: Book) -> None:
    pen_id = morning(book).pens[0].id
    write = hand(book, morning(book))
    for words, subject, hours in (("trough", Subject(pen_id=pen_id), 3), ("gates", Subject(), 1)):
        book.append(watched(write, subject, words, MORNING + timedelta(hours=hours)))
    assert [each.words for each in there(book)] == ["gates", "trough"]
    assert [each.subject.pen_id for each in there(book)] == [None, pen_id]


def test_a_time_between_two_is_late_only_after_the_second(book: Book) -> None:
    until = EIGHT_30 + timedelta(hours=3)
    book.append(watched(hand(book, morning(book)), Subject(), "cleansing", EIGHT_30, until))
    (found,) = there(book)
    assert found.is_due(EIGHT_30)
    assert not found.is_late(until)
    assert found.is_late(until + timedelta(minutes=1))


def test_nothing_of_an_animal_that_is_gone_is_looked_at_again(book: Book) -> None:
    watch(book)
    watch(book, "her water", Subject(animal_id=animal(book, "Fennel")))
    write(book, LeavingSheet(register(book), animal(book, "Sloe")), how="sold")
    assert [each.words for each in there(book)] == ["her water"]
