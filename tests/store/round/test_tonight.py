"""Whether a calf is shut away tonight, and when, by its own rule; and what its cow's morning asks where it was not."""

from datetime import date, datetime, timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.calves import ApartRule, Parting, Share
from store.book.snapshot import Snapshot
from store.book.turn import Turn, from_wall
from store.book.words import EVERY_NIGHT, Apart
from store.round.plan import plan
from store.round.steps import ApartStep, UdderStep
from store.round.tonight import left_in, nights_words, shut_away_at, staying
from store.round.udder import why_felt
from store.round.waiting import calves
from tests.store.round.made import animal_named, dawn, dusk, with_animal
from tests.store.round.named import apart_of, milk_of, steps_of

SUNDAY, TUESDAY = date(2026, 3, 8), date(2026, 3, 10)
NOT_SUNDAY = "1111110"
TIMES = (("morning", "06:30"), ("evening", "17:30"))


def ruled(snapshot: Snapshot, rule: ApartRule | None, *partings: Parting, born_days: int = 61) -> Snapshot:
    """A round with a rule for Rook, so many days after its birth, and a usual time for each round."""
    (share,) = snapshot.shares
    rook = replace(animal_named(snapshot, "Rook"), born_on=snapshot.turn.day - timedelta(days=born_days))
    found = replace(share, rule=rule, partings=partings or share.partings)
    return with_animal(replace(snapshot, shares=(found,), farm=replace(snapshot.farm, times=TIMES)), rook)


def wall(day: date, hour: int, minute: int = 0) -> datetime:
    """A time on the farm's wall."""
    return from_wall(datetime(day.year, day.month, day.day, hour, minute), "Europe/Dublin")  # noqa: DTZ001


def on(snapshot: Snapshot, day: date) -> Snapshot:
    """The same yard on another day."""
    return replace(snapshot, turn=Turn(day, snapshot.turn.slot))


def test_a_calf_is_shut_away_its_hours_before_the_morning_round() -> None:
    """Twelve before 06:30; never longer than the farm's longest."""
    evening = ruled(dusk(), ApartRule(12, 21))
    assert apart_of(evening, "Rook").shut_at == wall(TUESDAY, 18, 30)
    assert apart_of(ruled(dusk(), ApartRule(16, 21)), "Rook").shut_at == wall(TUESDAY, 17, 30)
    assert apart_of(ruled(dusk(), None), "Rook").shut_at is None
    (share,) = evening.shares
    assert shut_away_at(replace(evening, farm=replace(evening.farm, times=())), share) is None


@pytest.mark.parametrize(("day", "hour"), [(date(2026, 3, 28), 17), (date(2026, 10, 24), 19)])
def test_hours_apart_are_hours_that_pass_also_where_the_clock_changes(day: date, hour: int) -> None:
    """The clock goes on an hour in the one night and back in the other."""
    evening = on(ruled(dusk(), ApartRule(12, 0)), day)
    assert apart_of(evening, "Rook").shut_at == wall(day, hour, 30)


def test_a_calf_too_young_for_its_rule_stays_with_its_cow() -> None:
    """From day 21 on it is shut away; the first night is said."""
    young, old = (ruled(dusk(), ApartRule(12, 21), born_days=days) for days in (20, 21))
    assert steps_of(young, ApartStep) == []
    assert [each.why for each in staying(young)] == ["day 20 of its life, your rule begins on day 21"]
    assert staying(old) == ()
    assert not apart_of(old, "Rook").first_night
    (share,) = old.shares
    assert apart_of(replace(old, shares=(replace(share, partings=()),)), "Rook").first_night


def test_a_calf_stays_in_the_nights_that_its_rule_leaves_out() -> None:
    """Sundays; and the morning behind it expects no milk: she is felt first."""
    rule = ApartRule(12, 0, NOT_SUNDAY)
    assert steps_of(on(ruled(dusk(), rule), SUNDAY), ApartStep) == []
    monday = on(ruled(dawn(), rule, Parting(Apart.LET_IN, wall(SUNDAY, 7), None)), SUNDAY + timedelta(days=1))
    assert milk_of(monday, "Fennel").left_in == "your rule leaves it with her on Sunday nights"
    (felt,) = [step for step in steps_of(monday, UdderStep) if step.name == "Fennel"]
    assert why_felt(monday, felt.animal) == "her calf stayed with her (your rule leaves it with her on Sunday nights)"
    assert steps_of(monday, ApartStep) == []
    shut_all_the_same = Parting(Apart.SHUT_AWAY, wall(SUNDAY, 19), None)
    monday = on(ruled(dawn(), rule, shut_all_the_same), SUNDAY + timedelta(days=1))
    assert milk_of(monday, "Fennel").left_in == ""
    let_in = Parting(Apart.LET_IN, wall(SUNDAY + timedelta(days=1), 7), None)
    monday = on(ruled(dawn(), rule, let_in, shut_all_the_same), SUNDAY + timedelta(days=1))
    assert len(steps_of(monday, ApartStep)) == 1


