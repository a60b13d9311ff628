"""How long one treatment withholds milk and meat: as label or vet have said it, and from the last dose really given.

Each dose starts the clock anew. Where hours and milkings are both typed the later one counts; what nobody typed is not
guessed: the milk is then withheld until somebody types it. Label and vet decide, and the local rules.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from msgspec import Struct

from store.book.clock import MICROSECOND
from store.book.facts.care import Treatment, Withdrawal
from store.book.facts.milk import Withholding
from store.book.facts.span import Span
from store.book.words import SaidBy
from store.round.saying import moment_words

NOT_TYPED = "how long is not typed"


class Clock(Struct, frozen=True):
    """One clock of a withholding: when it runs out, None while that is not known; and what it counts, in words."""

    ends_at: datetime | None
    words: str


class Course(Struct, frozen=True):
    """What happened to her: when she was milked, and when she calved last."""

    milked: Sequence[Span] = ()
    calving: Span | None = None


def milk_withheld(treatment: Treatment, doses: Sequence[Span], course: Course, zone: str) -> Withholding | None:
    """From the earliest of its doses until every clock has run out, each counted from the latest of the last dose.

    None without a dose, or where label or vet say nil.
    """
    if not doses or is_nil(treatment.withdrawal):
        return None
    clocks = tuple(_clocks(treatment, doses, course))
    ends = [clock.ends_at for clock in clocks if clock.ends_at]
    until = max(ends) if len(ends) == len(clocks) else None
    vet = treatment.withdrawal is not None and treatment.withdrawal.said_by is SaidBy.VET
    told = (f"last dose {moment_words(_last(doses), zone)}", *(clock.words for clock in clocks), *["vet's word"] * vet)
    return Withholding(_since_first(doses), until, f"{treatment.product}, {', '.join(told)}")


def meat_withheld(treatment: Treatment, doses: Sequence[Span], zone: str) -> Withholding | None:
    """Whole days of 24 h from the last dose on; None where no dose was given, or label or vet say nil."""
    days = treatment.withdrawal.meat_days if treatment.withdrawal else None
    if not doses or days == 0:
        return None
    last, more = _last(doses), still_to_come(treatment, doses)
    until = None if days is None or more else last + timedelta(days=days)
    told = NOT_TYPED if days is None else f"{days:g} d{_to_come(more)}"
    return Withholding(_since_first(doses), until, f"{treatment.product}, last dose {moment_words(last, zone)}, {told}")


def still_to_come(treatment: Treatment, doses: Sequence[Span]) -> int:
    """Doses that were ordered and are not given yet; none once the treatment was ended."""
    return max(treatment.doses - len(doses), 0) if treatment.in_use else 0


def _since_first(doses: Sequence[Span]) -> datetime:
    return min(each.earliest for each in doses)


def _last(doses: Sequence[Span]) -> datetime:
    return max(each.latest for each in doses)


def withdrawal_words(withdrawal: Withdrawal | None) -> str:
    """`milk 96 h and 6 milkings, meat 10 d`, as it was typed."""
    typed = withdrawal or Withdrawal()
    if typed == Withdrawal(said_by=typed.said_by):
        return NOT_TYPED
    milk = [*_figure(typed.milk_h, "h"), *_figure(typed.milkings, "milkings")]
    calved = [*_figure(typed.calved_h, "h"), *_figure(typed.calved_milkings, "milkings")]
    dry = [f"{' and '.join(calved) or NOT_TYPED} from calving on, {typed.dry_days or 0:g} d dry at least"]
    told = " and ".join(milk) or ("" if is_dry_cow(typed) else NOT_TYPED)
    parts = [*([told] if told else []), *(dry if is_dry_cow(typed) else [])]
    return f"milk {'; '.join(parts)}, meat {''.join(_figure(typed.meat_days, 'd')) or NOT_TYPED}"


def _figure(number: float | None, unit: str) -> list[str]:
    return [] if number is None else [f"{number:g} {unit}"]


def is_dry_cow(withdrawal: Withdrawal) -> bool:
    """Whether it was typed as one for dry cows: with a least dry time, or with a time from calving on."""
    return any(each is not None for each in (withdrawal.dry_days, withdrawal.calved_h, withdrawal.calved_milkings))


def is_nil(withdrawal: Withdrawal | None) -> bool:
    """Whether label or vet say that no milk is withheld at all: zero was typed, and nothing else of milk."""
    if withdrawal is None or is_dry_cow(withdrawal):
        return False
    typed = [each for each in (withdrawal.milk_h, withdrawal.milkings) if each is not None]
    return bool(typed) and not any(typed)


def _clocks(treatment: Treatment, doses: Sequence[Span], course: Course) -> Iterator[Clock]:
    last, withdrawal = _last(doses), treatment.withdrawal or Withdrawal()
    if more := still_to_come(treatment, doses):
        yield Clock(None, _to_come(more).removeprefix(", "))
    typed = tuple(_since(last, withdrawal.milk_h, withdrawal.milkings, course.milked, ""))
    dry = tuple(_dry_cow(last, withdrawal, course)) if is_dry_cow(withdrawal) else ()
    yield from typed + dry or (Clock(None, NOT_TYPED),)


def _since(
    start: datetime, milk_h: float | None, milkings: int | None, milked: Sequence[Span], more: str
) -> Iterator[Clock]:
    """The clocks of hours and of milkings that run from one moment on."""
    if milk_h is not None:
        ends_at = start + timedelta(hours=milk_h)
        yield Clock(ends_at.replace(second=0, microsecond=0), f"{milk_h:g} h{more}")
    if milkings is not None:
        yield after_milkings(start, milkings, milked, more)


def after_milkings(start: datetime, milkings: int, milked: Sequence[Span], more: str = "") -> Clock:
    """So many real milkings that were surely after a moment; each of them is withheld itself."""
    after = sorted(each.latest for each in milked if each.earliest > start)
    counted = after[:milkings]
    ends_at = (counted[-1] + MICROSECOND if counted else start) if len(counted) == milkings else None
    counts = f"{len(counted)} of {milkings}" if milkings else "no"
    return Clock(ends_at, f"{counts} milkings{more}")


def _dry_cow(last: datetime, withdrawal: Withdrawal, course: Course) -> Iterator[Clock]:
    """From calving on, or where she calved too early from the end of the least dry time on."""
    calved, days = course.calving, withdrawal.dry_days
    if days is None or (withdrawal.calved_h is None and withdrawal.calved_milkings is None):
        yield Clock(None, f"{NOT_TYPED}: dry days, and from calving on")
    elif calved is None or calved.latest <= last:
        yield Clock(None, "until she has calved, and longer")
    else:
        start = max(calved.latest, last + timedelta(days=days))
        early = f" from {days:g} d on: she calved too early, ask your vet" if start > calved.latest else " from calving"
        yield from _since(start, withdrawal.calved_h, withdrawal.calved_milkings, course.milked, early)


def _to_come(more: int) -> str:
    return f", {more} {'dose' if more == 1 else 'doses'} to come" if more else ""
