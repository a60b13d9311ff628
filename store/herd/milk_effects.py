"""What a change of the yard does to milk that is withheld: until when it is after it, and until when before."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from msgspec import Struct

from store.book.facts.farm import Animal
from store.book.facts.milk import Withholding
from store.book.snapshot import Snapshot
from store.round.saying import moment_words
from store.round.withholding import first_to_keep, milkings_from_now, withheld_of

NOT_WITHHELD = "not withheld"


class MilkChange(Struct, frozen=True):
    """What of one animal's milk is otherwise, in words. less: withheld for less long, which is asked about."""

    words: str
    less: bool


def milk_changes(before: Snapshot, after: Snapshot, at: datetime) -> Iterator[MilkChange]:
    """Of each animal of the yard whose milk is withheld otherwise from a moment on. Both are of the same round.

    That there is more colostrum is said by the sheet of a calving itself.
    """
    for animal in after.animals:
        old, new = (withheld_of(each, animal.id) for each in (before, after))
        for to_calves in (False, True):
            was, now = (_running(each, at, to_calves=to_calves) for each in (old, new))
            words, less = _words(was, now, after.farm.zone), _is_less(was, now)
            if words and (less or not to_calves):
                goes = f"; {_goes(after, animal, at)}" if less else ""
                what = "colostrum" if to_calves else "milk"
                yield MilkChange(f"{animal.name}'s {what}: {words}{goes}", less)


def _running(withheld: Sequence[Withholding], at: datetime, *, to_calves: bool) -> Withholding | None:
    """What ends last of what holds at a moment or later."""
    running = [each for each in withheld if each.to_calves == to_calves and (each.until is None or each.until > at)]
    return max(running, key=lambda each: (each.until is None, each.until or each.since), default=None)


def _words(was: Withholding | None, now: Withholding | None, zone: str) -> str:
    """`not withheld, was withheld until Sat 14 Mar 18:20`; an end that is not known says why. Empty: as it was."""
    ends = [each.until if each else None for each in (now, was)]
    if was and now and ends[0] == ends[1] and (ends[0] or now.why == was.why):
        return ""
    return ", was ".join(_until(each, zone) for each in (now, was)) if was or now else ""


def _until(withheld: Withholding | None, zone: str) -> str:
    if withheld is None:
        return NOT_WITHHELD
    if withheld.until:
        return f"withheld until {moment_words(withheld.until, zone)}"
    return f"withheld until further notice ({withheld.why})"


def _is_less(was: Withholding | None, now: Withholding | None) -> bool:
    """Over at once, or sooner than was known. An end that was not known and is now is what it was typed for."""
    if was is None or now is None:
        return was is not None
    return was.until is not None and now.until is not None and now.until < was.until


def _goes(after: Snapshot, animal: Animal, at: datetime) -> str:
    """From which milking on it could go to the house."""
    first = first_to_keep(after, animal.id, (moment for moment, _ in milkings_from_now(after, animal.id, at)))
    if first is None:
        return "her milk could go to the house"
    return f"her milk could go to the house from {moment_words(first, after.farm.zone)} on"
