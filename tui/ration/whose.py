"""Whose ration is looked at, where none stands under the lamp: animals, and pens fed as one."""

from typing import ClassVar

from msgspec import Struct

from store.book.drafts import Subject
from store.round.dialect import said
from tui.page import Line, Role, Size, wrapped
from tui.place import Place
from tui.walk.title import tag_words
from tui.yard.narrowing import Narrowing

NOBODY = "No animal is kept, and no pen is fed as one. F opens my farm: ANIMALS."


class Eater(Struct, frozen=True):
    """An animal, or a pen fed as one, and what stands beside its name."""

    subject: Subject
    name: str
    told: str


class Whose(Narrowing[Eater]):
    """Letters narrow them; Up and Down choose, Enter opens the ration."""

    SHOWN: ClassVar[int] = 10

    def heading(self) -> str:
        """What is asked."""
        return "WHOSE RATION?  a few letters of the name; Up and Down choose"

    def everybody(self) -> list[Eater]:
        """Pens fed as one, then animals."""
        snapshot, dialect = self.walker.snapshot, self.walker.farm.dialect
        pens = (each for each in snapshot.pens if each.id in snapshot.portions and snapshot.heads(each.id))
        return [
            *(Eater(Subject(pen_id=each.id), each.name, f"pen, {len(snapshot.heads(each.id))} heads") for each in pens),
            *(
                Eater(Subject(animal_id=each.id), each.name, f"{said(each.stage.value, dialect)}  {tag_words(each)}")
                for each in snapshot.animals
            ),
        ]

    def found(self) -> list[Eater]:
        """Those whose name or class holds what is typed."""
        words = self.text.lower().split()
        return [each for each in self.everybody() if all(word in f"{each.name} {each.told}".lower() for word in words)]

    def told(self, each: Eater) -> str:
        """One of them."""
        return f"{each.name}, {each.told}"

    def enter(self) -> Place:
        """The ration of the chosen one."""
        eater = self.marked()
        return self.say(self._nobody()) if eater is None else self.rooms.ration(self.came_from, eater.subject)

    def below(self, size: Size) -> list[Line]:
        """The list."""
        return self.rows(size) or wrapped(self._nobody(), size.width, Role.WARNING, "  ")

    def _nobody(self) -> str:
        return f"«{self.text}» is in no name or tag. Backspace takes letters back." if self.everybody() else NOBODY

    @property
    def half_typed(self) -> str:
        """Letters to look for are no loss; what is typed in the place below is."""
        return self.came_from.half_typed
