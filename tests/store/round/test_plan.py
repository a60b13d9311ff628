"""The plan: everything that is due, in walking order, and what the book already holds for it."""

from dataclasses import replace

from store.book.snapshot import Portion, Snapshot
from store.book.words import Fate, State
from store.round.confirm import done, fed, milked, skipped, undone
from store.round.plan import plan
from store.round.steps import PastStep
from tests.store.round.made import (
    NUTS,
    demo,
    demo_evening,
    feed_of,
    hand,
    milk_of,
    moved,
    pen_named,
    task_of,
    with_portions,
    wrote,
)

WALK = [
    ("Bench", "Smell the soaked feed in the RED bucket", "task"),
    ("Stall", "Stall", "feed"),
    ("Stall", "Fennel", "feed"),
    ("Stall", "Fennel", "milk"),
    ("Stall", "Hazel", "feed"),
    ("Stall", "Hazel", "milk"),
    ("Stall", "Let Rook in to Fennel", "task"),
    ("Calf pen", "Rook", "feed"),
    ("Orchard", "Orchard", "feed"),
    ("Orchard", "Sloe", "feed"),
    ("Orchard", "Water trough runs", "task"),
    ("Bench", "Soak 1 scoop DRY lucerne in the RED bucket", "task"),
    ("Bench", "Feed room shut and chained", "task"),
]


def walk(snapshot: Snapshot) -> list[tuple[str, str, str]]:
    """Each step's place, name and kind, in order."""
    return [(step.place, step.name, step.kind.value) for step in plan(snapshot)]


def test_the_round_is_walked_from_the_bench_through_each_pen_to_the_bench() -> None:
    """In a pen: the pen's forage, then each animal's feed and milk, then the job that closes it."""
    assert walk(demo()) == WALK


def test_the_pens_are_walked_in_the_order_of_the_farm() -> None:
    """Turned round, the pens come the other way; inside each nothing changes."""
    turned = walk(replace(demo(), pens=demo().pens[::-1]))
    assert turned == [WALK[0], *WALK[8:11], WALK[7], *WALK[1:7], *WALK[11:]]


def test_one_snapshot_gives_one_plan() -> None:
    """However often it is drawn, and from an equal snapshot too."""
    first = plan(demo())
    assert plan(demo()) == first
    assert plan(replace(demo())) == first


def test_every_step_of_a_round_has_its_own_name() -> None:
    """No two share a history."""
    for snapshot in (demo(), demo_evening()):
        steps = plan(snapshot)
        assert len({step.step_id for step in steps}) == len(steps)


def test_the_morning_and_the_evening_share_no_step() -> None:
    """Nor do two days."""
    tomorrow = replace(demo(), turn=replace(demo().turn, day=demo_evening().turn.day))
    named = [{step.step_id for step in plan(each)} for each in (demo(), demo_evening(), tomorrow)]
    assert not named[0] & named[1]
    assert not named[0] & named[2]
    assert not named[1] & named[2]


def test_a_step_is_named_for_neither_pen_nor_order_nor_amount() -> None:
    """Whatever of these changes, every step keeps its name."""
    fennel = feed_of(demo(), "Fennel").subject.id
    changed = moved(demo(), "Fennel", "Orchard")
    changed = replace(changed, pens=changed.pens[::-1], animals=changed.animals[::-1], jobs=changed.jobs[::-1])
    changed = with_portions(changed, fennel, Portion(NUTS, 1.0, None))
    assert {(s.kind, s.name): s.step_id for s in plan(changed)} == {(s.kind, s.name): s.step_id for s in plan(demo())}


def test_an_animal_that_moves_keeps_her_step_and_what_was_written_for_it() -> None:
    """Fed in the stall, then led to the orchard: she is not fed twice."""
    after = wrote(demo(), fed(hand(demo()), feed_of(demo(), "Hazel"), {}))
    after = wrote(after, milked(hand(after), milk_of(after, "Hazel"), "9.5", Fate.HOUSE))
    there = moved(after, "Hazel", "Orchard")
    assert feed_of(there, "Hazel").place == "Orchard"
    assert feed_of(there, "Hazel").entry == feed_of(after, "Hazel").entry == after.entries[0]
    assert milk_of(there, "Hazel").entry == after.entries[1]
    assert [step.state for step in plan(there)].count(State.DONE) == 2


def test_an_animal_in_no_pen_is_walked_after_the_pens() -> None:
    """She is not lost: her feed and her milk are due wherever she is."""
    found = walk(moved(demo(), "Hazel", None))
    assert ("Stall", "Hazel", "feed") not in found
    assert found[-4:] == [("No pen", "Hazel", "feed"), ("No pen", "Hazel", "milk"), *WALK[-2:]]
    assert len(found) == len(WALK)


