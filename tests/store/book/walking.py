"""A keeper's hands for the tests: any step of a round confirmed, skipped or undone."""

from store.book.drafts import Draft
from store.book.opening import Book
from store.book.snapshot import Snapshot
from store.book.words import SKIP_REASONS, Fate
from store.round.confirm import done, skipped, undone
from store.round.measured import fed, milked
from store.round.plan import plan
from store.round.steps import FeedStep, MilkStep, Step
from tests.farm import hand, morning


def confirmed(book: Book, snapshot: Snapshot, step: Step, typed: str = "7.4", fate: Fate = Fate.CALVES) -> Draft:
    """What Enter writes: the first feed as typed, the others as shown; milk as typed; a job as done."""
    if isinstance(step, FeedStep):
        return fed(hand(book, snapshot), step, {step.due[0].feed.id: f"{typed} kg"})
    if isinstance(step, MilkStep):
        return milked(hand(book, snapshot), step, typed, fate)
    return done(hand(book, snapshot), step)


def walk_morning(book: Book) -> None:
    """The whole pretend morning: some of it skipped, some corrected, some undone."""
    for at, step in enumerate(plan(morning(book))):
        snapshot = morning(book)
        draft = (
            skipped(hand(book, snapshot), step, SKIP_REASONS[at % 7])
            if at % 3 == 1
            else confirmed(book, snapshot, step)
        )
        book.append(draft)
        if at % 4 == 2:
            book.append(undone(hand(book, snapshot), morning(book).counts()[step.step_id]))
        if at % 4 == 3:
            snapshot = morning(book)
            again = next(each for each in plan(snapshot) if each.step_id == step.step_id)
            book.append(confirmed(book, snapshot, again, "6,2"))
