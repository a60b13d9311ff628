"""Export: the whole book as a farm folder. Reading it back gives the same book, row for row."""

import csv
from pathlib import Path
from uuid import UUID

from sqlmodel import Session, col, select

from store.book.desk import Desk
from store.book.engines import refusal_said
from store.book.errors import FolderError
from store.book.folder.cells import text_of
from store.book.folder.header import Header, first_id, write_header
from store.book.folder.plain import write_plain
from store.book.records import RECORDS, Farm, Row, Setting
from store.book.words import FIRST_SETTINGS


def put_out(desk: Desk, folder: Path) -> int:
    """Write every row of the book into a new or empty folder; how many. Raises FolderError if it is not empty."""
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise FolderError(f"{folder} is not empty. Name a new folder: nothing is written over.")
    folder.mkdir(parents=True, exist_ok=True)
    with refusal_said("The book cannot be written out"), Session(desk.engine()) as session:
        header = _header(session)
        firsts = {row.id for row in header.rows()}
        written = [_write_file(session, folder, record, firsts) for record in RECORDS if record is not Farm]
        write_plain(desk, session, folder)
        write_header(folder, header)  # last: what was cut short is no farm folder, and no import takes it for one
    return sum(written)


def _header(session: Session) -> Header:
    farm = session.exec(select(Farm)).one()
    settings = session.exec(select(Setting)).all()
    by_id = {setting.id: setting for setting in settings}
    return Header(farm.id, {name: by_id[first_id(farm.id, name)].value for name in FIRST_SETTINGS})


def _write_file(session: Session, folder: Path, record: type[Row], leave_out: set[UUID]) -> int:
    rows = [row for row in session.exec(select(record).order_by(col(record.id))) if row.id not in leave_out]
    names = list(record.model_fields)
    with (folder / f"{record.__tablename__}.csv").open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file)  # as RFC 4180 has it
        writer.writerow(names)
        writer.writerows([text_of(getattr(row, name)) for name in names] for row in rows)
    return len(rows)
