"""The steps of a plan by name, each as its own class."""

from typing import TypeVar

from store.book.snapshot import Snapshot
from store.round.plan import plan
from store.round.steps import (
    ApartStep,
    CountStep,
    FeedStep,
    MilkStep,
    PastStep,
    SoakCheckStep,
    SoakStartStep,
    Step,
    TaskStep,
    UdderStep,
)

S = TypeVar("S", bound=Step)


def step_of(snapshot: Snapshot, kind: type[S], name: str) -> S:
    """The step of a class and a name."""
    return next(step for step in plan(snapshot) if isinstance(step, kind) and step.name == name)


def steps_of(snapshot: Snapshot, kind: type[S]) -> list[S]:
    """Every step of a class, in walking order."""
    return [step for step in plan(snapshot) if isinstance(step, kind)]


def feed_of(snapshot: Snapshot, name: str) -> FeedStep:
    """The feed or hay step of an animal or a pen."""
    return step_of(snapshot, FeedStep, name)


def milk_of(snapshot: Snapshot, name: str) -> MilkStep:
    """The milk step of a cow."""
    return step_of(snapshot, MilkStep, name)


def task_of(snapshot: Snapshot, name: str) -> TaskStep:
    """The step of a standing job, or of what was moved on."""
    return step_of(snapshot, TaskStep, name)


def count_of(snapshot: Snapshot, name: str) -> CountStep:
    """The count of a pen."""
    return step_of(snapshot, CountStep, name)


def apart_of(snapshot: Snapshot, name: str) -> ApartStep:
    """The step of a calf to be shut away or let in."""
    return step_of(snapshot, ApartStep, name)


def udder_of(snapshot: Snapshot, name: str) -> UdderStep:
    """The step of an udder to be felt."""
    return step_of(snapshot, UdderStep, name)


def soak_check_of(snapshot: Snapshot, name: str) -> SoakCheckStep:
    """The step of a soak bucket to be looked into."""
    return step_of(snapshot, SoakCheckStep, name)


def soak_start_of(snapshot: Snapshot, name: str) -> SoakStartStep:
    """The step of a feed to be put to soak."""
    return step_of(snapshot, SoakStartStep, name)


def past_of(snapshot: Snapshot, name: str) -> PastStep:
    """What was written for a step that is not in the plan."""
    return step_of(snapshot, PastStep, name)
