"""A quarter is not right: which one, then what was found. Drawn as one sees them from behind."""

from store.book.words import Quarter, Sign
from store.round.care import quarters_found
from store.round.dialect import said
from tui.place import Place, Rooms
from tui.walk.lamp import Lamp
from tui.walk.picking import Picking

QUARTERS, SIGNS = tuple(Quarter), tuple(Sign)


class QuarterList(Picking):
    """Which quarter, as one sees her from behind; left and right are her own."""

    TITLE = "QUARTER  seen from behind, left and right are her own: which one?"

    def __init__(self, rooms: Rooms, lamp: Lamp) -> None:
        """Over a lamp at a cow."""
        super().__init__(rooms, lamp)
        self.lamp = lamp

    def choices(self) -> list[str]:
        """The four."""
        return [said(quarter.value, self.walker.farm.dialect) for quarter in QUARTERS]

    def picked(self, row: int) -> Place:
        """Then what was found there."""
        return SignList(self.rooms, self.lamp, QUARTERS[row])


class SignList(Picking):
    """What was found at one quarter."""

    def __init__(self, rooms: Rooms, lamp: Lamp, quarter: Quarter) -> None:
        """Over a lamp at a cow."""
        super().__init__(rooms, lamp)
        self.lamp = lamp
        self.quarter = quarter

    def heading(self) -> str:
        """Whose, and which."""
        quarter = said(self.quarter.value, self.walker.farm.dialect).upper()
        return f"{quarter} QUARTER of {self.lamp.step.name}: what is it?"

    def choices(self) -> list[str]:
        """What one sees and feels; no diagnosis."""
        return [sign.value for sign in SIGNS]

    def picked(self, row: int) -> Place:
        """Write it, whether she is milked or not, and stay at her."""
        cow_id = self.lamp.step.subject.animal_id
        if cow_id is None:
            return self.lamp.say("No animal stands here.")
        found = quarters_found(self.walker.hand(), cow_id, {self.quarter: (SIGNS[row],)})
        return self.lamp.write(found, stay=True)
