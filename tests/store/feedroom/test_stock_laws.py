"""The law of the feed room: weighed, then delivered less fed less lost; whatever two benches write and mend."""

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from uuid import UUID

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from msgspec import Struct
from msgspec.structs import replace

from store.book.clock import MICROSECOND
from store.book.drafts import Draft, Subject
from store.book.figures import DeliveredFigure, FedFigure, Figure, LostFigure, SoakedFigure, StockedFigure
from store.book.merging import merge
from store.book.opening import Book, open_book
from store.book.turn import Turn
from store.book.words import Kind, Soak, State
from tests.farm import MORNING, HandClock
from tests.store.feedroom.made import HAY, LUCERNE, NUTS_NAME, TODAY, empty_room, named, person, stocks

FEEDS = (NUTS_NAME, LUCERNE, HAY)
KINDS = ("stock", "delivery", "loss", "fed", "fed", "fed", "thrown out", "started")
KG = st.integers(0, 400).map(lambda number: number / 4)
ACTS = st.lists(
    st.tuples(
        st.integers(0, 1),  # which bench
        st.sampled_from((*KINDS, "correct", "correct", "undo", "merge")),
        st.integers(0, 2),  # which feed
        KG,
        st.sampled_from((0, 0, 1, 2, 3, 4)),  # how many days ago the round was; or which entry is mended
        st.sampled_from((60, 4000, 90_000, -30)),  # by how much the clock moves first [s]
    ),
    max_size=16,
)
Act = tuple[int, str, int, float, int, int]


class Fact(Struct, frozen=True, dict=True):
    """An entry as the model keeps it, told without the code that is tested."""

    draft: Draft
    id: UUID
    step_id: UUID
    written_at: int

    def kg(self, feed_id: UUID, kind: type[Figure]) -> float:
        """The kilograms of one feed in it."""
        return sum(_kg(each) for each in self.draft.figures if isinstance(each, kind) and _is_of(each, self, feed_id))


def _is_of(figure: Figure, fact: Fact, feed_id: UUID) -> bool:
    return (figure.feed_id if isinstance(figure, FedFigure) else fact.draft.subject.feed_id) == feed_id


def _kg(figure: Figure) -> float:
    if isinstance(figure, FedFigure):
        return figure.given_kg or 0.0
    if isinstance(figure, SoakedFigure):
        return figure.dry_kg or 0.0 if figure.act is Soak.THROWN_OUT else 0.0
    assert isinstance(figure, DeliveredFigure | StockedFigure | LostFigure)
    return figure.kg


@dataclass
class Room:
    """A bench in the feed room: its book, its clock, and all that it knows."""

    place: Path
    clock: HandClock
    book: Book
    knows: dict[UUID, Fact] = field(default_factory=dict)

    def act(self, what: str, feed: str, kg: float, ago: int) -> None:
        """Write, mend or take back."""
        if what in ("correct", "undo"):
            self._mend(what, kg, ago)
        else:
            self.write(_new(self, what, feed, kg, ago))

    def write(self, draft: Draft) -> None:
        """Write a draft over what this bench knows of its step."""
        newest = max((each for each in self.knows.values() if each.step_id == draft.step_id), key=_age, default=None)
        shown = replace(draft, shown=newest and newest.id)
        id_ = self.book.append(shown)
        ((written_at,),) = self.book.desk.rows("SELECT written_at FROM entry WHERE id = :id", {"id": id_.bytes})
        self.knows[id_] = Fact(shown, id_, shown.step_id or id_, written_at)

    def take_in(self, other: "Room") -> None:
        """Merge the other bench's book into this one."""
        other.book.close()
        merge(self.book.desk, other.place)
        other.book = open_book(str(other.place), other.clock, other.book.bench)
        self.knows |= other.knows

    def _mend(self, what: str, kg: float, which: int) -> None:
        facts = sorted(self.knows.values(), key=_age)
        if not facts:
            return
        draft = facts[-1 - which % len(facts)].draft
        step_id = facts[-1 - which % len(facts)].step_id
        figures = tuple(_with_kg(each, kg) for each in draft.figures) if what == "correct" else ()
        state = State.DONE if figures else State.OPEN
        self.write(
            Draft(step_id, draft.kind, draft.subject, draft.turn, state, draft.happened_at, draft.person_id, None,
                  figures=figures)
        )  # fmt: skip


def _age(fact: Fact) -> tuple[int, bytes]:
    return fact.written_at, fact.id.bytes


def _with_kg(figure: Figure, kg: float) -> Figure:
    values = {name: getattr(figure, name) for name in figure.__struct_fields__}
    changed = {"given_kg": kg, "dry_kg": kg, "kg": kg}
    return type(figure)(**values | {name: kg for name in changed if name in values})


