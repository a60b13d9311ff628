"""A new book: the farm with its first settings, and the first person who does rounds. Heavy: needed once in a life."""

from collections.abc import Mapping
from pathlib import Path

from sqlmodel import Session

from store.book.clock import Clock, new_id
from store.book.errors import BookError
from store.book.folder.header import Header
from store.book.folder.settings import misfit
from store.book.making import made_new
from store.book.records import Row
from store.book.records.farm import Person, PersonAs
from store.book.words import SettingName


def begin_book(place: Path, settings: Mapping[SettingName, str], person: str, clock: Clock) -> None:
    """Make the book of a new farm; whole or not at all. settings: those that every farm has from its first day.

    Raises BookError where a file stands there already, a setting cannot be used, or the disk refuses.
    """
    for name, value in settings.items():
        if expected := misfit(name, value):
            raise BookError(f"«{value}» for {name}; expected {expected}.")
    rows = [*Header(new_id(clock.now()), dict(settings)).rows(), *_somebody(person, clock)]
    with made_new(place) as desk, Session(desk.engine()) as session, session.begin():
        for row in rows:
            session.add(row)
            session.flush()


def _somebody(name: str, clock: Clock) -> list[Row]:
    now = clock.now()
    person = Person(id=new_id(now))
    dated = {"id": new_id(now), "begins_at": now, "written_at": now}
    return [person, PersonAs.model_validate({**dated, "person_id": person.id, "name": name})]
