"""What is set up, in words for the lists."""

from collections.abc import Iterator, Mapping
from typing import Any, TypeAlias
from uuid import UUID

from store.book.drafts import Subject
from store.book.register import Register
from store.book.turn import local
from store.book.words import FEEDING
from store.herd.animal import kept
from store.herd.feed import feeds_in_use
from store.round.dialect import said
from store.round.saying import exact
from tui.words import day

Row: TypeAlias = Mapping[str, Any]


def pens_in_use(register: Register) -> list[Row]:
    """The rows of the pens in use, in walking order."""
    return sorted((row for row in register.all("pen_as") if row["in_use"]), key=lambda row: row["position"])


def heads_words(register: Register, pen_id: UUID) -> str:
    """Who stands in a pen, in words."""
    names = [row["name"] for row in kept(register) if stands_in(register, row) == pen_id]
    return f": {', '.join(names)}" if names else ", empty"


def stands_in(register: Register, row: Row) -> UUID | None:
    """The pen an animal stands in."""
    standing = register.get("standing", row["animal_id"])
    return standing["pen_id"] if standing else None


def animal_words(register: Register, row: Row) -> str:
    """One animal in a line."""
    pen = register.name("pen_as", stands_in(register, row)) or "in no pen"
    return ", ".join(filter(None, (row["name"], said(row["stage"].value, register.farm.dialect), pen, row["tag"])))


def weighed(register: Register) -> list[tuple[str, str, Row]]:
    """Every weighing of a feed in use: measure, feed, row."""
    in_use = {row["feed_id"] for row in feeds_in_use(register)}
    rows = (row for row in register.all("weighing") if row["feed_id"] in in_use)
    named = (
        (register.name("measure_as", row["measure_id"]), register.name("feed_as", row["feed_id"]), row) for row in rows
    )
    return sorted(named, key=lambda each: each[:2])


def fed(register: Register) -> Iterator[tuple[Subject, str]]:
    """Whoever can get something: pens, then animals."""
    for row in pens_in_use(register):
        yield Subject(pen_id=row["pen_id"]), row["name"]
    for row in kept(register):
        yield Subject(animal_id=row["animal_id"]), row["name"]


def plans(register: Register, subject: Subject) -> list[Row]:
    """What a pen or an animal is to get now."""
    rows = register.all("feed_plan")
    own = [row for row in rows if (row["animal_id"], row["pen_id"]) == (subject.animal_id, subject.pen_id)]
    return sorted((row for row in own if row["due_kg"] is not None), key=lambda row: row["position"])


def gets(register: Register, subject: Subject) -> str:
    """The feeds of a pen or an animal, in words."""
    feeds = dict.fromkeys(register.name("feed_as", row["feed_id"]) for row in plans(register, subject))
    return ", ".join(feeds) or "nothing yet"


def job_words(register: Register, row: Row) -> str:
    """`morning: Foot bath, Stall, every 3 days`."""
    due = register.get("task_due", row["task_id"]) or {}
    days = due.get("every_days", 1)
    how = "once" if due.get("once") else f"every {days} days" if days > 1 else ""
    place = register.name("pen_as", row["pen_id"]) or "bench"
    return ", ".join(filter(None, (f"{row['slot']}: {row['name']}", place, how)))


def amounts(register: Register, subject: Subject, feed_id: UUID) -> str:
    """How much of one feed, round by round; and what is planned for later."""
    rows = [row for row in plans(register, subject) if row["feed_id"] == feed_id]
    now = [f"{row['slot']} {exact(row['due_kg'], register.farm.units)}" for row in rows]
    return ", ".join([*now, *planned(register, subject, feed_id)])


def planned(register: Register, subject: Subject, feed_id: UUID) -> Iterator[str]:
    """The end of what is planned for each round."""
    for slot in FEEDING:
        course = register.course("feed_plan", subject.animal_id, subject.pen_id, slot, feed_id)
        if course and course[-1]["begins_at"] > register.at:
            kg, begins = course[-1]["due_kg"], local(course[-1]["begins_at"], register.farm.zone).date()
            yield f"{slot} from {day(begins)} {'none' if kg is None else exact(kg, register.farm.units)}"
