"""A marked quarter through a week: asked at every milking until it was clear in two rounds running."""

from datetime import date, datetime, timedelta
from random import Random

from hypothesis import given
from hypothesis import strategies as st

from store.book.facts.milk import QuarterFound
from store.book.turn import Turn
from store.book.words import EVENING, MORNING, Quarter, Sign
from store.round.quarters import marks_of
from tests.store.round.made import unhurried

LF, RF, LH, RH = Quarter

CLOTS, HARD, HOT, TIGHT, LITTLE, SORE, CLEAR, SLACK, FULL = Sign

MONDAY = date(2026, 3, 2)

SLOT = {"morning": (MORNING, 7), "evening": (EVENING, 18)}

DAYS = {"Mon": 0, "Tue": 1, "Wed": 2, "Thu": 3, "Fri": 4}

WEEK = """
round         left hind     asks before it
Mon morning   -             -
Mon evening   hard, clots   -
Tue morning   hard          hard, clots
Tue evening   clear again   hard
Wed morning   -             hard
Wed evening   hard          hard
Thu morning   clear again   hard
Thu evening   clear again   hard
Fri morning   -             -
"""
"""On paper, by hand. `-`: nobody looked, or nothing is asked. Wednesday morning was skipped: the clear evening before
it and the hard evening after it are the rounds that count, so all begins anew; two clear rounds running end it."""


def turn_of(words: str) -> Turn:
    """`Mon evening`."""
    name, slot = words.split()
    return Turn(MONDAY + timedelta(days=DAYS[name]), SLOT[slot][0])


def seen(words: str, quarter: Quarter, *signs: Sign, minutes: int = 0) -> list[QuarterFound]:
    """What was found in a round, so many minutes after it began."""
    turn = turn_of(words)
    at = turn.begins("UTC") + timedelta(minutes=minutes)
    return [QuarterFound(quarter, sign, at, turn) for sign in signs]


def signs_of(words: str) -> tuple[Sign, ...]:
    """The signs of a cell of the table."""
    return () if words == "-" else tuple(Sign(word) for word in words.split(", "))


def rows() -> list[tuple[str, str, str]]:
    """The rows of the table."""
    return [(row[:14].strip(), row[14:28].strip(), row[28:].strip()) for row in WEEK.strip().splitlines()[1:]]


def test_the_week_on_paper_is_asked_as_a_keeper_would() -> None:
    """Row by row: what the round asks is what the rounds before it left open."""
    found: list[QuarterFound] = []
    for words, now, asked in rows():
        assert {sign for mark in marks_of(found) for sign in mark.signs} == set(signs_of(asked)), words
        found += seen(words, LH, *signs_of(now))


def test_it_is_said_since_when_and_in_how_many_rounds_running() -> None:
    """Tuesday's clear round ends the run: the hard Wednesday begins anew."""
    by_tuesday = [each for words, now, _ in rows()[:3] for each in seen(words, LH, *signs_of(now))]
    (mark,) = marks_of(by_tuesday)
    assert (mark.since, mark.at, mark.rounds) == (turn_of("Mon evening"), turn_of("Tue morning"), 2)
    by_wednesday = [each for words, now, _ in rows()[:6] for each in seen(words, LH, *signs_of(now))]
    (mark,) = marks_of(by_wednesday)
    assert (mark.since, mark.rounds, mark.clear_in) == (turn_of("Wed evening"), 1, None)


def test_two_quarters_are_followed_each_by_itself() -> None:
    """One is clear twice, the other was not looked at since."""
    found = [*seen("Mon evening", LH, HARD), *seen("Mon evening", RF, CLOTS)]
    found += [*seen("Tue morning", LH, CLEAR), *seen("Tue evening", LH, CLEAR)]
    assert [(mark.quarter, mark.signs) for mark in marks_of(found)] == [(RF, (CLOTS,))]


def test_a_mark_that_is_typed_late_is_asked_about_all_the_same() -> None:
    """Monday's clots, typed on Wednesday: the one clear round since is one, not two."""
    found = [*seen("Tue morning", LH, CLEAR), *seen("Mon evening", LH, CLOTS)]
    (mark,) = marks_of(found)
    assert (mark.since, mark.clear_in) == (turn_of("Mon evening"), turn_of("Tue morning"))
    assert marks_of([*found, *seen("Wed morning", LH, CLEAR)]) == ()


def test_clear_twice_in_one_round_is_one_round() -> None:
    """Before the milking and behind it is still the same milking."""
    found = [
        *seen("Mon evening", LH, HARD),
        *seen("Tue morning", LH, CLEAR),
        *seen("Tue morning", LH, CLEAR, minutes=9),
    ]
    assert len(marks_of(found)) == 1


def test_clots_and_then_clear_in_one_milking_are_asked_about_once_more() -> None:
    """The mark stands; that round is its first clear one."""
    found = [*seen("Mon evening", LH, CLOTS), *seen("Mon evening", LH, CLEAR, minutes=9)]
    assert len(marks_of(found)) == 1
    assert marks_of([*found, *seen("Tue morning", LH, CLEAR)]) == ()


def test_how_full_it_is_neither_marks_nor_clears() -> None:
    """Slack and full are only told."""
    found = [*seen("Mon evening", LH, HARD), *seen("Tue morning", LH, FULL), *seen("Tue evening", LH, SLACK)]
    assert [mark.rounds for mark in marks_of(found)] == [1]
    assert marks_of(seen("Mon evening", LH, FULL)) == ()


FOUND = st.builds(
    lambda day, slot, quarter, signs, minutes: [
        QuarterFound(quarter, sign, datetime.fromisoformat(f"2026-03-0{day}T{SLOT[slot][1]:02}:{minutes:02}Z"),
                     Turn(date(2026, 3, day), slot)) for sign in signs],
    st.integers(2, 6), st.sampled_from([MORNING, EVENING]), st.sampled_from(Quarter),
    st.sets(st.sampled_from(Sign), min_size=1, max_size=3), st.integers(0, 59),
)  # fmt: skip


@unhurried
@given(st.lists(FOUND, max_size=12), st.randoms())
def test_in_which_order_it_was_typed_does_not_matter(found: list[list[QuarterFound]], chance: Random) -> None:
    """Any order of the same findings leaves the same marks open."""
    told = [each for look in found for each in look]
    other = list(told)
    chance.shuffle(other)
    assert marks_of(told) == marks_of(other)


@unhurried
@given(st.lists(FOUND, min_size=1, max_size=12))
def test_two_clear_rounds_at_the_end_always_end_it_and_one_never_does(found: list[list[QuarterFound]]) -> None:
    """Whatever was found before."""
    told = [each for look in found for each in look]
    once = [QuarterFound(quarter, CLEAR, at_end(7), Turn(date(2026, 3, 7), MORNING)) for quarter in Quarter]
    twice = [QuarterFound(quarter, CLEAR, at_end(8), Turn(date(2026, 3, 8), MORNING)) for quarter in Quarter]
    assert {mark.quarter for mark in marks_of([*told, *once])} <= {mark.quarter for mark in marks_of(told)}
    assert marks_of([*told, *once, *twice]) == ()
    fresh = {mark.quarter for mark in marks_of(told) if mark.clear_in is None}
    assert fresh <= {mark.quarter for mark in marks_of([*told, *once])}


def at_end(day: int) -> datetime:
    """After everything that is drawn."""
    return datetime.fromisoformat(f"2026-03-0{day}T07:00Z")
