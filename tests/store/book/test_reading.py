"""What a snapshot holds: what is in force at the moment; never what begins after it."""

from contextlib import closing
from datetime import timedelta

import pytest
from psycopg import errors

from store.book.clock import new_id
from store.book.desk import Desk, FileDesk, ServerDesk
from store.book.errors import DamagedBook
from store.book.folder.take_in import take_in
from store.book.migrating import migrate
from store.book.opening import Book
from store.book.reading import read_facts
from store.book.records import Setting
from store.book.records.farm import Person, PersonAs
from store.book.records.feeding import FeedPlan
from store.book.records.yard import AnimalAs
from store.book.words import SettingName, Stage, Units
from store.round.plan import plan
from tests.farm import FOLDER, MORNING, HandClock, morning
from tests.servers import Server
from tests.store.book.seeing import NOW, animal, put, seen


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
