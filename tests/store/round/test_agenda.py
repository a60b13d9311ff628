"""What comes by the clock between rounds, worked by hand on the small farm. In March its wall clock shows UTC."""

from collections.abc import Iterable, Iterator
from datetime import UTC, date, datetime, timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.facts.calves import Parting, Share
from store.book.facts.care import Treatment, Withdrawal
from store.book.facts.milk import Withholding
from store.book.facts.span import span
from store.book.figures import MilkedFigure
from store.book.reading.watches import Watch
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import EVENING, MIDDAY, MORNING, NIGHT, Apart, Fate, State
from store.round.agenda import NOTHING, Besides, agenda, all_coming
from store.round.confirm import done, draft, parted, skipped
from store.round.item import Item
from store.round.measured import not_milked
from store.round.plan import plan
from store.round.steps import ApartStep, DoseStep, MilkStep, SoakCheckStep, SoakStartStep, Step
from store.round.withholding import first_to_keep, first_turn_to_keep
from tests.farm import MORNING as SIX_31
from tests.store.round.made import animal_named, dawn, hand, some_id, wrote

TIMES = ((MORNING, "06:30"), (EVENING, "17:10"))
H = timedelta(hours=1)


def timed() -> Snapshot:
    """The small farm's morning; the farm has said when its rounds begin. Nobody is treated."""
    return replace(dawn(), farm=replace(dawn().farm, times=TIMES), treatments=())


def at(hour: int, minute: int = 0, day: int = 11) -> datetime:
    """An hour of the pretend day."""
    return datetime(2026, 3, day, hour, minute, tzinfo=UTC)


def told(snapshot: Snapshot, now: datetime, besides: Besides = NOTHING) -> list[str]:
    """The agenda as one would write it on the wall; what is late has a sign."""
    items = agenda(all_coming(snapshot, plan(snapshot), besides), now)
    return [f"{item.at:%d %H:%M} {item.words}{' !' if item.is_late(now) else ''}" for item in items]


def a_step(snapshot: Snapshot, kind: type[Step]) -> Step:
    """The first step of a class."""
    return next(step for step in plan(snapshot) if isinstance(step, kind))


def with_calf(snapshot: Snapshot, *partings: Parting, longest_h: float = 13) -> Snapshot:
    """The morning with something else known of Rook."""
    share: Share = replace(snapshot.shares[0], partings=partings, longest_h=longest_h)
    return replace(snapshot, shares=(share,))


def test_a_morning_before_anything_is_written() -> None:
    """Rook was shut away at 18:02 for at most 13 h; lucerne soaks since 18:10, at most 16 h, and needs 5 h."""
    assert told(timed(), SIX_31) == [
        "11 06:30 morning round !",
        "11 07:02 let Rook in to Fennel at the latest",
        "11 10:10 lucerne pellets: to be fed by then, your limit",
        "11 12:10 start soak by then: lucerne pellets",
        "11 17:10 evening round",
    ]


def test_what_was_done_leaves_the_list_and_what_it_set_going_comes() -> None:
    """Put to soak at 6:33: soft at 11:33, to be fed by 22:33."""
    morning = timed()
    for kind in (SoakCheckStep, SoakStartStep):
        morning = wrote(morning, done(hand(morning), a_step(morning, kind)))
    step = a_step(morning, ApartStep)
    assert isinstance(step, ApartStep)
    morning = wrote(morning, parted(hand(morning), step))
    assert told(morning, at(8)) == [
        "11 11:33 lucerne pellets: soaked long enough",
        "11 17:10 evening round",
        "11 22:33 lucerne pellets: to be fed by then, your limit",
    ]
    assert told(morning, at(12)) == [
        "11 17:10 evening round", "11 22:33 lucerne pellets: to be fed by then, your limit",
    ]  # fmt: skip


