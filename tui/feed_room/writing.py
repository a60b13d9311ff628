"""What is typed in the feed room, read while it is typed: what came, what is there, what was lost."""

from abc import abstractmethod
from typing import TYPE_CHECKING

from store.book.drafts import Draft
from store.book.figures import LostFigure
from store.book.reading.stock import read_settings, told_at
from store.book.words import STOCK_MOST_KG
from store.feedroom import delivery
from store.feedroom.against import comparison_words, explanation_words
from store.feedroom.drafts import delivered, lost, weighed
from store.feedroom.weighing import book_against_scale, read_case
from store.herd.answers import a_weight
from store.round.amount import Unreadable, amount_and_words
from store.round.confirm import Doubtful
from store.round.measured import IF_RIGHT, SURE
from store.round.saying import exact, weight
from tui.page import Line, Role, Size, wrapped
from tui.place import Place
from tui.yard.wording import Wording

if TYPE_CHECKING:
    from tui.feed_room.one_feed import OneFeed

EXPLAINED_MOST = 3


class FeedWriting(Wording):
    """A line about one feed; what it is read as stands below it, before it is written."""

    MOST = 80

    def __init__(self, feed: "OneFeed") -> None:
        """Over what can be written of a feed."""
        super().__init__(feed.rooms, feed)
        self.feed = feed
        self.stock = feed.line.stock
        self.desk, self.now = self.walker.book.desk, self.walker.book.clock.now()
        self.units = self.walker.farm.units
        self.role, self.reading = Role.STRONG, list[str]()

    @abstractmethod
    def read(self) -> tuple[Draft, str]:
        """The draft of what is typed, and in words what it is read as. Raises Unreadable or Doubtful."""

    def more(self) -> list[str]:
        """What else there is to say of what is typed."""
        return []

    def takes(self, character: str) -> bool:
        """A letter more, and what it is read as then."""
        taken = super().takes(character)
        self._look_at_text()
        return taken

    def back(self) -> Place:
        """A letter less."""
        place = super().back()
        self._look_at_text()
        return place

    def _look_at_text(self) -> None:
        """Read what is typed, once for each key; what the book knows of it was read before."""
        self.role, self.reading = Role.STRONG, []
        if not self.text.strip():
            return
        try:
            self.reading = [self.read()[1], *self.more()]
        except (Unreadable, Doubtful) as problem:
            self.role, self.reading = Role.WARNING, [str(problem)]

    def below(self, size: Size) -> list[Line]:
        """The reading."""
        return [row for each in self.reading for row in wrapped(each, size.width, self.role, "  ")]

    def enter(self) -> Place:
        """Write it."""
        if not self.text.strip():
            return self.say("Nothing is typed. Type it, or Esc goes back.")
        try:
            draft, words = self.read()
        except (Unreadable, Doubtful) as problem:
            return self.say(str(problem))
        return self.feed.write(draft, words) or self.say(self.feed.said)

    @property
    def sure(self) -> bool:
        """Whether it was said to be right."""
        return self.text.rstrip().endswith(SURE)

    @property
    def plain(self) -> str:
        """What is typed, without the word that it is right."""
        return self.text.rstrip(f"{SURE} ")


class Delivering(FeedWriting):
    """A delivery."""

    def __init__(self, feed: "OneFeed") -> None:
        """With the farm's money, and the measures of the feed that somebody has weighed."""
        super().__init__(feed)
        self.currency = read_settings(self.desk, self.now).currency
        told = (each for (_, feed_id), each in told_at(self.desk, self.now).items() if feed_id == self.stock.feed.id)
        self.told = [each for each in told if each.holds_kg]

    def heading(self) -> str:
        """How it is typed."""
        return f"DELIVERY of {self.stock.feed.name}: as 10 x 25 kg at 9.50 lot L-204, or 250 kg for 95, or 12 bales"

    def read(self) -> tuple[Draft, str]:
        """Bags, weight, price and lot."""
        of = delivery.Delivering(self.stock, self.units, self.currency, self.told)
        figure = delivery.delivery(self.text, of)
        draft = delivered(self.feed.hand(), self.stock.feed.id, figure)
        return draft, delivery.delivery_words(figure, self.units, self.currency)


class StockWeighing(FeedWriting):
    """What is really there."""

    def __init__(self, feed: "OneFeed") -> None:
        """With what the book knows before it."""
        super().__init__(feed)
        self.known = read_case(self.desk, self.stock, self.now)

    def heading(self) -> str:
        """What is weighed."""
        soaks = " What soaks is added by itself." if self.stock.soaking_kg else ""
        return f"WEIGHED  all the {self.stock.feed.name} that is there, as 41.6 kg.{soaks}"

    def _kg(self) -> float:
        return a_weight(self.plain, self.units, 0, STOCK_MOST_KG)

    def read(self) -> tuple[Draft, str]:
        """What is there."""
        kg, book_kg = self._kg(), None if self.known is None else self.known.book_kg
        off_kg = None if book_kg is None else kg + self.stock.soaking_kg - book_kg
        if book_kg is not None and off_kg is not None and abs(off_kg) > max(book_kg, kg) / 2 and not self.sure:
            raise Doubtful(f"{exact(kg, self.units)}, and the book has {exact(book_kg, self.units)}. {IF_RIGHT}")
        draft = weighed(self.feed.hand(), self.stock, kg, self.plain)
        against = (
            ""
            if off_kg is None
            else f", {exact(abs(off_kg), self.units)} {'more' if off_kg > 0 else 'less'} than by the book"
        )
        return draft, f"{exact(kg, self.units)} there{against}"

    def more(self) -> list[str]:
        """Against the book, with what would explain a difference; what was weighed counts, whatever explains it."""
        if self.known is None:
            return ["The book knew of none; it counts from here on."]
        found = book_against_scale(self.known, self._kg())
        book = f"The book has {exact(found.book_kg, self.units)}. What was weighed counts from here on."
        explained = [explanation_words(each, self.units) for each in found.explanations[:EXPLAINED_MOST]]
        said = (
            []
            if found.agrees and not found.best
            else [each for each in explained if each != comparison_words(found, self.units)]
        )
        return [book, comparison_words(found, self.units), *said]


class Losing(FeedWriting):
    """Feed that no animal ate."""

    def heading(self) -> str:
        """How it is typed."""
        return f"LOST  how much {self.stock.feed.name}, and why: 12.5 kg wet bag. It counts as nobody's feed"

    def read(self) -> tuple[Draft, str]:
        """A weight, and words."""
        amount, why = amount_and_words(self.plain)
        kg = a_weight(amount, self.units, 0, STOCK_MOST_KG)
        if self.stock.kg is not None and kg > self.stock.kg and not self.sure:
            raise Doubtful(f"{exact(kg, self.units)}, and the book has {exact(self.stock.kg, self.units)}. {IF_RIGHT}")
        draft = lost(self.feed.hand(), self.stock.feed.id, LostFigure(kg, why, self.plain))
        return draft, f"{weight(kg, self.units)} lost{f': {why}' if why else ''}"
