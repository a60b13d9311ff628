"""Earlier rounds: to look at, to type in from paper, to correct. The live round is not touched."""

from store.book.turn import Turn
from tui.place import Place, Rooms
from tui.telling import turn_words
from tui.walk.picking import Picking

SHOWN = 9


class Rounds(Picking):
    """Pick one of the last rounds; the newest is the one of this moment."""

    TITLE = "ROUNDS  which one? What is typed there keeps its own day; this round is not touched."

    def __init__(self, rooms: Rooms, back: Place, this: Turn) -> None:
        """From the round of this moment backwards."""
        super().__init__(rooms, back)
        self.turns = [this]
        while len(self.turns) < SHOWN:
            self.turns.append(self.turns[-1].before())

    def choices(self) -> list[str]:
        """Day and slot."""
        return [f"{turn_words(turn)}{'  (now)' if at == 0 else ''}" for at, turn in enumerate(self.turns)]

    def picked(self, row: int) -> Place:
        """Open it."""
        if row == 0:
            return self.rooms.this_round()
        self.walker.open_turn(self.turns[row], live=False)
        return self.rooms.first()
