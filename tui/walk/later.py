"""Later: in this round, or moved on to the next."""

from store.round.confirm import moved_on
from store.round.moved import may_move
from tui.place import Place, Rooms
from tui.telling import step_words
from tui.walk.picking import Picking


class Later(Picking):
    """When a step is to be done instead."""

    def __init__(self, rooms: Rooms, index: int, back: Place) -> None:
        """For one step of the walk."""
        super().__init__(rooms, back)
        self.index = index
        self.row = 0

    def heading(self) -> str:
        """Whose step."""
        step = self.walker.steps[self.index]
        why = (
            "" if may_move(step) else ". The next round asks for it by itself, or it is no job to make up for: S skips"
        )
        return f"LATER  {step_words(self.walker, step)}, {step.place}{why}"

    def choices(self) -> list[str]:
        """Two kinds of later, where the next round can do it."""
        here = ["later in this round: nothing is written"]
        return [*here, "moved on to the next round"] if may_move(self.walker.steps[self.index]) else here

    def picked(self, row: int) -> Place:
        """Go on, or write that it is moved on."""
        if row == 1:
            problem = self.walker.write(moved_on(self.walker.hand(), self.walker.steps[self.index]))
            if problem:
                return self.came_from.say(problem)
        return self.rooms.first(self.index)
