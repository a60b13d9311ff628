"""What was typed, read as an amount: `3 1/2`, `7,4`, `16 lb`, `2 gal`, `3 scoops`.

The comma is a decimal point, never a thousand; the screen shows the reading before it is written. What cannot be read
is refused with a sentence that says what was found and what to type instead.
"""

import re

from msgspec import Struct

from store.book.facts.feed import Feed, Told
from store.book.facts.milk import Pail
from store.book.words import MILK_MOST_KG, STEP_MOST_KG, Units
from store.husbandry.milk.pail import kilograms, milk_in_pail
from store.husbandry.units import KG, LB, Unit, spoken
from store.round.saying import weight

_PARTS = {"½": 0.5, "¼": 0.25, "¾": 0.75}
_NUMBER = re.compile(
    r"""^\s*(?:
        (?P<whole>\d{1,6})\s*(?P<part>[½¼¾])            # 3½
      | (?P<only>[½¼¾])                                 # ½
      | (?:(?P<units>\d{1,6})\s+)?(?P<top>\d{1,3})\s*/\s*(?P<bottom>\d{1,3})  # 3 1/2, 1/2
      | (?P<decimal>\d{1,6}(?:[.,]\d{0,6})?|[.,]\d{1,6})  # 3.5  7,4
    )\s*(?P<unit>[^\d\s].*?)?\s*$""",
    re.VERBOSE,
)


class Unreadable(ValueError):
    """What was typed is no amount here; str() is the sentence for the keeper."""


class FeedAmount(Struct, frozen=True):
    """A typed amount of feed: its weight, and in measures where it was told so. [kg]"""

    kg: float
    measures: float | None


class PailAmount(Struct, frozen=True):
    """A typed milk weight: milk alone, and the pail as it stood on the scale if there was one. [kg]"""

    milk_kg: float
    gross_kg: float | None
    empty_kg: float | None


def number_and_unit(text: str) -> tuple[float, str]:
    """The number and the word after it ("" if none). Raises Unreadable."""
    found = _matched(text)
    return _number(found), (found["unit"] or "").strip().lower()


def amount_and_words(text: str) -> tuple[str, str]:
    """The amount as typed, with its unit, and the words behind it: `1/3 kg`, `wet bag`. Raises Unreadable."""
    found = _matched(text)
    unit, _, words = (found["unit"] or "").strip().partition(" ")
    number = text[: found.start("unit")] if unit else text
    return f"{number}{unit}", words.strip()


def feed_amount(text: str, feed: Feed, told: Told | None, units: Units, *, by_weight: bool = False) -> FeedAmount:
    """An amount of one feed: in its measure, or by weight with a unit. Raises Unreadable.

    A bare number is what the screen shows: measures, or by_weight (and without a measure) kilograms, pounds on a US
    farm. A word is the feed's own measure first, a unit second.
    """
    number, word = number_and_unit(text)
    unit = None if told and word in (told.name.lower(), told.plural.lower()) else _unit(word, units)
    if told and (_is_measure(word, told) and unit is None if word else not by_weight):
        amount = FeedAmount(number * _holds_kg(told, feed), number)
    else:
        amount = FeedAmount(number * _weight(unit or _bare(word, units, told), feed).size, None)
    if amount.kg > STEP_MOST_KG:
        raise Unreadable(
            f"«{text.strip()}» is {weight(amount.kg, units)}, too much for one step. "
            f"Type what makes {weight(STEP_MOST_KG, units)} or less."
        )
    return amount


def whole_number(text: str, most: int, what: str) -> int:
    """A count, as heads or strings. Raises Unreadable."""
    number, word = number_and_unit(text)
    if word or number != int(number) or not 0 <= number <= most:
        raise Unreadable(f"«{text.strip()}» is no number of {what}. Type a whole number from 0 to {most}.")
    return int(number)


def pail_amount(text: str, pail: Pail | None, units: Units) -> PailAmount:
    """The milk of one milking. Raises Unreadable.

    A weight is the pail as it stands on the scale; a volume is milk alone.
    """
    number, word = number_and_unit(text)
    unit = _unit(word, units) or _bare(word, units, None)
    if unit.dimension == "volume":
        amount = PailAmount(kilograms(number * unit.size), None, None)
    else:
        amount = _from_scale(number * unit.size, pail, units)
    if amount.milk_kg > MILK_MOST_KG:
        raise Unreadable(
            f"«{text.strip()}» is {weight(amount.milk_kg, units)} of milk, too much for one milking. "
            f"Type what makes {weight(MILK_MOST_KG, units)} or less."
        )
    return amount


def _from_scale(gross_kg: float, pail: Pail | None, units: Units) -> PailAmount:
    empty_kg = pail.empty_kg if pail else 0.0
    if gross_kg < empty_kg:
        raise Unreadable(
            f"{weight(gross_kg, units)} is less than the empty pail ({weight(empty_kg, units)}). "
            "Type the pail as it stands on the scale, or milk alone as litres: 5.6 l."
        )
    return PailAmount(milk_in_pail(gross_kg, empty_kg), gross_kg, empty_kg)


def _matched(text: str) -> re.Match[str]:
    found = _NUMBER.match(text)
    if found is None:
        raise Unreadable(f"«{text.strip()}» is no amount. Type a number as 3, 3.5 or 3 1/2, then a unit if you like.")
    return found


def _number(found: re.Match[str]) -> float:
    if found["only"]:
        return _PARTS[found["only"]]
    if found["whole"]:
        return int(found["whole"]) + _PARTS[found["part"]]
    if found["decimal"]:
        return float(found["decimal"].replace(",", "."))
    if int(found["bottom"]) == 0:
        raise Unreadable("Nothing can be divided by 0. Type a part as 1/2 or 3/4.")
    return int(found["units"] or 0) + int(found["top"]) / int(found["bottom"])


def _unit(word: str, units: Units) -> Unit | None:
    return spoken(word, american=units is Units.US) if word else None


def _bare(word: str, units: Units, told: Told | None) -> Unit:
    if word:
        known = f", {told.plural}" if told else ""
        raise Unreadable(f"«{word}» is no unit known here. Type kg, g, lb, oz, l, gal, qt, pt{known}, or no unit.")
    return LB if units is Units.US else KG


def _is_measure(word: str, told: Told) -> bool:
    start = word.rstrip(".")
    return bool(start) and (told.name.lower().startswith(start) or told.plural.lower().startswith(start))


def _holds_kg(told: Told, feed: Feed) -> float:
    if told.holds_kg is None:
        raise Unreadable(f"Nobody has weighed a {told.name} of {feed.name} yet. Type the weight, as 1.2 kg.")
    return told.holds_kg


def _weight(unit: Unit, feed: Feed) -> Unit:
    if unit.dimension != "weight":
        raise Unreadable(f"{unit.sign} is a volume; {feed.name} goes by weight here. Type kg, g, lb or oz.")
    return unit
