"""Which job treats which step."""

from typing import Any

from store.round.steps import (
    ApartStep,
    CountStep,
    FeedStep,
    MilkStep,
    SoakCheckStep,
    SoakStartStep,
    Step,
    UdderStep,
)
from tui.walk.amounts import FeedJob, MilkJob, SoakStartJob
from tui.walk.job import Job
from tui.walk.looks import ApartJob, CountJob, SoakCheckJob, TaskJob, UdderJob

JOBS: dict[type[Step], Job[Any]] = {
    FeedStep: FeedJob(),
    MilkStep: MilkJob(),
    SoakStartStep: SoakStartJob(),
    SoakCheckStep: SoakCheckJob(),
    CountStep: CountJob(),
    ApartStep: ApartJob(),
    UdderStep: UdderJob(),
}
TASK_JOB = TaskJob()


def job_for(step: Step) -> Job[Any]:
    """The job that treats a step; a standing job, and what is no longer planned, are tasks."""
    return JOBS.get(type(step), TASK_JOB)
