"""Look again on the screen: O lists what waits, and offers something new; a look says how it was, and when again."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.reading.watches import Watch, open_watches
from store.book.words import Looks
from tests.farm import MORNING, HandClock
from tests.tui.keys import Sitting
from tests.tui.test_yard import AT_THE_END


def waiting(sitting: Sitting) -> tuple[Watch, ...]:
    """What the book has to be looked at again."""
    return open_watches(sitting.walker.book.desk, sitting.walker.book.clock.now())


@pytest.fixture
def lame(sitting: Sitting) -> Sitting:
    """Sloe's foot is to be looked at again in two hours; we stand in the list."""
    return sitting.to_step("Sloe", "feed").press("o", "enter", "left hind foot", "enter", "in 2 h", "enter")


def test_from_a_step_something_of_its_animal_is_offered(lame: Sitting) -> None:
    (watch,) = waiting(lame)
    assert (watch.words, lame.walker.snapshot.name_of(watch.subject)) == ("left hind foot", "Sloe")
    assert f"{watch.due_at:%H:%M}" == "08:31"
    assert lame.said == "Written: Sloe, left hind foot: again at 08:31."
    assert lame.written() == 0, "it belongs to no round"


def test_a_look_says_how_it_was_and_when_again(lame: Sitting, clock: HandClock) -> None:
    clock.move(hours=2, minutes=5)
    assert "LATE, was 08:31" in lame.text()
    lame.press("1", "enter", "4", "enter", "at 14:30", "enter")
    (watch,) = waiting(lame)
    assert (watch.looks, f"{watch.due_at:%H:%M}") == (Looks.WORSE, "14:30")
    assert "V has the signs" in lame.said
    lame.press("1", "enter", "1", "enter", "enter")
    assert waiting(lame) == ()
    assert "nothing is waiting" in lame.text()


def test_a_look_is_taken_back_and_waits_as_before(lame: Sitting, clock: HandClock) -> None:
    (before,) = waiting(lame)
    clock.move(hours=2)
    lame.press("1", "enter", "1", "enter", "enter")
    assert waiting(lame) == ()
    lame.press("u")
    assert "left hind foot, all right, no more" in lame.text()
    lame.press("enter")
    (again,) = waiting(lame)
    assert (again.step_id, again.due_at, again.looks) == (before.step_id, before.due_at, None)


def test_what_was_offered_is_taken_back(lame: Sitting) -> None:
    lame.press("u", "enter")
    assert waiting(lame) == ()
    assert "nothing was written" in lame.press("u").text()
    lame.press("up", "down", "enter")
    assert "Nothing is picked" in lame.said


@pytest.mark.parametrize(
    ("typed", "words"),
    [("2", "does not say when"), ("", "does not say when"), ("today 6:10", "not in the next 60 days")],
)
def test_a_bad_time_is_said_and_stays(sitting: Sitting, typed: str, words: str) -> None:
    sitting.to_step("Sloe", "feed").press("o", "enter", "left hind foot", "enter", typed, "enter")
    assert words in sitting.said
    assert waiting(sitting) == ()
    sitting.press(*["backspace"] * len(typed), "in 30 min", "enter")
    assert len(waiting(sitting)) == 1


def test_nothing_typed_is_nothing_to_look_at(sitting: Sitting) -> None:
    assert "Nothing is typed" in sitting.press("o", "enter", "  ", "enter").said


def test_the_whole_yard_can_be_looked_at_again(sitting: Sitting) -> None:
    sitting.to_step("Sloe", "feed").press("o", "2", "enter", "the top gate", "enter", "tomorrow 6:30", "enter")
    (watch,) = waiting(sitting)
    assert watch.subject.animal_id is None
    assert "at Thu 12 Mar 06:30  the whole yard: the top gate" in sitting.text()


def test_a_look_of_a_while_ago_is_written_with_its_time(lame: Sitting, clock: HandClock) -> None:
    clock.move(hours=4)
    lame.press("t", "8:40", "enter", "1", "enter", "2", "enter", "in 2 h", "enter")
    (watch,) = waiting(lame)
    assert watch.seen_at == MORNING.replace(hour=8, minute=40)
    assert watch.due_at > clock.at + timedelta(minutes=119)


def test_in_a_past_round_it_is_of_now(lame: Sitting, clock: HandClock) -> None:
    lame.press("escape", "r", "2", "enter", "o", "1", "enter", "2", "enter", "in 1 h", "enter")
    (watch,) = waiting(lame)
    assert watch.seen_at > MORNING


def test_the_next_round_is_told_what_is_due_in_it(lame: Sitting, clock: HandClock) -> None:
    lame.press("escape").press(*AT_THE_END, "e", "enter")
    clock.move(hours=12)
    lame.begin()
    assert "LOOK AGAIN  LATE, was 08:31  Sloe: left hind foot" in lame.text()


SCREENS: dict[str, Callable[[Sitting], Sitting]] = {
    "nothing yet": lambda s: s.to_step("Sloe", "feed").press("escape", "o"),
    "what": lambda s: s.to_step("Sloe", "feed").press("o", "enter", "left hind foot"),
    "when": lambda s: s.to_step("Sloe", "feed").press("o", "enter", "left hind foot", "enter", "in 2 h"),
    "when, and not to be read": lambda s: s.to_step("Sloe", "feed").press(
        "o", "enter", "left hind foot", "enter", "later", "enter"
    ),
}


@pytest.mark.parametrize("name", SCREENS)
def test_the_screen_is_as_kept(sitting: Sitting, screen: SnapshotAssertion, name: str) -> None:
    assert SCREENS[name](sitting).text() == screen


LATER: dict[str, tuple[str, ...]] = {
    "the list": (),
    "how it was": ("1", "enter", "4"),
    "when again": ("1", "enter", "4", "enter", "in 2 h"),
    "taking back": ("u",),
}


@pytest.mark.parametrize("name", LATER)
def test_the_screen_of_a_late_look_is_as_kept(
    lame: Sitting, clock: HandClock, screen: SnapshotAssertion, name: str
) -> None:
    lame.press("2", "enter", "the top gate", "enter", "tomorrow 6:30", "enter")
    clock.move(hours=2, minutes=5)
    assert lame.press(*LATER[name]).text() == screen
