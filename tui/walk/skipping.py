"""Skipping a step: a numbered reason, then Enter."""

from store.book.words import SKIP_REASONS
from store.round.confirm import skipped
from tui.place import Place, Rooms
from tui.telling import step_words
from tui.walk.picking import Picking


class Skipping(Picking):
    """Why a step is not done."""

    def __init__(self, rooms: Rooms, index: int, back: Place) -> None:
        """For one step of the walk."""
        super().__init__(rooms, back)
        self.index = index

    def heading(self) -> str:
        """Whose step is skipped."""
        step = self.walker.steps[self.index]
        return f"SKIP  {step_words(self.walker, step)}, {step.place}: why?"

    def choices(self) -> list[str]:
        """The reasons."""
        return list(SKIP_REASONS)

    def picked(self, row: int) -> Place:
        """Write it and go on to the next open step; the last of the list is typed in words."""
        if row == len(SKIP_REASONS) - 1:
            return self.rooms.reason(self.index, self)
        problem = self.walker.write(skipped(self.walker.hand(), self.walker.steps[self.index], SKIP_REASONS[row]))
        if problem:
            return self.came_from.say(problem)
        return self.rooms.first(self.index)
