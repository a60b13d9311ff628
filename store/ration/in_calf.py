"""How long she is in calf: since the service after her last calving, or by the day on which she is due."""

from collections.abc import Iterator
from datetime import date, timedelta

from store.book.facts.farm import Animal
from store.book.words import Stage
from store.husbandry.dates.gestation import gestation_of
from store.husbandry.why import Value, given
from store.ration.asked import Asked, days_between
from store.ration.parts import Missing

LONGEST_DAYS = 310
"""No cow of any breed is in calf for longer: then a calving was not written. Common practice. [d]"""


def days_in_calf(asked: Asked, animal: Animal) -> Value | None:
    """None: she is not, or for longer than any cow is."""
    days = _carried(asked, animal)
    return days if days and days.amount <= LONGEST_DAYS else None


def of_calving(asked: Asked, animal: Animal) -> Iterator[Missing]:
    """That she would have been in calf for longer than any cow: her calving, or a later service, was not written."""
    days = _carried(asked, animal)
    if days and days.amount > LONGEST_DAYS:
        name, said = animal.name, f"{days.amount:g} days in calf, {days.came}, is longer than any cow is"
        yield Missing("days in calf", f"{name}: {said}. F, animals, {name}, has calved, or served, in calf, due.")


def _carried(asked: Asked, animal: Animal) -> Value | None:
    """Since the service after her last calving; where only her due day is known, by how long her breed carries."""
    breeding = asked.register.get("breeding", animal.id) or {}
    due: date | None = breeding.get("due_on")
    if due is None:
        return None
    carries = gestation_of(breeding["breed"])
    long = timedelta(carries.days(first_calf=animal.stage is Stage.HEIFER))
    served: date | None = breeding.get("served_on")
    since, came = (served, f"served {asked.said(served)}") if served else (due - long, f"due {asked.said(due)}")
    if since > asked.today or (animal.calved_on and since <= animal.calved_on):
        return None
    source = None if served else carries.source
    return given(days_between(since, asked.today), "days in calf", "days", came, source)
