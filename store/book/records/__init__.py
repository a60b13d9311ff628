"""The record classes, parents before children: the order in which rows are added, copied and merged."""

from store.book.records.base import Dated, Row
from store.book.records.entries import Entry, Fed, Line, Milked
from store.book.records.farm import Farm, Person, PersonAs, Setting
from store.book.records.feeding import (
    Feed,
    FeedAs,
    FeedPlan,
    Measure,
    MeasureAs,
    MilkPlan,
    Pail,
    PailAs,
    Task,
    TaskAs,
    Weighing,
)
from store.book.records.yard import Animal, AnimalAs, Pen, PenAs, Sharing, Standing

RECORDS: tuple[type[Row], ...] = (
    Farm, Setting, Person, PersonAs, Pen, PenAs, Animal, AnimalAs, Standing, Sharing,
    Feed, FeedAs, Measure, MeasureAs, Weighing, Pail, PailAs, FeedPlan, MilkPlan, Task, TaskAs,
    Entry, Fed, Milked,
)  # fmt: skip

__all__ = [
    "RECORDS", "Animal", "AnimalAs", "Dated", "Entry", "Farm", "Fed", "Feed", "FeedAs", "FeedPlan", "Line",
    "Measure", "MeasureAs", "MilkPlan", "Milked", "Pail", "PailAs", "Pen", "PenAs", "Person", "PersonAs", "Row",
    "Setting", "Sharing", "Standing", "Task", "TaskAs", "Weighing",
]  # fmt: skip