def test_a_calf_left_with_its_cow_last_night_turns_the_milking_into_an_udder_that_is_felt() -> None:
    """As somebody wrote it; an hour apart before the milking, and she is milked as ever."""
    left = Parting(Apart.TOGETHER, wall(TUESDAY, 18, 40), None, why="storm")
    morning = ruled(dawn(), None, left)
    assert milk_of(morning, "Fennel").left_in == "storm"
    assert milk_of(morning, "Fennel").emptied_at is None
    assert milk_of(morning, "Hazel").left_in == ""
    assert "Fennel" in [step.name for step in steps_of(morning, UdderStep)]
    shut = Parting(Apart.SHUT_AWAY, wall(date(2026, 3, 11), 5), None)
    assert milk_of(ruled(dawn(), None, shut, left), "Fennel").left_in == ""
    assert milk_of(on(ruled(dawn(), None, left), date(2026, 3, 12)), "Fennel").left_in == ""


def test_of_two_cows_only_the_one_it_was_left_with_is_felt() -> None:
    """The other one was apart all night."""
    fennel, hazel = animal_named(dawn(), "Fennel"), animal_named(dawn(), "Hazel")
    left = Parting(Apart.TOGETHER, wall(TUESDAY, 18, 40), None, fennel.id, "storm")
    share = Share(fennel.id, animal_named(dawn(), "Rook").id, 13, (left,), second_cow_id=hazel.id)
    both = replace(dawn(), shares=(share,))
    assert (left_in(both, fennel), left_in(both, hazel)) == ("storm", "")
    assert [calf.calf.name for calf in milk_of(both, "Hazel").calves] == ["Rook"]


@pytest.mark.parametrize(
    ("nights", "words"),
    [
        (EVERY_NIGHT, "every night"),
        (NOT_SUNDAY, "Mon to Sat"),
        ("1010100", "Mon, Wed, Fri"),
        ("0000011", "Sat, Sun"),
        ("0000000", "no night"),
    ],
)
def test_the_nights_of_a_rule_in_words(nights: str, words: str) -> None:
    assert nights_words(nights) == words


def test_what_is_still_to_be_shut_away_tonight_comes_by_the_clock() -> None:
    """From the morning on, until it is done or left so on purpose; a night off is none."""
    rule, hour = ApartRule(12, 0, NOT_SUNDAY), wall(TUESDAY, 18, 30)
    evening = ruled(dusk(), rule, Parting(Apart.LET_IN, wall(TUESDAY, 7), None))
    morning = replace(evening, turn=Turn(TUESDAY, "morning"))
    for snapshot in (morning, evening):
        items = [item for item in calves(snapshot, plan(snapshot)) if item.words.startswith("shut")]
        assert [(item.at, item.words) for item in items] == [(hour, "shut Rook away from Fennel")]
        assert (items[0].step is not None) == (snapshot is evening)
    for state in (Apart.SHUT_AWAY, Apart.TOGETHER):
        done = ruled(dusk(), rule, Parting(state, wall(TUESDAY, 18, 20), None))
        assert not [item for item in calves(done, plan(done)) if item.words.startswith("shut")]
    assert not [item for item in calves(on(evening, SUNDAY), ()) if item.words.startswith("shut")]


def test_a_calf_that_a_long_rule_shuts_away_before_the_evening_begins_is_shut_away() -> None:
    """Eighteen hours before 06:30 it is 12:30, and this farm's evening begins at two. The morning's own hour counts."""
    noon = ruled(dusk(), ApartRule(18, 21))
    noon = replace(noon, shares=tuple(replace(each, longest_h=20) for each in noon.shares), entries=())
    noon = replace(noon, farm=replace(noon.farm, evening_from_h=14))
    for hour, minute, waits in ((12, 30, False), (6, 30, False), (6, 29, True)):
        shut = Parting(Apart.SHUT_AWAY, wall(TUESDAY, hour, minute), None)
        found = replace(noon, shares=tuple(replace(each, partings=(shut,)) for each in noon.shares))
        assert any(item.words.startswith("shut Rook") for item in calves(found, plan(found))) is waits
