"""Who does the round: every entry carries the person who pressed the key."""

from store.book.facts.farm import Person
from tui.place import Place
from tui.walk.picking import Picking


class Persons(Picking):
    """Pick who is walking now."""

    TITLE = "PERSON  who does the next steps?"

    def choices(self) -> list[str]:
        """Everybody who does rounds."""
        return [f"{person.name}{'' if person.adult else ' (child)'}" for person in self._here()]

    def picked(self, row: int) -> Place:
        """From now on it is this one."""
        self.walker.person = self._here()[row]
        return self.came_from.say(f"{self.walker.person.name} does the next steps.")

    def _here(self) -> list[Person]:
        return [person for person in self.walker.snapshot.people if person.here]
