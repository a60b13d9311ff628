"""What is read of milk: pails, quarters, calves that share it, what withholds it."""

from collections.abc import Sequence
from datetime import date, datetime
from typing import Any
from uuid import UUID

from msgspec.structs import replace

from store.book.clock import moment
from store.book.desk import FoundRow
from store.book.facts.calves import ApartRule, Parting, Share
from store.book.facts.milk import Pail, PastPail, QuarterFound, Withholding
from store.book.reading.facts import _with_second, maybe_uid, uid
from store.book.turn import Turn
from store.book.words import Apart, Fate, Quarter, Sign, State


def parting(found: FoundRow) -> Parting:
    """A calf shut away, let in, or out by itself."""
    state, at, since, cow, why = found
    return Parting(
        None if state is None else Apart(state), moment(at), None if since is None else moment(since), maybe_uid(cow),
        why,
    )  # fmt: skip


def pail(id_: Any, name: str | None, empty_kg: float | None) -> Pail | None:
    """The pail a cow is milked into, if one is planned."""
    return None if id_ is None or name is None or empty_kg is None else Pail(uid(id_), name, empty_kg)


def past_pail(found: FoundRow) -> PastPail:
    """A milking of an earlier round."""
    at, since, kg, held, state, whole, day, slot, fate, typed, step_id = found
    return PastPail(
        moment(at), kg, bool(held), state == State.ON_PAPER, bool(whole), Turn(date.fromisoformat(day), slot),
        None if fate is None else Fate(fate), typed or "", uid(step_id), None if since is None else moment(since),
    )  # fmt: skip


def quarter_found(found: FoundRow) -> QuarterFound:
    """What was found at a quarter."""
    quarter, sign, at, day, slot = found
    return QuarterFound(Quarter(quarter), Sign(sign), moment(at), Turn(date.fromisoformat(day), slot))


def shares(
    sharings: Sequence[FoundRow], rules: Sequence[FoundRow], seconds: Sequence[FoundRow], ended_after: datetime
) -> tuple[Share, ...]:
    """Who shares with whom, and who did until after a moment, by calf; what was written of them is not in it yet."""
    by_calf: dict[UUID, list[Share]] = {}
    for calf, cow, do_share, longest_h, begins in sharings:
        before, at = by_calf.setdefault(uid(calf), []), moment(begins)
        last = before[-1] if before and before[-1].until is None else None
        if last and do_share and last.cow_id == uid(cow):
            before[-1] = replace(last, longest_h=longest_h)
            continue
        if last:
            before[-1] = replace(last, until=at)
        if do_share:
            before.append(Share(uid(cow), uid(calf), longest_h, since=at))
    by_rule = {uid(id_): ApartRule(*rule) for id_, *rule in rules}
    second = {uid(id_): (uid(cow), moment(at)) for id_, cow, at in seconds}
    return tuple(
        _with_second(replace(each, rule=by_rule.get(calf)), second.get(calf))
        for calf, found in sorted(by_calf.items(), key=lambda pair: pair[0].bytes)
        for each in found
        if (each.until is None or each.until > ended_after) and each.until != each.since
    )


def withheld(found: Sequence[FoundRow]) -> dict[UUID, tuple[Withholding, ...]]:
    """Whose milk is withheld, from when and until when, oldest first. Every row with an end holds until it; one without
    holds until the next row of hers that gives the same reason begins: what is about something else leaves it.
    """
    by_animal: dict[UUID, tuple[Withholding, ...]] = {}
    for animal, begins, ends, why in found:
        since, until = moment(begins), None if ends is None else moment(ends)
        before = tuple(
            replace(each, until=since) if each.until is None and each.why == why else each
            for each in by_animal.get(uid(animal), ())
        )
        by_animal[uid(animal)] = (*before, Withholding(since, until, why))
    return by_animal
