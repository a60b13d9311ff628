"""Task steps: the farm's standing jobs, each in its place."""

from msgspec.structs import replace

from store.book.facts.jobs import Job
from store.book.snapshot import Snapshot
from store.book.words import MORNING
from store.round.plan import plan
from store.round.steps import TaskStep
from tests.store.round.made import dawn, pen_named, some_id
from tests.store.round.named import steps_of, task_of


def place_in_walk(snapshot: Snapshot, name: str) -> int:
    """Where in the walk a step stands."""
    return [step.name for step in plan(snapshot)].index(name)


def with_job(pen: str | None, *, closing: bool) -> Snapshot:
    """The morning with one job more."""
    pen_id = pen_named(dawn(), pen).id if pen else None
    job = Job(some_id("job"), "Look at the hinge", pen_id, closing, MORNING)
    return replace(dawn(), jobs=(*dawn().jobs, job))


def test_a_job_without_a_pen_is_done_at_the_bench_before_the_walk() -> None:
    """Behind the jobs that were there already."""
    steps = plan(with_job(None, closing=False))
    assert place_in_walk(with_job(None, closing=False), "Look at the hinge") == 1
    assert steps[1].place == "Bench"


def test_a_closing_job_without_a_pen_is_the_last_of_the_round() -> None:
    """The walk ends at the bench."""
    last = plan(with_job(None, closing=True))[-1]
    assert (last.name, last.place) == ("Look at the hinge", "Bench")


def test_a_job_in_a_pen_comes_before_its_animals() -> None:
    """First the heads, then the hinge, then the hay."""
    snapshot = with_job("Orchard", closing=False)
    assert place_in_walk(snapshot, "Look at the hinge") == place_in_walk(snapshot, "Orchard") + 1
    assert [step.kind.value for step in plan(snapshot) if step.place == "Orchard"][:3] == ["count", "task", "hay"]


def test_a_closing_job_in_a_pen_comes_after_its_animals() -> None:
    """Behind what closed the pen before."""
    snapshot = with_job("Orchard", closing=True)
    assert place_in_walk(snapshot, "Look at the hinge") == place_in_walk(snapshot, "Water trough runs") + 1


def test_a_job_in_an_empty_pen_is_still_done() -> None:
    """The hinge is looked at whether anybody stands there or not."""
    empty = replace(with_job("Orchard", closing=True), animals=())
    assert "Look at the hinge" in {step.name for step in plan(empty)}


def test_every_job_of_the_slot_is_one_step() -> None:
    """None twice, none lost."""
    planned = [step.subject.task_id for step in steps_of(dawn(), TaskStep)]
    assert sorted(planned, key=str) == sorted((job.id for job in dawn().jobs if job.slot == MORNING), key=str)


def test_a_job_for_an_adult_or_for_two_says_so() -> None:
    """As the farm wrote it."""
    job = replace(dawn().jobs[0], adult_only=True, two_people=False)
    step = task_of(replace(dawn(), jobs=(job,)), job.name)
    assert (step.adult_only, step.two_people) == (True, False)
    step = task_of(replace(dawn(), jobs=(replace(job, adult_only=False, two_people=True),)), job.name)
    assert (step.adult_only, step.two_people) == (False, True)
