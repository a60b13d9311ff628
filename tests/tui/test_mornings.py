"""Two mornings on the demo farm, walked by keys to the end and their presses counted: an ordinary one, a bad one."""

from datetime import date, datetime

import pytest

from store.book.figures import MilkedFigure, NotedFigure, PartedFigure
from store.book.turn import Turn, from_wall
from store.book.words import Apart, Asks, Kind, State
from store.round.cool import is_late
from store.round.steps import CoolStep, CountStep, DoseStep, LookStep, MilkStep, QuarterStep, Step, UdderStep
from store.round.summary import summarise
from tests.farm import HandClock
from tests.tui.keys import Sitting
from tui.walk.lamp import Lamp

PAILS = {"Fennel": "7.3", "Briar": "7.6", "Hazel": "9.4"}
A_STEP_S = 60


def asked(step: Step, now: datetime) -> str:
    """The figure that a step cannot do without."""
    if isinstance(step, CountStep):
        return str(len(step.heads))
    if isinstance(step, MilkStep):
        return PAILS[step.name]
    if isinstance(step, LookStep):
        return "3" if step.look.asks is Asks.CONDITION else "2"
    if isinstance(step, QuarterStep):
        return "7"
    if isinstance(step, DoseStep):
        return str(step.number)
    picked = isinstance(step, UdderStep) or (isinstance(step, CoolStep) and is_late(step, now))
    return "1" if picked else ""


def walk_on(sitting: Sitting, until: str = "") -> int:
    """Step after step, each as shown or with its figure, to the closing or to a step; the figures' own presses."""
    digits = 0
    while isinstance(sitting.place, Lamp) and f"{sitting.place.step.name} {sitting.place.step.kind}" != until:
        clock_of(sitting).move(seconds=A_STEP_S)
        figure = asked(sitting.place.step, clock_of(sitting).at)
        sitting.press(*([figure] if figure else []), "enter")
        digits += len(figure)
    return digits


def clock_of(sitting: Sitting) -> HandClock:
    """The clock that the test moves."""
    clock = sitting.walker.book.clock
    assert isinstance(clock, HandClock)
    return clock


def end(sitting: Sitting) -> None:
    """The round is ended at its closing."""
    assert "CLOSING" in sitting.text()
    sitting.press("e", "enter")
    assert sitting.walker.ended()


def test_an_ordinary_morning_takes_a_press_for_each_step_and_the_figures(demo: Sitting) -> None:
    demo.press("enter")
    before = demo.presses
    digits = walk_on(demo)
    assert {step.state for step in demo.walker.steps} == {State.DONE}
    assert demo.presses - before == len(demo.walker.steps) + digits
    end(demo)
    assert "51 steps = 51 done" in demo.text()


def test_with_the_board_and_whole_pens_it_takes_fewer(demo: Sitting) -> None:
    demo.press("enter")
    before, digits = demo.presses, walk_on(demo, "Stall count")
    demo.press("b", "a", "enter")
    demo.place = demo.house.first()
    for pen in ("Orchard", "Long field", "Paddock"):
        digits += walk_on(demo, f"{pen} hay")
        demo.press("a", "a", "enter")
    digits += walk_on(demo)
    assert {step.state for step in demo.walker.steps} == {State.DONE}
    assert demo.presses - before - digits < len(demo.walker.steps)
    end(demo)


@pytest.fixture
def bad(demo: Sitting) -> Sitting:
    """The morning after: the round of the day before was walked, its evening stands on the sheet by the door."""
    demo.press("enter")
    walk_on(demo)
    end(demo)
    clock_of(demo).move(hours=23)
    demo.presses = 0
    return demo.begin()


EVENING = Turn(date(2026, 3, 11), "evening")


def last_evening_from_the_sheet(bad: Sitting) -> None:
    """What is known of it: when the calves were shut away and the soaks begun; the rest stays on paper."""
    if "LEFT FOR YOU" in bad.text():
        bad.press("enter")
    assert "Wed 11 Mar evening: nothing was written" in bad.text()
    bad.press("2", "enter")
    times = {"Rook": "18:50", "Wren": "18:55", "lucerne": "18:40", "beet": "18:42", "left undone": "Trough slow"}
    while "ON PAPER" in bad.text():
        (answer,) = [words for asked, words in times.items() if asked in bad.text().split("WRITTEN")[0]]
        bad.press(answer, "enter")
    assert "Trough slow" in bad.text()
    bad.press("enter")


def test_a_bad_morning_is_walked_to_its_end(bad: Sitting) -> None:
    last_evening_from_the_sheet(bad)
    clock = clock_of(bad)
    walk_on(bad, "Stall count")

    bad.press("2", "enter")
    assert "1 MISSING" in bad.text()
    bad.press("3", "enter")
    assert bad.walker.snapshot.entries[-1].state is State.DONE

    walk_on(bad, "Fennel milk")
    bad.press("m", "1", "enter")
    assert "got out" in bad.text()
    bad.press("2.9", "enter")
    assert bad.newest().the(MilkedFigure)

    bad.press("g", "briar milk", "enter", "m", "2", "enter", "4.4", "enter")
    held = bad.newest().the(MilkedFigure)
    assert held
    assert held.held_back

    bad.press("g", "dock feed", "enter", "m", "2", "enter", "0.7", "enter")
    assert "The new weight counts" in bad.said
    bad.press("enter")

    clock.move(minutes=65)
    bad.begin()
    assert "BACK AT THE BENCH" in bad.text()
    assert "MILK  Briar: milked" in bad.text()
    bad.press("enter")

    while isinstance(bad.place, Lamp):
        walk_on(bad)
    if missing := summarise(bad.walker.snapshot, bad.walker.steps).not_recorded:
        bad.press("enter")
        assert isinstance(bad.place, Lamp)
        assert bad.place.step == missing[0]
        walk_on(bad)
    end(bad)
    assert "49 done + 0 skipped" in bad.text()
    assert bad.presses <= 152


def test_the_evening_stays_on_paper_and_the_calf_was_out(bad: Sitting) -> None:
    last_evening_from_the_sheet(bad)
    walk_on(bad, "Fennel milk")
    bad.press("m", "1", "enter")
    out = bad.newest()
    assert out.of(PartedFigure)[0].state is Apart.GOT_OUT
    assert out.happened_from == from_wall(datetime(2026, 3, 11, 18, 50), bad.walker.zone)  # noqa: DTZ001 wall time
    bad.walker.open_turn(EVENING, live=False)
    states = {step.state for step in bad.walker.steps}
    assert states == {State.DONE, State.ON_PAPER}
    told = [entry.the(NotedFigure) for entry in bad.walker.snapshot.entries if entry.kind is Kind.NOTE]
    assert told == [NotedFigure("Trough slow", tell=True)]
