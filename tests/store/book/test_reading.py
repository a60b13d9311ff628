"""What a snapshot holds: what is in force at the moment, and what came before it; never what came after."""

from contextlib import closing
from datetime import date, datetime, timedelta
from typing import Any

import pytest
from psycopg import errors
from sqlmodel import Session

from store.book.clock import new_id
from store.book.desk import Desk, FileDesk, ServerDesk
from store.book.errors import DamagedBook
from store.book.folder.cells import id_of
from store.book.folder.take_in import take_in
from store.book.migrating import migrate
from store.book.opening import Book
from store.book.reading import read_facts, read_snapshot
from store.book.records import AnimalAs, FeedPlan, Person, PersonAs, Row, Setting
from store.book.snapshot import Animal, Snapshot
from store.book.turn import Turn, from_wall
from store.book.words import SettingName, Stage, Units
from store.round.confirm import skipped
from store.round.plan import plan
from store.round.steps import Step
from tests.farm import FOLDER, MORNING, HandClock, hand, morning, step_of
from tests.servers import Server
from tests.store.book.folders import lines_of
from tests.store.book.walking import confirmed

NOW = MORNING + timedelta(minutes=1)
ZONE = "Europe/Dublin"


def put(desk: Desk, record: type[Row], **values: Any) -> None:
    """Add a row; it begins now and was written now, unless said otherwise."""
    times = {"begins_at": MORNING, "written_at": MORNING} if "begins_at" in record.model_fields else {}
    with Session(desk.engine()) as session, session.begin():
        session.add(record.model_validate({"id": new_id(MORNING)} | times | values))


def seen(desk: Desk, at: datetime = NOW) -> Snapshot:
    """The pretend morning, read at a moment."""
    return read_snapshot(desk, Turn(date(2026, 3, 11), "morning"), at)


def animal(snapshot: Snapshot, name: str) -> Animal:
    """The animal of a name."""
    return next(each for each in snapshot.animals if each.name == name)


def test_what_begins_later_is_not_in_force_yet(desk: Desk) -> None:
    """Sloe becomes a suckler tomorrow: today she is a heifer."""
    sloe, tomorrow = animal(seen(desk), "Sloe"), NOW + timedelta(days=1)
    put(desk, AnimalAs, animal_id=sloe.id, name="Sloe", stage=Stage.SUCKLER, begins_at=tomorrow)
    assert animal(seen(desk), "Sloe").stage is Stage.HEIFER
    assert animal(seen(desk, tomorrow - timedelta(microseconds=1)), "Sloe").stage is Stage.HEIFER
    assert animal(seen(desk, tomorrow), "Sloe").stage is Stage.SUCKLER


def test_of_two_rows_that_begin_together_the_one_written_last_is_in_force(desk: Desk) -> None:
    """In whichever order they came into the book, as by a merge."""
    sloe = animal(seen(desk), "Sloe")
    for late, name in ((2, "Second"), (3, "Third"), (1, "First")):
        written_at = MORNING + timedelta(seconds=late)
        put(desk, AnimalAs, animal_id=sloe.id, name=name, stage=Stage.HEIFER, written_at=written_at)
    assert [each.name for each in seen(desk).animals if each.id == sloe.id] == ["Third"]


def test_a_later_beginning_wins_over_a_later_writing(desk: Desk) -> None:
    """A correction of last month, written today, changes nothing that began since."""
    sloe = animal(seen(desk), "Sloe")
    put(desk, AnimalAs, animal_id=sloe.id, name="Newer", stage=Stage.HEIFER)
    older = {"begins_at": MORNING - timedelta(days=30), "written_at": MORNING + timedelta(days=1)}
    put(desk, AnimalAs, animal_id=sloe.id, name="Older", stage=Stage.HEIFER, **older)
    assert animal(seen(desk), "Newer").id == sloe.id


def test_an_animal_that_left_and_a_feed_that_ended_are_in_no_plan(desk: Desk) -> None:
    """But both stay in the book."""
    before = seen(desk)
    sloe, fennel = animal(before, "Sloe"), animal(before, "Fennel")
    put(desk, AnimalAs, animal_id=sloe.id, name="Sloe", stage=Stage.HEIFER, kept=False)
    ended = before.portions[fennel.id][0].feed
    put(desk, FeedPlan, slot="morning", animal_id=fennel.id, feed_id=ended.id, due_kg=None)
    after = seen(desk)
    assert sloe.id not in {each.id for each in after.animals}
    assert [portion.feed for portion in after.portions[fennel.id]] == [before.portions[fennel.id][1].feed]
    assert "Sloe" not in {step.name for step in plan(after)}


def test_a_setting_holds_from_its_day_on(desk: Desk) -> None:
    """The units change at a moment; what was before stays as it was."""
    put(desk, Setting, name=SettingName.UNITS, value="us")
    assert read_facts(desk, MORNING).units is Units.US
    assert read_facts(desk, MORNING - timedelta(microseconds=1)).units is Units.METRIC


