"""What was born: the rows of one calf, lamb or kid."""

from collections.abc import Iterator
from datetime import date, datetime
from uuid import UUID

from msgspec import Struct

from store.book.drafts import RowDraft
from store.book.facts.calves import ApartRule
from store.book.register import Register
from store.book.turn import from_wall
from store.book.words import Species, Stage
from store.herd.animal import kept
from store.herd.answers import NAME_MOST
from store.herd.milking import LONGEST_H
from store.herd.nights import NO_NIGHT

ALIVE, DEAD, NONE = "alive", "dead", "lost, or none found"
YOUNG = {Species.CATTLE: "calf", Species.SHEEP: "lamb", Species.GOAT: "kid", Species.HORSE: "foal"}
"""What the young one of a kind of animal is called."""


class Newborn(Struct, frozen=True):
    """One that lives. from_day: shut away at night from that day of its life on; None: not said yet, in no night.

    shares: it sucks a cow that is milked, so that when it was with her tells since when her udder fills.
    """

    calf_id: UUID
    name: str
    tag: str
    born_on: date
    from_day: int | None
    shares: bool


def nameless(register: Register, mother: str, young: str, taken: set[str]) -> str:
    """`calf of Fennel`; with a number where there is one already."""
    names = {row["name"].lower() for row in kept(register)} | {each.lower() for each in taken}
    plain = f"{young} of {mother}"[: NAME_MOST - 4]
    numbered = (plain, *(f"{plain} {number}" for number in range(2, len(names) + 3)))
    return next(name for name in numbered if name.lower() not in names)


def newborn_rows(each: Newborn, mother_id: UUID, register: Register) -> Iterator[RowDraft]:
    """The animal, where it stands, its mother, and whose milk it shares."""
    same = {"animal_id": each.calf_id}
    mother = register.get("animal_as", mother_id) or {}
    stage = Stage.CALF if mother["species"] is Species.CATTLE else Stage.OTHER
    values = {"name": each.name, "tag": each.tag, "stage": stage, "born_on": each.born_on}
    day = datetime(each.born_on.year, each.born_on.month, each.born_on.day)  # noqa: DTZ001 wall time
    begins = {"begins_at": from_wall(day, register.farm.zone)}
    pen_id = (register.get("standing", mother_id) or {}).get("pen_id")
    breed = (register.get("breeding", mother_id) or {}).get("breed", "")
    yield RowDraft("animal", {"id": each.calf_id})
    yield RowDraft("animal_as", {**same, **values, **begins, "species": mother["species"]})
    yield RowDraft("standing", {**same, "pen_id": pen_id})
    yield RowDraft("breeding", {**same, **begins, "breed": breed, "dam_id": mother_id})
    if each.shares:
        rule = ApartRule(nights=NO_NIGHT) if each.from_day is None else ApartRule(from_day=each.from_day)
        calf = {"calf_id": each.calf_id}
        yield RowDraft("sharing", {**calf, "cow_id": mother_id, "longest_h": LONGEST_H})
        yield RowDraft(
            "apart_rule", {**calf, "apart_h": rule.apart_h, "from_day": rule.from_day, "nights": rule.nights}
        )
