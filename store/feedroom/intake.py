"""What each animal was given and ate, and what was refused again and again. What was lost is nobody's intake."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date, timedelta
from uuid import UUID

from msgspec import Struct

from store.book.desk import Desk
from store.book.drafts import Subject
from store.book.reading.stock import read_rows
from store.book.reading.stood import read_stood
from store.book.stocks import Row
from store.book.stood import Stood
from store.book.turn import Turn
from store.book.words import MORNING, State
from store.husbandry.intake import eaten_kg, refused


class Share(Struct, frozen=True):
    """What one animal got of one feed in one round; of a pen fed as one its equal share. [kg]

    animal_id None: the pen it was given to was empty by the book. left_kg None: nobody looked.
    """

    day: date
    animal_id: UUID | None
    feed_id: UUID
    given_kg: float
    left_kg: float | None

    @property
    def eaten_kg(self) -> float:
        """What was not left; all of it where nobody looked."""
        return eaten_kg(self.given_kg, min(self.left_kg or 0.0, self.given_kg))


class Refusal(Struct, frozen=True):
    """Of a feed something was left the last three times. [kg] newest first."""

    subject: Subject
    feed_id: UUID
    left_kg: tuple[float, ...]


def shares(desk: Desk, feed_ids: Iterable[UUID], first: date, last: date, zone: str) -> tuple[Share, ...]:
    """What every animal was given of some feeds in the rounds of some days."""
    since = Turn(first, MORNING).day_begins(zone)
    until = Turn(last + timedelta(days=2), MORNING).day_begins(zone)
    stood = read_stood(desk, since, until)
    found = ((feed_id, row) for feed_id in feed_ids for row in read_rows(desk, feed_id, first, last))
    return tuple(share for feed_id, row in found if _given(row) for share in _shared(feed_id, row, stood))


def refusals(rows: Mapping[UUID, Iterable[Row]]) -> Iterator[Refusal]:
    """Whoever left something of a feed three times in a row. rows: by feed, in the order it happened."""
    for feed_id, of_feed in rows.items():
        by_subject: dict[Subject, list[float | None]] = {}
        for row in of_feed:
            if _given(row):
                by_subject.setdefault(row.subject, []).insert(0, row.left_kg)
        for subject, left in by_subject.items():
            if refused(left):
                yield Refusal(subject, feed_id, tuple(kg for kg in left[:3] if kg is not None))


def _given(row: Row) -> bool:
    return row.state is State.DONE and bool(row.given_kg)


def _shared(feed_id: UUID, row: Row, stood: Stood) -> Iterator[Share]:
    """A row for each head: of an animal's own feed all of it."""
    animals: tuple[UUID | None, ...] = (row.subject.animal_id,)
    if row.subject.pen_id:
        animals = stood.heads((row.subject.pen_id,), row.at) or (None,)
    given_kg, left_kg = row.given_kg or 0.0, row.left_kg
    for animal_id in animals:
        left = None if left_kg is None else left_kg / len(animals)
        yield Share(row.turn.day, animal_id, feed_id, given_kg / len(animals), left)
