"""Other rounds: a midday or night round of today; earlier ones, to look at, to type in from paper, to correct."""

from store.book.reading import was_written
from store.book.turn import Turn
from tui.place import Place, Rooms
from tui.telling import turn_words
from tui.walk.picking import Picking
from tui.walker import Walker

SHOWN = 9


class Rounds(Picking):
    """Pick one of the last rounds; the first is the one of this moment."""

    TITLE = "ROUNDS  which one? What is typed there keeps its own day; this round is not touched."

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """From the round of this moment backwards."""
        super().__init__(rooms, back)
        self.turns = listed(self.walker)

    def choices(self) -> list[str]:
        """Day and slot; a midday or night round that can be walked now says so."""
        return [self._words(turn) for turn in self.turns]

    def _words(self, turn: Turn) -> str:
        if turn.feeds:
            return f"{turn_words(turn)}{'  (now)' if turn == self.turns[0] else ''}"
        today = f"{turn.slot} round today" if self.walker.is_now(turn) else turn_words(turn)
        return f"{today}  (jobs and looks, no feeding)"

    def picked(self, row: int) -> Place:
        """Open it."""
        if row == 0:
            return self.rooms.this_round()
        turn = self.turns[row]
        self.walker.open_turn(turn, live=self.walker.is_now(turn))
        return self.rooms.first()


def listed(walker: Walker) -> list[Turn]:
    """The round of this moment; the midday and night rounds on either side of it; then backwards, those that were
    walked between two of them too."""
    this = walker.this()
    turns = [this, *walker.between(this)]
    before = this.before()
    while len(turns) < SHOWN:
        between = before.between()
        turns += [between] if between not in turns and was_written(walker.book.desk, between) else []
        turns.append(before)
        before = before.before()
    return turns[:SHOWN]


def way_to(walker: Walker, turn: Turn) -> str:
    """The keys that open a round."""
    turns = listed(walker)
    return f"R, then {turns.index(turn) + 1}, opens that round" if turn in turns else "R lists the rounds"
