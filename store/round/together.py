"""What may be written together on one screen, and under which conditions.

One key for several lines is honest only where every line it writes stands on that screen and nothing in it has to be
measured or looked at by itself: no count, pail, calf, udder or soak, nothing withheld, nothing barred, no shut door.
"""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime

from store.book.drafts import Draft
from store.book.words import Kind, State
from store.round.planning import BENCH
from store.round.steps import FeedStep, Step, TaskStep

AS_ONE = "as one pen"


def buckets(steps: Iterable[Step]) -> tuple[Step, ...]:
    """The steps that are a bucket filled at the bench: an animal's own feed."""
    return tuple(step for step in steps if isinstance(step, FeedStep) and step.kind is Kind.FEED and step.animal)


def plain_steps(steps: Iterable[Step], place: str) -> tuple[Step, ...]:
    """The open steps of a place that may be written together."""
    return tuple(step for step in steps if step.place == place and step.state is State.OPEN and is_plain(step))


def is_plain(step: Step) -> bool:
    """Whether a step may be written with others by one key."""
    if isinstance(step, FeedStep):
        return not any(animal.species in due.feed.not_for for due in step.due for animal in step.heads)
    return isinstance(step, TaskStep) and not (step.adult_only or step.two_people or step.place == BENCH)


def with_window(draft: Draft, since: datetime | None) -> Draft:
    """The draft marked as written together, done between the last confirm and now."""
    return replace(draft, happened_from=since if since and since < draft.happened_at else None, reason=AS_ONE)
