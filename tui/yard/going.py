"""To a step by a few letters of its name; typing over a done one is the correction."""

from typing import ClassVar

from tui.page import Line, Role, Size, Span, cut, line
from tui.place import Place
from tui.telling import step_words
from tui.yard.narrowing import Narrowing


class Going(Narrowing[int]):
    """Letters narrow the steps; Up and Down choose, Enter goes there."""

    SHOWN: ClassVar[int] = 12

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

    def told(self, each: int) -> str:
        """A step, where it is, and what became of it."""
        step = self.walker.steps[each]
        return f"{step_words(self.walker, step)}, {step.place}: {step.state.value}"

    def enter(self) -> Place:
        """To the chosen step."""
        index = self.marked()
        return self.say(self._nothing()) if index is None else self.rooms.lamp(index)

    def below(self, size: Size) -> list[Line]:
        """What is found, with what became of it."""
        return self.rows(size) or [line(Span(f"  {cut(self._nothing(), size.width - 4)}", Role.WARNING))]

    def _nothing(self) -> str:
        return f"«{self.text}» is in no step of this round. Backspace takes letters back."

    @property
    def half_typed(self) -> str:
        """Letters to look for are no loss."""
        return ""
