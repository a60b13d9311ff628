"""What holds for every sheet: left as it stands it writes nothing, and whatever is typed is written or said."""

from collections.abc import Callable, Iterator, Sequence
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from store.book.clock import new_id
from store.book.drafts import RowDraft, Subject
from store.book.opening import Book
from store.book.register import Register
from store.book.words import SettingName, Stage
from store.herd.animal import AnimalSheet, DetailSheet
from store.herd.birth import BirthSheet
from store.herd.body import BodySheet
from store.herd.breeding import BreedingSheet
from store.herd.bulling import BullingSheet
from store.herd.class_rule import ClassRuleSheet
from store.herd.composition import CompositionSheet
from store.herd.drying_off import DryingOffSheet
from store.herd.feed import FeedSheet
from store.herd.feed_limit import FeedLimitSheet
from store.herd.filling import Filling
from store.herd.free import FreeSheet
from store.herd.goal import GoalSheet
from store.herd.leaving import LeavingSheet
from store.herd.look import LookSheet
from store.herd.measure import MeasureSheet
from store.herd.milk_test import MilkTestSheet
from store.herd.milking import MilkingSheet
from store.herd.moving import MovingSheet
from store.herd.pail import PailSheet
from store.herd.pen import PenSheet
from store.herd.person import PersonSheet
from store.herd.plan import PlanSheet
from store.herd.settings import SettingsSheet
from store.herd.sheet import Wrong, YardSheet
from store.herd.soaking import SoakingSheet
from store.herd.substitute import SubstituteSheet
from store.herd.task import TaskSheet
from store.herd.treatment import TreatmentSheet
from store.herd.withheld import WithheldSheet
from tests.farm import MORNING
from tests.store.herd.filled import id_of, register

Made = Callable[[Register], YardSheet]


def of(kind: Callable[..., YardSheet], table: str, name: str, *more: Any) -> Made:
    """A sheet about what is called so."""
    return lambda found: kind(found, id_of(found, table, name), *more)


def numbered(kind: Callable[..., YardSheet], table: str, at: int) -> Made:
    """A sheet about the how-manieth thing of a table."""
    return lambda found: kind(found, list(found.rows[table])[at % len(found.rows[table])][0])


def there() -> Iterator[Made]:
    """Sheets about things that the small farm has."""
    for name in ("Fennel", "Hazel", "Rook", "Sloe", "Tansy"):
        for kind in (AnimalSheet, DetailSheet, MilkingSheet, GoalSheet, BreedingSheet, MilkTestSheet):
            yield of(kind, "animal_as", name)
    for name, feed in PLANNED:
        yield planned(name, feed)
    yield of(BodySheet, "animal_as", "Sloe")
    yield lambda found: LookSheet(found, id_of(found, "animal_as", "Sloe"), id_of(found, "look_as", "left hind foot"))
    yield lambda found: TreatmentSheet(
        found, id_of(found, "animal_as", "Sloe"), next(iter(found.rows["treatment_as"]))[0]
    )
    yield of(CompositionSheet, "feed_as", "grass hay")
    yield of(FreeSheet, "feed_as", "grass hay")
    yield of(FeedLimitSheet, "feed_as", "dairy nuts")
    yield lambda found: ClassRuleSheet(found, Stage.IN_MILK, id_of(found, "feed_as", "dairy nuts"))
    yield of(SoakingSheet, "feed_as", "lucerne pellets")
    yield of(SubstituteSheet, "feed_as", "lucerne pellets")
    yield SettingsSheet
    for at in range(2):
        yield from (numbered(each, table, at) for each, table in NUMBERED)


NUMBERED: tuple[tuple[Callable[..., YardSheet], str], ...] = (
    (PenSheet, "pen_as"), (FeedSheet, "feed_as"), (PailSheet, "pail_as"), (PersonSheet, "person_as"),
    (TaskSheet, "task_as"),
)  # fmt: skip
PLANNED = (("Fennel", "dairy nuts"), ("Fennel", "lucerne pellets"), ("Hazel", "dairy nuts"))


def new() -> Iterator[Made]:
    """Sheets about something that is not there yet, and those that ask the same every time."""
    yield from (PenSheet, AnimalSheet, FeedSheet, ClassRuleSheet, MeasureSheet, PailSheet, PersonSheet, TaskSheet)
    for kind in (LeavingSheet, MovingSheet, DryingOffSheet, BirthSheet, TreatmentSheet, WithheldSheet, BullingSheet):
        yield of(kind, "animal_as", "Fennel")
    yield of(LookSheet, "animal_as", "Tansy")
    yield lambda found: PlanSheet(found, Subject(pen_id=id_of(found, "pen_as", "Orchard")), "Orchard")


def planned(name: str, feed: str) -> Made:
    """What an animal gets of a feed."""

    def made(found: Register) -> YardSheet:
        return PlanSheet(found, Subject(animal_id=id_of(found, "animal_as", name)), name, id_of(found, "feed_as", feed))

    return made


@pytest.fixture(params=["metric", "us"])
def any_units(book: Book, request: pytest.FixtureRequest) -> Book:
    """The small farm, which counts in kilograms or in pounds."""
    book.change([RowDraft("setting", {"name": SettingName.UNITS, "value": request.param})])
    return book


def test_a_sheet_left_as_it_stands_writes_nothing(any_units: Book) -> None:
    """Also where what it shows is rounded: what nobody changed is not changed."""
    found = register(any_units)
    for make in there():
        sheet = make(found)
        assert list(sheet.rows(Filling(sheet).answers())) == [], sheet.title


TYPED = st.one_of(
    st.text(max_size=30),
    st.sampled_from((
        "", " ", "0", "1", "2 1/2", "7,4", "16 lb", "999999", "-3", "1/0", "5 Mar 2026", "31.2.2026", "yesterday",
        "3 scoops", "1.4 kg", "4 weeks ago", "sheep, horse", "1 May", "29 Feb", "Fennel", "12:30", "\N{NO-BREAK SPACE}",
    )),
)  # fmt: skip


@settings(deadline=None, max_examples=120, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_whatever_is_typed_is_written_or_said(book: Book, data: st.DataObject) -> None:
    """It is read, or a sentence says where to mend it, and the book takes what is written."""
    sheet = data.draw(st.sampled_from([*there(), *new()]))(register(book))
    filling = Filling(sheet)
    for question in filling.questions:
        texts = (
            st.sampled_from([word for word, _ in question.choices]) if question.picks and question.choices else TYPED
        )
        if data.draw(st.booleans()):
            filling.texts[question.name] = data.draw(texts)
    wrong: Wrong | None = None
    rows: Sequence[RowDraft] = ()
    try:
        rows = sheet.rows(filling.answers())
    except Wrong as problem:
        wrong = problem
    if wrong:
        assert wrong.question in filling.texts
        assert str(wrong).endswith((".", "?"))
    else:
        assert sheet.told(filling.answers())
        book.trial(rows, lambda _: None)


def test_a_pen_of_the_same_name_is_told_apart(book: Book) -> None:
    """Two benches may have set up the same pen: she stays where she stands."""
    found = register(book)
    stall = id_of(found, "pen_as", "Stall")
    twin = new_id(MORNING)
    book.change([RowDraft("pen", {"id": twin}), RowDraft("pen_as", {"pen_id": twin, "name": "Stall", "position": 1})])
    sheet = AnimalSheet(register(book), id_of(found, "animal_as", "Hazel"))
    assert list(sheet.rows(Filling(sheet).answers())) == []
    assert sheet.standing == stall
