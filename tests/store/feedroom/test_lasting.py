"""Days left, the first short round, and the day by which to order."""

from datetime import UTC, date, datetime, timedelta
from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.needs import Need, NeedRow, Needs
from store.book.opening import Book
from store.book.reading.needs import read_needs
from store.book.records.feeding import FeedPlan
from store.book.records.yard import Standing
from store.book.turn import Turn, turn_at
from store.book.words import EVENING, MORNING, State, Units
from store.feedroom.lasting import (
    LOOK_AHEAD,
    MORE_THAN_A_YEAR,
    NOT_PLANNED,
    days_left,
    days_left_of,
    days_left_words,
)
from tests.farm import MORNING as DAWN
from tests.farm import HandClock
from tests.store.book.seeing import put
from tests.store.feedroom.made import (
    HAY,
    LUCERNE,
    NUTS_NAME,
    THIS_EVENING,
    THIS_MORNING,
    fed_draft,
    feed,
    named,
    the_stock,
    weigh,
)

TUESDAY = date(2026, 3, 10)
NUTS_AM_KG, NUTS_PM_KG = 2.7 + 2.0 + 0.34 + 1.0125, 2.025 + 1.35  # feed_plan.csv of the small farm


def five_and_six(turn: Turn) -> float:
    """5.0 kg in the evening, 6.0 in the morning."""
    return 5.0 if turn.slot == EVENING else 6.0


def test_after_tuesdays_morning_round() -> None:
    """76.5 kg: 13 rounds take 71.0, of the 6.0 on Tuesday morning 5.5 are there; ordered three days before."""
    left = days_left(76.5, Turn(TUESDAY, EVENING), five_and_six, lead_days=3)
    assert (left.days, left.short, left.order_by) == (6, Turn(date(2026, 3, 17), MORNING), date(2026, 3, 14))
    assert left.short_kg == pytest.approx(0.5)
    said = days_left_words(left, TUESDAY, Units.METRIC)
    assert said == "6 full days; short by 0.50 kg on Tuesday morning next week; order by Saturday"


def test_without_a_lead_time_no_day_is_said() -> None:
    """Nobody guesses how long a merchant takes."""
    left = days_left(76.5, Turn(TUESDAY, EVENING), five_and_six)
    assert left.order_by is None
    assert days_left_words(left, TUESDAY, Units.US).endswith("short by 1.1 lb on Tuesday morning next week")


def test_what_is_short_this_evening_is_ordered_today() -> None:
    """The day by which to order is over."""
    left = days_left(4.0, Turn(TUESDAY, EVENING), five_and_six, lead_days=3)
    assert left.order_by == date(2026, 3, 7)
    assert days_left_words(left, TUESDAY, Units.METRIC) == "0 full days; short by 1.0 kg this evening; order today"


def test_one_day_is_one_day() -> None:
    """And the weekday of this week needs no more words."""
    left = days_left(21.0, Turn(TUESDAY, EVENING), five_and_six)
    assert days_left_words(left, TUESDAY, Units.METRIC) == "1 full day; short by 1.0 kg on Thursday morning"


def test_more_than_a_year_is_not_counted() -> None:
    """Looking ahead ends after 400 days."""
    left = days_left(11.0 * LOOK_AHEAD.days, Turn(TUESDAY, EVENING), five_and_six)
    assert left.short is None
    assert days_left_words(left, TUESDAY, Units.METRIC) == MORE_THAN_A_YEAR
    assert days_left(11.0 * LOOK_AHEAD.days - 1, Turn(TUESDAY, EVENING), five_and_six).short is not None


def test_a_feed_that_no_round_takes() -> None:
    """It lasts, and that is said otherwise."""
    left = days_left(25.0, Turn(TUESDAY, EVENING), lambda _: 0.0)
    assert days_left_words(left, TUESDAY, Units.METRIC) == NOT_PLANNED


QUARTERS = st.integers(1, 80).map(lambda number: number / 4)


