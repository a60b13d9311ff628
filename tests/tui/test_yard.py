"""What can be done from anywhere: later, go, note, person, time, vet, lock, boards, past rounds, the end."""

from datetime import timedelta

import pytest

from store.book.figures import FedFigure, NotedFigure
from store.book.words import Kind, State
from tests.farm import MORNING, HandClock
from tests.tui.keys import Sitting
from tui.page import Role
from tui.place import Place
from tui.walk.lamp import Lamp
from tui.words import clock
from tui.yard.going import Going
from tui.yard.told import Told

AT_THE_END = ["left", *["right"] * 18]


def test_moved_on_is_written_and_opens_the_next_round(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Water trough runs", "task").press("l", "2", "enter")
    assert sitting.newest().state is State.MOVED_ON
    sitting.press(*AT_THE_END, "e", "enter")
    clock.move(hours=12)
    sitting.begin()
    assert "MOVED ON" in sitting.text()
    (found,) = [step for step in sitting.walker.steps if step.moved_from]
    assert (found.name, found.place) == ("Water trough runs", "Orchard")
    sitting.to_step("Water trough runs", "task", 1)
    assert "MOVED ON from Wed 11 Mar morning" in sitting.text()


def test_what_the_next_round_asks_for_anyway_is_not_moved_on(sitting: Sitting) -> None:
    sitting.to_step("Sloe", "feed").press("l", "2", "enter")
    assert sitting.written() == 0
    assert "asks for it by itself" in sitting.to_step("Hazel", "milk").press("l").text()


def test_later_in_this_round_writes_nothing(sitting: Sitting) -> None:
    sitting.press("l", "1", "enter")
    assert sitting.written() == 0
    assert "COUNT" in sitting.text()


def test_go_to_finds_by_a_few_letters_and_comes_to_a_done_step_to_correct(sitting: Sitting) -> None:
    sitting.to_step("Hazel", "feed").press("enter", "g", "haz feed", "enter", "3", "enter")
    assert sitting.states().count(State.DONE) == 1
    assert len(sitting.walker.snapshot.entries) == 2


def test_go_to_nothing_says_so(sitting: Sitting) -> None:
    assert "«zebra» is in no step of this round" in sitting.press("g", "zebra").text()
    assert "«zebra» is in no step of this round" in sitting.press("enter").said


def test_a_note_is_kept_with_the_animal_and_marked_for_the_next_person(sitting: Sitting) -> None:
    sitting.to_step("Sloe", "feed").press("n", "left hind foot [red]", "down", "enter")
    entry = sitting.newest()
    assert entry.kind is Kind.NOTE
    assert entry.the(NotedFigure) == NotedFigure("left hind foot [red]", tell=True)
    assert sitting.walker.snapshot.name_of(entry.subject) == "Sloe"


def test_the_next_person_pages_past_what_is_told(sitting: Sitting, clock: HandClock) -> None:
    sitting.press("n", "gate is off its hinge", "down", "enter")
    sitting.press(*AT_THE_END, "e", "enter")
    clock.move(hours=12)
    sitting.begin()
    assert "gate is off its hinge" in sitting.text()
    assert "LEFT FOR YOU" not in sitting.press("enter").text()


def test_the_person_is_on_every_entry_after(sitting: Sitting) -> None:
    sitting.press("p", "2", "enter", "enter")
    assert sitting.walker.name_of(sitting.newest().person_id) == "Tom"


def test_a_set_time_is_for_the_next_entry_only(sitting: Sitting) -> None:
    sitting.press("t", "6:10", "enter", "enter")
    assert sitting.newest().happened_at == MORNING.replace(hour=6, minute=10)
    assert sitting.newest().written_at > MORNING
    sitting.press("2", "enter")
    assert sitting.newest().happened_at > MORNING


@pytest.mark.parametrize("typed", ["25:00", "6:7", "soon", "99"])
def test_nonsense_for_a_time_is_said_and_stays(sitting: Sitting, typed: str) -> None:
    assert "is no time" in sitting.press("t", typed, "enter").said


def test_what_nobody_saw_happened_between_two_times(sitting: Sitting) -> None:
    """It is said in the header, kept with the entry, and told so."""
    sitting.to_step("Hazel", "feed").press("t", "02:30-05:50", "enter")
    assert sitting.said == "The next entry happened between 02:30 and 05:50."
    assert "SET 02:30-05:50" in sitting.text()
    sitting.press("enter")
    entry = sitting.newest()
    assert (entry.happened_from, entry.happened_at) == (
        MORNING.replace(hour=2, minute=30),
        MORNING.replace(hour=5, minute=50),
    )
    assert "between 02:30 and 05:50 Ann   Hazel" in sitting.text()
    sitting.to_step("Rook", "feed").press("enter")
    assert sitting.newest().happened_from is None


def test_a_day_alone_is_no_time(sitting: Sitting) -> None:
    assert (
        "«yesterday» is a whole day. Type a time too, as yesterday 18:20."
        in sitting.press("t", "yesterday", "enter").said
    )


@pytest.mark.parametrize(
    ("typed", "asked", "header", "told"),
    [
        ("yesterday 17:00", "is before the round before was done", "SET Tue 10 Mar 17:00  Ann", "Tue 10 Mar 17:00 Ann"),
        ("5 mar 10:00-11:00", "is before the round before was done", "SET Thu 5 Mar 10:00-11:00  Ann",
         "between Thu 5 Mar 10:00 and 11:00 Ann"),
        ("9 mar 22:00-yesterday 02:30", "is before the round before was done", "SET Mon 9 Mar 22:00-Tue 02:30  Ann",
         "between Mon 9 Mar 22:00 and Tue 02:30 Ann"),
    ],
)  # fmt: skip
def test_a_time_of_another_day_is_asked_about_and_says_its_day(
    sitting: Sitting, typed: str, asked: str, header: str, told: str
) -> None:
    sitting.to_step("Water trough runs", "task").press("t", typed, "enter")
    assert asked in sitting.said
    sitting.press("!", "enter")
    assert header in sitting.text()
    sitting.press("enter")
    assert told in sitting.text()


def test_in_a_past_round_now_is_behind_its_last_step(sitting: Sitting) -> None:
    sitting.press("r", "2", "enter", "t")
    at = clock(sitting.walker.unset_moment(), sitting.walker.zone)
    assert f"Enter alone means behind the last step of that round, at {at}" in " ".join(sitting.text(160).split())
    for typed in ("now", ""):
        sitting.press(*typed, "enter")
        assert sitting.said == f"The next entry happens behind the last step of that round, at {at}."
        assert sitting.walker.set_at is None
        sitting.press("t")


def test_vet_keeps_what_is_half_typed(sitting: Sitting) -> None:
    sitting.to_step("Fennel", "milk").press("7.2")
    assert isinstance(sitting.place, Place)
    sitting.place = sitting.house.vet(sitting.place)
    assert "555" in sitting.text()
    sitting.press("enter")
    assert sitting.place.half_typed == "7.2"


def test_locked_keys_change_nothing_until_the_word(sitting: Sitting) -> None:
    sitting.press("z", "qus7enter", "enter", "s", "escape")
    sitting.place = sitting.place.press("ctrl+q", None) if sitting.place else None
    assert sitting.written() == 0
    assert "LOCKED" in sitting.text()
    sitting.press("enter", "open", "enter")
    assert "LOCKED" not in sitting.text()


def test_the_bucket_board_writes_one_line_or_all(sitting: Sitting) -> None:
    sitting.press("enter", "b", "3", "enter")
    fed = sitting.newest().the(FedFigure)
    assert fed is not None
    assert fed.given_kg == pytest.approx(3 * 0.675)
    sitting.press("a", "enter")
    buckets = [entry for entry in sitting.walker.snapshot.counts().values() if entry.kind is Kind.FEED]
    assert len(buckets) == 4
    assert all(entry.reason == "together" for entry in buckets[1:])


def test_a_soaked_feed_that_nobody_looked_at_is_not_written_with_others(sitting: Sitting) -> None:
    sitting.press("b", "a")
    assert "SOAK NOT LOOKED AT" in sitting.text()
    sitting.press("enter")
    fed = {step.name for step in sitting.walker.steps if step.kind is Kind.FEED and step.state is State.DONE}
    assert fed == {"Hazel", "Rook", "Sloe"}


def test_a_scoop_weighed_today_is_written_by_itself(sitting: Sitting) -> None:
    sitting.to_step("Sloe", "feed").press("m", "2", "enter", "0.7 kg", "enter", "b")
    assert "NEW SCOOP" in sitting.text()


def test_any_other_key_disarms_the_board(sitting: Sitting) -> None:
    sitting.press("b", "a", "down", "enter")
    assert sitting.written() == 1


def test_a_whole_pen_never_covers_what_has_to_be_measured_or_felt(sitting: Sitting) -> None:
    sitting.to_step("Orchard", "hay").press("a", "a", "enter")
    kinds = {step.kind for step in sitting.walker.steps if step.place == "Orchard" and step.state is State.DONE}
    assert kinds == {Kind.HAY, Kind.FEED, Kind.TASK}
    assert {Kind.COUNT, Kind.UDDER} == {
        step.kind for step in sitting.walker.steps if step.place == "Orchard" and step.state is State.OPEN
    }


def test_a_whole_pen_carries_the_time_since_the_last_confirm(sitting: Sitting, clock: HandClock) -> None:
    sitting.press("enter")
    clock.move(minutes=9)
    sitting.to_step("Orchard", "hay").press("a", "a", "enter")
    entry = sitting.newest()
    assert entry.happened_from is not None
    assert entry.happened_at - entry.happened_from > timedelta(minutes=8)


def test_a_past_round_is_opened_and_corrected_and_the_live_one_stays(sitting: Sitting) -> None:
    sitting.press("enter")
    live = sitting.walker.snapshot.entries
    sitting.press("r", "2", "enter", "g", "hazel milk", "enter", "8.0", "enter")
    entry = sitting.newest()
    assert entry.happened_at.date() == MORNING.date() - timedelta(days=1)
    sitting.press("r", "1", "enter")
    assert sitting.walker.snapshot.entries == live


def test_ending_with_open_steps_is_e_then_enter(sitting: Sitting) -> None:
    sitting.press("enter", *["right"] * 18, "e")
    assert "END THE MORNING with 17 not recorded?" in sitting.text()
    assert not sitting.walker.ended()
    sitting.press("enter")
    assert sitting.walker.ended()
    assert sitting.states().count(State.OPEN) == 17


def test_a_skip_may_have_a_reason_in_words(sitting: Sitting) -> None:
    sitting.press("s", "7", "enter", "gate stuck", "enter")
    assert (sitting.newest().state, sitting.newest().reason) == (State.SKIPPED, "gate stuck")


def test_a_round_left_open_is_offered_first_then_ended_or_put_on_paper(sitting: Sitting, clock: HandClock) -> None:
    sitting.press("enter")
    clock.move(hours=12)
    sitting.begin()
    assert "17 steps are not recorded" in sitting.text()
    sitting.press("2", "enter", "7:20", "enter", "enter", "two flakes short", "enter")
    assert "LEFT FOR YOU" in sitting.text()
    sitting.press("enter", "r", "2", "enter")
    assert sitting.states().count(State.ON_PAPER) == 16
    apart = next(step for step in sitting.walker.steps if step.kind is Kind.APART)
    assert apart.entry is not None
    assert apart.entry.happened_at == MORNING.replace(hour=7, minute=20)


def test_back_after_an_hour_the_screen_says_what_has_gone_stale(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Hazel", "milk").press("10", "enter")
    clock.move(minutes=65)
    sitting.place = sitting.house.this_round()
    text = sitting.text()
    assert "BACK AT THE BENCH" in text
    assert "MILK  Hazel: milked 06:31, in ice since?" in text
    assert "CALF  Rook: shut away 13 h 34, past your limit of 13 h" in text


def test_milk_that_is_in_ice_has_not_gone_stale(sitting: Sitting, clock: HandClock) -> None:
    sitting.to_step("Hazel", "milk").press("10", "enter").to_step("Milk", "cool").press("enter")
    clock.move(minutes=65)
    sitting.place = sitting.house.this_round()
    assert "BACK AT THE BENCH" in sitting.text()
    assert "in ice since?" not in sitting.text()


def test_go_to_opens_the_marked_line_and_a_letter_marks_the_first_again(sitting: Sitting) -> None:
    sitting.press("g", "hazel", "down", "down", "down")
    marked = next(row for row in sitting.text().splitlines() if row.startswith("   > "))
    assert marked.split(",")[0].split("> ")[1] == "Hazel (milk)"
    sitting.press("enter")
    assert isinstance(sitting.place, Lamp)
    assert (sitting.place.step.name, sitting.place.step.kind) == ("Hazel", Kind.MILK)
    sitting.press("g", "haz", "down", "e")
    assert isinstance(sitting.place, Going)
    assert sitting.place.row == 0
    sitting.press("down", "backspace")
    assert sitting.place.row == 0


def test_the_lock_says_only_what_unlocks(sitting: Sitting) -> None:
    keys = sitting.press("z").text().splitlines()[-1]
    assert keys.strip() == "letters type open  Enter unlock, once it is typed"
    assert "LOCKED" in sitting.press("escape", "left").text()


def test_help_opens_over_what_was_left_for_you(sitting: Sitting) -> None:
    sitting.place = Told(sitting.house, sitting.house.first(), [("FOUND  a gate", Role.STRONG)])
    assert "KEYS HERE" in sitting.press("h").text()
    assert "LEFT FOR YOU" in sitting.press("escape").text()
