"""What an animal weighs, as far as anybody knows: on the scale, or by the tape around her heart."""

from datetime import datetime
from uuid import UUID

from msgspec import Struct
from msgspec.structs import replace

from store.book.facts.farm import Animal
from store.book.reading.measured import Measured
from store.book.register import Register
from store.book.words import Stage
from store.herd.weighed import doubt
from store.herd.weights import weights_of
from store.husbandry.body.girth import weight_by_girth_kg
from store.husbandry.why import Value, given
from store.ration.asked import Asked, days_between
from store.round.measured import IF_RIGHT

LONG_AGO_DAYS, CALF_LONG_AGO_DAYS = 60, 21
"""A weight older than this is told as old: a calf has grown, and a cow gone up and down by then. Assumed. [d]"""


class Weighed(Struct, frozen=True):
    """What was found at a moment; girth_cm counts where nothing was weighed. [kg, cm]"""

    at: datetime
    weight_kg: float | None
    girth_cm: float | None


def weighings(register: Register, animal_id: UUID, looks: tuple[Measured, ...]) -> tuple[Weighed, ...]:
    """Every weight and girth of an animal, oldest first: on her sheet, and from looks.

    A weight that can hardly have been hers is left out once another one stands behind it.
    """
    scaled = weights_of(register, animal_id).scaled
    likely = {each.at for each in (*scaled.likely, scaled.doubted) if each}
    sheet = (
        Weighed(row["begins_at"], row["weight_kg"], row["girth_cm"])
        for row in register.course("body", animal_id)
        if row["begins_at"] <= register.at and (not row["weight_kg"] or row["begins_at"] in likely)
    )
    taped = (Weighed(each.at, None, each.girth_cm) for each in looks if each.girth_cm)
    return tuple(sorted((*sheet, *taped), key=lambda each: each.at))


def weight_of(asked: Asked, found: tuple[Weighed, ...]) -> Value | None:
    """The newest. None: nobody weighed her, or it was said that it is not known any more."""
    return value_of(found[-1], asked.said(asked.day(found[-1].at))) if found else None


def is_old(asked: Asked, animal: Animal, found: tuple[Weighed, ...]) -> bool:
    """Whether the newest is of too long ago."""
    most = CALF_LONG_AGO_DAYS if animal.stage is Stage.CALF else LONG_AGO_DAYS
    return bool(found) and days_between(asked.day(found[-1].at), asked.today) > most


def slipped(register: Register, animal_id: UUID, found: tuple[Weighed, ...]) -> str:
    """What is likely wrong with a weight that can hardly be hers; empty: it can, or something newer was found."""
    weights = weights_of(register, animal_id)
    doubted = weights.scaled.doubted
    expected = weights.expected(doubted.at) if doubted else None
    if not doubted or not expected or doubted.at != found[-1].at:
        return ""
    return doubt(doubted.kg, expected, register.farm.units).removesuffix(f" {IF_RIGHT}")


def value_of(found: Weighed, said: str) -> Value | None:
    """A weight with where it is from. said: the day, in words."""
    if found.weight_kg:
        return given(found.weight_kg, "weight", "kg", f"weighed {said}")
    if found.girth_cm:
        tape = given(found.girth_cm, "heart girth", "cm", f"measured {said}")
        return replace(weight_by_girth_kg.of("weight", girth_cm=tape), came=f"by heart girth of {said}")
    return None