@given(st.integers(0, 4000).map(lambda number: number / 4), QUARTERS, QUARTERS)
def test_the_short_round_is_the_first_that_is_not_covered(there: float, evening: float, morning: float) -> None:
    """Walked by hand, round by round; quarters of a kilogram add up exactly."""
    needs = {EVENING: evening, MORNING: morning}
    left = days_left(there, Turn(TUESDAY, EVENING), lambda turn: needs[turn.slot])
    turn, rounds = Turn(TUESDAY, EVENING), 0
    while there >= needs[turn.slot] and rounds < 2 * LOOK_AHEAD.days:
        there, turn, rounds = there - needs[turn.slot], turn.after(), rounds + 1
    assert left.days == rounds // 2
    assert left.short == (turn if rounds < 2 * LOOK_AHEAD.days else None)
    assert left.short_kg == (needs[turn.slot] - there if left.short else None)


def test_the_plans_say_what_a_round_takes(room: Book) -> None:
    """Each animal with its own plan; hay for each head that stands in the pen."""
    needs = read_needs(room.desk, room.clock.now())
    nuts, hay = named(room, NUTS_NAME), named(room, HAY)
    assert needs.turn == THIS_MORNING
    assert needs.kg(nuts, THIS_MORNING) == pytest.approx(NUTS_AM_KG)
    assert needs.kg(nuts, THIS_EVENING) == pytest.approx(NUTS_PM_KG)
    before = needs.kg(hay, THIS_EVENING)
    put(room.desk, Standing, animal_id=named(room, "Fennel"), pen_id=None, begins_at=room.clock.now())
    assert read_needs(room.desk, room.clock.now()).kg(hay, THIS_EVENING) == pytest.approx(before - 4.1)


def test_a_round_that_is_fed_takes_nothing_more(room: Book) -> None:
    """Nor what was skipped; what was moved on or undone is still to be fed."""
    nuts = named(room, NUTS_NAME)
    feed(room, 9.0)
    assert read_needs(room.desk, room.clock.now()).kg(nuts, THIS_MORNING) == pytest.approx(NUTS_AM_KG - 2.7)
    for who, state in (("Hazel", State.SKIPPED), ("Rook", State.MOVED_ON), ("Sloe", State.DONE)):
        draft = fed_draft(room, None, who=who)
        room.append(replace(draft, state=state))
    needs = read_needs(room.desk, room.clock.now())
    assert needs.kg(nuts, THIS_MORNING) == pytest.approx(0.34)
    assert needs.first(nuts) == THIS_MORNING


def test_a_treat_outside_of_the_plan_leaves_her_feed_to_be_fed(room: Book) -> None:
    """It has a name of its own."""
    draft = fed_draft(room, 2.0)
    room.append(replace(draft, step_id=None))
    assert read_needs(room.desk, room.clock.now()).kg(named(room, NUTS_NAME), THIS_MORNING) == pytest.approx(NUTS_AM_KG)


def test_a_change_to_come_is_counted_from_its_day_on(room: Book) -> None:
    """0.9 kg of lucerne twice a day; from Friday noon on none in the evening, and two in the morning."""
    fennel, lucerne = named(room, "Fennel"), named(room, LUCERNE)
    friday = DAWN.replace(day=13, hour=12)
    for slot, due_kg in ((EVENING, None), (MORNING, 2.0)):
        put(room.desk, FeedPlan, slot=slot, animal_id=fennel, feed_id=lucerne, due_kg=due_kg, begins_at=friday)
    needs = read_needs(room.desk, room.clock.now())
    told = {(day, slot): needs.kg(lucerne, Turn(date(2026, 3, day), slot)) for day in (12, 13, 14)
            for slot in (MORNING, EVENING)}  # fmt: skip
    assert told == {(12, MORNING): 0.9, (12, EVENING): 0.9, (13, MORNING): 0.9, (13, EVENING): 0.0,
                    (14, MORNING): 2.0, (14, EVENING): 0.0}  # fmt: skip


def test_a_change_made_while_the_round_is_in_hand_counts_in_it(room: Book, clock: HandClock) -> None:
    """At nine in the morning, of a round that usually begins at seven."""
    fennel, lucerne = named(room, "Fennel"), named(room, LUCERNE)
    clock.move(hours=2.5)
    put(room.desk, FeedPlan, slot=MORNING, animal_id=fennel, feed_id=lucerne, due_kg=1.2, begins_at=clock.now())
    assert read_needs(room.desk, clock.now()).kg(lucerne, THIS_MORNING) == 1.2


