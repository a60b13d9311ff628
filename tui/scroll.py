"""A page that is longer than the window: which of its lines are shown, and the sentence that says so."""

from collections.abc import Sequence

from tui.page import Line, Role, Span, line


class Scroll:
    """Starts where the marked line is seen; from there the keeper moves on, never past either end."""

    def __init__(self, *, follows: bool = True, up: str = "Up", down: str = "Down") -> None:
        """Not moved. follows: False where the top always comes first. up, down: the keys that the sentence names."""
        self.follows, self.up, self.down = follows, up, down
        self.moved, self.seeks = 0, False
        self._least = self._most = 0
        self._page = 1

    def move(self, lines: int) -> None:
        """So many lines on, or back."""
        self.moved = max(self._least, min(self.moved + lines, self._most))

    def leaf(self, pages: int) -> None:
        """So many windows on, or back; one line is seen again."""
        self.move(pages * self._page)

    def seek(self) -> None:
        """The marked line is seen in the next picture, from the top of the page if it can be."""
        self.seeks = True

    def window(self, body: Sequence[Line], room: int) -> list[Line]:
        """What is shown of a body in so many rows; the last row says which lines these are, if some are left off."""
        shown = len(body) if len(body) <= room else max(room - 1, 1)
        start = max(min(_marked(body) - shown // 2, len(body) - shown), 0) if self.follows else 0
        self._least, self._most, self._page = -start, len(body) - shown - start, max(shown - 1, 1)
        self.move(self._to_mark(body, start + self.moved, shown) if self.seeks else 0)
        self.seeks = False
        first = start + self.moved
        rows = list(body[first : first + shown])
        return [*rows, self._which(first, shown, len(body))][:room] if shown < len(body) else rows

    @staticmethod
    def _to_mark(body: Sequence[Line], first: int, shown: int) -> int:
        """How far it is to where the marked line is seen."""
        mark = _marked(body)
        return 0 if first <= mark < first + shown else max(mark - shown + 1, 0) - first

    def _which(self, first: int, shown: int, lines: int) -> Line:
        ways = [key for key, more in ((self.up, first > 0), (self.down, first + shown < lines)) if more]
        words = f"  lines {first + 1} to {first + shown} of {lines}, {' and '.join(ways)} for more"
        return line(Span(words, Role.WARNING))


def _marked(body: Sequence[Line]) -> int:
    """The first line that is marked; the top where none is."""
    return next((at for at, spans in enumerate(body) if any(span.role is Role.HERE for span in spans)), 0)