def _new(room: Room, what: str, feed: str, kg: float, ago: int) -> Draft:
    feed_id, now, who = named(room.book, feed), room.clock.now(), person(room.book)
    own: dict[str, tuple[Kind, Figure]] = {
        "stock": (Kind.STOCK, StockedFigure(kg)),
        "delivery": (Kind.DELIVERY, DeliveredFigure(kg)),
        "loss": (Kind.LOSS, LostFigure(kg)),
    }
    if what in own:
        kind, figure = own[what]
        return Draft(None, kind, Subject(feed_id=feed_id), None, State.DONE, now, who, None, figures=(figure,))
    turn = Turn(TODAY - timedelta(days=ago), "morning")
    if what == "fed":
        subject, kind = Subject(animal_id=named(room.book, "Fennel")), Kind.FEED
        figures: tuple[Figure, ...] = (
            FedFigure(feed_id, None, None, kg),
            FedFigure(named(room.book, NUTS_NAME), None, 1.0, None if kg == 1 else 0.25),
        )
    else:
        subject, kind = Subject(feed_id=feed_id), Kind.SOAK
        figures = (SoakedFigure(Soak(what), kg, kg),)
    step_id = turn.step_id(UUID(int=5), kind, subject.id, "" if what == "fed" else what)
    return Draft(step_id, kind, subject, turn, State.DONE, now, who, None, figures=figures)


def expected(facts: Iterable[Fact], feed_id: UUID, at: datetime) -> float | None:
    """The law, in plain words: the newest entry of each step, since the newest weighing, else the first delivery."""
    newest: dict[UUID, Fact] = {}
    for fact in sorted(facts, key=_age):
        newest[fact.step_id] = fact
    counts = [each for each in newest.values() if each.draft.state is State.DONE and each.draft.happened_at <= at]
    of_feed = [each for each in counts if each.draft.subject.feed_id == feed_id]
    weighings = sorted(
        (each for each in of_feed if each.draft.kind is Kind.STOCK),
        key=lambda each: (each.draft.happened_at, each.id.bytes),
    )
    firsts = [each.draft.happened_at for each in of_feed if each.draft.kind is Kind.DELIVERY]
    if not weighings and not firsts:
        return None
    since = weighings[-1].draft.happened_at if weighings else min(firsts) - MICROSECOND
    kg = weighings[-1].kg(feed_id, StockedFigure) if weighings else 0.0
    for each in counts:
        day: date | None = each.draft.turn.day if each.draft.turn else None
        if each.draft.happened_at > since:
            kg += each.kg(feed_id, DeliveredFigure)
            kg -= each.kg(feed_id, LostFigure) + each.kg(feed_id, SoakedFigure)
            if day and day >= since.date() - timedelta(days=1):  # in March the farm's clock shows UTC
                kg -= each.kg(feed_id, FedFigure)
    return kg


@contextmanager
def two_rooms() -> Iterator[tuple[Room, Room]]:
    """Two benches with one empty feed room, the second one's clock a little ahead."""
    with TemporaryDirectory(prefix="penwalk-feed-laws-") as folder:
        rooms = []
        for name, ahead_s in (("barn", 0), ("kitchen", 40)):
            clock = HandClock(MORNING + timedelta(seconds=ahead_s))
            book = empty_room(Path(folder), clock, name)
            rooms.append(Room(Path(book.desk.place), clock, book))
        try:
            yield rooms[0], rooms[1]
        finally:
            for room in rooms:
                room.book.close()


@given(acts=ACTS, hours_ago=st.sampled_from((0, 1, 30)))
@example(
    acts=[(0, "stock", 1, 83.0, 0, 60), (0, "fed", 1, 6.25, 0, 60), (0, "fed", 1, 5.0, 1, 60),
          (0, "fed", 1, 4.0, 2, 60), (0, "started", 1, 3.0, 0, 60), (0, "thrown out", 1, 2.0, 0, 60)],
    hours_ago=0,
)  # fmt: skip
@example(
    acts=[(0, "delivery", 0, 50.0, 0, 60), (1, "fed", 0, 2.0, 0, 60), (0, "fed", 0, 3.0, 0, 60),
          (0, "merge", 0, 0, 0, 60), (1, "loss", 0, 4.0, 0, 60), (1, "undo", 0, 0, 0, 60),
          (0, "correct", 0, 7.0, 0, 60)],
    hours_ago=0,
)  # fmt: skip
@settings(max_examples=60, deadline=None)
def test_what_is_there_is_weighed_and_delivered_less_fed_less_lost(acts: list[Act], hours_ago: int) -> None:
    """After corrections, undos and merges, for every feed, on both benches; and at an earlier moment too."""
    with two_rooms() as rooms:
        for which, what, feed_at, kg, ago, moved_s in acts:
            room = rooms[which]
            room.clock.move(seconds=moved_s)
            if what == "merge":
                room.take_in(rooms[1 - which])
            else:
                room.act(what, FEEDS[feed_at], kg, ago)
        rooms[0].take_in(rooms[1])
        rooms[1].take_in(rooms[0])
        at = max(room.clock.at for room in rooms) - timedelta(hours=hours_ago)
        for room in rooms:
            found = stocks(room.book, at)
            for name in FEEDS:
                wanted = expected(room.knows.values(), named(room.book, name), at)
                assert found[name].kg == (None if wanted is None else pytest.approx(wanted, abs=1e-6))
