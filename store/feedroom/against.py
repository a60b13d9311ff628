"""Book against scale: what was weighed always counts afterwards; here is said what would explain the difference.

An explanation is never forced, and changes nothing. Those whose size is known come first where they fit, then those
that would have to be just so large (a scoop that holds more), then plain loss, then what does not fit.
"""

from collections.abc import Iterable
from enum import StrEnum

from msgspec import Struct

from store.book.words import Units
from store.husbandry.stock import agree_within_kg
from store.husbandry.units import KG_PER_LB

SHOWN_MOST = 8


class Why(StrEnum):
    """What may be behind a difference."""

    ROW = "row"  # fed and not written, or still open and not fed
    DELIVERY = "delivery"
    MEASURE = "measure"
    BAGS = "bags"
    LOSS = "loss"


class Cause(Struct, frozen=True):
    """Something that may have been otherwise than the book has it, and by how much more would be there then. [kg]

    fitted: its size was chosen so that it explains all.
    """

    why: Why
    words: str
    kg: float
    fitted: bool = False


class Explanation(Struct, frozen=True):
    """A cause, and what it leaves unexplained: weighed less what would have been there. [kg]"""

    cause: Cause
    remaining_kg: float
    fits: bool


class Comparison(Struct, frozen=True):
    """What the book has and what was weighed; they agree within so much. explanations: the best first. [kg]"""

    book_kg: float
    weighed_kg: float
    within_kg: float
    explanations: tuple[Explanation, ...]

    @property
    def difference_kg(self) -> float:
        """Weighed less book: below zero where something is missing."""
        return self.weighed_kg - self.book_kg

    @property
    def agrees(self) -> bool:
        """Whether book and scale say the same."""
        return abs(self.difference_kg) <= self.within_kg

    @property
    def best(self) -> Explanation | None:
        """The best explanation that is one; plain loss only names the rest."""
        first = next(iter(self.explanations), None)
        return first if first and first.fits and first.cause.why is not Why.LOSS else None


def compare(book_kg: float, weighed_kg: float, causes: Iterable[Cause]) -> Comparison:
    """Every cause as an explanation, the best first. book_kg: by the book's law, without what is only assumed. [kg]"""
    within_kg = agree_within_kg(weighed_kg)
    found = []
    for cause in causes:
        remaining_kg = weighed_kg - (book_kg + cause.kg)
        found.append(Explanation(cause, remaining_kg, abs(remaining_kg) <= within_kg))
    return Comparison(book_kg, weighed_kg, within_kg, tuple(sorted(found, key=_rank)[:SHOWN_MOST]))


def comparison_words(found: Comparison, units: Units) -> str:
    """`fits: Fennel on Tuesday evening not fed (diff -0.1)`, or that none does."""
    if found.best:
        return explanation_words(found.best, units)
    if found.agrees:
        return "book and scale agree"
    return f"none fits within {_signed(found.within_kg, units).lstrip('+')} {_sign(units)}"


def explanation_words(found: Explanation, units: Units) -> str:
    """One explanation and what it leaves unexplained, with its sign."""
    how = "would fit" if found.cause.fitted else "fits" if found.fits else "does not fit"
    return f"{how}: {found.cause.words} (diff {_signed(found.remaining_kg, units)})"


def _rank(found: Explanation) -> tuple[int, float]:
    if found.cause.why is Why.LOSS:
        return 2, abs(found.remaining_kg)
    known = 0 if found.fits else 3
    return 1 if found.cause.fitted else known, abs(found.remaining_kg)


def _signed(kg: float, units: Units) -> str:
    """A weight to a tenth with its sign; nothing has none."""
    said = f"{kg / KG_PER_LB if units is Units.US else kg:+.1f}"
    return said.lstrip("+-") if float(said) == 0 else said


def _sign(units: Units) -> str:
    return "lb" if units is Units.US else "kg"
