"""A change before it starts: seen day by day, from a round that is picked, with what it is for, and taken back."""

from datetime import date

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.drafts import RowDraft
from store.book.errors import BookError
from store.book.opening import Book
from store.book.reading.stock import stock_of
from store.book.turn import Turn
from store.book.words import Units
from store.feedroom.drafts import weighed
from store.ration.change import Change, preview
from store.ration.parts import Amounts, Case, Limits
from store.ration.step_limits import rules_of
from tests.farm import HandClock, morning
from tests.store.feedroom.made import feed_hand
from tests.store.herd.filled import register
from tests.store.ration.made import case_of, feed_of_book, id_of, kg
from tests.store.round.named import feed_of
from tests.tui.keys import Sitting
from tui.page import Size
from tui.ration.day_lines import course_lines, limit_lines
from tui.ration.ration import Ration
from tui.ration.starting import StartChange
from tui.walk.lamp import Lamp
from tui.yard.told import to_tell

SCOOP_KG = 0.675


def sloe(book: Book, scoops: float) -> tuple[Case, Amounts]:
    """Sloe gets a scoop and a half of nuts, and is to get another amount."""
    case = case_of(book, "Sloe", feed_of_book(register(book), "dairy nuts"))
    return case, {("morning", id_of(case, "dairy nuts")): scoops * SCOOP_KG}


def starting(sitting: Sitting, scoops: float) -> StartChange:
    """Before the start, over the first step."""
    case, new = sloe(sitting.walker.book, scoops)
    place = StartChange(sitting.house.first(), case, new)
    sitting.place = place
    return place


@pytest.mark.parametrize("size", [(80, 24), (120, 36)])
def test_every_day_is_seen_before_it_starts(sitting: Sitting, screen: SnapshotAssertion, size: tuple[int, int]) -> None:
    starting(sitting, 0.5)
    assert sitting.text(*size) == screen


def test_two_meals_a_cap_that_the_end_breaks_and_what_runs_out_are_seen_too(
    sitting: Sitting, screen: SnapshotAssertion
) -> None:
    """Hazel's nuts and lucerne in both meals, from the evening on; there are 20 kg of nuts for the whole yard."""
    book = sitting.walker.book
    nuts = feed_of_book(register(book), "dairy nuts", limits=Limits(most_meal_kg=kg(3.0)))
    case = case_of(book, "Hazel", nuts, feed_of_book(register(book), "lucerne pellets"))
    stock = stock_of(book.desk, nuts.feed, book.clock.now(), "Europe/Dublin")
    book.append(weighed(feed_hand(book), stock, 20, "20 kg"))
    new = {("morning", nuts.feed.id): 3.375, ("evening", nuts.feed.id): 2.025}
    new |= {(slot, id_of(case, "lucerne pellets")): 0.9 for slot in ("morning", "evening")}
    sitting.place = StartChange(sitting.house.first(), case, new)
    assert sitting.press("2").text(100, 50) == screen


def test_enter_writes_it_with_its_reason_and_the_morning_after_is_day_one(
    sitting: Sitting, clock: HandClock, book: Book
) -> None:
    starting(sitting, 0.5)
    sitting.press("n", "too fat", "enter")
    assert "FOR   too fat" in sitting.text()
    sitting.press("enter")
    began = "Sloe: the change is started, day 1 is Thu 12 Mar, morning; 4 steps, the last on day 4."
    assert sitting.said == f"{began} F, then U takes it back."
    assert feed_of(morning(book), "Sloe").due[0].measures == 1.5
    clock.move(days=1)
    assert feed_of(morning(book), "Sloe").due[0].measures == 1.25
    sitting.walker.open_turn(sitting.walker.this())
    sitting.to_step("Sloe", "feed")
    assert "CHANGE  dairy nuts, day 1 of 4: was 1 1/2, Fri 13 Mar 1." in sitting.text()
    told = [words for words, _ in to_tell(sitting.walker)]
    assert any("change: dairy nuts, morning 1.01 kg -> 0.34 kg" in words and "for too fat" in words for words in told)


def test_a_digit_picks_the_first_round_and_left_goes_one_earlier(sitting: Sitting) -> None:
    place = starting(sitting, 0.5)
    sitting.press("4")
    assert place.start == Turn(date(2026, 3, 12), "evening")
    assert "day 1   Fri 13 Mar" in sitting.text()
    sitting.press("left", "left")
    assert place.start == Turn(date(2026, 3, 11), "evening")
    sitting.press("1")
    assert "day 1   Wed 11 Mar" in sitting.text()


