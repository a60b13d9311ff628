"""What is typed of a delivery, read: `10 x 25 kg at 9.50`, `250 kg for 95`, `12 bales`, `10 x 25 lot L-204`.

`at` is the price of one bag or bale, of one kilogram (on a US farm pound) where it came loose; `for` is for all of it.
The screen shows the reading before it is written.
"""

import re
from collections.abc import Sequence
from statistics import median

from msgspec import Struct
from msgspec.structs import replace

from store.book.facts.feed import Told
from store.book.figures import DeliveredFigure
from store.book.stocks import FeedStock
from store.book.words import BAGS_MOST, PRICE_MOST, STOCK_MOST_KG, Units
from store.husbandry.units import KG_PER_LB
from store.round.amount import Unreadable, feed_amount, number_and_unit
from store.round.confirm import Doubtful
from store.round.measured import IF_RIGHT, SURE
from store.round.saying import weight

TYPED_MOST, LOT_MOST = 80, 40
UNUSUAL = 10
"""So many times the usual delivery is asked about: often a figure too much."""
BAG_WORDS = ("bag", "bags", "sack", "sacks", "bale", "bales")
HOW = "Type it as 10 x 25 kg at 9.50, 250 kg for 95, or 12 bales."
_LOT = re.compile(r"\s+lot\s+(?P<lot>\S.*)$", re.IGNORECASE)
_PRICE = re.compile(r"\s+(?P<how>at|for)\s+(?P<price>.*)$", re.IGNORECASE)
_TIMES = re.compile(r"^(?P<bags>[\d.,\s]+)[x×*](?P<each>.+)$", re.IGNORECASE)


class Delivering(Struct, frozen=True):
    """What a typed delivery is read with. told: every measure of the feed that was weighed for it."""

    stock: FeedStock
    units: Units
    currency: str = ""
    told: Sequence[Told] = ()

    @property
    def usual_kg(self) -> float | None:
        """The middle one of the last deliveries; None before the first."""
        return median(each.kg for each in self.stock.deliveries) if self.stock.deliveries else None


def delivery(typed: str, of: Delivering) -> DeliveredFigure:
    """A typed delivery of a feed. Raises Unreadable; Doubtful for ten times the usual kilograms or price, unless !."""
    sure, text = typed.rstrip().endswith(SURE), typed.rstrip(f"{SURE} ").strip()
    if len(text) > TYPED_MOST:
        raise Unreadable(f"That is {len(text)} letters; the book keeps {TYPED_MOST}. {HOW}")
    lot, priced = _LOT.search(text), _PRICE.search(_LOT.sub("", text))
    found = _counted(_PRICE.sub("", _LOT.sub("", text)), of)
    if priced:
        found = replace(found, price=_price(priced, found, of))
    found = replace(found, lot=lot["lot"].strip() if lot else "", typed=text)
    _refuse(found)
    if not sure:
        _ask(found, of)
    return found


def delivery_words(figure: DeliveredFigure, units: Units, currency: str = "") -> str:
    """What was read: `10 x 25.0 kg = 250 kg, 95.00 in all, 0.38 a kg, lot L-204`."""
    kg = weight(figure.kg, units)
    words = [f"{figure.bags} x {weight(figure.kg / figure.bags, units)} = {kg}" if figure.bags else kg]
    if figure.price is None:
        words.append("price not known")
    elif figure.kg:
        size, sign = (KG_PER_LB, "lb") if units is Units.US else (1.0, "kg")
        each = money(figure.price / figure.kg * size, currency)
        words += [f"{money(figure.price, currency)} in all", f"{each} a {sign}"]
    return ", ".join([*words, *([f"lot {figure.lot}"] if figure.lot else [])])


def money(amount: float, currency: str) -> str:
    """`9.50`, `9.50 EUR`, `$9.50`, in the farm's own money."""
    before, after = ("", f" {currency}") if currency.isalpha() else (currency, "")
    return f"{before}{amount:.2f}{after}"


def _ask(found: DeliveredFigure, of: Delivering) -> None:
    """Ten times the usual kilograms, or ten times the last price of a kilogram."""
    if of.usual_kg and found.kg >= UNUSUAL * of.usual_kg:
        usual = weight(of.usual_kg, of.units)
        raise Doubtful(f"That is {weight(found.kg, of.units)}; usual is {usual}. {IF_RIGHT}")
    last = of.stock.priced.price_per_kg if of.stock.priced else None
    if found.price is not None and last and found.price / found.kg >= UNUSUAL * last:
        now, before = (money(each, of.currency) for each in (found.price / found.kg, last))
        raise Doubtful(f"That is {now} a kg; the last time it was {before}. {IF_RIGHT}")


def _counted(text: str, of: Delivering) -> DeliveredFigure:
    """Kilograms, and bags or bales if it was told in those."""
    times = _TIMES.match(text)
    if times:
        bags = _bags(times["bags"])
        return DeliveredFigure(bags * _kg(*number_and_unit(times["each"]), of), bags)
    number, word = number_and_unit(text)
    told = next((each for each in of.told if word in (each.name.lower(), each.plural.lower())), None)
    if word and (told or word in BAG_WORDS):
        return DeliveredFigure(number * _one_kg(word, told, of), _bags(f"{number:g}"))
    return DeliveredFigure(_kg(number, word, of))


def _kg(number: float, word: str, of: Delivering) -> float:
    """A weight by its unit; it may be more than one step of a round ever takes."""
    return number * feed_amount(f"1 {word}", of.stock.feed, None, of.units).kg


def _one_kg(word: str, told: Told | None, of: Delivering) -> float:
    """What one bag or bale is: as weighed, else as in the last delivery that was told in them."""
    before = next((each.bag_kg for each in of.stock.deliveries if each.bag_kg), None)
    kg = told.holds_kg if told and told.holds_kg else before
    if kg is None:
        name = of.stock.feed.name
        raise Unreadable(f"Nobody has weighed one of the {word} of {name} yet. Type the weight too, as 12 x 20 kg.")
    return kg


def _bags(text: str) -> int:
    number, word = number_and_unit(text)
    if word or number != int(number) or not 1 <= number <= BAGS_MOST:
        raise Unreadable(f"«{text.strip()}» is no number of bags. Type a whole number from 1 to {BAGS_MOST}.")
    return int(number)


def _price(priced: re.Match[str], found: DeliveredFigure, of: Delivering) -> float:
    """The price of all of it."""
    number, word = number_and_unit(re.sub(r"[€$£]", "", priced["price"]))
    if word and word != of.currency.lower():
        raise Unreadable(f"«{priced['price']}» is no price. Type a number, as at 9.50 (each) or for 95 (all of it).")
    if priced["how"].lower() == "for":
        return number
    return number * (found.bags or found.kg / (KG_PER_LB if of.units is Units.US else 1.0))


def _refuse(found: DeliveredFigure) -> None:
    if not 0 < found.kg <= STOCK_MOST_KG:
        most = f"more than nothing and at most {STOCK_MOST_KG:.0f} kg"
        raise Unreadable(f"That is {found.kg:.0f} kg; a delivery is {most}. {HOW}")
    if found.price is not None and found.price > PRICE_MOST:
        raise Unreadable(f"That is {found.price:.0f} for all of it; at most {PRICE_MOST:.0f} can be kept. {HOW}")
    if len(found.lot) > LOT_MOST:
        raise Unreadable(f"The lot has {len(found.lot)} letters; the book keeps {LOT_MOST}. Type its last ones.")
