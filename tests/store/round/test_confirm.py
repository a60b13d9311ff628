"""A key that confirms a feed, a pail or a job: the draft it makes."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import Draft
from store.book.figures import FedFigure, MilkedFigure
from store.book.opening import Book
from store.book.words import SKIP_REASONS, Fate, State, Units
from store.round.amount import Unreadable
from store.round.confirm import done, ended, left_open, skipped, undone
from store.round.measured import fed, milked
from store.round.plan import plan
from tests.farm import hand as hand_at
from tests.farm import morning
from tests.store.keys import pressed
from tests.store.round.made import dawn, hand, some_id, wrote
from tests.store.round.named import feed_of, milk_of, task_of


def fed_figures(draft: Draft) -> list[FedFigure]:
    """The feeds of a draft."""
    return [figure for figure in draft.figures if isinstance(figure, FedFigure)]


def milk_figure(draft: Draft) -> MilkedFigure:
    """The one milking of a draft."""
    (figure,) = draft.figures
    assert isinstance(figure, MilkedFigure)
    return figure


def test_enter_writes_what_is_shown_beside_what_is_due() -> None:
    """Hazel is due 2.0 kg; three scoops weigh 2.025."""
    (figure,) = fed_figures(fed(hand(dawn()), feed_of(dawn(), "Hazel"), {}))
    assert figure.due_kg == 2.0
    assert figure.given_kg == pytest.approx(2.025)
    assert figure.typed == ""


def test_every_feed_of_a_step_is_in_its_draft() -> None:
    """In the order they stand in, each with the measure it is told in."""
    step = feed_of(dawn(), "Fennel")
    figures = fed_figures(fed(hand(dawn()), step, {}))
    assert [(one.feed_id, one.measure_id) for one in figures] == [
        (due.feed.id, due.told.id if due.told else None) for due in step.due
    ]


@pytest.mark.parametrize(
    ("typed", "given_kg"), [("2", 1.35), ("3 1/2", 2.3625), ("2,4 kg", 2.4), ("500 g", 0.5), ("0", 0)]
)
def test_what_is_typed_is_given_and_kept_as_typed_beside_what_was_due(typed: str, given_kg: float) -> None:
    """What was due does not follow."""
    step = feed_of(dawn(), "Hazel")
    (figure,) = fed_figures(fed(hand(dawn()), step, {step.due[0].feed.id: typed}))
    assert figure.given_kg == pytest.approx(given_kg)
    assert figure.typed == typed
    assert figure.due_kg == 2.0


def test_one_feed_typed_leaves_the_other_as_shown() -> None:
    """Less nuts, the lucerne as planned."""
    step = feed_of(dawn(), "Fennel")
    nuts, lucerne = fed_figures(fed(hand(dawn()), step, {step.due[0].feed.id: "2"}))
    assert nuts.given_kg == pytest.approx(1.35)
    assert nuts.typed == "2"
    assert (lucerne.given_kg, lucerne.typed) == (step.due[1].as_shown_kg, "")


def test_correcting_one_feed_leaves_the_other_as_it_was_given() -> None:
    """Two scoops of nuts were written; the lucerne is corrected afterwards; the nuts are still two scoops."""
    step = feed_of(dawn(), "Fennel")
    nuts_id, lucerne_id = (due.feed.id for due in step.due)
    after = wrote(dawn(), fed(hand(dawn()), step, {nuts_id: "2"}))
    nuts, lucerne = fed_figures(fed(hand(after), feed_of(after, "Fennel"), {lucerne_id: "1/2"}))
    assert lucerne.given_kg == pytest.approx(0.45)
    assert nuts.given_kg == pytest.approx(1.35)


def test_what_cannot_be_read_makes_no_draft() -> None:
    """Neither for a feed nor for milk."""
    step = feed_of(dawn(), "Hazel")
    with pytest.raises(Unreadable):
        fed(hand(dawn()), step, {step.due[0].feed.id: "3 bags"})
    with pytest.raises(Unreadable):
        milked(hand(dawn()), milk_of(dawn(), "Hazel"), "", Fate.HOUSE)


def test_a_bare_weight_is_read_as_the_farm_reads_it() -> None:
    """28.5 on the scale of an American farm is pounds."""
    figure = milk_figure(milked(hand(dawn(), Units.US), milk_of(dawn(), "Hazel"), "28.5", Fate.HOUSE))
    assert figure.gross_kg == pytest.approx(28.5 * 0.45359237)  # exact: NIST Handbook 44, Appendix C


@pytest.mark.parametrize("fate", Fate)
def test_milk_keeps_the_scale_the_pail_and_where_it_went(fate: Fate) -> None:
    """And the text as typed."""
    step = milk_of(dawn(), "Hazel")
    assert step.milking.pail is not None
    figure = milk_figure(milked(hand(dawn()), step, "9,9", fate))
    assert figure.milk_kg == pytest.approx(8.5)
    assert (figure.gross_kg, figure.empty_kg, figure.pail_id) == (9.9, 1.4, step.milking.pail.id)
    assert (figure.fate, figure.typed) == (fate, "9,9")


def test_milk_by_volume_stood_on_no_scale() -> None:
    """No pail, no gross weight, no empty one."""
    figure = milk_figure(milked(hand(dawn()), milk_of(dawn(), "Hazel"), "8 l", Fate.CALVES))
    assert figure.milk_kg == pytest.approx(8 * 1.03)
    assert replace(figure, milk_kg=None) == MilkedFigure(None, None, None, None, Fate.CALVES, "8 l")


def test_skipped_milk_has_no_weight_and_never_zero() -> None:
    """Nor has it gone anywhere."""
    draft = skipped(hand(dawn()), milk_of(dawn(), "Hazel"), SKIP_REASONS[3])
    assert milk_figure(draft) == MilkedFigure(None, None, None, None, None, "")
    assert (draft.state, draft.reason) == (State.SKIPPED, SKIP_REASONS[3])


def test_a_skipped_feed_keeps_what_was_due_and_was_not_given() -> None:
    """Not given is not zero."""
    draft = skipped(hand(dawn()), feed_of(dawn(), "Fennel"), "ran out")
    assert [(one.due_kg, one.given_kg, one.typed) for one in fed_figures(draft)] == [(2.7, None, ""), (0.9, None, "")]


def test_a_job_is_done_or_skipped_without_figures() -> None:
    """There is nothing to measure."""
    step = task_of(dawn(), "Water trough runs")
    assert (done(hand(dawn()), step).state, done(hand(dawn()), step).figures) == (State.DONE, ())
    assert (skipped(hand(dawn()), step, "other").state, skipped(hand(dawn()), step, "other").figures) == (
        State.SKIPPED,
        (),
    )


def test_a_draft_says_whose_step_who_wrote_it_in_which_round_and_when() -> None:
    """All of it from the hand and the step."""
    made = hand(dawn())
    for step in plan(dawn()):
        draft = done(made, step)
        assert (draft.step_id, draft.kind, draft.subject) == (step.step_id, step.kind, step.subject)
        assert (draft.turn, draft.person_id, draft.happened_at) == (made.turn, made.person_id, made.now)


def test_a_draft_names_the_entry_that_the_screen_showed() -> None:
    """None at first; the newest when a step is written again."""
    first = done(hand(dawn()), task_of(dawn(), "Water trough runs"))
    assert first.shown is None
    after = wrote(dawn(), first)
    assert done(hand(after), task_of(after, "Water trough runs")).shown == after.entries[0].id


def test_undo_opens_the_step_of_an_entry_and_carries_no_figure() -> None:
    """The entry stays; the new one replaces it, written by whoever undoes it."""
    after = wrote(dawn(), milked(hand(dawn()), milk_of(dawn(), "Hazel"), "9.9", Fate.HOUSE))
    tom = replace(hand(after), person_id=after.people[1].id, now=hand(after).now + timedelta(hours=1))
    draft = undone(tom, after.entries[0])
    assert (draft.state, draft.figures, draft.reason) == (State.OPEN, (), "")
    assert (draft.step_id, draft.shown) == (after.entries[0].step_id, after.entries[0].id)
    assert (draft.person_id, draft.happened_at, draft.turn) == (tom.person_id, tom.now, tom.turn)


def test_a_round_that_ends_keeps_what_was_due_for_every_step_that_is_left() -> None:
    """Open or on paper: the old round stays what it was, whatever the plan becomes."""
    feed = feed_of(dawn(), "Fennel")
    for state in (State.OPEN, State.ON_PAPER):
        draft = left_open(hand(dawn()), feed, state)
        assert draft.state is state
        assert [(one.due_kg, one.given_kg) for one in fed_figures(draft)] == [(2.7, None), (0.9, None)]
    assert milk_figure(left_open(hand(dawn()), milk_of(dawn(), "Hazel"))) == MilkedFigure(None)
    assert left_open(hand(dawn()), task_of(dawn(), "Water trough runs")).figures == ()


def test_the_end_of_a_round_belongs_to_no_animal_and_no_pen() -> None:
    """It is the round itself that ends, once, under one name."""
    draft = ended(hand(dawn()), some_id("end"), None)
    assert (draft.kind, draft.state, draft.figures) == ("round", State.DONE, ())
    assert draft.subject.id.int == 0


def test_the_book_takes_every_draft_and_gives_it_back(book: Book) -> None:
    """Each step of the morning written in its own way, then read from the file."""
    drafts = []
    for step in plan(morning(book)):
        drafts.append(pressed(hand_at(book, morning(book)), step))
        book.append(drafts[-1])
    entries = morning(book).entries
    assert [(e.step_id, e.kind, e.subject, e.state, e.reason, e.happened_at, e.figures) for e in entries] == [
        (d.step_id, d.kind, d.subject, d.state, d.reason, d.happened_at, d.figures) for d in drafts
    ]