def test_of_two_changes_that_begin_together_the_one_written_last_counts(room: Book) -> None:
    """As everywhere in the book."""
    fennel, lucerne, friday = named(room, "Fennel"), named(room, LUCERNE), DAWN.replace(day=13, hour=12)
    for due_kg, later in ((2.0, 0), (1.5, 1), (3.0, -1)):
        put(room.desk, FeedPlan, slot=MORNING, animal_id=fennel, feed_id=lucerne, due_kg=due_kg, begins_at=friday,
            written_at=DAWN + timedelta(seconds=later))  # fmt: skip
    needs = read_needs(room.desk, room.clock.now())
    assert needs.kg(lucerne, Turn(date(2026, 3, 14), MORNING)) == 1.5


def test_days_left_of_a_feed_in_the_book(room: Book, clock: HandClock) -> None:
    """Fed this morning: it begins with this evening."""
    assert days_left_of(the_stock(room, LUCERNE), read_needs(room.desk, clock.now())) is None
    weigh(room, 5.0, LUCERNE)
    feed(room, 0.9, name=LUCERNE)
    left = days_left_of(the_stock(room, LUCERNE), read_needs(room.desk, clock.now()), lead_days=1)
    assert left is not None
    assert (left.days, left.short) == (2, Turn(date(2026, 3, 13), EVENING))
    assert left.short_kg == pytest.approx(5 * 0.9 - 4.1)


LUC, WHO = UUID(int=1), [Subject(animal_id=UUID(int=10)), Subject(pen_id=UUID(int=11))]
MOMENTS = st.datetimes(datetime(2026, 3, 9), datetime(2026, 4, 6), timezones=st.just(UTC))  # noqa: DTZ001
PLAN_ROWS = st.lists(st.builds(NeedRow, MOMENTS, st.sampled_from((None, 0.0, 0.5, 1.25, 2.0))), max_size=4)
PLANS = st.lists(
    st.builds(
        lambda who, slot, rows: Need(who, LUC, slot, 2, tuple(sorted(rows, key=lambda row: row.begins_at))),
        st.sampled_from(WHO), st.sampled_from((MORNING, EVENING)), PLAN_ROWS,
    ),
    max_size=4,
)  # fmt: skip
TURNS = st.builds(Turn, st.dates(date(2026, 3, 9), date(2026, 4, 6)), st.sampled_from((MORNING, EVENING)))


@given(plans=PLANS, now=MOMENTS, settled=st.frozensets(st.tuples(TURNS, st.sampled_from([who.id for who in WHO]))))
def test_many_rounds_on_end_take_what_each_takes_by_itself(
    plans: list[Need], now: datetime, settled: frozenset[tuple[Turn, UUID]]
) -> None:
    """Whenever plan rows begin, whatever is settled, and over the change of the hour."""
    needs = Needs("Europe/Dublin", now, turn_at(now, "Europe/Dublin", 12), tuple(plans), settled)
    by_round, turn = needs.by_round(LUC), Turn(date(2026, 3, 9), MORNING)
    while turn.day < date(2026, 4, 8):
        assert by_round(turn) == needs.kg(LUC, turn), turn
        turn = turn.after()


def test_a_year_of_rounds_is_worked_out_in_a_few(room: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    """Only what differs is asked of the plans: 800 rounds of each feed would hold up the closing."""
    weigh(room, 10_000.0, LUCERNE)
    needs, once = read_needs(room.desk, room.clock.now()), Needs.kg
    asked: list[Turn] = []

    def counted(self: Needs, feed_id: UUID, turn: Turn) -> float:
        asked.append(turn)
        return once(self, feed_id, turn)

    monkeypatch.setattr(Needs, "kg", counted)
    left = days_left_of(the_stock(room, LUCERNE), needs)
    assert left is not None
    assert left.days == LOOK_AHEAD.days
    assert 0 < len(asked) < 20
