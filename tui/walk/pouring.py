"""With which pail of the round a pail was poured together: Enter marks it, and the pail is written with the mark."""

from store.round.measured import is_not_milked
from store.round.steps import MilkStep
from tui.place import Place, Rooms
from tui.telling import figure
from tui.walk.lamp import Lamp
from tui.walk.picking import Picking
from tui.walk.poured import mark_of, others


class Pouring(Picking):
    """The other cows that are milked in this round."""

    TITLE = "POURED TOGETHER  with whose milk? All of it then counts as the strictest of its uses."
    ENTER_WORDS = "mark it"

    def __init__(self, rooms: Rooms, lamp: Lamp) -> None:
        """Over a lamp at a cow."""
        super().__init__(rooms, lamp)
        self.lamp = lamp
        self.others = others(self.walker.steps, lamp.step)

    def choices(self) -> list[str]:
        """Each with what is written of her milk so far."""
        return [self._words(each) for each in self.others]

    def _words(self, other: MilkStep) -> str:
        written = figure(self.walker, other.entry) if other.entry else "not milked yet"
        marked = "   marked: Enter takes it away" if mark_of(other.step_id) in self.lamp.marks else ""
        return f"{other.name}, {other.place}: {written}{marked}"

    def picked(self, row: int) -> Place:
        """Mark it, or take the mark away; Enter at the step writes it."""
        other = self.others[row]
        if is_not_milked(other.entry) and mark_of(other.step_id) not in self.lamp.marks:
            return self.say(f"{other.name} was not milked: there is no milk of hers to pour together with.")
        self.lamp.mark(mark_of(other.step_id))
        if mark_of(other.step_id) not in self.lamp.marks:
            return self.lamp.say(f"The mark is taken away: not poured together with {other.name}'s.")
        return self.lamp.say("Marked. Enter writes it, once the pail is typed.")