def test_an_evening_that_would_bring_a_day_above_its_limit_is_put_off_to_the_morning(sitting: Sitting) -> None:
    nuts = feed_of_book(register(sitting.walker.book), "dairy nuts", limits=Limits(most_day_kg=kg(3.35)))
    case = case_of(sitting.walker.book, "Hazel", nuts)
    new = {("morning", nuts.feed.id): 1.35, ("evening", nuts.feed.id): 2.0}
    sitting.place = StartChange(sitting.house.first(), case, new)
    assert "LATER" not in sitting.text(100, 50)
    words = "LATER  It begins Thu 12 Mar, morning: begun in the evening, a day on the way would be above its limit."
    assert words in sitting.press("2").text(120, 50)
    sitting.press("enter")
    assert "day 1 is Thu 12 Mar, morning" in sitting.said


def test_it_is_taken_back_in_my_farm(sitting: Sitting, clock: HandClock, book: Book) -> None:
    starting(sitting, 0.5)
    sitting.press("enter")
    clock.move(minutes=2)
    sitting.press("f", "u", "enter")
    clock.move(days=2)
    assert feed_of(morning(book), "Sloe").due[0].measures == 1.5


def test_what_is_usually_said_of_it_stands_once_where_it_is_started(sitting: Sitting) -> None:
    case, new = sloe(sitting.walker.book, 0.5)
    sitting.place = StartChange(sitting.house.first(), case, new, cares=("CARE  Sheep stand with them.",))
    assert sitting.text().count("Sheep stand with them.") == 1


def test_nothing_to_change_is_said_and_nothing_is_written(sitting: Sitting) -> None:
    starting(sitting, 1.5)
    sitting.press("enter")
    assert sitting.said.startswith("Nothing differs from what they get now.")
    assert not sitting.walker.changes


def test_backspace_goes_back_and_nothing_is_written(sitting: Sitting) -> None:
    back = starting(sitting, 0.5).came_from
    sitting.press("backspace")
    assert sitting.place is back
    assert not sitting.walker.changes


def test_from_the_ration_enter_shows_the_steps_of_what_is_tried(sitting: Sitting, clock: HandClock) -> None:
    """J at her step, two scoops typed, taken; back comes to the amounts, and once started to the step."""
    sitting.to_step("Sloe", "feed").press("j", "2", "enter", "enter")
    assert isinstance(sitting.place, StartChange)
    assert "day 2   Fri 13 Mar  morning  dairy nuts 2 scoops (1.35 kg)" in sitting.text()
    assert isinstance(sitting.press("backspace").place, Ration)
    sitting.press("enter", "enter")
    assert "day 1 is Thu 12 Mar, morning; 2 steps" in sitting.said
    assert isinstance(sitting.place, Lamp)
    clock.move(days=2)
    assert feed_of(morning(sitting.walker.book), "Sloe").due[0].measures == 2


def from_tomorrow(sitting: Sitting, case: Case, new: Amounts) -> Change:
    """A change as it is reckoned."""
    return preview(case, new, rules_of(register(sitting.walker.book)), Turn(date(2026, 3, 12), "morning"))


def with_row(sitting: Sitting, due_kg: float) -> None:
    """Another bench plans another amount of Sloe's nuts from now on."""
    book = sitting.walker.book
    row = next(row for row in register(book).all("feed_plan") if row["due_kg"] == pytest.approx(1.5 * SCOOP_KG))
    kept = {key: value for key, value in row.items() if key not in {"id", "begins_at", "written_at"}}
    book.change([RowDraft("feed_plan", kept | {"due_kg": due_kg})])


def test_left_standing_past_its_first_day_it_is_shown_anew_and_not_written(sitting: Sitting, clock: HandClock) -> None:
    """From this evening on; then it is Friday: two steps at once would have been due."""
    place = starting(sitting, 0.5)
    sitting.press("2")
    clock.move(days=2)
    sitting.press("enter")
    assert "nothing is written yet" in sitting.said
    assert not sitting.walker.changes
    assert "day 1   Sat 14 Mar" in sitting.text()
    sitting.press("enter")
    assert "day 1 is Sat 14 Mar" in sitting.said
    assert place.start == Turn(date(2026, 3, 14), "morning")


def test_what_another_bench_planned_meanwhile_is_shown_first(sitting: Sitting, book: Book) -> None:
    starting(sitting, 2)
    with_row(sitting, 0.5 * SCOOP_KG)
    sitting.press("enter")
    assert "nothing is written yet" in sitting.said
    assert "dairy nuts 1/2 scoop (0.34 kg)" in sitting.text()
    assert feed_of(morning(book), "Sloe").due[0].measures == pytest.approx(0.5)


