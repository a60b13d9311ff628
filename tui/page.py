"""What a screen is made of: lines of spans, each with a role. No colour here, and no markup: text is text."""

from collections.abc import Iterable
from enum import Enum, auto
from functools import lru_cache
from textwrap import wrap

from msgspec import Struct
from rich.cells import cell_len, set_cell_size

from tui.letters import large


class Role(Enum):
    """What a piece of text is for. The theme gives each its look."""

    __hash__ = object.__hash__  # each is one thing; Enum's own asks its name, which costs at every span of every key

    TEXT = auto()
    QUIET = auto()
    STRONG = auto()
    NAME = auto()
    AMOUNT = auto()
    TYPED = auto()
    HEADER = auto()
    HERE = auto()
    WARNING = auto()
    KEY = auto()


class Span(Struct, frozen=True):
    """Some text in one role."""

    text: str
    role: Role = Role.TEXT


Line = tuple[Span, ...]


class Size(Struct, frozen=True):
    """Of the screen, in cells."""

    width: int
    height: int


class Page(Struct, frozen=True):
    """A whole screen, top to bottom."""

    lines: tuple[Line, ...]

    def text(self) -> str:
        """The page as plain text, for tests and for reading aloud."""
        return "\n".join("".join(span.text for span in line).rstrip() for line in self.lines)


def clean(text: str) -> str:
    """Text without anything that could move the cursor or turn the line around: a space stands for each."""
    return text if text.isprintable() else "".join(c if c.isprintable() else " " for c in text)


def line(*parts: str | Span) -> Line:
    """A line of spans; a bare string is plain text."""
    return tuple(part if isinstance(part, Span) else Span(part) for part in parts)


def cells(text: str) -> int:
    """Cells that a text takes; most of it is plain letters, one cell each."""
    return len(text) if text.isascii() else cell_len(text)


def width_of(spans: Iterable[Span]) -> int:
    """Cells that a line takes."""
    return sum(cells(span.text) for span in spans)


def cut(text: str, width: int) -> str:
    """Text in at most so many cells, with a sign where something was left off."""
    if cells(text) <= width:
        return text
    return set_cell_size(text, max(width - 1, 0)).rstrip() + "…" if width > 0 else ""


@lru_cache(1024)
def fit(spans: Line, width: int, role: Role = Role.TEXT) -> Line:
    """A line in exactly so many cells: cleaned, then cut at the right or filled up. Every page is made of these.

    Kept, as most lines are as they were before the key.
    """
    kept: list[Span] = []
    left = width
    for span in spans:
        text = clean(span.text)
        wide = cells(text)
        if wide > left:  # one sign that something was left off is enough
            text = cut(text, left)
            kept.append(Span(text, span.role))
            left -= cells(text)
            break
        kept.append(span if text is span.text else Span(text, span.role))
        left -= wide
    return (*kept, Span(" " * left, role)) if left > 0 else tuple(kept)


def wrapped(text: str, width: int, role: Role = Role.TEXT, indent: str = " ") -> list[Line]:
    """A sentence over as many lines as it needs: nothing of it is cut. Empty text takes one empty line."""
    return [line(Span(indent + row, role)) for row in _wrapped_rows(text, max(width - len(indent) - 1, 8))]


@lru_cache(512)
def _wrapped_rows(text: str, width: int) -> tuple[str, ...]:
    """Kept, as most sentences of a page are the same at the next key."""
    return tuple(wrap(text, width)) or ("",)


def apart(left: str, right: str, width: int) -> str:
    """One text at the left and one at the right; the left is cut first."""
    left = cut(left, max(width - cells(right) - 1, 0))
    return left + " " * max(width - cells(left) - cells(right), 0) + right


def large_lines(text: str, role: Role, width: int, scale: int = 1) -> list[Line]:
    """Text as large letters in so many cells; as one line of strong text where it does not fit or cannot be drawn."""
    for size in range(scale, 0, -1):
        rows = large(text, size)
        if rows and len(rows[0]) <= width:
            return [line(Span(row, role)) for row in rows]
    return [line(Span(cut(text, width), role))]


def beside(left: list[Line], right: list[Line], column: int) -> list[Line]:
    """Two blocks side by side, the right one from a column on."""
    rows = max(len(left), len(right))
    padded = [*left, *[()] * (rows - len(left))]
    return [(*fit(padded[row], column), *right[row]) if row < len(right) else padded[row] for row in range(rows)]
