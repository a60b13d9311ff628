"""What Enter writes at a step, whatever kind it is: for tests that walk a whole round."""

from store.book.drafts import Draft
from store.book.facts.span import span
from store.book.words import Fate, Fill, Kind, Sign, Soak
from store.round.care import quarter_looked
from store.round.confirm import Hand, counted, done, felt, parted
from store.round.cool import cooled
from store.round.measured import fates_of, fed, milked, soak_checked, soak_started
from store.round.steps import (
    ApartStep,
    CoolStep,
    CountStep,
    FeedStep,
    MilkStep,
    QuarterStep,
    SoakCheckStep,
    SoakStartStep,
    Step,
    UdderStep,
)


def pressed(at: Hand, step: Step, typed: str = "7.4 kg", fate: Fate = Fate.CALVES) -> Draft:
    """A step is done: the first feed, the soak and the pail as typed; all heads are seen, nothing is wrong."""
    if isinstance(step, MilkStep):
        return milked(at, step, typed, fate if fate in fates_of(step, span(at.now)) else Fate.THROWN_AWAY)
    if isinstance(step, FeedStep):
        return fed(at, step, {step.due[0].feed.id: typed}, "2" if step.kind is Kind.HAY else "", sure=True)
    if isinstance(step, SoakStartStep):
        return soak_started(at, step, typed)
    if isinstance(step, CoolStep):
        return cooled(at, step, Fate.HOUSE)
    return _looked(at, step)


def _looked(at: Hand, step: Step) -> Draft:
    if isinstance(step, CountStep):
        return counted(at, step, len(step.heads))
    if isinstance(step, SoakCheckStep):
        return soak_checked(at, step, Soak.FIT)
    if isinstance(step, QuarterStep):
        return quarter_looked(at, step, (Sign.CLEAR,))
    if isinstance(step, ApartStep):
        return parted(at, step)
    return felt(at, step, Fill.SLACK) if isinstance(step, UdderStep) else done(at, step)
