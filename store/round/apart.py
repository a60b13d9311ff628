"""Calf sharing: where the calf is, and what is to be done with it in this round."""

from collections.abc import Iterator

from store.book.drafts import Subject
from store.book.facts.calves import Share
from store.book.facts.farm import Animal
from store.book.words import MORNING, Apart, Kind
from store.round.planning import Planning
from store.round.steps import ApartStep, SharedCalf
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
    """In the morning, behind the milking: let each calf in to her."""
    if planning.snapshot.turn.slot == MORNING:
        own = {share.calf_id for share in planning.snapshot.shares if share.cow_id == cow.id}
        for calf in shared_calves(planning, cow):
            if calf.calf.id in own:
                yield _step(planning, cow, calf, place, Apart.LET_IN)


def shut_away(planning: Planning, calf: Animal, place: str) -> Iterator[ApartStep]:
    """In the evening, in the calf's own pen: shut it away from the cow it shares."""
    if planning.snapshot.turn.slot == MORNING:
        return
    cows = {animal.id: animal for animal in planning.snapshot.animals}
    for share in planning.snapshot.shares:
        if share.calf_id == calf.id and share.cow_id in cows:
            cow = cows[share.cow_id]
            yield _step(planning, cow, _of(share, calf, cow), place, Apart.SHUT_AWAY)


def _of(share: Share, calf: Animal, cow: Animal) -> SharedCalf:
    return SharedCalf(calf, where(share, cow.id), share.longest_h)


def _step(planning: Planning, cow: Animal, calf: SharedCalf, place: str, want: Apart) -> ApartStep:
    head = planning.head(Kind.APART, Subject(animal_id=calf.calf.id), calf.calf.name, place)
    return ApartStep(*head, cow=cow, calf=calf, want=want)
