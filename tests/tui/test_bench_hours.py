"""Hours at the bench: a sitting begins and goes on there, the first key only wakes, what comes rings once."""

from store.book.drafts import Subject
from store.book.opening import Book
from store.book.records.care import Look, LookAs
from store.book.words import EVENING, MIDDAY, MORNING, Asks, SettingName
from store.round.confirm import noted
from tests.farm import MORNING as SIX_31
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn, some_id
from tests.tui.benched import at, bench_of, clock_of, ended, set_to
from tests.tui.keys import Sitting


def test_a_midday_look_is_walked_from_the_bench(timed: Sitting, book: Book) -> None:
    tansy = animal_named(dawn(), "Tansy").id
    put(book.desk, Look, id=some_id("bag"))
    put(book.desk, LookAs, look_id=some_id("bag"), animal_id=tansy, name="bag and bones", asks=Asks.HOW, slot=MIDDAY)
    timed.walker.look()
    ended(timed)
    assert "12:00  look at Tansy: bag and bones" in timed.text()
    timed.press("enter")
    assert (timed.walker.turn.slot, timed.walker.live) == (MIDDAY, True)
    timed.press("4", "enter", "i")
    assert timed.walker.turn.slot == MORNING
    assert "look at Tansy" not in timed.text()


def test_a_sitting_begins_at_the_bench_where_the_round_of_this_hour_is_ended(timed: Sitting) -> None:
    bench_of(ended(timed).begin())


def test_enter_leads_from_an_ended_closing_to_the_bench(timed: Sitting) -> None:
    while (at_step := timed.walker.first_open()) is not None:
        timed.place = timed.house.lamp(at_step)
        timed.press("s", "5", "enter")
    timed.place = timed.house.closing()
    assert timed.press("enter").said == "Every step is recorded. E ends the round."
    bench_of(timed.press("e", "enter", "enter"))


def test_the_first_key_after_a_while_only_wakes(timed: Sitting) -> None:
    """Enter would lead away, U would open; neither does, and nothing is written."""
    place = bench_of(at(ended(timed), 11, 52))
    written = timed.written()
    place.minute()
    assert "The first key only wakes the screen." not in timed.text()
    for key in ("enter", "u", "q"):
        clock_of(timed).move(minutes=1)
        place.minute()
        clock_of(timed).move(minutes=1)
        place.minute()
        assert "The first key only wakes the screen." in timed.text()
        assert timed.press(key).place is place
        assert "The first key only wakes the screen." not in timed.text()
    assert timed.written() == written
    assert timed.press("u").place is not place


def test_it_goes_on_into_the_next_round_and_the_next_day(timed: Sitting) -> None:
    place = bench_of(ended(timed))
    at(timed, 12, 0)
    place.minute()
    assert timed.walker.turn.slot == EVENING
    clock_of(timed).move(days=1)
    place.minute()
    assert "Thu 12 Mar  12:0" in timed.text()
    assert timed.walker.turn.slot == EVENING
    assert "NOT KNOWN   Thu 12 Mar morning was not ended; R opens it" in timed.text()


def test_what_was_left_for_the_next_round_is_read_before_any_key_of_the_bench_does_something(timed: Sitting) -> None:
    """At noon the evening round is at hand; the note for it would else be passed by."""
    timed.walker.write(noted(timed.walker.hand(), Subject(), "Sloe is lame, look at her", tell=True))
    place = bench_of(ended(timed))
    at(timed, 12, 30)
    place.minute()
    assert "Sloe is lame, look at her" in timed.press("n").text()
    assert timed.press("enter").place is place
    timed.press("down", "enter")
    assert "LEFT FOR YOU" in timed.text()
    assert timed.walker.turn.slot == EVENING


def test_a_thing_rings_once_and_not_again_whatever_the_clock_is_set_to(timed: Sitting) -> None:
    place = bench_of(ended(timed))
    rings = []
    for hour, minute in ((12, 9), (12, 10), (12, 11), (11, 50), (12, 10), (17, 9), (17, 10), (17, 11)):
        at(timed, hour, minute)
        rings.append(place.minute())
    assert rings == [False, True, False, False, False, False, True, False]


def test_what_is_late_already_when_the_bench_is_opened_does_not_ring(timed: Sitting) -> None:
    at(timed, 7, 30).press("i")
    assert not bench_of(timed).minute()


def test_what_another_bench_wrote_is_seen_within_minutes(timed: Sitting) -> None:
    place = bench_of(at(ended(timed), 11, 40))
    place.minute()
    set_to(timed.walker.book, SettingName.EVENING_AT, "18:30", SIX_31)
    at(timed, 11, 44)
    place.minute()
    assert "17:10" in timed.text()
    at(timed, 11, 46)
    place.minute()
    assert "13:30" in timed.text()
