"""The record classes, parents before children: the order in which rows are added, copied and merged."""

from store.book.records.base import Dated, Row
from store.book.records.care import Look, LookAs, Treatment, TreatmentAs, Withdrawal
from store.book.records.entries import Entry
from store.book.records.farm import Farm, Person, PersonAs, Setting
from store.book.records.feeding import (
    ClassRule,
    Composition,
    Feed,
    FeedAs,
    FeedLimit,
    FeedPlan,
    FreeFeed,
    Measure,
    MeasureAs,
    MilkPlan,
    MilkRhythm,
    NotFor,
    Pail,
    PailAs,
    SoakRule,
    Substitute,
    Task,
    TaskAs,
    TaskDue,
    Volume,
    Weighing,
)
from store.book.records.lines import (
    Born,
    Cooled,
    Counted,
    Delivered,
    Dosed,
    Drawn,
    Fed,
    Felt,
    Forecast,
    Line,
    Looked,
    Lost,
    Milked,
    Noted,
    Parted,
    Poured,
    QuarterFound,
    Soaked,
    Stocked,
    Strung,
    UsedUp,
    Watched,
)
from store.book.records.yard import (
    Animal,
    AnimalAs,
    ApartRule,
    Body,
    Breeding,
    FeedingGoal,
    Heat,
    MilkTest,
    Pen,
    PenAs,
    SecondCow,
    Sharing,
    Standing,
    Withheld,
)

RECORDS: tuple[type[Row], ...] = (
    Farm, Setting, Person, PersonAs, Pen, PenAs, Animal, AnimalAs, Breeding, Body, FeedingGoal, MilkTest, Heat,
    Standing, Sharing, ApartRule, SecondCow, Withheld, Feed, FeedAs, Composition, FeedLimit, ClassRule, NotFor,
    FreeFeed, SoakRule, Substitute,
    Measure, MeasureAs, Volume, Weighing, Pail, PailAs, FeedPlan, MilkPlan, MilkRhythm, Task, TaskAs, TaskDue,
    Look, LookAs, Treatment, TreatmentAs, Withdrawal,
    Entry, Fed, Strung, Milked, Drawn, Poured, Cooled, Counted, Soaked, Parted, Felt, QuarterFound, Looked, Dosed,
    Noted, Delivered, Stocked, Lost, Forecast, Born, Watched, UsedUp,
)  # fmt: skip

__all__ = ["RECORDS", "Dated", "Entry", "Farm", "Line", "Row", "Setting"]
