"""What benches wrote of one step apart from each other, and differently: shown side by side, nothing is decided here.

An entry that no other one replaces is where a bench stood last. Two such entries of one step were written apart; the
newest of them by (written_at, id) counts, as everywhere.
"""

from collections.abc import Iterator
from datetime import date, datetime
from uuid import UUID

from msgspec import Struct
from sqlmodel import Session, col, select

from store.book.desk import Desk
from store.book.listing import NOT_DONE, Names, entry_words, names_of, subject_words
from store.book.records import RECORDS, Entry, Line
from store.book.words import Kind, State

FORKED = """
SELECT e.step_id FROM entry e
WHERE NOT EXISTS (SELECT 1 FROM entry r WHERE r.step_id = e.step_id AND r.replaces_id = e.id)
GROUP BY e.step_id HAVING count(*) > 1 ORDER BY e.step_id
"""
LINES = tuple(record for record in RECORDS if issubclass(record, Line))


class Version(Struct, frozen=True):
    """What one bench wrote of a step last. words: what became of it, and its figures."""

    id: UUID
    bench: str
    person: str
    written_at: datetime
    words: str
    counts: bool


class Contradiction(Struct, frozen=True):
    """One step that benches wrote differently; the versions from the oldest to the newest. name: whose step."""

    kind: Kind
    name: str
    day: date | None
    slot: str | None
    versions: tuple[Version, ...]


def contradictions(desk: Desk) -> tuple[Contradiction, ...]:
    """Every step of the book that was written apart and differently, the oldest first."""
    steps = [UUID(bytes=bytes(row[0])) for row in desk.rows(FORKED, {})]
    names = names_of(desk) if steps else {}
    with Session(desk.engine()) as session:
        found = [each for step_id in steps for each in _of_step(session, step_id, names)]
    return tuple(sorted(found, key=lambda each: (each.versions[0].written_at, each.versions[0].id)))


def _of_step(session: Session, step_id: UUID, names: Names) -> Iterator[Contradiction]:
    order = (col(Entry.written_at), col(Entry.id))
    history = session.exec(select(Entry).where(col(Entry.step_id) == step_id).order_by(*order)).all()
    replaced = {entry.replaces_id for entry in history}
    last = [(entry, _words(session, entry, names)) for entry in history if entry.id not in replaced]
    said = [(entry, words) for entry, words in last if not _says_nothing(entry, words)]
    if len({words for _, words in said}) > 1:
        first = history[0]
        versions = tuple(_version(entry, words, names, history[-1]) for entry, words in said)
        yield Contradiction(first.kind, subject_words(first, names), first.day, first.slot, versions)


def _words(session: Session, entry: Entry, names: Names) -> str:
    if entry.state is not State.DONE and entry.kind is not Kind.COUNT:
        return entry_words(entry, iter(()), names)
    return entry_words(entry, _lines(session, entry), names, NOT_DONE)


def _lines(session: Session, entry: Entry) -> Iterator[Line]:
    for record in LINES:
        where = col(record.entry_id) == entry.id
        yield from session.exec(select(record).where(where).order_by(col(record.position), col(record.id)))


def _says_nothing(entry: Entry, words: str) -> bool:
    """Whether a bench only ended its round without having done the step."""
    return entry.replaces_id is None and words in (State.OPEN, State.ON_PAPER)


def _version(entry: Entry, words: str, names: Names, newest: Entry) -> Version:
    person = names.get(entry.person_id, str(entry.person_id))
    return Version(entry.id, entry.bench, person, entry.written_at, words, entry.id == newest.id)
