"""What this round's book holds that the plan does not: dropped since, or never planned. It still counts."""

from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.words import Fate, Kind, State
from store.round.confirm import done, ended, got_out, left_open, noted, skipped, undone
from store.round.measured import fed, milked
from store.round.plan import plan
from store.round.steps import PastStep
from store.round.summary import summarise
from tests.store.round.made import (
    animal_named,
    dawn,
    dusk,
    hand,
    moved,
    some_id,
    walk,
    with_portions,
    without_animal,
    wrote,
)
from tests.store.round.named import feed_of, milk_of, past_of, steps_of, task_of


def test_what_was_written_for_a_step_that_is_no_longer_planned_still_counts() -> None:
    """Rook was fed and her plan ended in the same round: her feed stands at the end of the walk."""
    rook = feed_of(dawn(), "Rook")
    after = with_portions(wrote(dawn(), fed(hand(dawn()), rook, {})), rook.subject.id)
    last = plan(after)[-1]
    assert isinstance(last, PastStep)
    assert (last.name, last.place, last.kind) == ("Rook", "Dropped", "feed")
    assert (last.step_id, last.entry) == (rook.step_id, after.entries[0])
    assert walk(after)[:-1] == [step for step in walk(dawn()) if step[1:] != ("Rook", "feed")]


def test_a_past_step_of_a_cow_that_is_gone_still_counts() -> None:
    """By her name; and were even that gone, the milk is not."""
    after = wrote(dawn(), milked(hand(dawn()), milk_of(dawn(), "Hazel"), "9.5", Fate.HOUSE))
    gone = without_animal(after, "Hazel")
    assert (plan(gone)[-1].name, plan(gone)[-1].state) == ("Hazel", State.DONE)
    assert plan(replace(gone, names={}))[-1].name == "gone since"


def test_a_past_step_keeps_the_name_of_its_pen() -> None:
    """Both cows left the stall behind the hay."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Stall"), {}))
    after = moved(moved(after, "Fennel", "Orchard"), "Hazel", "Orchard")
    assert (plan(after)[-1].name, plan(after)[-1].kind) == ("Stall", "hay")


def test_a_job_done_in_a_pen_that_fell_out_of_use_still_counts_by_its_name() -> None:
    """It was done, whatever became of the pen."""
    after = wrote(dawn(), done(hand(dawn()), task_of(dawn(), "Water trough runs")))
    after = replace(after, pens=tuple(pen for pen in after.pens if pen.name != "Orchard"))
    (step,) = (step for step in plan(after) if step.kind == "task" and step.state is State.DONE)
    assert (step.name, step.entry) == ("Water trough runs", after.entries[0])


def test_a_skipped_step_that_is_no_longer_planned_is_still_skipped() -> None:
    """With its reason."""
    after = wrote(dawn(), skipped(hand(dawn()), feed_of(dawn(), "Rook"), "ran out"))
    after = with_portions(after, feed_of(dawn(), "Rook").subject.id)
    last = past_of(after, "Rook")
    assert last.state is State.SKIPPED
    assert last.entry is not None
    assert last.entry.reason == "ran out"


def test_an_undone_step_that_is_no_longer_planned_is_gone_from_the_walk() -> None:
    """Nothing was done, and nothing is due."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Rook"), {}))
    after = wrote(after, undone(hand(after), after.entries[0]))
    after = with_portions(after, feed_of(dawn(), "Rook").subject.id)
    assert walk(after) == [step for step in walk(dawn()) if step[1:] != ("Rook", "feed")]


def test_a_step_on_paper_that_is_no_longer_planned_is_still_on_paper() -> None:
    """It waits to be typed in."""
    rook = feed_of(dawn(), "Rook")
    after = with_portions(wrote(dawn(), left_open(hand(dawn()), rook, State.ON_PAPER)), rook.subject.id)
    assert past_of(after, "Rook").state is State.ON_PAPER


def test_what_nobody_planned_stands_besides_the_plan() -> None:
    """Rook was found with Fennel: written of her own accord, and never dropped from any plan."""
    fennel, rook = animal_named(dawn(), "Fennel"), animal_named(dawn(), "Rook")
    after = wrote(dawn(), got_out(hand(dawn()), fennel.id, rook.id, None))
    step = past_of(after, "Rook")
    assert (step.place, step.kind, step.state) == ("Besides", Kind.APART, State.DONE)
    assert step.step_id == after.entries[0].id


def test_notes_and_the_end_of_a_round_are_no_steps() -> None:
    """Neither is done or not done."""
    after = wrote(
        dawn(),
        noted(hand(dawn()), Subject(), "The hinge squeaks", tell=False),
        ended(hand(dawn()), some_id("the end"), None),
    )
    assert plan(after) == plan(dawn())
    assert summarise(after, plan(after)).done == ()


def test_a_round_as_it_was_written_has_nothing_besides() -> None:
    """Every entry of the evening belongs to a planned step."""
    assert steps_of(dusk(), PastStep) == []
