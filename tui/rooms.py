"""Which place leads to which: the one module that knows them all."""

from tui.closing.closing import Closing
from tui.help import Help
from tui.place import Place
from tui.walk.lamp import Lamp
from tui.walk.skipping import Skipping
from tui.walk.undoing import Undoing
from tui.walker import Walker


class House:
    """The places of one sitting."""

    def __init__(self, walker: Walker) -> None:
        """At the round at hand."""
        self.walker = walker

    def first(self) -> Place:
        """Where a sitting begins: the first step that is not recorded, or the closing if there is none."""
        index = self.walker.first_open()
        return self.closing() if index is None else self.lamp(index)

    def lamp(self, index: int, *, taken_up: bool = True) -> Place:
        """A step of the walk."""
        return Lamp(self, index, taken_up=taken_up)

    def closing(self) -> Place:
        """The end of the walk."""
        return Closing(self)

    def skipping(self, index: int, back: Place) -> Place:
        """The reasons for skipping a step."""
        return Skipping(self, index, back)

    def undoing(self, back: Place) -> Place:
        """What can be undone."""
        return Undoing(self, back)

    def help(self, back: Place) -> Place:
        """The keys of a place."""
        return Help(self, back)
