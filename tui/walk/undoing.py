"""Undo: shows what it would undo, the newest first; Enter opens that step again."""

from uuid import UUID

from store.book.snapshot import Written
from store.book.words import State
from store.round.change import PLAN_CHANGED
from store.round.confirm import undone
from tui.place import Place, Rooms
from tui.telling import entry_words
from tui.walk.picking import Picking

MOST = 9


class Undoing(Picking):
    """What was written in this round and still counts."""

    def __init__(self, rooms: Rooms, back: Place, step_id: UUID | None) -> None:
        """The newest is picked already. step_id: the step that it was opened at."""
        super().__init__(rooms, back)
        self.step_id = step_id
        self.row = 0 if self._entries() else None

    def heading(self) -> str:
        """What Enter does."""
        farm = " What was changed of my farm, as a scoop weighed: F, U." if self.walker.changes else ""
        if not self._entries():
            return f"UNDO  nothing is written in this round yet. Backspace goes back.{farm}"
        return f"UNDO  Enter opens the marked step again. What was written stays in the book as its history.{farm}"

    def choices(self) -> list[str]:
        """The newest first."""
        return [entry_words(self.walker, entry) for entry in self._entries()]

    def picked(self, row: int) -> Place:
        """Open the step again and stand at it; what has none is taken back where we stood."""
        entry = self._entries()[row]
        words = entry_words(self.walker, entry)
        problem = self.walker.write(undone(self.walker.hand(), entry))
        if problem:
            return self.came_from.say(problem)
        if any(step.step_id == entry.step_id for step in self.walker.steps):
            return self.rooms.step_or(entry.step_id, self.came_from).say("Undone: this step is open again.")
        return self._stood().say(f"Taken back, kept as history: {words}")

    def _stood(self) -> Place:
        """Where it was opened: that step, as it is drawn now; any other place as it stands."""
        return self.rooms.step_or(self.step_id, self.rooms.first()) if self.step_id else self.came_from

    def _entries(self) -> list[Written]:
        counting = self.walker.snapshot.counts().values()
        live = [entry for entry in counting if entry.state is not State.OPEN and entry.reason != PLAN_CHANGED]
        return sorted(live, key=lambda entry: (entry.written_at, entry.id), reverse=True)[:MOST]
