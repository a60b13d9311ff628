"""Task steps: the farm's standing jobs, each in its place."""

from dataclasses import replace

from store.book.snapshot import Job, Snapshot
from store.round.plan import plan
from tests.store.round.made import demo, pen_named, some_id


def place_in_walk(snapshot: Snapshot, name: str) -> int:
    """Where in the walk a step stands."""
    return [step.name for step in plan(snapshot)].index(name)


def with_job(pen: str | None, *, closing: bool) -> Snapshot:
    """The morning with one job more."""
    pen_id = pen_named(demo(), pen).id if pen else None
    job = Job(some_id("job"), "Look at the hinge", pen_id, closing)
    return replace(demo(), jobs=(*demo().jobs, job))


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
    """First the hinge, then the hay."""
    snapshot = with_job("Orchard", closing=False)
    assert place_in_walk(snapshot, "Look at the hinge") == place_in_walk(snapshot, "Orchard") - 1


def test_a_closing_job_in_a_pen_comes_after_its_animals() -> None:
    """Behind what closed the pen before."""
    snapshot = with_job("Orchard", closing=True)
    assert place_in_walk(snapshot, "Look at the hinge") == place_in_walk(snapshot, "Water trough runs") + 1


def test_a_job_in_an_empty_pen_is_still_done() -> None:
    """The trough runs whether anybody stands there or not."""
    empty = replace(demo(), animals=())
    assert "Water trough runs" in {step.name for step in plan(empty)}


def test_every_job_of_the_slot_is_one_step() -> None:
    """None twice, none lost."""
    planned = [step.subject.task_id for step in plan(demo()) if step.kind == "task"]
    assert sorted(planned, key=str) == sorted((job.id for job in demo().jobs), key=str)
