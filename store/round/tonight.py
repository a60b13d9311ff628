"""Whether a calf is shut away in a night, and when, by its own rule; and which cow her calf was left with."""

from collections.abc import Iterator
from datetime import date, datetime, timedelta

from msgspec import Struct

from store.book.facts.calves import Parting, Share
from store.book.facts.farm import Animal
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import MORNING, Apart

NIGHTS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
"""As a rule counts them; the night between Monday and Tuesday is Monday's."""
IN_NO_NIGHT = "it is shut away in no night"
ON_PURPOSE = "on purpose"


class Staying(Struct, frozen=True):
    """A calf that is not shut away tonight, and why."""

    calf: Animal
    cow: Animal
    why: str


def shut_away_at(snapshot: Snapshot, share: Share) -> datetime | None:
    """When a calf is to be shut away tonight, so that it is apart its hours when the next morning round begins.

    Never longer than the longest time apart. None: it has no rule, or the farm has not said when that round begins.
    """
    morning = snapshot.farm.round_begins(Turn(snapshot.turn.day + timedelta(days=1), MORNING))
    if morning is None or share.rule is None:
        return None
    return morning - timedelta(hours=min(share.rule.apart_h, share.longest_h))


def not_tonight(share: Share, calf: Animal, day: date) -> str:
    """Why a calf is not shut away in the night after a day, in words; empty: it is. No rule: every night."""
    return too_young(share, calf, day) or night_off(share, day)


def too_young(share: Share, calf: Animal, day: date) -> str:
    """That a calf has not come to the day of its life from which on it is shut away; empty: it has."""
    old = day_of_life(calf, day)
    if share.rule is None or old is None or old >= share.rule.from_day:
        return ""
    return f"day {old} of its life, your rule begins on day {share.rule.from_day}"


def night_off(share: Share, day: date) -> str:
    """That a rule leaves out the night after a day; empty: it does not."""
    if share.rule is None or share.rule.nights[day.weekday()] == "1":
        return ""
    return f"your rule leaves it with her on {day:%A} nights" if "1" in share.rule.nights else IN_NO_NIGHT


def day_of_life(calf: Animal, day: date) -> int | None:
    """How many days old a calf is on a day; born today is 0. None: when it was born is not known. [d]"""
    return None if calf.born_on is None else (day - calf.born_on).days


def is_first_night(snapshot: Snapshot, share: Share) -> bool:
    """Whether a calf with a rule was never shut away before this day, as far back as is read."""
    begins = snapshot.turn.day_begins(snapshot.farm.zone)
    return share.rule is not None and not any(
        each.state is Apart.SHUT_AWAY and each.at < begins for each in share.partings
    )


def staying(snapshot: Snapshot) -> tuple[Staying, ...]:
    """Every calf that its rule leaves with its cow tonight."""
    named = ((calf, cow, not_tonight(share, calf, snapshot.turn.day)) for share, calf, cow in _pairs(snapshot))
    return tuple(Staying(*each) for each in named if each[-1])


def to_shut_away(snapshot: Snapshot) -> Iterator[tuple[Animal, Animal, datetime]]:
    """Each calf that is still to be shut away tonight by its rule, its cow, and when."""
    day = snapshot.turn.day
    for share, calf, cow in _pairs(snapshot):
        at = shut_away_at(snapshot, share)
        if at and not not_tonight(share, calf, day) and not _for_the_night(snapshot, share, day):
            yield calf, cow, at


def left_in(snapshot: Snapshot, cow: Animal) -> str:
    """Why a cow's calf was left with her last night, in a morning round; empty: it was not.

    As somebody wrote it, or as the rule has it for that night, unless the calf was written down as shut away.
    """
    if snapshot.turn.slot != MORNING:
        return ""
    found = [_left_in(snapshot, share, cow) for share in snapshot.shares if cow.id in share.cow_ids]
    return "" if "" in found else next(iter(found), "")


def _left_in(snapshot: Snapshot, share: Share, cow: Animal) -> str:
    written = last_night(snapshot, share)
    if written is None:
        return night_off(share, snapshot.turn.day - timedelta(days=1)) if share.cow_id == cow.id else ""
    together = written.state is Apart.TOGETHER and written.cow_id in (None, cow.id)
    return (written.why or ON_PURPOSE) if together else ""


def last_night(snapshot: Snapshot, share: Share) -> Parting | None:
    """What was done with a calf last, since the morning before a morning round: shut away, or left on purpose."""
    return _for_the_night(snapshot, share, snapshot.turn.day - timedelta(days=1))


def _for_the_night(snapshot: Snapshot, share: Share, day: date) -> Parting | None:
    """Since that day's morning round: a rule of many hours shuts it away before the evening begins."""
    since = snapshot.farm.usually_begins(Turn(day, MORNING))
    done = (each for each in share.partings if each.at >= since and each.state in (Apart.SHUT_AWAY, Apart.TOGETHER))
    return max(done, key=lambda each: each.at, default=None)


def _pairs(snapshot: Snapshot) -> Iterator[tuple[Share, Animal, Animal]]:
    animals = {animal.id: animal for animal in snapshot.animals}
    for share in snapshot.shares:
        if share.calf_id in animals and share.cow_id in animals:
            yield share, animals[share.calf_id], animals[share.cow_id]


def nights_words(nights: str) -> str:
    """`every night`, `Mon to Sat`, `Mon, Wed, Fri`, `no night`. nights: as a rule has them."""
    kept = [at for at, each in enumerate(nights) if each == "1"]
    if len(kept) in (0, 7):
        return "every night" if kept else "no night"
    if len(kept) > 2 and kept[-1] - kept[0] == len(kept) - 1:
        return f"{NIGHTS[kept[0]]} to {NIGHTS[kept[-1]]}"
    return ", ".join(NIGHTS[at] for at in kept)
