"""What the record classes refuse, the database refuses too: a row that came by another road is no worse."""

import math
from collections.abc import Iterator
from enum import StrEnum
from types import NoneType, UnionType
from typing import Any, get_args

import pytest
from pydantic import AwareDatetime

from store.book.clock import new_id
from store.book.desk import Desk
from store.book.records import RECORDS
from store.book.words import MAY_BE_OF_ALL, Kind
from tests.farm import MORNING
from tests.store.book.tools import raw_row, record_of, refused, table_of

Bound = tuple[str, str, Any, Any]
"""Table, column, the outermost value that is let in, the next one beyond it that is not."""


def rules(annotation: Any, metadata: list[Any]) -> dict[str, Any]:
    """The bounds of a field, wherever they stand: beside its type or inside of an optional one."""
    inner = [each for kind in get_args(annotation) for each in getattr(kind, "__metadata__", ())]
    names = ("ge", "le", "min_length", "max_length")
    return {name: getattr(each, name) for each in [*metadata, *inner] for name in names
            if getattr(each, name, None) is not None}  # fmt: skip


def bounds() -> Iterator[Bound]:
    """Every bound of every record class, as its class declares it."""
    for record in RECORDS:
        for name, field in record.model_fields.items():
            for rule, limit in rules(field.annotation, field.metadata).items():
                yield table_of(record), name, *_edge(rule, limit, whole=int in kinds(field.annotation))


def _edge(rule: str, limit: Any, *, whole: bool) -> tuple[Any, Any]:
    if rule == "ge":
        return limit, limit - 1 if whole else math.nextafter(limit, -math.inf)
    if rule == "le":
        return limit, limit + 1 if whole else math.nextafter(float(limit), math.inf)
    return "x" * limit, "x" * (limit - 1 if rule == "min_length" else limit + 1)


def _told(bound: Bound) -> str:
    table, name, _, beyond = bound
    return f"{table}.{name} {len(beyond)} letters" if isinstance(beyond, str) else f"{table}.{name} {beyond}"


def kinds(annotation: Any) -> tuple[Any, ...]:
    """The types a field may have."""
    return get_args(annotation) if isinstance(annotation, UnionType) else (annotation,)


BOUNDS = sorted(bounds(), key=str)
TABLES = [table_of(record) for record in RECORDS]
SUBJECTS = ("animal", "pen", "task", "feed")


def test_every_bound_of_the_record_classes_is_found() -> None:
    """So many the classes have at least: amounts, positions, names."""
    found = {(table, name) for table, name, _, _ in BOUNDS}
    assert {("fed", "given_kg"), ("milked", "gross_kg"), ("weighing", "holds_kg"), ("pen_as", "position"),
            ("task_as", "name"), ("setting", "value"), ("entry", "slot"), ("animal_as", "tag"),
            ("counted", "heads_seen"), ("soaked", "dry_kg"), ("strung", "strings"),
            ("looked", "girth_cm"), ("dosed", "number"), ("noted", "words")} <= found  # fmt: skip


@pytest.mark.parametrize(("table", "name", "fits", "beyond"), BOUNDS, ids=map(_told, BOUNDS))
def test_the_outermost_value_is_let_in_and_the_next_one_is_not(
    still_desk: Desk, table: str, name: str, fits: Any, beyond: Any
) -> None:
    """Both bounds of each column, as the record class has them, by raw SQL."""
    row = raw_row(still_desk, table, filled=name)
    assert not refused(still_desk, table, row | {name: fits})
    assert refused(still_desk, table, row | {name: beyond})


@pytest.mark.parametrize("beyond", [math.inf, -math.inf, math.nan])
@pytest.mark.parametrize(
    ("table", "name"),
    [("fed", "due_kg"), ("fed", "given_kg"), ("milked", "milk_kg"), ("milked", "gross_kg"), ("milked", "empty_kg"),
     ("feed_plan", "due_kg"), ("weighing", "holds_kg"), ("pail_as", "empty_kg"), ("fed", "left_kg"),
     ("soaked", "dry_kg"), ("soaked", "water_kg"), ("soak_rule", "most_h"), ("soak_rule", "water_per_kg"),
     ("sharing", "longest_h")],
)  # fmt: skip
def test_an_amount_is_a_finite_number(still_desk: Desk, table: str, name: str, beyond: float) -> None:
    """Neither infinity nor no number at all. (SQLite keeps NaN as no value, and that may be one.)"""
    row = raw_row(still_desk, table, filled=name) | {name: beyond}
    kept_as_none = still_desk.engine().dialect.name == "sqlite" and math.isnan(beyond)
    optional = NoneType in kinds(record_of(table).model_fields[name].annotation)
    fate = {"fate": None} if name == "milk_kg" and kept_as_none else {}
    assert refused(still_desk, table, row | fate) is not (kept_as_none and optional)


