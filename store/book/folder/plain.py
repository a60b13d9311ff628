"""rounds.txt: every entry of the book in words, for whoever opens the folder with a text editor in ten years.

It is written beside the tables and never read back.
"""

from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from uuid import UUID

from sqlmodel import Session, col, select

from store.book.desk import Desk
from store.book.listing import Names, entry_words, names_of, subject_words
from store.book.records import RECORDS, Entry, Line, Setting
from store.book.turn import local
from store.book.words import SettingName

FILE = "rounds.txt"
HEAD = """Every entry of the book in words, for people. Penwalk reads the tables beside it, never this file.
A line for each entry: day, round, time, who at which bench, whose step and what it was, what became of it.
Times are those of the farm's clock ({zone}). Weights are in kg, of the feed as it lies; of a soaked feed, dry.
A line that ends with (replaced) was corrected or undone by a later one.
"""
TAIL = """
The ids of the tables, and the newest name of each.
"""
LINES = tuple(record for record in RECORDS if issubclass(record, Line))


def write_plain(desk: Desk, session: Session, folder: Path) -> None:
    """Write rounds.txt. The same book gives the same bytes."""
    zone = _zone(session)
    names = names_of(desk)
    with (folder / FILE).open("w", encoding="utf-8", newline="") as file:
        file.write(HEAD.format(zone=zone) + "\n")
        file.writelines(f"{line}\n" for line in _entries(session, names, zone))
        file.write(TAIL + "\n")
        file.writelines(f"{id_}  {name}\n" for id_, name in sorted(names.items()))


def _zone(session: Session) -> str:
    order = (col(Setting.begins_at), col(Setting.written_at), col(Setting.id))
    zones = select(Setting.value).where(col(Setting.name) == SettingName.ZONE).order_by(*order)
    return session.exec(zones).all()[-1]


def _entries(session: Session, names: Names, zone: str) -> Iterator[str]:
    lines = _lines(session)
    order = (col(Entry.happened_at), col(Entry.written_at), col(Entry.id))
    entries = session.exec(select(Entry).order_by(*order)).all()
    newest: dict[UUID, Entry] = {}
    for entry in sorted(entries, key=lambda each: (each.written_at, each.id)):
        newest[entry.step_id] = entry
    for entry in entries:
        line = _line(entry, lines[entry.id], names, zone)
        yield line if newest[entry.step_id] is entry else f"{line} (replaced)"


def _line(entry: Entry, lines: list[Line], names: Names, zone: str) -> str:
    at = local(entry.happened_at, zone)
    since = f"{local(entry.happened_from, zone):%H:%M}-" if entry.happened_from else ""
    turn = f"{entry.day or at.date()} {entry.slot or 'outside of a round'}"
    who = f"{names.get(entry.person_id, entry.person_id)} at {entry.bench}"
    what = " ".join(filter(None, (subject_words(entry, names), f"({entry.kind.value})")))
    return f"{turn}  {since}{at:%H:%M}  {who}  {what}  {entry_words(entry, iter(lines), names)}"


def _lines(session: Session) -> defaultdict[UUID, list[Line]]:
    found: defaultdict[UUID, list[Line]] = defaultdict(list)
    for record in LINES:
        for line in session.exec(select(record).order_by(col(record.position), col(record.id))):
            found[line.entry_id].append(line)
    return found
