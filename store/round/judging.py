"""A pail at the step, against what she usually gives in so many hours. Never a diagnosis."""

from datetime import datetime

from msgspec import Struct

from store.book.drafts import Draft
from store.book.facts.milk import PastPail
from store.book.figures import DrawnFigure, MilkedFigure
from store.book.snapshot import Written
from store.husbandry.milk.udder import UNSURE_H, day_kg
from store.husbandry.milk.usual import usual_pail
from store.round.steps import MilkStep
from store.round.timed import TimedPail, timed


class Judged(Struct, frozen=True):
    """A pail with its hours. usual_kg: least, middle, most that are usual after these hours, of so many pails. [kg]"""

    timed: TimedPail
    usual_kg: tuple[float, float, float] | None
    of: int

    @property
    def milk_kg(self) -> float:
        """The milk in it. [kg]"""
        return self.timed.pail.milk_kg or 0.0

    @property
    def percent(self) -> float | None:
        """By how much it is over her usual middle, below zero under it; None where it does not compare. [%]"""
        if self.usual_kg is None or self.timed.why_not or not self.usual_kg[1]:
            return None
        return 100 * (self.milk_kg / self.usual_kg[1] - 1)

    @property
    def day_kg(self) -> float | None:
        """What it is in 24 hours; None where she was not emptied at both ends of known hours. [kg]"""
        elapsed_h = self.timed.elapsed_h
        return None if self.timed.why_not or elapsed_h is None else day_kg(self.milk_kg, elapsed_h)

    @property
    def unsure(self) -> bool:
        """Whether she filled so long that the estimate is unsure."""
        return (self.timed.elapsed_h or 0) > UNSURE_H

    def is_drop(self, drop_percent: float) -> bool:
        """Whether it is further under her usual than the farm lets pass without asking, and under her range too. [%]"""
        if self.percent is None or self.usual_kg is None:
            return False
        return self.percent < -drop_percent and self.milk_kg < self.usual_kg[0]


def judged(step: MilkStep, milk_kg: float, at: datetime, *, whole: bool = True, held_back: bool = False) -> Judged:
    """A pail of a milk step as it would be written. [kg]"""
    got_out = any(calf.was_out for calf in step.calves)
    before = step.milking.pails_before
    found = timed(PastPail(at, milk_kg, held_back, whole=whole), step.emptied_at, before, got_out=got_out)
    usual = None if found.elapsed_h is None else usual_pail(step.rates_kg_h, found.elapsed_h)
    return Judged(found, usual, len(step.rates_kg_h))


def judged_draft(step: MilkStep, draft: Draft | Written) -> Judged | None:
    """A milking as it is written, or was; None where she was not milked."""
    figure = next((each for each in draft.figures if isinstance(each, MilkedFigure)), None)
    if figure is None or figure.milk_kg is None:
        return None
    drawn = next((each for each in draft.figures if isinstance(each, DrawnFigure)), DrawnFigure())
    return judged(step, figure.milk_kg, draft.happened_at, whole=drawn.whole, held_back=figure.held_back)