def test_a_soak_that_is_late_stands_on_top() -> None:
    morning = with_calf(timed())
    morning = wrote(morning, done(hand(morning), a_step(morning, SoakCheckStep)))
    assert told(morning, at(12, 9))[0] == "11 12:10 start soak by then: lucerne pellets"
    assert told(morning, at(12, 10))[0] == "11 12:10 start soak by then: lucerne pellets !"


def test_nothing_in_the_bucket_is_asked_for_until_this_round_begins() -> None:
    """Nothing soaks for the morning round at 6:30: by 1:30 it should have."""
    empty = replace(timed(), batches={}, shares=())
    assert told(empty, at(2))[:2] == [
        "11 01:30 start soak by then: lucerne pellets !",
        "11 06:30 morning round",
    ]


def test_without_times_of_the_rounds_only_what_runs_is_told() -> None:
    assert told(replace(dawn(), treatments=()), SIX_31) == [
        "11 07:02 let Rook in to Fennel at the latest", "11 10:10 lucerne pellets: to be fed by then, your limit",
    ]  # fmt: skip


def test_where_nothing_is_known_nothing_is_told() -> None:
    nothing = replace(dawn(), shares=(), batches={}, treatments=(), soak_limits={})
    assert told(nothing, SIX_31) == []


@pytest.mark.parametrize("state", [Apart.LET_IN, Apart.GOT_OUT, Apart.TOGETHER, None])
def test_a_calf_that_is_not_shut_away_waits_for_nothing(state: Apart | None) -> None:
    assert not [row for row in told(with_calf(timed(), Parting(state, at(5), None)), SIX_31) if "Rook" in row]


def test_a_calf_past_its_limit_is_late() -> None:
    overdue = with_calf(timed(), Parting(Apart.SHUT_AWAY, at(17, day=10), None))
    assert told(overdue, SIX_31)[0] == "11 06:00 let Rook in to Fennel at the latest !"


def test_in_the_evening_a_calf_that_was_never_let_in_leads_to_no_latch_but_to_the_round_that_asks() -> None:
    """The evening's own step shuts away: its clock would begin anew. Shut away since, the next morning asks for it."""
    evening = replace(timed(), turn=Turn(date(2026, 3, 11), EVENING))
    (row,) = (item for item in agenda(all_coming(evening, plan(evening)), at(12, 31)) if "let Rook in" in item.words)
    assert (row.step, row.missed) == (None, Turn(date(2026, 3, 11), MORNING))
    for shut_at in (at(6, 30), at(18)):
        shut = with_calf(evening, Parting(Apart.SHUT_AWAY, shut_at, None))
        (row,) = (item for item in agenda(all_coming(shut, plan(shut)), at(18)) if "let Rook in" in item.words)
        assert (row.step, row.missed) == (None, None)


def test_over_a_clock_change_hours_are_hours() -> None:
    """On 29 March 2026 Dublin goes on by an hour at 01:00 UTC: 06:30 there is 05:30 UTC, so 5 h before is 00:30."""
    evening = replace(timed(), turn=Turn(date(2026, 3, 28), EVENING), batches={})
    assert evening.farm.round_begins(Turn(date(2026, 3, 29), MORNING)) == datetime(2026, 3, 29, 5, 30, tzinfo=UTC)
    shut = with_calf(evening, Parting(Apart.SHUT_AWAY, datetime(2026, 3, 28, 18, tzinfo=UTC), None))
    rows = told(shut, datetime(2026, 3, 28, 19, tzinfo=UTC))
    assert "29 00:30 start soak by then: lucerne pellets" in rows
    assert "29 07:00 let Rook in to Fennel at the latest" in rows


def treated(given: Iterable[datetime] = (), *, in_use: bool = True) -> Snapshot:
    """Sloe has three doses of a spray, twelve hours apart, from seven in the morning on."""
    first = at(7) if not given else min(given)
    spray = Treatment(
        some_id("spray"), animal_named(dawn(), "Sloe").id, "foot spray", "cover the sole", "on the foot", "lame", "",
        3, 12, first, tuple(map(span, given)), in_use,
    )  # fmt: skip
    return replace(with_calf(timed()), treatments=(spray,))


