"""A treatment is set up, mended and ended by its sheet; what it withholds follows, and what is missing is listed."""

from datetime import UTC, date, datetime, timedelta

import pytest
from msgspec.structs import replace

from store.book.facts.span import span
from store.book.opening import Book
from store.book.reading import read_facts, read_snapshot
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import FEEDING, Fate, SaidBy
from store.herd.filling import Filling
from store.herd.leaving import LeavingSheet
from store.herd.named_moment import a_moment, moment_text
from store.herd.sheet import Wrong
from store.herd.taking_back import as_before
from store.herd.treatment import TreatmentSheet
from store.herd.withheld import WithheldSheet
from store.round.amount import Unreadable
from store.round.care import dosed
from store.round.gaps import gaps
from store.round.measured import fates_of, milked
from store.round.meat import meat_until
from store.round.steps import DoseStep
from store.round.unsafe import unsafe_pails
from store.round.withholding import withheld_of
from tests.farm import HandClock, hand, morning
from tests.store.book.seeing import ZONE
from tests.store.herd.filled import animal, filled, register, write
from tests.store.round.made import animal_named
from tests.store.round.named import milk_of, step_of

WHOLE = {
    "product": "udder tube", "amount": "one tube", "batch": "L 20", "route": "left hind", "why": "clots",
    "doses": "3", "every_h": "12", "first_at": "6:20", "milk_h": "96", "milkings": "6", "meat_days": "10",
}  # fmt: skip


def treated(book: Book, **typed: str) -> Snapshot:
    """Hazel with a treatment."""
    return write(book, TreatmentSheet(register(book), animal(book, "Hazel")), **(WHOLE | typed))


def mend(book: Book, **typed: str) -> Snapshot:
    """Her treatment, mended."""
    found = register(book)
    id_ = next(row["treatment_id"] for row in found.all("treatment_as") if row["animal_id"] == animal(book, "Hazel"))
    return write(book, TreatmentSheet(found, animal(book, "Hazel"), id_), **typed)


def give(book: Book, at: datetime) -> Snapshot:
    """The dose that is due is given at a moment."""
    found = morning(book)
    book.append(dosed(replace(hand(book, found), now=at, time_set=True), step_of(found, DoseStep, "Hazel")))
    return morning(book)


def of_hazel(snapshot: Snapshot) -> str:
    """Why her milk is withheld."""
    (found,) = withheld_of(snapshot, animal_named(snapshot, "Hazel").id)
    return found.why


AT = datetime(2026, 3, 11, 6, 20, tzinfo=UTC)


def test_a_treatment_as_it_was_typed(book: Book) -> None:
    found = next(each for each in treated(book).treatments if each.product == "udder tube")
    assert (found.doses, found.every_h, found.first_at, found.batch) == (3, 12.0, AT, "L 20")
    assert found.withdrawal
    assert (found.withdrawal.milk_h, found.withdrawal.milkings, found.withdrawal.meat_days) == (96.0, 6, 10.0)
    assert found.withdrawal.said_by is SaidBy.LABEL


def test_the_dose_it_orders_is_in_this_round_at_once(book: Book) -> None:
    """And the one of twenty past six this evening is not."""
    step = step_of(treated(book), DoseStep, "Hazel")
    assert (step.number, step.due_at) == (1, AT)


def test_with_all_fields_but_the_batch_it_is_saved_and_the_gap_is_listed(book: Book) -> None:
    assert [gap.missing for gap in gaps(treated(book, batch=""))] == [("batch",)]
    assert gaps(mend(book, batch="L 20")) == ()


def test_the_product_alone_is_saved_and_everything_else_is_asked_for(book: Book) -> None:
    write(book, TreatmentSheet(register(book), animal(book, "Hazel")), product="udder tube")
    found = give(book, AT)
    assert of_hazel(found).endswith("how long is not typed")
    (gap,) = gaps(found)
    missing = ("amount", "batch", "where or how", "for what", "how long milk is withheld", "how long meat is withheld")
    assert gap.missing == missing


def test_the_product_has_to_be_there(book: Book) -> None:
    with pytest.raises(Wrong, match="«product» needs an answer"):
        treated(book, product=" ")


def test_doses_without_the_hours_between_them_are_asked_for(book: Book) -> None:
    with pytest.raises(Wrong, match="3 doses need the hours between them"):
        treated(book, every_h="")


def test_a_wrong_figure_that_is_mended_is_reckoned_anew(book: Book, clock: HandClock) -> None:
    """96 h were typed for 9.6 h; then the label is read again: 48 h."""
    treated(book, doses="1")
    assert of_hazel(give(book, AT)).endswith("96 h, 0 of 6 milkings")
    clock.move(minutes=1)
    after = mend(book, milk_h="48", milkings="")
    (found,) = withheld_of(after, animal_named(after, "Hazel").id)
    assert found.until == AT + timedelta(hours=48)


def test_ended_early_no_dose_is_to_come_and_the_clock_runs_from_the_last(book: Book, clock: HandClock) -> None:
    treated(book)
    assert "2 doses to come" in of_hazel(give(book, AT))
    clock.move(minutes=1)
    assert "to come" not in of_hazel(mend(book, in_use="no"))


def test_a_treatment_taken_back_is_ended(book: Book, clock: HandClock) -> None:
    found = register(book)
    rows = TreatmentSheet(found, animal(book, "Hazel")).rows(
        filled(TreatmentSheet(found, animal(book, "Hazel")), **WHOLE).answers()
    )
    book.change(rows)
    clock.move(minutes=1)
    book.change(list(as_before(found, rows)))
    after = morning(book)
    assert [each.in_use for each in after.treatments if each.product == "udder tube"] == [False]
    assert withheld_of(after, animal_named(after, "Hazel").id) == ()


