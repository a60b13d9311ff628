"""A scoop is weighed: three level ones together, against what it was before and against what it can hold."""

import pytest

from store.book.drafts import RowDraft
from store.book.opening import Book
from store.book.register import Register
from store.book.words import SettingName
from store.herd.measure import MeasureSheet
from store.herd.sheet import Wrong
from tests.farm import HandClock
from tests.store.herd.filled import filled, id_of, register, write


def scoop_of_nuts(found: Register) -> MeasureSheet:
    """The scoop that the small farm tells its nuts in."""
    return MeasureSheet(found, id_of(found, "measure_as", "scoop"), id_of(found, "feed_as", "dairy nuts"))


def test_three_level_scoops_together_make_one(book: Book, clock: HandClock) -> None:
    """12.15 lb are 4.05 lb each, 35.0 % more than 3.00 lb."""
    book.change([RowDraft("setting", {"name": SettingName.UNITS, "value": "us"})])
    write(book, scoop_of_nuts(register(book)), together_kg="9!")
    clock.move(minutes=1)
    sheet = scoop_of_nuts(register(book))
    answers = filled(sheet, together_kg="12.15", holds_l="2").answers()
    assert sheet.told(answers) == "one scoop of dairy nuts weighs 4.05 lb, before 3.00 lb (+35.0%)"
    book.change(sheet.rows(answers))
    found = register(book)
    row = found.get("weighing", id_of(found, "measure_as", "scoop"), id_of(found, "feed_as", "dairy nuts"))
    assert row
    assert row["holds_kg"] == pytest.approx(4.05 * 0.45359237)


def test_one_scoop_serves_several_feeds(book: Book, clock: HandClock) -> None:
    """The same name is the same scoop, weighed with each."""
    write(book, MeasureSheet(register(book)), feed_id="grass hay", name="Scoop", together_kg="0.3")
    clock.move(minutes=1)
    assert len(register(book).rows["measure_as"]) == 2


@pytest.mark.parametrize("which", ["by its id", "by its name"])
def test_a_measure_weighed_anew_keeps_its_plural(book: Book, clock: HandClock, which: str) -> None:
    """Only another name has another one."""
    scoop = id_of(register(book), "measure_as", "scoop")
    book.change([RowDraft("measure_as", {"measure_id": scoop, "name": "scoop", "plural": "scoopfuls"})])
    clock.move(minutes=1)
    found = register(book)
    sheet = scoop_of_nuts(found) if which == "by its id" else MeasureSheet(found)
    assert [row.table for row in sheet.rows(filled(sheet, feed_id="dairy nuts", together_kg="3").answers())] == [
        "weighing"
    ]
    sheet = scoop_of_nuts(found)
    rows = sheet.rows(filled(sheet, name="jug", together_kg="3").answers())
    assert [row.values["plural"] for row in rows if row.table == "measure_as"] == ["jugs"]


def test_more_than_its_litres_can_weigh_is_said(book: Book) -> None:
    sheet = scoop_of_nuts(register(book))
    with pytest.raises(Wrong, match=r"One would weigh 2\.00 kg, but 1\.1 L of no feed weigh more than 1\.7 kg"):
        sheet.rows(filled(sheet, together_kg="6").answers())


def test_the_first_bag_of_a_new_scoop_names_it_and_its_plural(book: Book, clock: HandClock) -> None:
    write(book, MeasureSheet(register(book)), feed_id="dairy nuts", name="box", count="1", together_kg="2.5")
    clock.move(minutes=1)
    found = register(book)
    assert (found.get("measure_as", id_of(found, "measure_as", "box")) or {})["plural"] == "boxes"


@pytest.mark.parametrize(
    ("typed", "words"),
    [("2100", r"One would weigh 700\.00 kg; no measure holds more than 500 kg"),
     ("900", r"One would weigh 300\.00 kg, before 0\.68 kg\. If it is right")],
)  # fmt: skip
def test_grams_typed_for_kilograms_are_said(book: Book, typed: str, words: str) -> None:
    sheet = scoop_of_nuts(register(book))
    with pytest.raises(Wrong, match=words):
        sheet.rows(filled(sheet, together_kg=typed, holds_l="").answers())


BARLEY_LIKE = {"origin": "table", "resembles": "Barley, rolled", "dm_percent": 91.0}


def test_a_measure_weighed_first_is_held_against_what_its_litres_likely_weigh(book: Book, clock: HandClock) -> None:
    """A jug of 2 L of rolled barley: 0.80 to 0.96 kg. Grams counted for one of three are asked about."""
    nuts = id_of(register(book), "feed_as", "dairy nuts")
    book.change([RowDraft("composition", {"feed_id": nuts, **BARLEY_LIKE})])
    clock.move(minutes=1)
    sheet = MeasureSheet(register(book))
    answers = filled(sheet, feed_id="dairy nuts", name="jug", together_kg="2.7", holds_l="2").answers()
    assert sheet.told(answers) == "one jug of dairy nuts weighs 0.90 kg; by its litres 0.80 kg to 0.96 kg is likely"
    assert sheet.rows(answers)
    with pytest.raises(Wrong, match=r"One would weigh 0\.30 kg; by its litres of such a feed 0\.80 kg to 0\.96 kg is"):
        sheet.rows(filled(sheet, feed_id="dairy nuts", name="jug", together_kg="0.9", holds_l="2").answers())
    assert sheet.rows(filled(sheet, feed_id="dairy nuts", name="jug", together_kg="0.9!", holds_l="2").answers())
