"""A farm whose feed room is empty and whose rounds nobody walked yet; what is written there, and stocks by hand."""

import shutil
from collections.abc import Mapping
from datetime import UTC, date, datetime, timedelta
from functools import cache
from pathlib import Path
from tempfile import mkdtemp
from uuid import UUID

from store.book.clock import new_id
from store.book.drafts import Draft, Subject
from store.book.figures import DeliveredFigure, FedFigure, Figure, LostFigure
from store.book.folder.take_in import new_book_from
from store.book.opening import Book, open_book
from store.book.reading import read_facts
from store.book.reading.stock import names_at, read_stock, told_at
from store.book.stocks import Delivered, FeedStock, Stocked
from store.book.turn import Turn
from store.book.words import Kind, State
from store.feedroom.drafts import FeedHand, delivered, lost, weighed
from tests.farm import MORNING, HandClock
from tests.store.book.folders import copy_farm
from tests.store.round.made import NUTS

NUTS_NAME, HAY, LUCERNE = "dairy nuts", "grass hay", "lucerne pellets"
TODAY = date(2026, 3, 11)
THIS_MORNING, THIS_EVENING = Turn(TODAY, "morning"), Turn(TODAY, "evening")


@cache
def _built() -> Path:
    folder = Path(mkdtemp(prefix="penwalk-feedroom-"))
    new_book_from(copy_farm(folder / "farm"), folder / "built.penwalk")
    return folder / "built.penwalk"


def empty_room(folder: Path, clock: HandClock | None = None, bench: str = "bench") -> Book:
    """The small farm before its first round, open on the pretend morning; its feed room is empty."""
    place = Path(shutil.copy(_built(), folder / f"{bench}.penwalk"))
    return open_book(str(place), clock or HandClock(), bench)


def named(book: Book, name: str) -> UUID:
    """The id of an animal, pen or feed by its name."""
    return next(id_ for id_, each in names_at(book.desk, book.clock.now()).items() if each == name)


def measure(book: Book, name: str) -> UUID:
    """The id of a measure by its name."""
    return next(id_ for (id_, _), told in told_at(book.desk, book.clock.now()).items() if told.name == name)


def person(book: Book) -> UUID:
    """Who writes."""
    return UUID(bytes=bytes(book.desk.rows("SELECT id FROM person ORDER BY id", {})[0][0]))


def feed_hand(book: Book) -> FeedHand:
    """Somebody writes in the feed room, now."""
    return FeedHand(person(book), book.clock.now())


def stocks(book: Book, at: datetime | None = None) -> Mapping[str, FeedStock]:
    """What is there, by the name of the feed; now, or at a moment."""
    return {stock.feed.name: stock for stock in read_stock(book.desk, at or book.clock.now())}


def the_stock(book: Book, name: str = NUTS_NAME) -> FeedStock:
    """What is there of one feed now."""
    return stocks(book)[name]


def there(book: Book, name: str = NUTS_NAME) -> float | None:
    """How much of it, to the gram."""
    kg = the_stock(book, name).kg
    return None if kg is None else round(kg, 3)


def weigh(book: Book, kg: float, name: str = NUTS_NAME) -> UUID:
    """Weigh a feed."""
    return book.append(weighed(feed_hand(book), the_stock(book, name), kg))


def deliver(book: Book, figure: DeliveredFigure, name: str = NUTS_NAME) -> UUID:
    """A feed comes in."""
    return book.append(delivered(feed_hand(book), named(book, name), figure))


def lose(book: Book, kg: float, name: str = NUTS_NAME) -> UUID:
    """Some of a feed is spilt."""
    return book.append(lost(feed_hand(book), named(book, name), LostFigure(kg, "spilt")))


def fed_draft(
    book: Book,
    kg: float | None,
    turn: Turn = THIS_MORNING,
    who: str = "Fennel",
    name: str = NUTS_NAME,
    measure_id: UUID | None = None,
    left_kg: float | None = None,
) -> Draft:
    """A feed step of an animal, as a key would write it."""
    figure = FedFigure(named(book, name), measure_id, 2.5, kg, left_kg=left_kg)
    return fed_step(book, turn, Kind.FEED, Subject(animal_id=named(book, who)), (figure,))


def fed_step(book: Book, turn: Turn, kind: Kind, subject: Subject, figures: tuple[Figure, ...]) -> Draft:
    """The feed step of a round for a subject, done."""
    farm = read_facts(book.desk, book.clock.now())
    step_id = turn.step_id(farm.id, kind, subject.id)
    return Draft(step_id, kind, subject, turn, State.DONE, book.clock.now(), person(book), None, figures=figures)


def feed(book: Book, kg: float, turn: Turn = THIS_MORNING, who: str = "Fennel", name: str = NUTS_NAME) -> UUID:
    """Feed an animal."""
    return book.append(fed_draft(book, kg, turn, who, name))


def came(kg: float, bags: int | None = None, price: float | None = None, lot: str = "", days_ago: int = 0) -> Delivered:
    """A delivery by hand."""
    at = MORNING - timedelta(days=days_ago)
    return Delivered(new_id(at), new_id(at), at, kg, bags, price, lot)


def stock_by_hand(kg: float, *deliveries: Delivered) -> FeedStock:
    """So much of oat nuts, weighed a month ago; deliveries newest first."""
    at = datetime(2026, 2, 11, tzinfo=UTC)
    stocked = Stocked(new_id(at), new_id(at), at, kg)
    return FeedStock(NUTS, stocked, at, deliveries=deliveries, delivered=deliveries[::-1])
