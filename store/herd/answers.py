"""What was typed about the yard, read: names, weights, lengths, numbers. What cannot be read is said in a sentence."""

from collections.abc import Callable

from store.book.words import GIRTH_CM, WEIGHT_KG, Units
from store.husbandry.units import CM_PER_INCH, spoken
from store.round.amount import Unreadable, number_and_unit
from store.round.saying import weight

NAME_MOST, WORDS_MOST = 60, 120


def a_name(text: str) -> str:
    """A name that has to be there, of at most 60 letters."""
    found = words(text, NAME_MOST)
    if not found:
        raise Unreadable("A name is needed here. Type it, then Enter.")
    return found


def words(text: str, most: int = WORDS_MOST) -> str:
    """Words that may be left out."""
    found = " ".join(text.split())
    if len(found) > most:
        raise Unreadable(
            f"«{found[:20]}...» has {len(found)} letters; no more than {most} fit. Backspace takes some away."
        )
    return found


def maybe_weight(
    units: Units, least_kg: float = WEIGHT_KG[0], most_kg: float = WEIGHT_KG[1]
) -> Callable[[str], float | None]:
    """A weight, or nothing. [kg]"""

    def read(text: str) -> float | None:
        return a_weight(text, units, least_kg, most_kg) if text.strip() else None

    return read


def a_weight(text: str, units: Units, least_kg: float, most_kg: float) -> float:
    """A weight between two bounds; a bare number is what the farm has set. [kg]"""
    number, word = number_and_unit(text)
    unit = spoken(word or ("lb" if units is Units.US else "kg"), american=units is Units.US)
    if unit is None or unit.dimension != "weight":
        raise Unreadable(f"«{text.strip()}» is no weight. Type it as 612 kg or 1350 lb.")
    kg = number * unit.size
    if not least_kg <= kg <= most_kg:
        found, least, most = (weight(each, units) for each in (kg, least_kg, most_kg))
        raise Unreadable(f"«{text.strip()}» is {found}; expected {least} to {most}. Type it again.")
    return kg


def maybe_girth(units: Units) -> Callable[[str], float | None]:
    """A heart girth, or nothing; a bare number is inches on a US farm. [cm]"""

    def read(text: str) -> float | None:
        if not text.strip():
            return None
        number, word = number_and_unit(text)
        size = {"cm": 1.0, "in": CM_PER_INCH, "inch": CM_PER_INCH, "inches": CM_PER_INCH, '"': CM_PER_INCH}
        if word not in size and word:
            raise Unreadable(f"«{word}» is no length here. Type the girth as 201 cm or 79 in.")
        cm = number * size[word or ("in" if units is Units.US else "cm")]
        if not GIRTH_CM[0] <= cm <= GIRTH_CM[1]:
            raise Unreadable(f"«{text.strip()}» is {cm:.0f} cm; expected {GIRTH_CM[0]:.0f} to {GIRTH_CM[1]:.0f} cm.")
        return cm

    return read


def a_number(least: float, most: float, what: str) -> Callable[[str], float]:
    """A number between two bounds, as hours or per cent."""

    def read(text: str) -> float:
        number, word = number_and_unit(text.replace("%", ""))
        if (word and word not in what) or not least <= number <= most:
            raise Unreadable(f"«{text.strip()}» does not fit here. Type {least:g} to {most:g} {what}.")
        return number

    return read


def maybe(read: Callable[[str], object]) -> Callable[[str], object | None]:
    """The same reading, but nothing typed is nothing."""
    return lambda text: read(text) if text.strip() else None


def a_count(least: int, most: int, what: str) -> Callable[[str], int]:
    """A whole number between two bounds."""

    def read(text: str) -> int:
        number = a_number(least, most, what)(text)
        if number != int(number):
            raise Unreadable(f"«{text.strip()}» is no whole number of {what}. Type {least} to {most}.")
        return int(number)

    return read
