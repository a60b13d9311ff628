"""What is still to come of an own plan: where each of its meals ends, and when the last step is."""

from datetime import date

from msgspec import Struct

from store.book.register import Register
from store.book.turn import local
from store.ration.following import meals_of
from store.ration.parts import Amounts, Case
from store.round.change import stepping


class Coming(Struct, frozen=True):
    """The meals that have steps to come, with what each ends at, a head, and the day of the last step. [kg]"""

    ends: Amounts
    on: date


def coming(register: Register, case: Case) -> Coming | None:
    """Of the feeds that are in use; None: nothing is planned for later."""
    known = {each.feed.id for each in case.feeds}
    meals = {(meal.slot, meal.feed_id): stepping(meal.rows)[-1] for meal in meals_of(register, case.subject)}
    later = {meal: row for meal, row in meals.items() if row.begins_at > register.at and meal[1] in known}
    if not later:
        return None
    last = max(row.begins_at for row in later.values())
    return Coming({meal: row.due_kg or 0.0 for meal, row in later.items()}, local(last, register.farm.zone).date())
