"""Where the milk of a paper week went, by hand: each cow's yield is kept, and what is mixed counts as its worst."""

import re
from collections.abc import Iterable
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from store.book.facts.milk import Withholding
from store.book.facts.span import span
from store.book.figures import CooledFigure
from store.book.reading.milk import MilkRound, Use
from store.book.snapshot import Snapshot
from store.book.words import Fate, Kind, State
from store.round.amount import Unreadable
from store.round.cool import cooled, is_late, since_first
from store.round.jars import jars, used_up
from store.round.measured import milked
from store.round.pails import FOR_PEOPLE, Pailful, Went, by_use, mixed, poured, went, withheld_in
from store.round.plan import plan
from store.round.steps import CoolStep
from store.round.summary import summarise
from tests.farm import MORNING
from tests.store.round.made import animal_named, dawn, hand, some_id, unhurried, wrote
from tests.store.round.named import milk_of, step_of

MONDAY = datetime(2026, 3, 2, 6, 30, tzinfo=UTC)
TREATED = Withholding(MONDAY - timedelta(hours=12), None, "udder tube")

PAPER = """
 day  cow      kg     put to         poured into   withheld   counts as
 Mon  Fennel    5.0   thrown away    Hazel         yes        thrown away
 Mon  Hazel     6.8   house          -             -          thrown away
 Tue  Fennel    5.2   house          Hazel         -          house
 Tue  Hazel     7.0   house          -             -          house
 Wed  Briar     4.1   calves         Fennel        -          calves
 Wed  Fennel    5.5   house          Hazel         -          calves
 Wed  Hazel     6.9   sold or given  -             -          calves
 Thu  Briar     4.0   house          Hazel         -          other animals
 Thu  Fennel    5.1   calves         -             -          calves
 Thu  Hazel     6.6   other animals  -             -          other animals
 Fri  Fennel    5.3   house          -             yes        thrown away
 Fri  Hazel     7.1   sold or given  -             -          sold or given
 Sat  Fennel    5.0   house          Hazel         -          sold or given
 Sat  Hazel     7.2   sold or given  -             -          sold or given
"""
"""Mon: 5.0 kg withheld into 6.8 kg clean. Wed: three pails, one after the other. Fri: the treatment is typed late."""
ROWS = [re.split(r"\s{2,}", line.strip()) for line in PAPER.strip().splitlines()[1:]]


def day_of(day: str) -> list[list[str]]:
    """The lines of one day."""
    return [row for row in ROWS if row[0] == day]


def pailful(row: list[str]) -> Pailful:
    """A line of the paper, without what it counts as."""
    _, cow, kg, put, into, withheld, _ = row
    into_ids = () if into == "-" else (some_id(into),)
    held = TREATED if withheld == "yes" else None
    return Pailful(some_id(cow), some_id(f"cow {cow}"), span(MONDAY), float(kg), Fate(put), held, into_ids)


def counted(day: str) -> tuple[Went, ...]:
    """A day's pails, where they went."""
    return mixed([pailful(row) for row in day_of(day)])