def test_a_dose_typed_late_tells_which_pail_must_not_be_drunk(book: Book, clock: HandClock) -> None:
    """House milk at 06:40; in the evening somebody types that a tube was given at 06:20."""
    clock.move(minutes=9)
    found = morning(book)
    book.append(milked(hand(book, found), milk_of(found, "Hazel"), "9.9", Fate.HOUSE))
    treated(book, doses="1")
    give(book, AT)
    clock.move(hours=12)
    evening = morning(book)
    (unsafe,) = unsafe_pails(evening)
    assert (evening.names[unsafe.cow_id], unsafe.pail.fate, unsafe.withheld.since) == ("Hazel", Fate.HOUSE, AT)
    clock.move(days=9)
    assert unsafe_pails(morning(book)) == ()


def test_a_past_round_knows_a_dose_that_was_typed_after_its_day(book: Book, clock: HandClock) -> None:
    """The evening of 11 March is typed in on the 12th, as is the dose of its morning."""
    clock.move(days=1)
    treated(book, doses="1", first_at="yesterday 6:20")
    morning_before, evening_before = (Turn(date(2026, 3, 11), slot) for slot in FEEDING)
    step = step_of(read_snapshot(book.desk, morning_before, AT + timedelta(hours=1)), DoseStep, "Hazel")
    book.append(dosed(replace(hand(book, morning(book)), turn=morning_before, now=AT, time_set=True), step))
    farm = read_facts(book.desk, AT)
    at = evening_before.facts_at(farm.zone, farm.evening_from_h)
    past = read_snapshot(book.desk, evening_before, at)
    assert of_hazel(past).startswith("udder tube, last dose Wed 11 Mar 06:20")


def test_no_pail_is_unsafe_where_nothing_was_given(book: Book) -> None:
    assert unsafe_pails(treated(book)) == ()


def test_milk_is_withheld_by_hand_until_further_notice_and_let_go_by_the_same_reason(
    book: Book, clock: HandClock
) -> None:
    held = write(book, WithheldSheet(register(book), animal(book, "Fennel")), why="waits for the vet")
    now = held.turn.begins(ZONE)
    assert fates_of(milk_of(held, "Fennel"), span(now)) == (Fate.THROWN_AWAY,)
    clock.move(minutes=2)
    write(book, WithheldSheet(register(book), animal(book, "Fennel")), why="test", ends="now")
    assert fates_of(milk_of(morning(book), "Fennel"), span(now)) == (Fate.THROWN_AWAY,)
    clock.move(minutes=2)
    write(book, WithheldSheet(register(book), animal(book, "Fennel")), why="waits for the vet", ends="now")
    clock.move(minutes=2)
    assert Fate.HOUSE in fates_of(milk_of(morning(book), "Fennel"), span(now))


def test_a_withholding_does_not_end_before_it_begins(book: Book) -> None:
    sheet = WithheldSheet(register(book), animal(book, "Fennel"))
    with pytest.raises(Wrong, match="before it begins"):
        sheet.rows(filled(sheet, why="the vet", ends="yesterday 6:20").answers())


@pytest.mark.parametrize(
    ("typed", "day", "clock"),
    [("18:20", 11, 18), ("yesterday 6:20", 10, 6), ("9 Mar 18:20", 9, 18), ("tomorrow 6:20", 12, 6)],
)
def test_a_moment_is_read_as_of_today_or_of_its_day(typed: str, day: int, clock: int) -> None:
    found = a_moment(AT, ZONE)(typed)
    assert found.at == datetime(2026, 3, day, clock, 20, tzinfo=UTC)
    assert a_moment(AT, ZONE)(moment_text(found.at, ZONE)) == found


@pytest.mark.parametrize("typed", ["soon", "9 Mar", "25:00", "9 Mar 6:77"])
def test_what_is_no_moment_is_said(typed: str) -> None:
    with pytest.raises(Unreadable, match="is no "):
        a_moment(AT, ZONE)(typed)


def test_the_sheet_says_in_its_note_what_is_given(book: Book) -> None:
    sheet = TreatmentSheet(register(book), animal(book, "Hazel"))
    assert sheet.told(filled(sheet, **WHOLE).answers()) == "treatment: udder tube, 3 doses, every 12 h"
    assert Filling(sheet).texts["first_at"] == "now"


def test_withheld_meat_is_asked_about_before_she_is_sold(book: Book) -> None:
    """Sold alive with the time handed on can be right: it is written with the note."""
    treated(book, doses="1")
    after = give(book, AT)
    hazel = animal(book, "Hazel")
    sheet = LeavingSheet(register(book), hazel, meat_until(after, hazel, AT + timedelta(hours=1)))
    with pytest.raises(Wrong, match="meat is withheld until 21 Mar 2026 06:20: udder tube") as problem:
        sheet.rows(filled(sheet, how="sold").answers())
    assert problem.value.question == "sure"
    answers = filled(sheet, how="sold", words="to the valley", sure="yes").answers()
    assert sheet.rows(answers)
    assert sheet.told(answers).startswith("sold, to the valley; meat is withheld until 21 Mar 2026 06:20")
    assert sheet.rows(filled(sheet, how="died").answers())


def test_she_may_be_sold_from_the_day_on_which_her_meat_is_free(book: Book) -> None:
    treated(book, doses="1")
    hazel = animal(book, "Hazel")
    sheet = LeavingSheet(register(book), hazel, meat_until(give(book, AT), hazel, AT))
    assert sheet.rows(filled(sheet, how="killed for meat", from_at="22 Mar 2026").answers())
