"""The round before was left open: finish it, type it in from paper later, or leave it as it is."""

from tui.closing.ending import end_round, open_steps
from tui.place import Place, Rooms
from tui.telling import turn_words
from tui.walk.picking import Picking


class Unfinished(Picking):
    """Asked before this round begins."""

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """The round before is the walker's now; `back` is unused until one is picked."""
        super().__init__(rooms, back)
        self.row = 0

    def heading(self) -> str:
        """Which round, and how much of it."""
        begun = "" if self.walker.snapshot.entries else "nothing was written. "
        missing = len(open_steps(self.walker))
        return f"{turn_words(self.walker.turn)}: {begun}{missing} steps are not recorded. What about them?"

    def choices(self) -> list[str]:
        """Three honest ways."""
        return [
            "finish that round now" if self.walker.snapshot.entries else "type that round in now",
            "it was done on paper: to be typed in later",
            "leave it so: not recorded, and end it",
        ]

    def back(self) -> Place:
        """There is nowhere back to: one of the three."""
        return self.say("Pick one of the three, then Enter.")

    def picked(self, row: int) -> Place:
        """Stay in that round, or end it and begin this one."""
        if row == 0:
            self.walker.open_turn(self.walker.turn, live=bool(self.walker.snapshot.entries))
            return self.rooms.first()
        if row == 1:
            return self.rooms.on_paper(self)
        problem = end_round(self.walker)
        return self.say(problem) if problem else self.rooms.enter()
