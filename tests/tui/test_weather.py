"""C: tonight's weather is typed, what it asks for is seen, and nothing of it is done unless it is said."""

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.reading.weather import last_forecast
from store.book.words import Units
from store.herd.forecast import degrees
from store.husbandry.units import celsius
from store.husbandry.why import Value
from store.round.saying import weight
from store.round.steps import FeedStep
from tests.farm import HandClock
from tests.tui.keys import Sitting
from tests.tui.whys import comes_out
from tui.closing.closing import Closing
from tui.walk.lamp import Lamp
from tui.yard.weather import WeatherForm

COLD = ("-12", "enter", "20", "pagedown")


@pytest.fixture
def at_orchard(sitting: Sitting) -> Sitting:
    """In front of the pen whose cattle are outside."""
    return sitting.to_step("Orchard", "hay")


def due_kg(sitting: Sitting) -> float:
    """The hay of the orchard as the round has it."""
    step = next(step for step in sitting.walker.steps if (step.name, step.kind) == ("Orchard", "hay"))
    assert isinstance(step, FeedStep)
    return step.due[0].due_kg


def low_c(sitting: Sitting) -> float | None:
    """The lowest of the forecast kept last, if it is one of this sitting."""
    book = sitting.walker.book
    last = last_forecast(book.desk, book.clock.now())
    return last[1].low_c if last and last[0].date() == book.clock.now().date() else None


def test_the_proposal_stands_at_the_line_that_writes_and_the_hay_stays(at_orchard: Sitting) -> None:
    page = at_orchard.press("c", *COLD).text(120, 50)
    assert "COLD  feels like about -19 C" in page
    assert "HAY  Orchard, morning and evening: grass hay 10.2 kg -> 13.3 kg, +30 %, the most you allow" in page
    assert "SOAK  can freeze" in page
    assert "WATER  break the ice" in page
    assert "The hay is not changed" in page
    assert "was 5 = 10.25 kg" not in page
    at_orchard.press("enter")
    assert at_orchard.said == "The forecast is kept."
    assert due_kg(at_orchard) == pytest.approx(10.25)
    assert low_c(at_orchard) == -12


def test_the_screen_of_a_cold_night_is_as_kept(at_orchard: Sitting, screen: SnapshotAssertion) -> None:
    """Typed, and at the line that writes."""
    assert at_orchard.press("c", *COLD).text(80, 40) == screen


def test_up_and_yes_changes_the_hay_and_the_step_shows_it(at_orchard: Sitting) -> None:
    at_orchard.press("c", *COLD, "up", "y", "enter")
    page = at_orchard.text(100, 50)
    assert "morning  Orchard grass hay: 13.33 kg (6.5), was 10.25 kg (5)" in page
    assert "evening  Orchard grass hay: 13.33 kg (6.5), was 10.25 kg (5)" in page
    assert "After these rounds the hay goes back" in page
    at_orchard.press("enter")
    assert isinstance(at_orchard.place, Lamp)
    assert at_orchard.place.step.name == "Orchard"
    assert due_kg(at_orchard) == pytest.approx(13.325)
    assert "six and a half" in at_orchard.text()
    assert "hay by the weather, morning Wed to evening Wed" in at_orchard.text(120, 30)


def test_the_forecast_is_kept_even_where_nothing_changes(at_orchard: Sitting) -> None:
    """The same coat a second time: no row is another."""
    at_orchard.press("c", *COLD, "enter", "c", "4", "pagedown", "enter")
    assert at_orchard.said == "The forecast is kept."
    assert low_c(at_orchard) == 4


def test_the_last_forecast_of_today_stands_there(at_orchard: Sitting, clock: HandClock) -> None:
    at_orchard.press("c", *COLD, "enter")
    clock.move(minutes=20)
    page = at_orchard.press("c").text()
    assert "typed last at 06:31" in page
    assert "-12" in page


def test_esc_twice_leaves_and_keeps_nothing(at_orchard: Sitting) -> None:
    at_orchard.press("c", "-3", "escape", "escape")
    assert isinstance(at_orchard.place, Lamp)
    assert low_c(at_orchard) is None


def test_without_a_low_nothing_is_proposed_and_what_is_missing_is_said(at_orchard: Sitting) -> None:
    at_orchard.press("c", "pagedown")
    assert "«lowest tonight» needs an answer" in at_orchard.said
    assert "WRITE IT" not in at_orchard.text()
    at_orchard.press("mild", "enter")
    assert "«mild» is no temperature" in at_orchard.said
    assert "mild_" in at_orchard.text()


def test_the_closing_opens_it_and_has_it_back(sitting: Sitting) -> None:
    sitting.press("left", *["right"] * 18)
    assert isinstance(sitting.place, Closing)
    sitting.press("c")
    assert isinstance(sitting.place, WeatherForm)
    sitting.press(*COLD, "enter")
    assert isinstance(sitting.place, Closing)


def test_on_a_small_window_down_shows_the_rest_of_the_proposal_and_up_goes_to_the_answers(at_orchard: Sitting) -> None:
    at_orchard.press("c", *COLD)
    assert "WATER  break the ice" not in at_orchard.text(80, 24)
    for _ in range(30):
        at_orchard.press("down").text(80, 24)
    assert "WATER  break the ice" in at_orchard.text(80, 24)
    at_orchard.press("up")
    assert "> change the hay" in at_orchard.text(80, 24)


def test_w_at_the_line_that_writes_walks_down_to_what_was_typed(at_orchard: Sitting) -> None:
    place = at_orchard.press("c", *COLD).place
    assert isinstance(place, WeatherForm)
    page = at_orchard.text(120, 50)
    for value in place.numbers():
        comes_out(value)
        assert is_cold(value) in page
    told = at_orchard.press("w", "enter").text()
    assert "the lowest tonight" in told
    assert "-12 degrees C" in told
    assert "typed from the forecast" in told
    assert "COLD  feels like" in at_orchard.press("backspace", "backspace").text(120, 50)


def is_cold(value: Value) -> str:
    """A number of the proposal as its page says it: whole degrees, whole percent, kilograms."""
    if value.unit == "F":
        return degrees(celsius(value.amount), Units.METRIC)
    return weight(value.amount, Units.METRIC) if value.unit == "kg" else f"+{value.amount:.0f}"
