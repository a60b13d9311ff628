"""The plan: everything that is due, in walking order, and what the book already holds for it."""

from datetime import timedelta

from msgspec.structs import replace

from store.book.facts.feed import Portion
from store.book.words import Fate, State
from store.round.confirm import done, undone
from store.round.measured import fed, milked
from store.round.plan import plan
from tests.store.round.made import (
    NUTS,
    dawn,
    dusk,
    hand,
    moved,
    pen_named,
    walk,
    with_portions,
    wrote,
)
from tests.store.round.named import feed_of, milk_of, task_of

WALK = [
    ("Bench", "lucerne pellets", "soak"),
    ("Stall", "Stall", "count"),
    ("Stall", "Stall", "hay"),
    ("Stall", "Fennel", "feed"),
    ("Stall", "Fennel", "milk"),
    ("Stall", "Rook", "apart"),
    ("Stall", "Hazel", "feed"),
    ("Stall", "Hazel", "milk"),
    ("Bench", "Milk", "cool"),
    ("Calf pen", "Calf pen", "count"),
    ("Calf pen", "Rook", "feed"),
    ("Orchard", "Orchard", "count"),
    ("Orchard", "Orchard", "hay"),
    ("Orchard", "Sloe", "feed"),
    ("Orchard", "Tansy", "udder"),
    ("Orchard", "Water trough runs", "task"),
    ("Bench", "lucerne pellets", "soak"),
    ("Bench", "Feed room shut and chained", "task"),
]
STALL, CALF_PEN, ORCHARD = slice(1, 9), slice(9, 11), slice(11, 16)
"""The stall with the milk into ice behind it, as the last cow is milked there."""


def test_the_round_is_walked_from_the_bench_through_each_pen_to_the_bench() -> None:
    """In a pen: heads and a look, the pen's forage, then each animal, then the job that closes it."""
    assert walk(dawn()) == WALK


def test_the_evening_is_walked_by_its_own_plan() -> None:
    """Fennel is felt and not milked, her calf is shut away, and less is fed."""
    found = [step for step in walk(dusk()) if step[0] != "Dropped"]
    assert ("Stall", "Fennel", "udder") in found
    assert ("Stall", "Fennel", "milk") not in found
    assert ("Calf pen", "Rook", "apart") in found
    assert len(found) == 14


def test_the_pens_are_walked_in_the_order_of_the_farm() -> None:
    """Turned round, the pens come the other way; inside each nothing changes."""
    turned = walk(replace(dawn(), pens=dawn().pens[::-1]))
    assert turned == [WALK[0], *WALK[ORCHARD], *WALK[CALF_PEN], *WALK[STALL], *WALK[16:]]


def test_one_snapshot_gives_one_plan() -> None:
    """However often it is drawn, and from an equal snapshot too."""
    first = plan(dawn())
    assert plan(dawn()) == first
    assert plan(replace(dawn())) == first


def test_every_step_of_a_round_has_its_own_name() -> None:
    """No two share a history; the soak looked into and the soak begun are two."""
    for snapshot in (dawn(), dusk()):
        steps = plan(snapshot)
        assert len({step.step_id for step in steps}) == len(steps)


def test_the_morning_and_the_evening_share_no_step() -> None:
    """Nor do two days."""
    yesterday = replace(dawn(), turn=replace(dawn().turn, day=dawn().turn.day - timedelta(days=1)))
    named = [{step.step_id for step in plan(each)} for each in (dawn(), dusk(), yesterday)]
    assert not named[0] & named[1]
    assert not named[0] & named[2]
    assert not named[1] & named[2]


def test_a_step_is_named_for_neither_pen_nor_order_nor_amount() -> None:
    """Whatever of these changes, every step keeps its name."""
    fennel = feed_of(dawn(), "Fennel").subject.id
    changed = moved(dawn(), "Fennel", "Orchard")
    changed = replace(changed, pens=changed.pens[::-1], animals=changed.animals[::-1], jobs=changed.jobs[::-1])
    changed = with_portions(changed, fennel, Portion(NUTS, 1.0, None))
    kept = {step.step_id for step in plan(changed) if step.kind != "soak"}
    assert kept == {step.step_id for step in plan(dawn()) if step.kind != "soak"}


def test_an_animal_that_moves_keeps_her_step_and_what_was_written_for_it() -> None:
    """Fed in the stall, then led to the orchard: she is not fed twice."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Hazel"), {}))
    after = wrote(after, milked(hand(after), milk_of(after, "Hazel"), "9.5", Fate.HOUSE))
    there = moved(after, "Hazel", "Orchard")
    assert feed_of(there, "Hazel").place == "Orchard"
    assert feed_of(there, "Hazel").entry == feed_of(after, "Hazel").entry == after.entries[0]
    assert milk_of(there, "Hazel").entry == after.entries[1]
    assert [step.state for step in plan(there)].count(State.DONE) == 2


def test_an_animal_in_no_pen_is_walked_after_the_pens() -> None:
    """She is not lost: her feed and her milk are due wherever she is."""
    found = walk(moved(dawn(), "Hazel", None))
    assert ("Stall", "Hazel", "feed") not in found
    assert found[-5:] == [("No pen", "Hazel", "feed"), ("No pen", "Hazel", "milk"), WALK[8], *WALK[-2:]]
    assert len(found) == len(WALK)


def test_an_animal_in_a_pen_that_is_not_walked_is_walked_after_the_pens() -> None:
    """The pen fell out of use with her standing in it."""
    orchard = pen_named(dawn(), "Orchard")
    without = replace(dawn(), pens=tuple(pen for pen in dawn().pens if pen != orchard))
    assert ("No pen", "Sloe", "feed") in walk(without)


def test_a_job_of_a_pen_that_is_not_walked_is_still_asked_for() -> None:
    """After the pens, once, whether it opens or closes its pen."""
    without = replace(dawn(), pens=tuple(pen for pen in dawn().pens if pen.name != "Orchard"))
    for closing in (True, False):
        changed = replace(without, jobs=tuple(replace(job, closing=closing) for job in without.jobs if job.pen_id))
        assert walk(changed).count(("No pen", "Water trough runs", "task")) == 1


def test_an_empty_farm_gives_no_steps() -> None:
    """Nothing is due where there is nothing."""
    bare = replace(dawn(), pens=(), animals=(), jobs=(), portions={}, portions_next={}, milkings={}, shares=())
    assert plan(bare) == ()


def test_a_step_shows_the_newest_entry_of_its_history() -> None:
    """Written, corrected: the correction counts."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Rook"), {}))
    after = wrote(after, fed(hand(after), feed_of(after, "Rook"), {feed_of(after, "Rook").due[0].feed.id: "1"}))
    assert feed_of(after, "Rook").entry == after.entries[1]
    assert feed_of(after, "Hazel").entry is None


def test_an_undone_step_is_open_and_keeps_its_place() -> None:
    """With the entry that opened it."""
    after = wrote(dawn(), done(hand(dawn()), task_of(dawn(), "Water trough runs")))
    assert task_of(after, "Water trough runs").state is State.DONE
    after = wrote(after, undone(hand(after), after.entries[0]))
    assert task_of(after, "Water trough runs").state is State.OPEN
    assert walk(after) == WALK


def test_planning_changes_nothing_in_the_snapshot() -> None:
    """The same facts, the same entries, before and after."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Rook"), {}))
    kept = replace(after, portions=dict(after.portions), milkings=dict(after.milkings), feeds=dict(after.feeds))
    plan(after)
    assert after == kept
