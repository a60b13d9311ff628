"""Later: in this round, or moved on to the next."""

from store.round.confirm import moved_on
from tui.place import Place, Rooms
from tui.telling import step_words
from tui.walk.picking import Picking


class Later(Picking):
    """When a step is to be done instead."""

    def __init__(self, rooms: Rooms, index: int, back: Place) -> None:
        """For one step of the walk."""
        super().__init__(rooms, back)
        self.index = index

    def heading(self) -> str:
        """Whose step."""
        step = self.walker.steps[self.index]
        return f"LATER  {step_words(step)}, {step.place}"

    def choices(self) -> list[str]:
        """Two kinds of later."""
        return ["later in this round: nothing is written", "moved on to the next round"]

    def picked(self, row: int) -> Place:
        """Go on, or write that it is moved on."""
        if row == 1:
            problem = self.walker.write(moved_on(self.walker.hand(), self.walker.steps[self.index]))
            if problem:
                return self.came_from.say(problem)
        index = self.walker.first_open(self.index)
        return self.rooms.closing() if index is None else self.rooms.lamp(index)
