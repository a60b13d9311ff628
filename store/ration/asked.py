"""What a case is made from: the book at a moment, and the words for days and settings that every part of it uses."""

from collections.abc import Iterable
from datetime import date, datetime
from typing import Any
from uuid import UUID

from msgspec import Struct

from store.book.desk import Desk
from store.book.facts.farm import Animal
from store.book.register import Register, Values
from store.book.snapshot import Snapshot
from store.book.turn import local
from store.book.words import SettingName
from store.husbandry.why import Source, Sure, Value, given

ASSUMED = Source("a cautious starting value", Sure.ASSUMED)


class Asked(Struct, frozen=True):
    """The book at a moment. snapshot: of the round of this moment, for pails and calves."""

    desk: Desk
    register: Register
    snapshot: Snapshot
    now: datetime

    @property
    def today(self) -> date:
        """The farm's own day."""
        return local(self.now, self.register.farm.zone).date()

    def day(self, at: datetime) -> date:
        """The farm's own day of a moment."""
        return local(at, self.register.farm.zone).date()

    def said(self, day: date) -> str:
        """`20 Feb`; of another year `20 Feb 2025`."""
        return f"{day.day} {day:%b}{'' if day.year == self.today.year else f' {day.year}'}"

    def animal(self, animal_id: UUID) -> Animal | None:
        """An animal that is kept."""
        return next((each for each in self.snapshot.animals if each.id == animal_id), None)

    def newest(self, table: str, column: str, *key: Any) -> Values | None:
        """The newest row in force so far of which a column is not empty."""
        begun = (row for row in reversed(self.register.course(table, *key)) if row["begins_at"] <= self.now)
        return next((row for row in begun if row[column] is not None), None)

    def setting(self, name: SettingName, start: Value) -> Value:
        """A setting that is a number; until it is set, its starting value."""
        row = self.register.get("setting", name)
        return given(float(row["value"]), start.name, start.unit, "your setting") if row else start


def days_between(first: date, last: date) -> int:
    """How many days lie between."""
    return (last - first).days


def listed(names: Iterable[str]) -> str:
    """`Fennel, Briar and Hazel`."""
    found = list(names)
    return f"{', '.join(found[:-1])} and {found[-1]}" if len(found) > 1 else "".join(found)
