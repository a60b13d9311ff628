"""Looks that fall due at an animal: in their slot, every so many days, until a day; each with its finding."""

from datetime import date, timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.care import LastLook, Look
from store.book.figures import LookedFigure
from store.book.opening import Book
from store.book.reading.facts import uid
from store.book.records.care import LookAs
from store.book.snapshot import Snapshot
from store.book.words import Asks, Kind, Looks, Quarter, Sign, State, Units
from store.round.amount import Unreadable
from store.round.care import look_measured, look_number, looked, quarters_found
from store.round.confirm import moved_on, undone
from store.round.plan import plan
from store.round.steps import LookStep
from tests.farm import HandClock, morning
from tests.farm import hand as hand_at
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn, hand, some_id, the_step, wrote
from tests.store.round.named import step_of, steps_of

FOOT = Look(some_id("foot"), animal_named(dawn(), "Sloe").id, "left hind foot", Asks.HOW, "morning", 1, None)
SCORE = replace(FOOT, id=some_id("score"), name="condition", asks=Asks.CONDITION, every_days=14)


def with_looks(*looks: Look) -> Snapshot:
    """The pretend morning with some looks."""
    return replace(dawn(), looks=looks, names={**dawn().names, **{look.id: look.name for look in looks}})


def last(days_ago: int) -> LastLook:
    """It was looked at so many days before the pretend morning."""
    return LastLook(dawn().turn.day - timedelta(days=days_ago), LookedFigure(SCORE.id, Looks.SAME))


def test_a_look_is_a_step_at_its_animal_before_her_feed() -> None:
    """Under its own name, so that two looks at one animal are two steps."""
    found = with_looks(FOOT, SCORE)
    steps = [step for step in plan(found) if step.subject.animal_id == FOOT.animal_id]
    assert [step.kind for step in steps] == [Kind.LOOK, Kind.LOOK, Kind.FEED]
    assert len({step.step_id for step in steps}) == 3
    assert [step.place for step in steps] == ["Orchard"] * 3


def test_a_look_of_the_evening_is_not_asked_for_in_the_morning() -> None:
    """Each in its slot."""
    assert steps_of(with_looks(replace(FOOT, slot="evening")), LookStep) == []


@pytest.mark.parametrize(("days_ago", "due"), [(13, False), (14, True), (15, True), (300, True)])
def test_a_look_is_due_when_its_days_have_gone_by(days_ago: int, due: bool) -> None:
    """Fourteen days after it was done, not thirteen; it stays due until it is done."""
    assert bool(steps_of(with_looks(replace(SCORE, last=last(days_ago))), LookStep)) is due


def test_a_look_that_was_never_done_is_due_at_once() -> None:
    """Nobody has to remember to begin."""
    assert [step.look for step in steps_of(with_looks(SCORE), LookStep)] == [SCORE]


@pytest.mark.parametrize("looks", Looks)
def test_a_finding_is_written_as_it_was_picked(looks: Looks) -> None:
    """And the step is done."""
    found = with_looks(FOOT)
    after = wrote(found, looked(hand(found), step_of(found, LookStep, "Sloe"), looks))
    step = step_of(after, LookStep, "Sloe")
    assert (step.state, step.entry and step.entry.figures) == (State.DONE, (LookedFigure(FOOT.id, looks),))


@pytest.mark.parametrize(
    ("typed", "asks", "units", "expected"),
    [
        ("2.5", Asks.CONDITION, Units.METRIC, 2.5),
        ("2 1/2", Asks.CONDITION, Units.US, 2.5),
        ("142", Asks.GIRTH, Units.METRIC, 142),
        ("56 in", Asks.GIRTH, Units.METRIC, 142.24),
        ("56", Asks.GIRTH, Units.US, 142.24),
        ("142 cm", Asks.GIRTH, Units.US, 142),
        ("38,6", Asks.TEMPERATURE, Units.METRIC, 38.6),
        ("101.5 F", Asks.TEMPERATURE, Units.METRIC, 38.611),
        ("101.5", Asks.TEMPERATURE, Units.US, 38.611),
        ("38.6 c", Asks.TEMPERATURE, Units.US, 38.6),
    ],
)
def test_a_figure_is_read_in_the_farms_unit_or_the_one_typed(
    typed: str, asks: Asks, units: Units, expected: float
) -> None:
    """A bare number is what the farm has set."""
    assert look_number(typed, asks, units) == pytest.approx(expected, abs=0.001)


