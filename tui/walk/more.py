"""M: what else can be done at a step."""

from tui.place import Place, Rooms
from tui.walk.lamp import Lamp
from tui.walk.picking import Picking


class MoreList(Picking):
    """The list of a step's job."""

    def __init__(self, rooms: Rooms, lamp: Lamp) -> None:
        """Over a lamp."""
        super().__init__(rooms, lamp)
        self.lamp = lamp

    def heading(self) -> str:
        """Whose step."""
        return f"MORE  {self.lamp.step.name} ({self.lamp.step.kind})"

    def choices(self) -> list[str]:
        """What the job offers."""
        return [more.words for more in self.lamp.offers()]

    def picked(self, row: int) -> Place:
        """Do it."""
        return self.lamp.offers()[row].act(self.lamp) or self.lamp
