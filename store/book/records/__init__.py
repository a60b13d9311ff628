"""The record classes, parents before children: the order in which rows are added, copied and merged."""

from store.book.records.base import Dated, Row
from store.book.records.care import Look, LookAs, Treatment, TreatmentAs
from store.book.records.entries import Entry
from store.book.records.farm import Farm, Person, PersonAs, Setting
from store.book.records.feeding import (
    Feed,
    FeedAs,
    FeedPlan,
    Measure,
    MeasureAs,
    MilkPlan,
    NotFor,
    Pail,
    PailAs,
    SoakRule,
    Task,
    TaskAs,
    Weighing,
)
from store.book.records.lines import (
    Counted,
    Dosed,
    Fed,
    Felt,
    Line,
    Looked,
    Milked,
    Noted,
    Parted,
    QuarterFound,
    Soaked,
    Strung,
)
from store.book.records.yard import Animal, AnimalAs, Pen, PenAs, Sharing, Standing, Withheld

RECORDS: tuple[type[Row], ...] = (
    Farm, Setting, Person, PersonAs, Pen, PenAs, Animal, AnimalAs, Standing, Sharing, Withheld,
    Feed, FeedAs, NotFor, SoakRule, Measure, MeasureAs, Weighing, Pail, PailAs, FeedPlan, MilkPlan, Task, TaskAs,
    Look, LookAs, Treatment, TreatmentAs,
    Entry, Fed, Strung, Milked, Counted, Soaked, Parted, Felt, QuarterFound, Looked, Dosed, Noted,
)  # fmt: skip

__all__ = ["RECORDS", "Dated", "Entry", "Farm", "Line", "Row", "Setting"]
