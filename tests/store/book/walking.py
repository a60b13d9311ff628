"""A keeper's hands for the tests: a whole morning walked, some of it in every way there is."""

from store.book.drafts import Draft
from store.book.opening import Book
from store.book.snapshot import Snapshot
from store.book.words import SKIP_REASONS, Fate
from store.round.confirm import moved_on, skipped, undone
from store.round.plan import plan
from store.round.steps import Step
from tests.farm import hand, morning
from tests.store.keys import pressed


def confirmed(book: Book, snapshot: Snapshot, step: Step, typed: str = "7.4 kg", fate: Fate = Fate.CALVES) -> Draft:
    """What Enter writes."""
    return pressed(hand(book, snapshot), step, typed, fate)


def walk_morning(book: Book) -> None:
    """The whole pretend morning: some of it skipped, some moved on, some corrected, some undone."""
    for at, step in enumerate(plan(morning(book))):
        snapshot = morning(book)
        if at % 5 == 1:
            draft = skipped(hand(book, snapshot), step, SKIP_REASONS[at % 7])
        elif at % 5 == 3:
            draft = moved_on(hand(book, snapshot), step)
        else:
            draft = confirmed(book, snapshot, step)
        book.append(draft)
        if at % 4 == 2:
            book.append(undone(hand(book, snapshot), morning(book).counts()[step.step_id]))
        if at % 4 == 3:
            snapshot = morning(book)
            again = next(each for each in plan(snapshot) if each.step_id == step.step_id)
            book.append(confirmed(book, snapshot, again, "6,2 kg"))
