"""Moments, days and ids mean the same on both kinds of desk."""

from datetime import UTC, date, datetime, timedelta, timezone
from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy.exc import StatementError
from sqlmodel import Session, col, select

from store.book.clock import MICROSECOND, micros, moment, new_id
from store.book.columns import Moment
from store.book.desk import Desk
from store.book.records import Entry
from store.book.records.farm import PersonAs
from store.book.records.yard import Animal, AnimalAs, Standing
from store.book.words import Kind, State
from tests.farm import MORNING

AT = datetime(2026, 3, 4, 6, 32, 22, 123456, tzinfo=UTC)
ZONES = [UTC, timezone(timedelta(hours=5, minutes=30)), timezone(timedelta(hours=-9, minutes=-30))]


@pytest.fixture
def session(still_desk: Desk) -> Session:
    """A session whose rows are taken back."""
    return Session(still_desk.engine())


def entry_at(session: Session, at: datetime) -> Entry:
    """A row that happened at a moment, in the database but not for long."""
    like = session.exec(select(Entry).where(col(Entry.day).is_not(None))).first()
    assert like is not None
    made = Entry.model_validate(like.model_dump() | {"id": new_id(MORNING), "happened_at": at, "written_at": at})
    session.add(made)
    session.flush()
    session.expire_all()
    return made


@pytest.mark.parametrize("zone", ZONES)
@pytest.mark.parametrize("asked_in", ZONES)
def test_equal_moments_are_found_by_equal_and_by_not_later(
    session: Session, zone: timezone, asked_in: timezone
) -> None:
    """Whatever offset they were written with, and whatever offset they are asked for with."""
    with session:
        made = entry_at(session, AT.astimezone(zone))
        asked = AT.astimezone(asked_in)
        for found in (
            col(Entry.happened_at) == asked,
            col(Entry.happened_at) <= asked,
            col(Entry.happened_at) >= asked,
        ):
            assert session.exec(select(Entry.id).where(found, Entry.id == made.id)).all() == [made.id]
        for missed in (col(Entry.happened_at) < asked, col(Entry.happened_at) <= asked - MICROSECOND):
            assert session.exec(select(Entry.id).where(missed, Entry.id == made.id)).all() == []
        assert made.happened_at == AT
        assert made.happened_at.tzinfo is UTC


def test_a_moment_without_a_zone_is_never_kept(session: Session) -> None:
    """Neither in a record nor in a question."""
    with pytest.raises(ValueError, match="has no zone"):
        Moment().process_bind_param(AT.replace(tzinfo=None), session.get_bind().dialect)
    with session, pytest.raises(StatementError, match="has no zone"):
        session.exec(select(Entry).where(Entry.happened_at == AT.replace(tzinfo=None))).all()
    with session, pytest.raises(ValueError, match="timezone"):
        entry_at(session, AT.replace(tzinfo=None))


def test_an_id_comes_back_as_the_same_id(session: Session) -> None:
    """Sixteen bytes, found by itself, first and last ones too."""
    with session:
        for made in (UUID(int=0), UUID(int=2**128 - 1), UUID("01020304-0506-7708-890a-0b0c0d0e0f10")):
            session.add(Animal(id=made))
            session.flush()
            session.expire_all()
            assert session.exec(select(Animal.id).where(Animal.id == made)).all() == [made]
            found = session.get(Animal, made)
            assert found is not None
            assert found.id == made


def test_ids_are_in_the_order_of_their_bytes(session: Session) -> None:
    """On both kinds of desk: it decides between two entries written in one microsecond."""
    made = [UUID(int=number << 64 | 1) for number in (0, 1, 0x7F << 48, 0x80 << 48, 0xFF << 48)]
    with session:
        session.add_all(Animal(id=id_) for id_ in reversed(made))
        session.flush()
        found = session.exec(select(Animal.id).where(col(Animal.id).in_(made)).order_by(col(Animal.id))).all()
        assert found == made


def test_a_day_comes_back_as_the_same_day(session: Session) -> None:
    """Found by itself, and in order."""
    with session:
        rows = session.exec(select(AnimalAs).where(AnimalAs.born_on == date(2026, 1, 9))).all()
        assert [row.name for row in rows] == ["Rook"]
        assert rows[0].born_on == date(2026, 1, 9)
        earlier = session.exec(select(AnimalAs.name).where(col(AnimalAs.born_on) < date(2020, 4, 2))).all()
        assert earlier == ["Tansy"]


def test_no_value_stays_no_value(session: Session) -> None:
    """Not an empty id, not the year 1970."""
    with session:
        row = session.exec(select(Entry).where(Entry.kind == Kind.TASK, Entry.state == State.DONE)).first()
        assert row is not None
        assert (row.animal_id, row.pen_id, row.happened_from) == (None, None, None)


def test_yes_and_no_come_back_as_such(session: Session) -> None:
    """Not as 1 and 0."""
    with session:
        found = session.exec(select(PersonAs)).all()
        assert {person.here for person in found} == {True}
        assert all(person.here is True for person in found)


def test_a_standing_is_found_by_its_moment_from_the_farms_wall_clock(session: Session) -> None:
    """2026-01-09 on the farm is midnight there, and in winter that is midnight UTC."""
    with session:
        asked = datetime(2026, 1, 9, 1, tzinfo=timezone(timedelta(hours=1)))
        assert len(session.exec(select(Standing).where(Standing.begins_at == asked)).all()) == 1


@given(st.datetimes(min_value=datetime(1, 1, 2), max_value=datetime(9999, 12, 30), timezones=st.sampled_from(ZONES)))  # noqa: DTZ001
def test_a_moment_is_whole_microseconds_and_loses_none(at: datetime) -> None:
    """Before 1970 too."""
    assert moment(micros(at)) == at
    assert moment(micros(at)).utcoffset() == timedelta(0)
    assert micros(at + MICROSECOND) == micros(at) + 1


@given(st.lists(st.integers(0, micros(datetime(2200, 1, 1, tzinfo=UTC))).map(moment), min_size=2, max_size=9))
def test_ids_of_different_milliseconds_sort_by_when_they_were_made(moments: list[datetime]) -> None:
    """A UUID of version 7 begins with its millisecond (RFC 9562, section 5.7)."""
    by_millisecond = {micros(at) // 1000: at for at in moments}
    made = [new_id(by_millisecond[each]) for each in sorted(by_millisecond)]
    assert made == sorted(made)
    assert {id_.version for id_ in made} == {7}
    assert [id_.int >> 80 for id_ in made] == sorted(by_millisecond)


def test_two_ids_of_one_moment_differ() -> None:
    """Two benches with one clock."""
    assert len({new_id(MORNING) for _ in range(1000)}) == 1000
