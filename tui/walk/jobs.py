"""Which job treats which step."""

from typing import Any

from store.book.words import Asks
from store.round.steps import (
    ApartStep,
    CoolStep,
    CountStep,
    DoseStep,
    FeedStep,
    LookStep,
    MilkStep,
    QuarterStep,
    SoakCheckStep,
    SoakStartStep,
    Step,
    UdderStep,
)
from tui.walk.amounts import FeedJob, MilkJob
from tui.walk.care import DoseJob, LookFigureJob, LookJob
from tui.walk.cooling import CoolJob
from tui.walk.job import Job
from tui.walk.looks import ApartJob, CountJob, TaskJob, UdderJob
from tui.walk.quarter_job import QuarterJob
from tui.walk.soak import SoakCheckJob, SoakStartJob

JOBS: dict[type[Step], Job[Any]] = {
    FeedStep: FeedJob(),
    MilkStep: MilkJob(),
    SoakStartStep: SoakStartJob(),
    SoakCheckStep: SoakCheckJob(),
    CountStep: CountJob(),
    ApartStep: ApartJob(),
    UdderStep: UdderJob(),
    QuarterStep: QuarterJob(),
    CoolStep: CoolJob(),
    LookStep: LookJob(),
    DoseStep: DoseJob(),
}
LOOK_FIGURE_JOB, TASK_JOB = LookFigureJob(), TaskJob()


def job_for(step: Step) -> Job[Any]:
    """The job that treats a step; a standing job, and what is no longer planned, are tasks."""
    if isinstance(step, LookStep) and step.look.asks is not Asks.HOW:
        return LOOK_FIGURE_JOB
    return JOBS.get(type(step), TASK_JOB)
