"""What one key may write together: only what stands on the screen and needs no look of its own."""

from datetime import datetime, timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import Draft
from store.book.facts.feed import Portion
from store.book.snapshot import LastRound, Snapshot
from store.book.words import Soak, Species, State
from store.round.confirm import done, moved_on
from store.round.measured import fed, soak_checked
from store.round.plan import plan
from store.round.steps import FeedStep, Step, TaskStep
from store.round.together import AS_ONE, FRESH, alone_why, buckets, plain_steps, with_window
from tests.farm import MORNING
from tests.store.keys import pressed
from tests.store.round.made import (
    NUTS,
    SCOOP,
    animal_named,
    dawn,
    dusk,
    hand,
    moved,
    pen_named,
    with_animal,
    with_portions,
    wrote,
)
from tests.store.round.named import feed_of, milk_of, soak_check_of, task_of

LUCERNE, NOW = "lucerne pellets", MORNING + timedelta(minutes=5)
A_MINUTE = timedelta(minutes=1)


def why(snapshot: Snapshot, step: Step, now: datetime = NOW) -> str:
    """Why a step is written by itself."""
    return alone_why(step, now)


def planned(portion: Portion) -> Snapshot:
    """The pretend morning with another plan for Sloe."""
    return with_portions(dawn(), animal_named(dawn(), "Sloe").id, portion)


def checked(act: Soak) -> Snapshot:
    """The soak bucket was looked into."""
    return wrote(dawn(), soak_checked(hand(dawn()), soak_check_of(dawn(), LUCERNE), act))


def test_feed_hay_and_jobs_in_a_pen_may_be_written_together() -> None:
    """Nothing in them has to be measured."""
    for step in (feed_of(dawn(), "Sloe"), feed_of(dawn(), "Orchard"), task_of(dawn(), "Water trough runs")):
        assert why(dawn(), step) == ""
    assert [step.name for step in plain_steps(plan(dawn()), "Orchard", NOW)] == ["Orchard", "Sloe", "Water trough runs"]


def test_what_is_counted_milked_felt_latched_or_soaked_is_always_by_itself() -> None:
    """Each of them is a look at something."""
    for snapshot in (dawn(), dusk()):
        looks = [step for step in plan(snapshot) if not isinstance(step, FeedStep | TaskStep)]
        assert {step.kind.value for step in looks} >= {"count", "soak", "apart", "udder", "milk"}
        assert {why(snapshot, step) for step in looks} == {"by itself"}


def test_a_job_at_the_bench_is_by_itself() -> None:
    """A door is shut when somebody stood before it."""
    assert why(dawn(), task_of(dawn(), "Feed room shut and chained")) == "by itself"
    assert plain_steps(plan(dawn()), "Bench", NOW) == ()


@pytest.mark.parametrize("adult", [True, False])
def test_a_job_for_an_adult_or_for_two_is_by_itself(adult: bool) -> None:
    """Whoever presses the key has to see it."""
    changed = replace(dawn(), jobs=tuple(replace(job, adult_only=adult, two_people=not adult) for job in dawn().jobs))
    assert why(changed, task_of(changed, "Water trough runs")) == "by itself"


@pytest.mark.parametrize("adult", [True, False])
def test_a_bucket_of_an_animal_for_an_adult_or_for_two_is_by_itself(adult: bool) -> None:
    """Hers, and the hay of the pen she stands in."""
    changed = with_animal(dawn(), replace(animal_named(dawn(), "Sloe"), adult_only=adult, two_people=not adult))
    assert {why(changed, feed_of(changed, name)) for name in ("Sloe", "Orchard")} == {"by itself"}
    assert why(changed, feed_of(changed, "Stall")) == ""


def test_what_has_to_be_looked_at_is_by_itself_when_it_was_moved_on_too() -> None:
    """What was left over from the morning is no plain job of the evening: no key writes it along with others."""
    left = (task_of(dawn(), "Water trough runs"), feed_of(dawn(), "Stall"), milk_of(dawn(), "Hazel"))
    entries = wrote(dawn(), *(moved_on(hand(dawn()), step) for step in left)).entries
    later = replace(dusk(), entries=(), last=LastRound(dawn().turn, entries))
    found = [step for step in plan(later) if step.moved_from]
    assert len(found) == 3
    assert {why(later, step) for step in found} == {"by itself"}