def doses(snapshot: Snapshot, now: datetime = SIX_31) -> list[str]:
    """Of the agenda, what is about doses."""
    return [row for row in told(snapshot, now) if "dose" in row]


def test_a_dose_is_told_when_it_is_due_and_then_the_next() -> None:
    morning = treated()
    assert doses(morning) == ["11 07:00 Sloe: foot spray, dose 1 of 3"]
    given = wrote(morning, done(hand(morning), a_step(morning, DoseStep)))
    assert doses(given) == ["11 18:32 Sloe: foot spray, dose 2 of 3"]


def test_a_dose_that_was_skipped_or_is_ended_or_over_is_not_told() -> None:
    morning = treated()
    step = a_step(morning, DoseStep)
    assert doses(wrote(morning, skipped(hand(morning), step, "ring the vet first"))) == []
    assert doses(treated(in_use=False)) == []
    assert doses(treated([at(5), at(17, day=10), at(5, day=10)])) == []


def test_the_last_of_three_doses_falls_due_in_the_evening() -> None:
    assert doses(treated([at(6, 10), at(18, day=10)])) == ["11 18:10 Sloe: foot spray, dose 3 of 3"]


@pytest.mark.parametrize(
    ("ends", "rows"),
    [
        ([at(18, 20)], ["12 06:30 Hazel's milk: the first that may be kept"]),
        ([at(18, 20), at(7, day=12)], ["12 17:10 Hazel's milk: the first that may be kept"]),
        ([at(18, 20, day=12), None], []),
        ([at(6)], []),
        ([], []),
    ],
)
def test_milk_that_is_withheld_is_told_by_the_first_milking_behind_it(
    ends: list[datetime | None], rows: list[str]
) -> None:
    """Hazel is milked in every round; the milking of this one is not kept."""
    hazel = animal_named(dawn(), "Hazel").id
    withheld = tuple(Withholding(at(6, day=10), end, "typed") for end in ends)
    morning = replace(timed(), withheld={hazel: withheld})
    milk = next(step for step in plan(morning) if isinstance(step, MilkStep) and step.name == "Hazel")
    milked = wrote(morning, draft(hand(morning), milk, State.DONE, (MilkedFigure(8.5, fate=Fate.THROWN_AWAY),)))
    assert [row for row in told(milked, at(7)) if "Hazel" in row] == rows


def test_midday_and_night_come_at_their_hour_until_it_is_too_late_for_them() -> None:
    """A midday round can be walked until 16:00, a night round until 5:00."""
    step = a_step(timed(), ApartStep)
    besides = Besides(between=((Turn(date(2026, 3, 11), MIDDAY), (step,)), (Turn(date(2026, 3, 10), NIGHT), (step,))))
    rows = {hour: [row for row in told(timed(), at(hour), besides) if row.endswith(("Rook", "Rook !"))]
            for hour in (4, 6, 12, 16)}  # fmt: skip
    assert rows == {
        4: ["10 22:00 Rook !", "11 12:00 Rook"], 6: ["11 12:00 Rook"], 12: ["11 12:00 Rook !"], 16: [],
    }  # fmt: skip


def test_what_is_looked_at_again_comes_at_its_time_with_its_own_words() -> None:
    sloe = Subject(animal_id=animal_named(dawn(), "Sloe").id)
    ids = (some_id("entry"), some_id("step"))
    watches = (
        Watch(*ids, sloe, at(6), "left hind foot", at(8, 30), at(9)),
        Watch(*ids, Subject(), at(6), "the water in Long field", at(6, 15)),
    )
    rows = told(replace(dawn(), shares=(), batches={}, treatments=()), SIX_31, Besides(watches=watches))
    assert rows == ["11 06:15 look again: the water in Long field !", "11 08:30 look again at Sloe: left hind foot"]


