"""What was said of changes of a plan, on both kinds of desk: of whom it is, the newest first, no other note."""

from datetime import timedelta

from msgspec.structs import replace

from store.book.drafts import Subject
from store.book.opening import Book
from store.book.reading.plan_notes import plan_notes
from store.round.change import PLAN_CHANGED
from store.round.confirm import noted
from tests.farm import hand, morning
from tests.store.round.made import animal_named


def test_the_notes_of_a_plan_are_found_by_whom_they_are_of(desk_book: Book) -> None:
    seen = morning(desk_book)
    hazel, sloe = (Subject(animal_id=animal_named(seen, name).id) for name in ("Hazel", "Sloe"))
    pen = Subject(pen_id=seen.pens[0].id)
    for subject, words, reason in (
        (hazel, "for more milk", PLAN_CHANGED), (hazel, "held", PLAN_CHANGED), (hazel, "lame", ""),
        (sloe, "too fat", PLAN_CHANGED), (pen, "less hay", PLAN_CHANGED),
    ):  # fmt: skip
        desk_book.append(replace(noted(hand(desk_book, seen), subject, words, tell=False), reason=reason))
    now = desk_book.clock.now()

    def said(subject: Subject, most: int = 9, ago: timedelta = timedelta(days=1)) -> list[str]:
        return [note.words for note in plan_notes(desk_book.desk, subject, now - ago, most)]

    assert said(hazel) == ["held", "for more milk"]
    assert said(hazel, most=1) == ["held"]
    assert said(pen) == ["less hay"]
    assert said(hazel, ago=timedelta(0)) == []
