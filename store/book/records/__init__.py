"""The record classes, parents before children: the order in which rows are added, copied and merged."""

from store.book.records.base import Dated, Row
from store.book.records.care import Look, LookAs, Treatment, TreatmentAs
from store.book.records.entries import Entry
from store.book.records.farm import Farm, Person, PersonAs, Setting
from store.book.records.feeding import (
    Composition,
    Feed,
    FeedAs,
    FeedPlan,
    FreeFeed,
    Measure,
    MeasureAs,
    MilkPlan,
    NotFor,
    Pail,
    PailAs,
    SoakRule,
    Task,
    TaskAs,
    TaskDue,
    Volume,
    Weighing,
)
from store.book.records.lines import (
    Counted,
    Delivered,
    Dosed,
    Fed,
    Felt,
    Forecast,
    Line,
    Looked,
    Lost,
    Milked,
    Noted,
    Parted,
    QuarterFound,
    Soaked,
    Stocked,
    Strung,
)
from store.book.records.yard import Animal, AnimalAs, Body, Breeding, Pen, PenAs, Sharing, Standing, Withheld

RECORDS: tuple[type[Row], ...] = (
    Farm, Setting, Person, PersonAs, Pen, PenAs, Animal, AnimalAs, Breeding, Body, Standing, Sharing,
    Withheld, Feed, FeedAs, Composition, NotFor, FreeFeed, SoakRule, Measure, MeasureAs, Volume, Weighing, Pail, PailAs,
    FeedPlan, MilkPlan, Task, TaskAs, TaskDue,
    Look, LookAs, Treatment, TreatmentAs,
    Entry, Fed, Strung, Milked, Counted, Soaked, Parted, Felt, QuarterFound, Looked, Dosed, Noted,
    Delivered, Stocked, Lost, Forecast,
)  # fmt: skip

__all__ = ["RECORDS", "Dated", "Entry", "Farm", "Line", "Row", "Setting"]