@pytest.mark.parametrize("day", ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat"])
def test_each_day_of_the_paper_counts_as_it_says(day: str) -> None:
    assert [each.use.value for each in counted(day)] == [row[6] for row in day_of(day)]
    assert [each.pailful.milk_kg for each in counted(day)] == [float(row[2]) for row in day_of(day)]


def test_five_kilograms_withheld_in_almost_seven_are_almost_twelve_thrown_away() -> None:
    """5.0 + 6.8 = 11.8 kg; and each cow gave what she gave."""
    assert by_use(counted("Mon")) == {Fate.THROWN_AWAY: 11.8}
    assert [each.pailful.milk_kg for each in counted("Mon")] == [5.0, 6.8]


def test_only_what_was_put_to_people_before_it_was_known_is_unsafe() -> None:
    """On Monday it was known, and nobody drank of it; on Friday it went to the house."""
    assert [each.unsafe for each in counted("Mon")] == [False, False]
    assert [each.unsafe for each in counted("Fri")] == [True, False]


def test_a_chain_stays_one_when_the_pail_between_is_open_again() -> None:
    """Briar's and Hazel's milk were both in it, whatever is written of Fennel's now."""
    briar, fennel, hazel = (pailful(row) for row in day_of("Wed"))
    hazel = replace(hazel, into=(fennel.step_id,))
    assert [each.use for each in mixed([briar, hazel])] == [Fate.CALVES, Fate.CALVES]


def milked_in(found: Snapshot, name: str, typed: str, fate: Fate, into: Iterable[str] = ()) -> Snapshot:
    """A cow was milked, and her pail poured into others."""
    draft = milked(hand(found), milk_of(found, name), typed, fate)
    return wrote(found, poured(draft, [milk_of(found, each).step_id for each in into]))


def test_a_round_says_once_where_its_milk_went() -> None:
    """The same paper's Monday as keys: the 1.4 kg of the steel pail are not milk."""
    treated = (Withholding(MORNING - timedelta(days=1), None, "udder tube"),)
    found = replace(dawn(), withheld={animal_named(dawn(), "Fennel").id: treated})
    found = milked_in(milked_in(found, "Fennel", "6.4", Fate.THROWN_AWAY, ["Hazel"]), "Hazel", "8.2", Fate.HOUSE)
    (total,) = summarise(found, plan(found)).milk
    assert (total.fate, round(total.milk_kg, 3), total.cows) == (Fate.THROWN_AWAY, 11.8, ("Hazel", "Fennel"))


def test_a_pail_that_is_corrected_to_stand_alone_is_alone() -> None:
    """The newest entry of a step counts, for this too."""
    found = milked_in(milked_in(dawn(), "Fennel", "6.4", Fate.CALVES, ["Hazel"]), "Hazel", "8.2", Fate.HOUSE)
    assert [total.fate for total in summarise(found, plan(found)).milk] == [Fate.CALVES]
    found = milked_in(found, "Fennel", "6.4", Fate.CALVES)
    assert [total.fate for total in summarise(found, plan(found)).milk] == [Fate.HOUSE, Fate.CALVES]


EVENING = datetime(2026, 3, 2, 16, 50, tzinfo=UTC)


def iced(found: Snapshot, late_h: float, fate: Fate | None) -> Snapshot:
    """Hazel's 6.8 kg at 16:50 to the house, Fennel's 5.0 kg to the calves; in ice so many hours later."""
    at = replace(hand(found), now=EVENING)
    found = wrote(found, milked(at, milk_of(found, "Hazel"), "8.2", Fate.HOUSE))
    found = wrote(
        found, milked(replace(at, now=EVENING - timedelta(hours=1)), milk_of(found, "Fennel"), "6.4", Fate.CALVES)
    )
    return wrote(found, cooled(replace(at, now=EVENING + timedelta(hours=late_h)), cool_of(found), fate))


def cool_of(found: Snapshot) -> CoolStep:
    """The milk into ice."""
    return step_of(found, CoolStep, "Milk")


def uses(found: Snapshot) -> list[tuple[str, float]]:
    """What went where. [kg]"""
    return [(total.fate.value, round(total.milk_kg, 3)) for total in summarise(found, plan(found)).milk]


def test_ten_to_five_to_twenty_past_six_is_an_hour_and_a_half_and_late() -> None:
    """From the first pail that is for people: what the calves drank an hour before has no hurry."""
    step = cool_of(iced(dawn(), 1.5, Fate.HOUSE))
    assert step.within_min == 30.0
    assert step.entry
    assert since_first(step, step.entry.happened_at) == timedelta(hours=1, minutes=30)
    assert is_late(step, EVENING + timedelta(minutes=31))
    assert not is_late(step, EVENING + timedelta(minutes=30))


@pytest.mark.parametrize(
    ("fate", "want"),
    [
        (Fate.HOUSE, [("house", 6.8), ("calves", 5.0)]),
        (Fate.CALVES, [("calves", 11.8)]),
        (Fate.OTHER_ANIMALS, [("calves", 5.0), ("other animals", 6.8)]),
        (Fate.THROWN_AWAY, [("calves", 5.0), ("thrown away", 6.8)]),
    ],
)
def test_what_is_late_is_asked_about_and_goes_where_it_is_said(fate: Fate, want: list[tuple[str, float]]) -> None:
    """Only what was for people: the calves' milk stays theirs."""
    assert uses(iced(dawn(), 1.5, fate)) == want


def test_late_milk_is_not_written_without_what_becomes_of_it() -> None:
    with pytest.raises(Unreadable, match="What becomes of it"):
        iced(dawn(), 1.5, None)


def test_in_time_nothing_is_asked_and_each_pail_goes_where_it_says() -> None:
    found = iced(dawn(), 0.5, Fate.THROWN_AWAY)
    assert found.entries[-1].the(CooledFigure) == CooledFigure(None)
    assert uses(found) == [("house", 6.8), ("calves", 5.0)]


def test_a_round_of_which_no_milk_is_for_people_puts_none_into_ice() -> None:
    """As long as a cow is to be milked it may still be; and what is in ice stays written."""
    found = milked_in(dawn(), "Fennel", "6.4", Fate.CALVES)
    assert cool_of(found).first_at is None
    assert all(step.kind is not Kind.COOL for step in plan(milked_in(found, "Hazel", "8.2", Fate.CALVES)))
    kept = iced(dawn(), 0.5, None)
    assert cool_of(milked_in(kept, "Hazel", "8.2", Fate.CALVES)).state is State.DONE


COWS = ("Briar", "Fennel", "Hazel", "Sorrel")
PAILS = st.lists(
    st.tuples(
        st.integers(0, 200).map(lambda tenths: tenths / 10),
        st.sampled_from(Fate),
        st.booleans(),
        st.lists(st.sampled_from(COWS), max_size=2),
    ),
    max_size=len(COWS),
)


def pailfuls(pails: list[tuple[float, Fate, bool, list[str]]]) -> list[Pailful]:
    """One for each cow."""
    return [
        Pailful(
            some_id(cow),
            some_id(f"cow {cow}"),
            span(MONDAY),
            kg,
            fate,
            TREATED if held else None,
            tuple(map(some_id, into)),
        )
        for cow, (kg, fate, held, into) in zip(COWS, pails, strict=False)
    ]


@unhurried
@given(PAILS, st.none() | st.sampled_from(Fate))
def test_the_uses_add_up_to_the_pails(pails: list[tuple[float, Fate, bool, list[str]]], cooled: Fate | None) -> None:
    """Each pail is in one use, whole."""
    found = mixed(pailfuls(pails), cooled)
    assert [each.pailful for each in found] == pailfuls(pails)
    assert sum(by_use(found).values()) == pytest.approx(sum(kg for kg, *_ in pails))


@unhurried
@given(PAILS, st.none() | st.sampled_from(Fate))
def test_withheld_milk_is_never_for_people(
    pails: list[tuple[float, Fate, bool, list[str]]], cooled: Fate | None
) -> None:
    """Nor is anything that it was poured together with, wherever it was put."""
    for each in mixed(pailfuls(pails), cooled):
        assert each.use not in FOR_PEOPLE or not any(one.withheld for one in each.mixed)
        assert each.unsafe == (each.put in FOR_PEOPLE and each.use is Fate.THROWN_AWAY)


TYPED = st.permutations(
    [
        ("Fennel", "6.4", Fate.CALVES, ["Hazel"]),
        ("Hazel", "8.2", Fate.HOUSE, []),
        ("Hazel", "7.9", Fate.SOLD_OR_GIVEN, []),
    ]
)


@unhurried
@given(TYPED, st.booleans())
def test_the_order_of_typing_changes_no_use(typed: list[tuple[str, str, Fate, list[str]]], known: bool) -> None:
    """Who was typed first, and whether it was known before or after that a cow is treated."""
    treated = {animal_named(dawn(), "Fennel").id: (Withholding(MORNING - timedelta(days=1), None, "udder tube"),)}
    found = dawn()
    for name, kg, fate, into in typed:
        found = milked_in(found, name, kg, fate, into)
    found = replace(found, withheld=treated if known else {})
    pails = went(reversed(found.counts().values()), withheld_in(found, plan(found)))
    want = Fate.THROWN_AWAY if known else Fate.CALVES
    assert {each.use for each in pails} == {want}


def test_what_is_kept_is_a_jar_until_it_is_used_up() -> None:
    """Hazel's 6.8 kg, iced an hour and a half late and kept; what the calves had is no jar."""
    found = iced(dawn(), 1.5, Fate.HOUSE)
    treated = {animal_named(found, "Hazel").id: (Withholding(EVENING - timedelta(days=1), None, "udder tube"),)}
    rounds = [MilkRound(found.turn, tuple(found.counts().values()))]
    (jar,) = jars(rounds, {}, 30.0, {})
    assert (jar.went.pailful.cow_id, jar.cold_after) == (
        animal_named(found, "Hazel").id,
        timedelta(hours=1, minutes=30),
    )
    assert (jar.late, jar.used_up, jar.went.unsafe) == (True, False, False)
    (unsafe,) = jars(rounds, treated, 30.0, {})
    assert unsafe.went.unsafe
    draft = used_up(found.people[0].id, EVENING, jar)
    assert (draft.step_id, draft.state) == (jar.step_id, State.DONE)
    (gone,) = jars(rounds, {}, 30.0, {jar.step_id: Use(some_id("used up"), used_up=True)})
    assert gone.used_up
    assert used_up(found.people[0].id, EVENING, gone).state is State.OPEN
