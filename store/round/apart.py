"""Calf sharing: where the calf is, and what is to be done with it in this round."""

from collections.abc import Iterator
from datetime import timedelta
from uuid import UUID

from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.facts.calves import Share
from store.book.facts.farm import Animal
from store.book.words import MORNING, Apart, Kind, State
from store.round.measured import SURE
from store.round.planning import Planning
from store.round.saying import moment_words
from store.round.steps import ApartStep, SharedCalf
from store.round.timed import was_out
from store.round.tonight import is_first_night, last_night, left_in, not_tonight, shut_away_at, too_young
from store.round.where import where


def shared_calves(planning: Planning, cow: Animal) -> tuple[SharedCalf, ...]:
    """The calves that suck a cow, with what is known of where each is as to her."""
    return tuple(
        _of(share, calf, cow)
        for share in planning.snapshot.shares
        if cow.id in share.cow_ids
        for calf in planning.snapshot.animals
        if calf.id == share.calf_id
    )


def let_in(planning: Planning, cow: Animal, place: str) -> Iterator[ApartStep]:
    """In the morning, behind the milking: let in to her each calf that was not left with her."""
    if planning.snapshot.turn.slot == MORNING and not left_in(planning.snapshot, cow):
        last_evening = planning.snapshot.turn.day - timedelta(days=1)
        for share, calf in _sharing(planning, cow.id):
            if last_night(planning.snapshot, share) or not too_young(share, calf, last_evening):
                step = _step(planning, cow, _of(share, calf, cow), place, Apart.LET_IN)
                others = (each for each in planning.snapshot.animals if each.id == share.second_cow_id)
                yield replace(step, other_cow=next(others, None))


def shut_away(planning: Planning, calf: Animal, place: str) -> Iterator[ApartStep]:
    """In the evening, in the calf's own pen: shut it away from the cow it shares, in the nights of its rule."""
    snapshot = planning.snapshot
    cows = {animal.id: animal for animal in snapshot.animals}
    for share in snapshot.shares if snapshot.turn.slot != MORNING else ():
        if share.calf_id == calf.id and share.cow_id in cows and not not_tonight(share, calf, snapshot.turn.day):
            cow = cows[share.cow_id]
            step = _step(planning, cow, _of(share, calf, cow), place, Apart.SHUT_AWAY)
            yield replace(step, shut_at=shut_away_at(snapshot, share), first_night=is_first_night(snapshot, share))


def apart_question(step: ApartStep, zone: str) -> str:
    """What has to be asked before a calf is shut away that is shut away already by the book; empty: nothing."""
    last, done = step.calf.last, step.entry is not None and step.entry.state is State.DONE
    again = step.want is Apart.SHUT_AWAY and last is not None and last.state is Apart.SHUT_AWAY and not last.cow_id
    if not again or done or last is None:
        return ""
    name, since = step.calf.calf.name, moment_words(last.at, zone)
    return f"{name} is written as shut away since {since}. If it was let in since: {SURE} then Enter begins anew."


def _sharing(planning: Planning, cow_id: UUID) -> Iterator[tuple[Share, Animal]]:
    """The calves whose own cow she is."""
    for share in planning.snapshot.shares:
        for calf in planning.snapshot.animals:
            if share.cow_id == cow_id and calf.id == share.calf_id:
                yield share, calf


def _of(share: Share, calf: Animal, cow: Animal) -> SharedCalf:
    return SharedCalf(calf, where(share, cow.id), share.longest_h, share.rule, was_out(share, cow.id))


def _step(planning: Planning, cow: Animal, calf: SharedCalf, place: str, want: Apart) -> ApartStep:
    head = planning.head(Kind.APART, Subject(animal_id=calf.calf.id), calf.calf.name, place)
    return ApartStep(*head, cow=cow, calf=calf, want=want)