def milk(book: Book, step: Step, typed: str) -> None:
    """A pail of milk is confirmed."""
    book.append(confirmed(book, morning(book), step, typed))


def test_the_pails_before_are_the_ones_that_count_newest_first(desk_book: Book) -> None:
    """Of this slot, seven at most; a corrected pail counts once, as corrected; a skipped one not at all."""
    found = [float(line["milk_kg"]) for line in lines_of(FOLDER / "milked.csv") if "morning-stall-hazel" in line["id"]]
    hazel = animal(seen(desk_book.desk), "Hazel")
    assert list(seen(desk_book.desk).milkings[hazel.id].pails_before_kg) == found[::-1]
    for typed in ("9.4", "9.0"):
        milk(desk_book, step_of(morning(desk_book), "Hazel", "milk"), typed)
    tomorrow = read_snapshot(desk_book.desk, Turn(date(2026, 3, 12), "morning"), NOW + timedelta(days=1))
    assert tomorrow.milkings[hazel.id].pails_before_kg == pytest.approx([7.6, *found[:0:-1]])
    snapshot = morning(desk_book)
    desk_book.append(skipped(hand(desk_book, snapshot), step_of(snapshot, "Hazel", "milk"), "no time"))
    tomorrow = read_snapshot(desk_book.desk, Turn(date(2026, 3, 12), "morning"), NOW + timedelta(days=1))
    assert list(tomorrow.milkings[hazel.id].pails_before_kg) == found[::-1]


def test_what_was_given_before_is_what_was_given_last_in_this_slot(still_desk: Desk) -> None:
    """As the folder has it: the morning of the day before."""
    snapshot = seen(still_desk)
    for name in ("Fennel", "Hazel", "Sloe"):
        entry = next(line["id"] for line in lines_of(FOLDER / "entry.csv")
                     if line["day"] == "2026-03-10" and line["slot"] == "morning" and line["animal_id"] == name.lower()
                     and line["kind"] == "feed")  # fmt: skip
        fed = [line for line in lines_of(FOLDER / "fed.csv") if line["entry_id"] == entry]
        given = snapshot.given_before[animal(snapshot, name).id]
        assert given.day == date(2026, 3, 10)
        expected = {id_of(line["feed_id"], "feed", snapshot.farm.id): float(line["given_kg"]) for line in fed}
        assert given.given_kg == expected


def test_the_last_milking_is_the_one_before_now(still_desk: Desk) -> None:
    """The morning after the skipped evening: the morning before it."""
    snapshot = seen(still_desk)
    last = snapshot.milkings[animal(snapshot, "Hazel").id].last_milked_at
    assert last is not None
    assert last.date() == date(2026, 3, 10)
    assert last.hour < 8


def test_the_last_milking_before_a_past_round_is_not_one_that_came_after_it(still_desk: Desk) -> None:
    """A round of last week, read as it was then."""
    then = from_wall(datetime(2026, 3, 6, 6, 30), ZONE)  # noqa: DTZ001
    snapshot = read_snapshot(still_desk, Turn(date(2026, 3, 6), "morning"), then)
    last = snapshot.milkings[animal(snapshot, "Hazel").id].last_milked_at
    assert last is not None
    assert last < then
    assert last.date() == date(2026, 3, 5)


def test_a_book_without_a_farm_or_a_setting_says_so(empty_desk: FileDesk) -> None:
    """It has its form, but nobody imported a folder."""
    migrate(empty_desk)
    with pytest.raises(DamagedBook, match=r"should hold one farm; 0 found\.$"):
        read_facts(empty_desk, NOW)
    empty_desk.connection.execute("INSERT INTO farm (id) VALUES (zeroblob(16))")
    with pytest.raises(DamagedBook, match=r"lacks the farm's setting name\.$"):
        read_facts(empty_desk, NOW)


def test_names_stand_in_one_order_whatever_language_the_server_speaks(server: Server, file_desk: FileDesk) -> None:
    """The order of people decides who walks, that of animals the way round: both are as in a file."""
    try:
        name = server.database(words="LOCALE_PROVIDER icu ICU_LOCALE 'en-US'")
    except (errors.SyntaxError, errors.FeatureNotSupported) as error:
        pytest.skip(f"This PostgreSQL knows no collation of a language by itself: {error}")
    with closing(ServerDesk(server.url(name))) as served:
        migrate(served)
        take_in(FOLDER, served)
        for name_of_one in ("bramble", "Élodie", "von Aspen", "zoë"):
            person, named = new_id(MORNING), new_id(MORNING)
            for each in (file_desk, served):
                put(each, Person, id=person)
                put(each, PersonAs, id=named, person_id=person, name=name_of_one)
        clock = HandClock(NOW)
        filed_names = [person.name for person in morning(Book(file_desk, clock)).people]
        assert [person.name for person in morning(Book(served, clock)).people] == filed_names
