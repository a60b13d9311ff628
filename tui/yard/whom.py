"""About which animal one rings the vet, where none stands under the lamp."""

from typing import ClassVar

from store.book.facts.farm import Animal
from store.round.dialect import said
from tui.page import Line, Role, Size, Span, cut, line, wrapped
from tui.place import Place
from tui.view import Key
from tui.walk.title import tag_words
from tui.yard.vet import Vet, number_lines
from tui.yard.vet_signs import CALL_NOW
from tui.yard.wording import Wording

SHOWN = 6


class Whom(Wording):
    """Letters narrow the animals; Up and Down choose, Enter opens the vet's page about one."""

    row = 0

    def heading(self) -> str:
        """What is asked."""
        return "ABOUT WHOM?  a few letters of the name; Up and Down choose"

    def found(self) -> list[Animal]:
        """The animals whose name or tag holds what is typed."""
        words = self.text.lower().split()
        animals = self.walker.snapshot.animals
        return [each for each in animals if all(word in f"{each.name} {each.tag}".lower() for word in words)]

    def takes(self, character: str) -> bool:
        """A letter narrows the list."""
        self.row = 0
        return super().takes(character)

    def choose(self, by: int) -> Place:
        """Another of what is found."""
        self.row = (self.row + by) % max(len(self.found()), 1)
        return self

    def enter(self) -> Place:
        """The page about the chosen one."""
        found = self.found()
        if not found:
            return self.say(self._nobody())
        return Vet(self.rooms, self.came_from, found[min(self.row, len(found) - 1)])

    def below(self, size: Size) -> list[Line]:
        """The animals, the number, and what cannot wait."""
        found = self.found()
        first = max(min(self.row - SHOWN // 2, len(found) - SHOWN), 0)
        lines: list[Line] = []
        for at, animal in enumerate(found[first : first + SHOWN], first):
            stage = said(animal.stage.value, self.walker.farm.dialect)
            words = f" {'>' if at == self.row else ' '} {animal.name}, {stage}  {tag_words(animal)} "
            lines.append(line("  ", Span(cut(words, size.width - 4), Role.HERE if at == self.row else Role.TEXT)))
        lines += [] if found else wrapped(self._nobody(), size.width, Role.WARNING, "  ")
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

    KEYS: ClassVar[tuple[Key, ...]] = (
        *Wording.KEYS,
        Key(("up",), "Up Down", "choose", "Another of what is found.", lambda place: place.choose(-1)),
        Key(("down",), "Down", "", "", lambda place: place.choose(1)),
    )