@pytest.mark.parametrize("text", ["much", "", b"\x01"])
def test_an_amount_is_no_text(still_desk: Desk, text: str | bytes) -> None:
    """SQLite would keep text in any column; the CHECK refuses it."""
    assert refused(still_desk, "fed", raw_row(still_desk, "fed") | {"given_kg": text})


@pytest.mark.parametrize("table", TABLES)
def test_a_column_of_words_holds_those_words_and_no_other(still_desk: Desk, table: str) -> None:
    """Each word of the enum is let in, any other one is not."""
    for name, field in record_of(table).model_fields.items():
        for kind in kinds(field.annotation):
            if isinstance(kind, type) and issubclass(kind, StrEnum):
                row = raw_row(still_desk, table, filled=name)
                taken = [word for word in kind if not refused(still_desk, table, row | {name: word.value})]
                assert taken == list(kind)
                wrong = ("", "other thing", kind(next(iter(kind))).upper())
                assert [word for word in wrong if not refused(still_desk, table, row | {name: word})] == []


@pytest.mark.parametrize("table", TABLES)
def test_a_column_may_be_empty_only_where_the_record_says_so(still_desk: Desk, table: str) -> None:
    """NOT NULL, column by column."""
    for name, field in record_of(table).model_fields.items():
        if NoneType not in kinds(field.annotation):
            assert refused(still_desk, table, raw_row(still_desk, table) | {name: None}), name


@pytest.mark.parametrize("table", TABLES)
def test_a_reference_leads_to_a_row_that_is_there(still_desk: Desk, table: str) -> None:
    """Foreign keys are in force, column by column."""
    for column in record_of(table).metadata.tables[table].columns:
        if column.foreign_keys:
            subject = {f"{each}_id": None for each in SUBJECTS if table == "entry"}
            subject |= {each: None for each in ("animal_id", "pen_id") if table == "feed_plan"}
            row = raw_row(still_desk, table) | (subject if column.name in subject else {})
            assert refused(still_desk, table, row | {column.name: new_id(MORNING).bytes}), column.name


@pytest.mark.parametrize(("table", "subjects"), [("entry", SUBJECTS), ("feed_plan", ("animal", "pen"))])
def test_a_row_has_exactly_one_subject(still_desk: Desk, table: str, subjects: tuple[str, ...]) -> None:
    """None is refused, two are refused, each one alone is let in."""
    ids = {f"{each}_id": still_desk.rows(f"SELECT id FROM {each}", {})[0][0] for each in subjects}
    columns = tuple(ids)
    row = raw_row(still_desk, table) | dict.fromkeys(columns) | ({"kind": "task"} if table == "entry" else {})
    assert refused(still_desk, table, row)
    assert refused(still_desk, table, row | {name: ids[name] for name in columns[:2]})
    assert refused(still_desk, table, row | {name: ids[name] for name in columns})
    assert [name for name in columns if refused(still_desk, table, row | {name: ids[name]})] == []


@pytest.mark.parametrize("kind", Kind)
def test_only_a_note_or_the_round_itself_may_be_about_nothing_by_name(still_desk: Desk, kind: Kind) -> None:
    """A note on the whole yard, the end of a round, the weather; and no other kind."""
    about_nothing = dict.fromkeys((f"{each}_id" for each in SUBJECTS), None) | {"kind": kind.value}
    free = not refused(still_desk, "entry", raw_row(still_desk, "entry") | about_nothing)
    assert free is (kind in MAY_BE_OF_ALL)


def test_a_day_goes_with_a_slot_and_milk_goes_with_a_fate(still_desk: Desk) -> None:
    """One without the other is half a fact."""
    entry, milked = raw_row(still_desk, "entry", "day"), raw_row(still_desk, "milked", "milk_kg")
    assert refused(still_desk, "entry", entry | {"day": None})
    assert refused(still_desk, "entry", entry | {"slot": None})
    assert not refused(still_desk, "entry", entry | {"day": None, "slot": None})
    assert refused(still_desk, "milked", milked | {"milk_kg": None})
    assert refused(still_desk, "milked", milked | {"fate": None})
    assert not refused(still_desk, "milked", milked | {"milk_kg": None, "fate": None})


def test_every_moment_of_a_record_has_a_zone() -> None:
    """There is no field that would take a wall time."""
    moments = {name for record in RECORDS for name in record.model_fields if name.endswith(("_at", "_from", "_until"))}
    assert moments == {"begins_at", "written_at", "happened_at", "happened_from", "ends_at", "first_at",
                       "due_at", "due_until"}  # fmt: skip
    for record in RECORDS:
        for name in moments & record.model_fields.keys():
            field = record.model_fields[name]
            assert AwareDatetime in kinds(field.annotation)