def test_an_animal_in_a_pen_that_is_not_walked_is_walked_after_the_pens() -> None:
    """The pen fell out of use with her standing in it."""
    orchard = pen_named(demo(), "Orchard")
    without = replace(demo(), pens=tuple(pen for pen in demo().pens if pen != orchard))
    assert ("No pen", "Sloe", "feed") in walk(without)


def test_an_empty_farm_gives_no_steps() -> None:
    """Nothing is due where there is nothing."""
    bare = replace(demo(), pens=(), animals=(), jobs=(), portions={}, milkings={})
    assert plan(bare) == ()
    assert plan(replace(demo(), animals=(), jobs=())) == ()


def test_a_step_shows_the_newest_entry_of_its_history() -> None:
    """Written, corrected: the correction counts."""
    after = wrote(demo(), fed(hand(demo()), feed_of(demo(), "Rook"), {}))
    after = wrote(after, fed(hand(after), feed_of(after, "Rook"), {feed_of(after, "Rook").due[0].feed.id: "1"}))
    assert feed_of(after, "Rook").entry == after.entries[1]
    assert feed_of(after, "Hazel").entry is None


def test_an_undone_step_is_open_and_keeps_its_place() -> None:
    """With the entry that opened it."""
    after = wrote(demo(), done(hand(demo()), task_of(demo(), "Water trough runs")))
    assert task_of(after, "Water trough runs").state is State.DONE
    after = wrote(after, undone(hand(after), after.entries[0]))
    assert task_of(after, "Water trough runs").state is State.OPEN
    assert walk(after) == WALK


def test_what_was_written_for_a_step_that_is_no_longer_planned_still_counts() -> None:
    """Rook was fed and her plan ended in the same round: her feed stands at the end of the walk."""
    rook = feed_of(demo(), "Rook")
    after = with_portions(wrote(demo(), fed(hand(demo()), rook, {})), rook.subject.id)
    steps = plan(after)
    assert isinstance(steps[-1], PastStep)
    assert (steps[-1].name, steps[-1].place, steps[-1].kind) == ("Rook", "no longer planned", "feed")
    assert steps[-1].step_id == rook.step_id
    assert steps[-1].entry == after.entries[0]
    assert walk(after)[:-1] == [step for step in WALK if step[1] != "Rook"]


def test_a_past_step_of_a_cow_that_is_gone_still_counts() -> None:
    """Even her name is gone; the milk is not."""
    after = wrote(demo(), milked(hand(demo()), milk_of(demo(), "Hazel"), "9.5", Fate.HOUSE))
    gone = replace(after, animals=tuple(animal for animal in after.animals if animal.name != "Hazel"))
    assert (plan(gone)[-1].name, plan(gone)[-1].state) == ("gone since", State.DONE)


def test_a_past_step_keeps_the_name_of_its_pen_or_job() -> None:
    """Whichever it belongs to."""
    after = wrote(demo(), fed(hand(demo()), feed_of(demo(), "Stall"), {}))
    after = moved(moved(after, "Fennel", "Orchard"), "Hazel", "Orchard")
    assert (plan(after)[-1].name, plan(after)[-1].kind) == ("Stall", "feed")


def test_a_job_done_in_a_pen_that_fell_out_of_use_still_counts_by_its_name() -> None:
    """It was done, whatever became of the pen."""
    after = wrote(demo(), done(hand(demo()), task_of(demo(), "Water trough runs")))
    after = replace(after, pens=tuple(pen for pen in after.pens if pen.name != "Orchard"))
    (step,) = (step for step in plan(after) if step.kind == "task" and step.state is State.DONE)
    assert (step.name, step.entry) == ("Water trough runs", after.entries[0])


def test_a_skipped_step_that_is_no_longer_planned_is_still_skipped() -> None:
    """With its reason."""
    after = wrote(demo(), skipped(hand(demo()), feed_of(demo(), "Rook"), "ran out"))
    after = with_portions(after, feed_of(demo(), "Rook").subject.id)
    last = plan(after)[-1]
    assert last.state is State.SKIPPED
    assert last.entry is not None
    assert last.entry.reason == "ran out"


def test_an_undone_step_that_is_no_longer_planned_is_gone_from_the_walk() -> None:
    """Nothing was done, and nothing is due."""
    after = wrote(demo(), fed(hand(demo()), feed_of(demo(), "Rook"), {}))
    after = wrote(after, undone(hand(after), after.entries[0]))
    after = with_portions(after, feed_of(demo(), "Rook").subject.id)
    assert walk(after) == [step for step in WALK if step[1] != "Rook"]


def test_planning_changes_nothing_in_the_snapshot() -> None:
    """The same facts, the same entries, before and after."""
    after = wrote(demo(), fed(hand(demo()), feed_of(demo(), "Rook"), {}))
    kept = replace(after, portions=dict(after.portions), milkings=dict(after.milkings), feeds=dict(after.feeds))
    plan(after)
    assert after == kept