def test_a_thing_with_some_time_for_it_is_due_from_its_beginning_and_late_behind_its_end() -> None:
    item = Item(at(8, 30), "look again", until=at(9))
    found = [(item.is_due(now), item.is_late(now)) for now in (at(8, 29), at(8, 30), at(8, 59), at(9))]
    assert found == [(False, False), (True, False), (True, False), (True, True)]


def test_what_only_comes_is_never_late() -> None:
    item = Item(SIX_31, "Hazel's milk: first that may be kept", asks=False)
    assert not item.is_late(SIX_31 + H)


def test_the_first_milk_to_keep_counts_milkings_by_her_rhythm_and_none_that_the_calf_had() -> None:
    """One milking more is withheld: this one where she is milked, else the next; every other one is in the morning."""
    morning = in_milk(1)
    step = next(each for each in plan(morning) if isinstance(each, MilkStep) and each.name == "Hazel")
    pail = draft(hand(morning), step, State.DONE, (MilkedFigure(8.5, fate=Fate.THROWN_AWAY),))
    assert first_milk(wrote(morning, pail)) == ["11 17:10"]
    assert first_milk(wrote(morning, not_milked(hand(morning), step, "the calf had it"))) == ["12 06:30"]
    assert first_milk(wrote(in_milk(2), pail)) == ["12 06:30"]


def test_the_first_milk_to_keep_is_the_same_on_bench_and_card_and_before_and_behind_the_pail() -> None:
    morning = in_milk(1)
    step = next(each for each in plan(morning) if isinstance(each, MilkStep) and each.name == "Hazel")
    milked = wrote(morning, draft(hand(morning), step, State.DONE, (MilkedFigure(8.5, fate=Fate.THROWN_AWAY),)))
    for found in (morning, milked):
        assert first_milk(found) == ["11 17:10"]
        assert first_turn_to_keep(found, step.animal.id, SIX_31) == Turn(date(2026, 3, 11), EVENING)


def test_a_cow_planned_twice_a_day_is_reckoned_so_from_her_first_milking_on() -> None:
    """Never milked before; this pail and one more are withheld: the evening is, the next morning is not."""
    found = in_milk(1)
    (tube,), (hazel,) = found.treatments, found.milkings
    twice = replace(found.milkings[hazel], pails_before=(), slots=frozenset({MORNING, EVENING}))
    new = replace(
        found, milkings={hazel: twice}, pails={}, treatments=(replace(tube, withdrawal=Withdrawal(milkings=2)),)
    )
    assert first_milk(new) == ["12 06:30"]


def in_milk(every: int) -> Snapshot:
    """Hazel, milked in every round before, got a dose yesterday; one milking behind it is withheld."""
    hazel = animal_named(dawn(), "Hazel").id
    tube = Treatment(
        some_id("tube"), hazel, "tube", "", "", "", "", 1, 24, at(22, day=10), (span(at(22, day=10)),),
        withdrawal=Withdrawal(milkings=1),
    )  # fmt: skip
    milkings = {hazel: replace(timed().milkings[hazel], every=every)}
    return replace(timed(), treatments=(tube,), milkings=milkings)


def first_milk(snapshot: Snapshot) -> list[str]:
    """When the first milk of hers that may be kept comes."""
    return [row[:8] for row in told(snapshot, at(7)) if "Hazel's milk" in row]


def test_milkings_to_come_are_asked_for_only_until_one_may_be_kept() -> None:
    """A card that is painted at every digit would else reckon two months of them."""
    hazel = animal_named(dawn(), "Hazel").id
    asked: list[datetime] = []

    def coming() -> Iterator[datetime]:
        for hours in range(0, 240, 12):
            asked.append(at(6, 30) + hours * H)
            yield asked[-1]

    short = replace(timed(), withheld={hazel: (Withholding(at(6, day=10), at(18), "typed"),)})
    assert first_to_keep(short, hazel, coming()) == at(18, 30)
    assert len(asked) == 2
    for_good = replace(timed(), withheld={hazel: (Withholding(at(6, day=10), None, "typed"),)})
    assert first_to_keep(for_good, hazel, coming()) is None
    assert len(asked) == 2
