"""Rules between the cells of one row, said in words before the database would refuse it."""

from collections.abc import Iterator, Mapping
from typing import Any

from store.book.folder.settings import misfit
from store.book.records import Entry, Row, Setting
from store.book.records.care import TreatmentAs
from store.book.records.feeding import FeedPlan, MilkPlan, TaskDue
from store.book.records.lines import Milked
from store.book.words import FEEDING, MAY_BE_OF_ALL, SLOTS, SettingName

ROUND_H = 8
"""Two rounds of a day are hardly closer than this. Common practice. [h]"""
TOGETHER: dict[type[Row], tuple[tuple[str, str], ...]] = {
    Entry: (("day", "slot"),), Milked: (("milk_kg", "fate"),), TaskDue: (("season_first", "season_last"),),
}  # fmt: skip
"""Cells of which a row has both or neither."""
SUBJECTS = ("animal_id", "pen_id", "task_id", "feed_id")


def broken_rules(record: type[Row], values: Mapping[str, Any]) -> Iterator[str]:
    """What is wrong between the cells of a row: what was found, and what was expected."""
    slot = values.get("slot")
    if slot is not None and slot not in SLOTS:
        yield f"slot «{slot}»; expected one of: {', '.join(SLOTS)}"
    if record in (FeedPlan, MilkPlan) and slot in SLOTS and slot not in FEEDING:
        yield f"slot «{slot}» in a plan; expected one of: {', '.join(FEEDING)}: the others feed and milk nobody"
    if record is Setting and (expected := misfit(values.get("name", SettingName.NAME), values.get("value", ""))):
        yield f"«{values.get('value', '')}» for {values.get('name')}; expected {expected}"
    if record is Entry:
        yield from _entry(values)
    if record is FeedPlan and (values.get("animal_id") is None) == (values.get("pen_id") is None):
        yield "both or neither of animal_id and pen_id; expected one of the two"
    if record is TreatmentAs and values.get("every_h", ROUND_H) < ROUND_H:
        yield f"every_h {values['every_h']:g}; expected {ROUND_H} or more: a round asks for one dose of a treatment"
    yield from _halves(record, values)


def _halves(record: type[Row], values: Mapping[str, Any]) -> Iterator[str]:
    for one, other in TOGETHER.get(record, ()):
        if (values.get(one) is None) != (values.get(other) is None):
            yield f"{one} without {other}, or {other} without {one}; expected both or neither"


def _entry(values: Mapping[str, Any]) -> Iterator[str]:
    count = sum(values.get(name) is not None for name in SUBJECTS)
    free = values.get("kind") in MAY_BE_OF_ALL
    if count > 1 or (count == 0 and not free):
        yield f"{count} of {', '.join(SUBJECTS)}; expected exactly one"
