"""The life of the herd: who moves, is born, leaves or is another class now; the round follows, what was stays."""

from datetime import date, timedelta

import pytest

from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import Kind, Stage
from store.herd.animal import AnimalSheet
from store.herd.birth import BirthSheet
from store.herd.breeding import BreedingSheet
from store.herd.leaving import LeavingSheet
from store.herd.moving import MovingSheet
from store.herd.sheet import Wrong
from store.round.plan import plan
from store.round.steps import CountStep, FeedStep
from tests.farm import MORNING, HandClock, morning
from tests.store.book.seeing import TODAY
from tests.store.herd.filled import animal, filled, register, write


def hay_kg(snapshot: Snapshot, pen: str) -> float:
    """The hay that a pen is due as one."""
    return next(
        s.due[0].due_kg for s in plan(snapshot) if isinstance(s, FeedStep) and s.name == pen and s.kind is Kind.HAY
    )


def heads(snapshot: Snapshot, pen: str) -> int:
    """How many are counted in a pen."""
    return next(len(s.heads) for s in plan(snapshot) if isinstance(s, CountStep) and s.name == pen)


def kinds(snapshot: Snapshot, name: str) -> set[str]:
    """What is asked about an animal."""
    return {step.kind.value for step in plan(snapshot) if step.name == name}


def test_a_group_ration_follows_who_stands_there(book: Book) -> None:
    """One more in the orchard: heads and hay go up by one head's share at once."""
    before = morning(book)
    a_head_kg = hay_kg(before, "Orchard") / heads(before, "Orchard")
    after = write(book, MovingSheet(register(book), animal(book, "Hazel")), pen_id="Orchard")
    assert heads(after, "Orchard") == heads(before, "Orchard") + 1
    assert hay_kg(after, "Orchard") == pytest.approx(hay_kg(before, "Orchard") + a_head_kg)


def test_a_move_from_a_day_on_waits_for_it(book: Book, clock: HandClock) -> None:
    before = morning(book)
    after = write(book, MovingSheet(register(book), animal(book, "Hazel")), pen_id="Orchard", from_at="tomorrow")
    assert heads(after, "Orchard") == heads(before, "Orchard")
    clock.move(days=1)
    assert heads(morning(book), "Orchard") == heads(before, "Orchard") + 1


def test_a_past_round_stays_as_it_was(book: Book) -> None:
    """Whoever left today stood there yesterday."""
    yesterday, then = Turn(TODAY - timedelta(days=1), "morning"), MORNING - timedelta(days=1)
    before = plan(read_snapshot(book.desk, yesterday, then))
    write(book, LeavingSheet(register(book), animal(book, "Hazel")), how="sold")
    assert plan(read_snapshot(book.desk, yesterday, then)) == before


def test_who_is_sold_is_in_no_round_any_more(book: Book) -> None:
    before = morning(book)
    after = write(book, LeavingSheet(register(book), animal(book, "Hazel")), how="sold", words="to the valley")
    assert kinds(before, "Hazel") >= {"feed", "milk"}
    assert kinds(after, "Hazel") == set()
    assert heads(after, "Stall") == heads(before, "Stall") - 1


def test_a_cow_that_is_gone_shares_her_milk_with_nobody(book: Book) -> None:
    """And her calf is not asked to be shut away from her."""
    after = write(book, LeavingSheet(register(book), animal(book, "Fennel")), how="died")
    assert after.shares == ()
    assert "apart" not in kinds(after, "Rook")


def test_a_calf_is_born_to_a_dry_cow(book: Book, clock: HandClock) -> None:
    """It stands with its mother; she is in milk since today, and shares her milk with it."""
    tansy = animal(book, "Tansy")
    after = write(book, BirthSheet(register(book), tansy), name="Wren", when="yesterday", from_day="14")
    calf = next(each for each in after.animals if each.name == "Wren")
    dam = next(each for each in after.animals if each.name == "Tansy")
    assert (calf.stage, calf.pen_id, calf.born_on) == (Stage.CALF, dam.pen_id, TODAY - timedelta(days=1))
    assert (dam.stage, dam.calved_on) == (Stage.IN_MILK, calf.born_on)
    assert [(share.cow_id, share.calf_id) for share in after.shares if share.cow_id == tansy] == [(tansy, calf.id)]
    clock.move(minutes=1)
    found = register(book)
    assert (found.get("breeding", calf.id) or {})["dam_id"] == tansy
    assert (found.get("breeding", tansy) or {})["due_on"] is None


