"""To a step by a few letters of its name; typing over a done one is the correction."""

from typing import ClassVar

from tui.page import Line, Role, Size, Span, cut, line
from tui.place import Place
from tui.telling import step_words
from tui.view import Key
from tui.yard.wording import Wording

SHOWN = 12


class Going(Wording):
    """Letters narrow the steps; Up and Down choose, Enter goes there."""

    row = 0

    def heading(self) -> str:
        """What is asked."""
        return "GO TO  a few letters of the animal, pen or job; Up and Down choose"

    def found(self) -> list[int]:
        """The steps whose name, place or kind holds what is typed."""
        words = self.text.lower().split()
        return [
            at
            for at, step in enumerate(self.walker.steps)
            if all(word in f"{step.name} {step.place} {step.kind}".lower() for word in words)
        ]

    def takes(self, character: str) -> bool:
        """A letter narrows the list, and marks its first line; no other key moves the mark."""
        taken = super().takes(character)
        self.row = 0 if taken else self.row
        return taken

    def back(self) -> Place:
        """A letter less, and the first line again."""
        self.row = 0
        return super().back()

    def choose(self, by: int) -> Place:
        """Another of what is found."""
        self.row = (self.row + by) % max(len(self.found()), 1)
        return self

    def enter(self) -> Place:
        """To the chosen step."""
        found = self.found()
        if not found:
            return self.say(self._nothing())
        return self.rooms.lamp(found[min(self.row, len(found) - 1)])

    def below(self, size: Size) -> list[Line]:
        """What is found, with what became of it."""
        if not (found := self.found()):
            return [line(Span(f"  {cut(self._nothing(), size.width - 4)}", Role.WARNING))]
        first = max(min(self.row - SHOWN // 2, len(found) - SHOWN), 0)
        lines: list[Line] = []
        for at, index in enumerate(found[first : first + SHOWN], first):
            step = self.walker.steps[index]
            words = (
                f" {'>' if at == self.row else ' '} {step_words(self.walker, step)}, {step.place}: {step.state.value} "
            )
            lines.append(line("  ", Span(cut(words, size.width - 4), Role.HERE if at == self.row else Role.TEXT)))
        return lines

    def _nothing(self) -> str:
        return f"«{self.text}» is in no step of this round. Backspace takes letters back."

    @property
    def half_typed(self) -> str:
        """Letters to look for are no loss."""
        return ""

    KEYS: ClassVar[tuple[Key, ...]] = (
        *Wording.KEYS,
        Key(("up",), "Up Down", "choose", "Another of what is found.", lambda place: place.choose(-1)),
        Key(("down",), "Down", "", "", lambda place: place.choose(1)),
    )
