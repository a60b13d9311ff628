"""Every weight of an animal on its sheet, and which of them can hardly have been its own."""

from datetime import datetime
from functools import partial
from uuid import UUID

from msgspec import Struct

from store.book.register import Register
from store.book.turn import local
from store.book.words import Stage
from store.herd.weighed import Expected, Kind, Scaled, Weight, by_kind, expected, scaled
from store.husbandry.breeds import ANY, breed_of


class Weights(Struct, frozen=True):
    """Of one animal, until a moment."""

    stage: Stage
    kind: Kind
    scaled: Scaled

    def expected(self, at: datetime) -> Expected | None:
        """About what it should weigh then, by its last likely weight, else by its kind."""
        return expected(self.scaled.likely[-1] if self.scaled.likely else None, at, self.stage, self.kind)


def weights_of(register: Register, animal_id: UUID | None) -> Weights:
    """As the book stands at the moment of the register."""
    row = register.get("animal_as", animal_id) or {}
    rows = (
        each for each in register.course("body", animal_id) if each["weight_kg"] and each["begins_at"] <= register.at
    )
    found = sorted((Weight(each["begins_at"], each["weight_kg"]) for each in rows), key=lambda each: each.at)
    kind = partial(_kind, register, animal_id)
    stage = Stage(row.get("stage", Stage.OTHER))
    return Weights(stage, kind, scaled(found, stage, kind))


def _kind(register: Register, animal_id: UUID | None, at: datetime) -> Expected | None:
    row = register.get("animal_as", animal_id)
    goal = register.get("feeding_goal", animal_id) or {}
    breed = breed_of((register.get("breeding", animal_id) or {}).get("breed", "")) or ANY
    day = local(at, register.farm.zone).date()
    return by_kind(row, goal.get("mature_kg") or breed.mature_kg, day) if row else None
