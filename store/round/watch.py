"""What is to be looked at again, as drafts: offered for the first time, and looked at."""

from datetime import datetime

from store.book.drafts import Draft, Subject
from store.book.figures import WatchedFigure
from store.book.reading.watches import Looked, Watch
from store.book.words import Kind, Looks, State
from store.round.confirm import Hand


def watched(hand: Hand, subject: Subject, words: str, due_at: datetime, due_until: datetime | None = None) -> Draft:
    """Something of an animal, a pen or the whole yard is to be looked at again at a moment, or between two."""
    figure = WatchedFigure(words, due_at, due_until)
    done = State.DONE
    return Draft(
        None, Kind.WATCH, subject, None, done, hand.now, hand.person_id, None, hand.happened_from, figures=(figure,)
    )


def looked_again(hand: Hand, watch: Watch, looks: Looks, due_at: datetime | None) -> Draft:
    """It was looked at, and how it was. due_at: when again; None: no more."""
    figure = WatchedFigure(watch.words, due_at, None, looks)
    return Draft(
        step_id=watch.step_id,
        kind=Kind.WATCH,
        subject=watch.subject,
        turn=None,
        state=State.DONE,
        happened_at=hand.now,
        happened_from=hand.happened_from,
        person_id=hand.person_id,
        shown=watch.entry_id,
        figures=(figure,),
    )


def taken_back(hand: Hand, looked: Looked) -> Draft:
    """The newest entry of a watch did not happen: it stands as before; one that was just offered is none."""
    state, figures = (State.DONE, (looked.before,)) if looked.before else (State.OPEN, ())
    shown, kind = looked.entry_id, Kind.WATCH
    return Draft(looked.step_id, kind, looked.subject, None, state, hand.now, hand.person_id, shown, figures=figures)