def test_only_open_steps_of_the_place_are_written_together() -> None:
    """What is done is not done again, and another pen is another screen."""
    after = wrote(dawn(), fed(hand(dawn()), feed_of(dawn(), "Sloe"), {}))
    assert [step.name for step in plain_steps(plan(after), "Orchard", NOW)] == ["Orchard", "Water trough runs"]
    assert [step.name for step in plain_steps(plan(after), "Calf pen", NOW)] == ["Rook"]
    assert plain_steps(plan(after), "Hedge", NOW) == ()


def test_a_feed_barred_for_one_of_the_heads_is_by_itself() -> None:
    """And says for whom."""
    ewe = replace(animal_named(dawn(), "Tansy"), species=Species.SHEEP)
    barred = replace(NUTS, not_for=frozenset({Species.SHEEP}))
    changed = with_portions(with_animal(dawn(), ewe), pen_named(dawn(), "Orchard").id, Portion(barred, 1.0, None))
    assert why(changed, feed_of(changed, "Orchard")) == "not for sheep"
    assert why(moved(changed, "Tansy", None), feed_of(moved(changed, "Tansy", None), "Orchard")) == ""


@pytest.mark.parametrize(("ago", "reason"), [
    (timedelta(0), "changed since yesterday"), (FRESH - A_MINUTE, "changed since yesterday"), (FRESH, ""),
    (timedelta(days=20), ""),
])  # fmt: skip
def test_a_plan_of_less_than_a_day_is_by_itself_once(ago: timedelta, reason: str) -> None:
    """Somebody changed what she gets since it was last given."""
    changed = planned(Portion(NUTS, 1.0, SCOOP, NOW - ago))
    assert why(changed, feed_of(changed, "Sloe")) == reason


@pytest.mark.parametrize(("ago", "reason"), [(A_MINUTE, "new scoop"), (FRESH - A_MINUTE, "new scoop"), (FRESH, "")])
def test_a_scoop_weighed_less_than_a_day_ago_is_by_itself_once(ago: timedelta, reason: str) -> None:
    """The number of scoops is not what it was."""
    changed = planned(Portion(NUTS, 1.0, replace(SCOOP, weighed_at=NOW - ago)))
    assert why(changed, feed_of(changed, "Sloe")) == reason


def test_a_soaked_feed_is_by_itself_until_the_bucket_was_found_fit() -> None:
    """Not looked into, or thrown out: no key gives it along with others."""
    for snapshot, reason in ((dawn(), "soak not looked at"), (checked(Soak.THROWN_OUT), "soak thrown out")):
        assert why(snapshot, feed_of(snapshot, "Fennel")) == reason
    assert why(checked(Soak.FIT), feed_of(checked(Soak.FIT), "Fennel")) == ""
    other = planned(Portion(NUTS, 1.0, None))
    assert why(other, feed_of(other, "Sloe")) == ""


def test_the_buckets_are_the_feeds_of_single_animals() -> None:
    """Not the hay of a pen."""
    assert [step.name for step in buckets(plan(dawn()))] == ["Fennel", "Hazel", "Rook", "Sloe"]
    assert {step.state for step in buckets(plan(dawn()))} == {State.OPEN}


def draft() -> Draft:
    """Any draft."""
    return done(hand(dawn()), task_of(dawn(), "Water trough runs"))


def test_what_is_written_together_says_so_and_between_when() -> None:
    """Since the last confirm, until now; where there is none before, at the moment alone."""
    before = draft().happened_at - A_MINUTE
    assert with_window(draft(), before) == replace(draft(), happened_from=before, reason=AS_ONE)
    for since in (None, draft().happened_at, draft().happened_at + A_MINUTE):
        assert with_window(draft(), since) == replace(draft(), reason=AS_ONE)


def test_a_pen_written_together_is_the_pen_written_step_by_step() -> None:
    """But for the window and the word, each draft is the one that its own screen would write."""
    for step in plain_steps(plan(dawn()), "Orchard", NOW):
        alone = pressed(hand(dawn()), step)
        assert with_window(alone, None).figures == alone.figures
        assert with_window(alone, None).step_id == step.step_id
