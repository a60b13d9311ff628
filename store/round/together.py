"""What may be written together on one screen, and under which conditions.

One key for several lines is honest only where every line it writes stands on that screen and nothing in it has to be
measured or looked at by itself: no count, pail, calf, udder or soak, nothing barred, no shut door, nothing that changed
since yesterday.
"""

from collections.abc import Iterable
from datetime import datetime, timedelta

from msgspec.structs import replace

from store.book.drafts import Draft
from store.book.words import Kind, Soak, State
from store.round.planning import BENCH
from store.round.soaked import is_short
from store.round.steps import DueFeed, FeedStep, SoakedPart, Step, TaskStep

AS_ONE = "together"
FRESH = timedelta(hours=24)
"""A plan or a scoop younger than this is written by itself once."""


def buckets(steps: Iterable[Step]) -> tuple[Step, ...]:
    """The steps that are a bucket filled at the bench: an animal's own feed."""
    return tuple(step for step in steps if isinstance(step, FeedStep) and step.kind is Kind.FEED and step.animal)


def alone_why(step: Step, now: datetime) -> str:
    """Why a step has to be written by itself; empty where it may be written with others."""
    if isinstance(step, TaskStep):
        plain = step.place != BENCH and not step.moved_from
        return "" if plain and not (step.adult_only or step.two_people) else "by itself"
    if not isinstance(step, FeedStep) or step.moved_from:
        return "by itself"
    if any(animal.adult_only or animal.two_people for animal in step.heads):
        return "by itself"
    reasons = (*map(_of_soak, step.soaked), *(_of_feed(due, step, now) for due in step.due))
    return next((reason for reason in reasons if reason), "")


def plain_steps(steps: tuple[Step, ...], place: str, now: datetime) -> tuple[Step, ...]:
    """The open steps of a place that may be written together."""
    here = (step for step in steps if step.place == place and step.state is State.OPEN)
    return tuple(step for step in here if not alone_why(step, now))


def with_window(draft: Draft, since: datetime | None) -> Draft:
    """The draft marked as written together, done between the last confirm and now, or when the keeper said."""
    between = since if since and since < draft.happened_at else None
    return replace(draft, happened_from=draft.happened_from or between, reason=AS_ONE)


def _of_feed(due: DueFeed, step: FeedStep, now: datetime) -> str:
    barred = next((animal.species for animal in step.heads if animal.species in due.feed.not_for), None)
    if barred:
        return f"not for {barred.value}"
    if due.since and now - due.since < FRESH:
        return "changed since yesterday"
    if due.told and due.told.weighed_at and now - due.told.weighed_at < FRESH:
        return f"new {due.told.name}"
    return ""


def _of_soak(part: SoakedPart) -> str:
    if part.found is None:
        return "soak not looked at"
    if part.found is Soak.THROWN_OUT:
        return "soak thrown out"
    return "too little soaked" if is_short(part) else ""