def test_an_animal_bought_is_in_the_round_at_once(book: Book) -> None:
    """And so is a visitor."""
    before = morning(book)
    after = write(book, AnimalSheet(register(book)), name="Sorrel", stage="heifer", pen_id="Orchard")
    assert heads(after, "Orchard") == heads(before, "Orchard") + 1


@pytest.mark.parametrize(
    ("typed", "question", "words"),
    [
        ({"name": "fennel"}, "name", "There is an animal fennel already"),
        ({"name": "Sorrel", "tag": "blue 12"}, "tag", "Fennel has the tag blue 12 already"),
        ({"name": "  "}, "name", "«name» needs an answer"),
    ],
)
def test_two_animals_with_one_name_or_tag_are_said(
    book: Book, typed: dict[str, str], question: str, words: str
) -> None:
    """Before anything is written."""
    sheet = AnimalSheet(register(book))
    with pytest.raises(Wrong, match=words) as problem:
        sheet.rows(filled(sheet, **typed).answers())
    assert problem.value.question == question


def test_who_is_sold_does_not_come_back_on_the_day_her_class_was_to_change(book: Book, clock: HandClock) -> None:
    hazel = animal(book, "Hazel")
    write(book, AnimalSheet(register(book), hazel), stage="dry", from_at="13 Mar 2026")
    clock.move(minutes=1)
    write(book, LeavingSheet(register(book), hazel), how="sold")
    clock.move(days=4)
    assert kinds(morning(book), "Hazel") == set()


def test_a_tag_typed_now_stays_after_a_class_that_was_planned(book: Book, clock: HandClock) -> None:
    hazel = animal(book, "Hazel")
    write(book, AnimalSheet(register(book), hazel), stage="dry", from_at="tomorrow")
    clock.move(minutes=1)
    write(book, AnimalSheet(register(book), hazel), tag="GREEN 4")
    clock.move(days=1)
    row = register(book).get("animal_as", hazel) or {}
    assert (row["stage"], row["tag"]) == (Stage.DRY, "GREEN 4")


def test_from_today_on_counts_although_something_was_changed_this_morning(book: Book, clock: HandClock) -> None:
    hazel = animal(book, "Hazel")
    write(book, AnimalSheet(register(book), hazel), tag="GREEN 4")
    clock.move(hours=2)
    after = write(book, LeavingSheet(register(book), hazel), how="sold", from_at="today")
    assert kinds(after, "Hazel") == set()


def test_a_planned_move_is_shown_and_taken_back(book: Book, clock: HandClock) -> None:
    hazel = animal(book, "Hazel")
    write(book, MovingSheet(register(book), hazel), pen_id="Orchard", from_at="tomorrow")
    clock.move(minutes=1)
    sheet = MovingSheet(register(book), hazel)
    (asked,) = [question for question in sheet.questions() if question.name == sheet.TAKE_BACK]
    assert asked.hint == "planned: Orchard from 12 Mar 2026"
    write(book, sheet, take_back="yes")
    clock.move(days=2)
    assert next(each for each in morning(book).animals if each.name == "Hazel").pen_id == sheet.standing


def test_a_day_that_she_is_due_is_one_to_come(book: Book, clock: HandClock) -> None:
    """Without a year it is the next such day."""
    write(book, BreedingSheet(register(book), animal(book, "Sloe")), in_calf="yes", due_on="20 Feb")
    clock.move(minutes=1)
    assert (register(book).get("breeding", animal(book, "Sloe")) or {})["due_on"] == date(2027, 2, 20)
