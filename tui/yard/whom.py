"""About which animal one rings the vet, where none stands under the lamp."""

from typing import ClassVar

from store.book.facts.farm import Animal
from store.round.dialect import said
from tui.page import Line, Role, Size, Span, line, wrapped
from tui.place import Place
from tui.walk.title import tag_words
from tui.yard.narrowing import Narrowing
from tui.yard.vet import Vet, number_lines
from tui.yard.vet_signs import CALL_NOW


class Whom(Narrowing[Animal]):
    """Letters narrow the animals; Up and Down choose, Enter opens the vet's page about one."""

    SHOWN: ClassVar[int] = 6

    def heading(self) -> str:
        """What is asked."""
        return "ABOUT WHOM?  a few letters of the name; Up and Down choose"

    def found(self) -> list[Animal]:
        """The animals whose name or tag holds what is typed."""
        words = self.text.lower().split()
        animals = self.walker.snapshot.animals
        return [each for each in animals if all(word in f"{each.name} {each.tag}".lower() for word in words)]

    def told(self, each: Animal) -> str:
        """An animal, its class and its tag."""
        return f"{each.name}, {said(each.stage.value, self.walker.farm.dialect)}  {tag_words(each)}"

    def enter(self) -> Place:
        """The page about the chosen one."""
        animal = self.marked()
        return self.say(self._nobody()) if animal is None else Vet(self.rooms, self.came_from, animal)

    def below(self, size: Size) -> list[Line]:
        """The animals, the number, and what cannot wait."""
        lines = self.rows(size) or wrapped(self._nobody(), size.width, Role.WARNING, "  ")
        return [*lines, (), *number_lines(self.walker, size), *self._call_now(size)]

    def _call_now(self, size: Size) -> list[Line]:
        rows = (wrapped(said(signs, self.walker.farm.dialect), size.width, Role.TEXT, "    ") for signs in CALL_NOW)
        return [line(Span("  CALL NOW", Role.WARNING)), *(row for each in rows for row in each)]

    def _nobody(self) -> str:
        if not self.walker.snapshot.animals:
            return "No animal is kept. F opens my farm: ANIMALS."
        return f"«{self.text}» is in no name or tag. Backspace takes letters back."

    @property
    def half_typed(self) -> str:
        """Letters to look for are no loss; what is typed in the place below is."""
        return self.came_from.half_typed
