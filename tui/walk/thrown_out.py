"""Why a soaked batch is thrown out, in the keeper's own words."""

from store.book.words import Soak
from store.round.bucket import WHY_MOST
from store.round.measured import soak_checked
from store.round.steps import SoakCheckStep
from tui.place import Place, Rooms
from tui.walk.lamp import Lamp
from tui.yard.wording import Wording


class ThrownOut(Wording):
    """A line of words."""

    MOST = WHY_MOST

    def __init__(self, rooms: Rooms, lamp: Lamp, step: SoakCheckStep) -> None:
        """Over the lamp at the check."""
        super().__init__(rooms, lamp)
        self.lamp = lamp
        self.step = step

    def heading(self) -> str:
        """Of which feed."""
        return f"THROWN OUT  {self.step.name}: the reason in your words"

    def enter(self) -> Place:
        """Write it."""
        if not self.text.strip():
            return self.say("Nothing is typed. Type the reason, or Esc goes back.")
        return self.lamp.write(soak_checked(self.walker.hand(), self.step, Soak.THROWN_OUT, self.text.strip()))