def test_a_limit_that_is_broken_in_the_end_comes_first_and_is_asked_about(sitting: Sitting) -> None:
    book = sitting.walker.book
    nuts = feed_of_book(register(book), "dairy nuts", limits=Limits(most_meal_kg=kg(3.0)))
    sitting.place = StartChange(sitting.house.first(), case_of(book, "Hazel", nuts), {("morning", nuts.feed.id): 4.05})
    lines = [row for row in sitting.text().splitlines() if "LIMIT" in row or "day 1" in row]
    assert "LIMIT  in the end, dairy nuts in the morning: 4.05 kg; your limit" in lines[0]
    sitting.press("enter")
    assert "type ! and then Enter" in sitting.said
    assert not sitting.walker.changes
    sitting.press("!")
    assert "start it, it is right" in sitting.text()
    sitting.press("enter")
    assert sitting.walker.changes


def test_where_no_limit_is_broken_there_is_nothing_to_be_sure_of(sitting: Sitting) -> None:
    starting(sitting, 0.5)
    assert "it is right" not in sitting.press("!").text()


def test_a_round_that_cannot_be_read_is_not_picked(
    sitting: Sitting, book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    starting(sitting, 0.5)
    before = sitting.text()

    def refuse(*_: object) -> None:
        raise BookError("The server is gone.")

    monkeypatch.setattr(type(book), "trial", refuse)
    sitting.press("5")
    assert sitting.said == "The server is gone."
    assert sitting.place is not None
    assert sitting.place.say("").draw(Size(80, 24)).text() == before


def test_once_this_round_is_fed_it_is_offered_from_tomorrow_morning_on(sitting: Sitting, clock: HandClock) -> None:
    clock.move(hours=12)
    sitting.walker.open_turn(sitting.walker.this())
    sitting.to_step("Hazel", "feed").press("enter")
    nuts = feed_of_book(register(sitting.walker.book), "dairy nuts")
    case = case_of(sitting.walker.book, "Hazel", nuts)
    place = StartChange(sitting.house.first(), case, {("morning", nuts.feed.id): 2.7})
    assert place.start == Turn(date(2026, 3, 12), "morning")


def test_an_amount_of_now_that_is_no_even_scoop_says_about_how_many(sitting: Sitting) -> None:
    book = sitting.walker.book
    case = case_of(book, "Hazel", feed_of_book(register(book), "dairy nuts"))
    lines = list(
        course_lines(
            case, from_tomorrow(sitting, case, {("morning", id_of(case, "dairy nuts")): 2.7}).days, Units.METRIC
        )
    )
    assert lines[0].endswith("dairy nuts 2.00 kg (about 3 scoops)")


def test_a_change_of_forage_alone_has_no_biggest_meal_to_say(sitting: Sitting) -> None:
    book = sitting.walker.book
    case = case_of(book, "Hazel", feed_of_book(register(book), "grass hay", forage=True))
    found = from_tomorrow(sitting, case, {("morning", id_of(case, "grass hay")): 2.0})
    assert not [words for words in limit_lines(found, Units.METRIC) if "biggest" in words]


def test_another_change_beside_one_that_is_not_over_is_refused_and_its_end_is_said(
    sitting: Sitting, clock: HandClock, book: Book
) -> None:
    starting(sitting, 0.5)
    sitting.press("enter")
    clock.move(days=2)
    sitting.walker.open_turn(sitting.walker.this())
    lucerne = feed_of_book(register(book), "lucerne pellets", told=False)
    case = case_of(book, "Sloe", feed_of_book(register(book), "dairy nuts"), lucerne)
    sitting.place = StartChange(sitting.house.first(), case, {**case.now, ("morning", lucerne.feed.id): 0.3})
    rows_before = len(register(book).history["feed_plan"])
    sitting.press("enter")
    assert sitting.said == (
        "dairy nuts will still step to 1/2 scoop (0.34 kg) + none by Sun 15 Mar: another change beside it is not safe. "
        "End that first: M at the feed step, the change under way."
    )
    assert len(register(book).history["feed_plan"]) == rows_before


def test_another_amount_of_the_same_meal_takes_the_place_of_what_is_under_way(
    sitting: Sitting, clock: HandClock
) -> None:
    starting(sitting, 0.5)
    sitting.press("enter")
    clock.move(days=2)
    sitting.walker.open_turn(sitting.walker.this())
    starting(sitting, 2.0)
    sitting.press("enter")
    assert sitting.said.startswith("Sloe: the change is started")


def test_the_ration_says_where_a_change_ends_that_is_not_over_and_the_limits_that_this_breaks(
    sitting: Sitting, clock: HandClock
) -> None:
    starting(sitting, 6)
    sitting.press("!", "enter")
    clock.move(days=2)
    sitting.walker.open_turn(sitting.walker.this())
    sitting.to_step("Sloe", "feed").press("j")
    said = " ".join(sitting.text(120, 60).split())
    assert "CHANGE dairy nuts will still step to 6 scoops (4.05 kg) + none by " in said
    assert "M at the feed step ends it." in said
    assert "LIMIT where that change ends, " in said
