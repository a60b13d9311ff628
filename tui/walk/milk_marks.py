"""How she was milked, where that was not as usual: the marks of a milk step behind M, and the figure they become."""

from functools import partial
from typing import TYPE_CHECKING

from msgspec.structs import replace

from store.book.drafts import Draft
from store.book.figures import DrawnFigure, MilkedFigure
from store.round.steps import MilkStep
from store.round.timed import HELD_BACK, PART
from tui.walk.job import More

if TYPE_CHECKING:
    from tui.place import Place
    from tui.walk.lamp import Lamp

BY_HAND = "milked by hand"
LESS = frozenset({HELD_BACK, PART})
"""What makes a pail less than she has: such a pail is not asked about, and not compared."""
WORDS = {
    HELD_BACK: "She held back: not all was let down",
    PART: "Not milked out: only a part was taken, or she was stripped",
    BY_HAND: "Milked by hand",
}


def marks_of(step: MilkStep) -> frozenset[str]:
    """What the book holds: a mark stays when the weight is corrected."""
    milked = step.entry.the(MilkedFigure) if step.entry else None
    drawn = (step.entry.the(DrawnFigure) if step.entry else None) or DrawnFigure()
    held = {HELD_BACK: milked is not None and milked.held_back, PART: not drawn.whole, BY_HAND: drawn.by_hand}
    return frozenset(mark for mark, there in held.items() if there)


def drawn(draft: Draft, marks: frozenset[str]) -> Draft:
    """A milking with how she was milked; as usual needs no figure."""
    figure = DrawnFigure(PART not in marks, BY_HAND in marks)
    return draft if figure == DrawnFigure() else replace(draft, figures=(*draft.figures, figure))


def mark_offer(mark: str) -> More:
    """A line behind M: it marks what is about to be written, or takes the mark away."""
    return More(WORDS[mark], partial(_mark, mark))


def _mark(mark: str, lamp: "Lamp") -> "Place":
    return lamp.mark(mark)
