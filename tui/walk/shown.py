"""What a card is drawn from: the step, what is typed at each of its lines, and which line is chosen."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from store.book.words import Units
from store.round.steps import Step
from tui.walker import Walker


@dataclass(frozen=True, slots=True)
class Shown:
    """A step as it stands on the screen."""

    walker: Walker
    step: Step
    typed: Mapping[int, str]
    row: int

    @property
    def units(self) -> Units:
        """What the farm shows amounts in."""
        return self.walker.farm.units

    @property
    def today(self) -> date:
        """The day of the round."""
        return self.walker.turn.day