@pytest.mark.parametrize(
    ("typed", "asks", "found", "expected"),
    [
        ("25", Asks.CONDITION, "«25» is no condition", "1 to 9"),
        ("2.5 kg", Asks.CONDITION, "«kg» is no unit", "points"),
        ("14", Asks.GIRTH, "«14» is no heart girth", "40 to 320 cm"),
        ("386", Asks.TEMPERATURE, "«386» is no temperature", "30 to 45 C"),
        ("38.6 in", Asks.TEMPERATURE, "«in» is no unit", "C or F"),
        ("warm", Asks.TEMPERATURE, "«warm» is no amount", "Type a number"),
    ],
)
def test_a_figure_that_no_animal_has_is_refused_in_a_sentence(
    typed: str, asks: Asks, found: str, expected: str
) -> None:
    """What was found, and what was expected."""
    with pytest.raises(Unreadable) as refused:
        look_number(typed, asks, Units.METRIC)
    assert found in str(refused.value)
    assert expected in str(refused.value)


def test_a_score_is_kept_as_a_figure_with_what_was_typed() -> None:
    """Under its own name, the other figures empty."""
    found = with_looks(SCORE)
    draft = look_measured(hand(found), step_of(found, LookStep, "Sloe"), "2 1/2")
    assert draft.figures == (LookedFigure(SCORE.id, None, condition_points=2.5, typed="2 1/2"),)


def test_a_look_that_was_moved_on_is_a_look_in_the_next_round(book: Book) -> None:
    """With its question, though it has no place in that slot."""
    sloe = animal_named(morning(book), "Sloe").id
    ((look_id,),) = book.desk.rows("SELECT id FROM look", {})
    plan_of_it = {"name": "left hind foot", "asks": Asks.HOW, "slot": "morning"}
    put(book.desk, LookAs, look_id=uid(look_id), animal_id=sloe, **plan_of_it)
    found = morning(book)
    book.append(moved_on(hand_at(book, found), step_of(found, LookStep, "Sloe")))
    book.clock = HandClock(book.clock.now() + timedelta(hours=12))
    evening = morning(book)
    (step,) = steps_of(evening, LookStep)
    assert (step.look.name, step.moved_from, step.state) == ("left hind foot", found.turn, State.OPEN)
    book.append(looked(hand_at(book, evening), step, Looks.BETTER))
    assert the_step(morning(book), step).state is State.DONE
    book.clock = HandClock(book.clock.now() + timedelta(hours=12))
    assert [each.look.last for each in steps_of(morning(book), LookStep)] == [
        LastLook(found.turn.day, LookedFigure(step.look.id, Looks.BETTER))
    ]


def test_a_look_ends_on_its_last_day(book: Book) -> None:
    """The small farm's foot was looked at until 6 March."""
    assert date(2026, 3, 11) == morning(book).turn.day
    assert morning(book).looks == ()


def test_a_quarter_is_marked_beside_the_plan_and_can_be_taken_back() -> None:
    """An entry of its own, whether she is milked or not."""
    hazel = animal_named(dawn(), "Hazel").id
    draft = quarters_found(hand(dawn()), hazel, {Quarter.LEFT_HIND: (Sign.CLOTS,)})
    assert (draft.step_id, draft.kind, draft.subject.animal_id, draft.state) == (None, Kind.LOOK, hazel, State.DONE)
    after = wrote(dawn(), draft)
    assert [step.kind for step in plan(after)][-1] is Kind.LOOK
    back = wrote(after, undone(hand(after), after.entries[-1]))
    assert len(plan(back)) == len(plan(dawn()))
