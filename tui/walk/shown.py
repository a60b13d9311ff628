"""What a card is drawn from: the step, what is typed at each of its lines, which line is chosen, what is marked."""

from collections.abc import Mapping
from datetime import date, datetime

from msgspec import Struct

from store.book.facts.span import Span
from store.book.words import Units
from store.round.confirm import time_of
from store.round.steps import Step
from tui.walker import Walker


class Shown(Struct, frozen=True):
    """A step as it stands on the screen. row -1: nothing is chosen yet."""

    walker: Walker
    step: Step
    typed: Mapping[int, str]
    row: int
    marks: frozenset[str] = frozenset()
    sure: bool = False  # the keeper typed that the unusual amount is right

    @property
    def units(self) -> Units:
        """What the farm shows amounts in."""
        return self.walker.farm.units

    @property
    def today(self) -> date:
        """The day of the round."""
        return self.walker.turn.day

    @property
    def now(self) -> datetime:
        """The moment that a key would write: the clock's, or the time that was set."""
        return self.walker.moment()

    def done(self, step: Step) -> Span:
        """When it was done, by what a key would write."""
        return time_of(self.walker.hand(), step)
