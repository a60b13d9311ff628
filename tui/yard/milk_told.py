"""Above her milkings: what they say of a day, of the coming month, of the lactation, and of what the calf took."""

from collections.abc import Iterator
from uuid import UUID

from store.book.snapshot import Snapshot
from store.book.words import Units
from store.husbandry.milk.own_curve import FORECAST_DAYS
from store.husbandry.why import Value
from store.round.saying import weight
from store.round.whys.calf_share import Band, CalfShare
from store.round.whys.lactation import Coming, MilkTold
from tui.page import Line, Role, Size, wrapped
from tui.words import day

CORRECTED = ("a day at 4 % fat", "by energy")


def only_hers(snapshot: Snapshot, cow_id: UUID) -> tuple[UUID, ...]:
    """The calves that suck her now; none where one of them sucks another cow too: nobody can tell whose milk it was."""
    shares = [each for each in snapshot.shares if cow_id in each.cow_ids]
    return tuple(each.calf_id for each in shares) if all(each.cow_ids == (cow_id,) for each in shares) else ()


def told_lines(told: MilkTold, units: Units, size: Size) -> list[Line]:
    """A line for each thing that is known."""
    return [each for words in _told(told, units) for each in wrapped(words, size.width, Role.TEXT, "  ")]


def _told(told: MilkTold, units: Units) -> Iterator[str]:
    if told.corrected:
        of_it = (f"{weight(each.amount, units)} {how}" for each, how in zip(told.corrected, CORRECTED, strict=False))
        yield f"WORTH   {', '.join(of_it)}, by her milk test"
    if told.coming:
        yield f"COMING  {FORECAST_DAYS} days: {_coming(told.coming, units)}"
    if told.so_far:
        together, since, days = told.so_far.together, told.so_far.since, told.so_far.days
        of = f"{days} days weighed" if told.so_far.from_calving else f"when weighing began, {days} days"
        yield f"SO FAR  {weight(together.amount, units)} in the pail since {day(since)}, {of}"
    yield from _calf(told.share, units)


def _coming(coming: Coming, units: Units) -> str:
    """`about 10.9 kg a day, 9.6 to 12.2 kg, by her curve; her peak, about 22.0 kg, is to come on day 38`."""
    span = _band((coming.least, coming.most), units)
    words = f"about {weight(coming.middle.amount, units)} a day, {span}, by her curve"
    if any(coming.middle.doubts()):
        return f"{words}; unsure, W says why"
    if not coming.peak:
        return words
    day_of_it, kg = coming.peak
    return f"{words}; her peak, about {weight(kg.amount, units)}, is to come on day {day_of_it.amount:.0f}"


def _calf(share: CalfShare, units: Units) -> Iterator[str]:
    """By one way alone it is said that it is one."""
    ways = [f"{_band(band, units)} a day {how}" for band, how in
            ((share.by_pail, "by the pail"), (share.by_gain, "by its gain")) if band]  # fmt: skip
    if ways:
        gap = f": {weight(share.gap.amount, units)} between the two" if share.gap else ", by one way only"
        held = f"; {weight(share.held_back.amount, units)} or more held back" if share.held_back else ""
        yield f"CALF    took about {', '.join(ways)}{gap}{held}"


def _band(band: Band, units: Units) -> str:
    return f"{_bare(band[0], units)} to {weight(band[1].amount, units)}"


def _bare(value: Value, units: Units) -> str:
    return weight(value.amount, units).split()[0]
