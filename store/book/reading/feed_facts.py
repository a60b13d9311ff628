"""What is read of feed: feeds, measures, plans, what soaks."""

from collections.abc import Mapping, Sequence
from uuid import UUID

from store.book.clock import moment
from store.book.desk import FoundRow
from store.book.facts.feed import Feed, PlanRow, Portion, SoakLimit, Substitute, Told
from store.book.reading.facts import uid
from store.book.words import Species, Water


def feeds(found: Sequence[FoundRow], barred: Sequence[FoundRow]) -> dict[UUID, Feed]:
    """Every feed, by its id."""
    return {
        uid(id_): Feed(
            uid(id_), name, bool(soaked), bucket, bool(baled), bool(in_use),
            frozenset(Species(species) for feed, species in barred if feed == id_),
        )
        for id_, name, soaked, bucket, baled, in_use in found
    }  # fmt: skip


def told(measures: Sequence[FoundRow]) -> dict[tuple[UUID, UUID], Told]:
    """Every measure for every feed, by their ids."""
    return {
        (uid(id_), uid(feed)): Told(uid(id_), name, plural, holds_kg, None if weighed is None else moment(weighed))
        for id_, name, plural, feed, holds_kg, weighed in measures
    }


def portions(
    plans: Sequence[FoundRow],
    by_id: Mapping[UUID, Feed],
    told: Mapping[tuple[UUID, UUID], Told],
) -> dict[UUID, tuple[Portion, ...]]:
    """What each animal or pen gets, by its id, in showing order."""
    by_subject: dict[UUID, tuple[Portion, ...]] = {}
    for subject, feed, due_kg, measure, since, position in plans:
        if uid(feed) not in by_id or not by_id[uid(feed)].in_use:  # not there yet, or not any more
            continue
        measured = told.get((uid(measure), uid(feed))) if measure else None
        portion = Portion(by_id[uid(feed)], due_kg, measured, moment(since), position)
        by_subject[uid(subject)] = (*by_subject.get(uid(subject), ()), portion)
    return by_subject


def plan_rows(found: Sequence[FoundRow]) -> tuple[PlanRow, ...]:
    """One row for each beginning, oldest first. found: newest first, the one that counts before the others."""
    by_beginning: dict[int, float | None] = {}
    for begins, due_kg in found:
        by_beginning.setdefault(begins, due_kg)
    return tuple(PlanRow(moment(begins), due_kg) for begins, due_kg in sorted(by_beginning.items()))


def substitutes(found: Sequence[FoundRow]) -> dict[UUID, Substitute]:
    """What replaces each soaked feed."""
    return {uid(feed): Substitute(uid(by), ratio, most_kg) for feed, by, ratio, most_kg in found}


def soak_limits(found: Sequence[FoundRow]) -> dict[UUID, SoakLimit]:
    """The farm's soak rule of each feed in today's air."""
    return {
        uid(id_): SoakLimit(Water(water), least_h, most_h, water_per_kg)
        for id_, water, least_h, most_h, water_per_kg in found
    }
