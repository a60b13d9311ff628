"""A change of the farm is taken back: rows that make it as it was, from now on; nothing is deleted.

What is taken back of something new is its end: an animal that is not kept, a pen that is not in use. What has no end,
as the weighing of a scoop, stays: it is weighed again.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from store.book.drafts import RowDraft
from store.book.register import SAME, Register
from store.book.words import EVERY_NIGHT
from store.herd.dating import at, kept
from store.herd.task import EVERY_DAY
from store.herd.treatment import WITHDRAWAL

ENDS: Mapping[str, Mapping[str, Any]] = {
    "person_as": {"here": False},
    "pen_as": {"in_use": False},
    "animal_as": {"kept": False},
    "standing": {"pen_id": None},
    "sharing": {"shares": False},
    "apart_rule": {"from_day": 0, "nights": EVERY_NIGHT},
    "second_cow": {"cow_id": None},
    "feed_as": {"in_use": False},
    "not_for": {"barred": False},
    "free_feed": {"offered": False},
    "feed_plan": {"due_kg": None},
    "milk_plan": {"milked": False},
    "milk_rhythm": {"every": 1},
    "substitute": {"by_id": None},
    "task_due": EVERY_DAY,
    "task_as": {"in_use": False},
    "look_as": {"in_use": False},
    "treatment_as": {"in_use": False},
    "withdrawal": dict.fromkeys((*WITHDRAWAL, "said_by")),
    "body": {"weight_kg": None, "girth_cm": None},
    "breeding": {"breed": "", "dam_id": None, "served_on": None, "due_on": None},
    "feeding_goal": {
        "condition": None, "gain_kg_day": None, "mature_kg": None, "forage_only": False, "score_every_days": None,
    },
    "milk_test": {"fat_percent": None, "protein_percent": None},
    "heat": {"seen": False},
    "feed_limit": dict.fromkeys(("forage", "most_meal_kg", "most_day_kg", "share_percent", "step_kg", "step_days")),
    "class_rule": dict.fromkeys(("fixed_kg", "per_kg_milk", "above_kg", "weight_percent"), 0.0),
}  # fmt: skip
"""By table: what ends a thing that was not there before. A calf without a rule is shut away every night."""
SEEN_ONCE = ("heat",)
"""What happened at the moment at which the row begins: one before it is another one."""
OF_A_DAY = (*SEEN_ONCE, "milk_test", "body")
"""What was found on a day hides nothing that was found later."""


def as_before(register: Register, rows: Sequence[RowDraft]) -> Iterator[RowDraft]:
    """The rows that make what some rows change as it was. register: the book before they are written."""
    for row in rows:
        begins = row.values.get("begins_at")
        if row.table not in SAME:
            continue
        course = register.course(row.table, *_thing(row))
        before = {} if row.table in SEEN_ONCE else kept(at(course, begins or register.at))
        if not before and row.table in ENDS:
            before = {**kept(row.values), **ENDS[row.table]}
        if before:
            yield RowDraft(row.table, before | ({"begins_at": begins} if begins else {}))


def still_in_force(register: Register, rows: Sequence[RowDraft]) -> Iterator[RowDraft]:
    """The rows, and from now on again each that a row begun since would hide. register: the book in which they count.

    A thing that is new from an earlier moment on, as a calf from the midnight of its birth, may have been changed and
    made as it was meanwhile: that row begins later than the end of the thing.
    """
    yield from rows
    begun = (row for row in rows if row.table not in OF_A_DAY)
    begun = (row for row in begun if row.values.get("begins_at", register.at) <= register.at)
    last = {(row.table, *_thing(row)): row for row in begun}
    for row in last.values():
        in_force = at(register.course(row.table, *_thing(row)), register.at)
        if in_force and row.values.get("begins_at", register.at) < in_force["begins_at"]:
            yield RowDraft(row.table, {name: value for name, value in row.values.items() if name != "begins_at"})


def _thing(row: RowDraft) -> tuple[Any, ...]:
    return tuple(row.values[name] for name in SAME[row.table])
