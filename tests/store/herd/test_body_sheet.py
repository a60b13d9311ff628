"""A weight that can hardly be hers is asked about, and the likely slip is named; a day that has been is its own."""

from datetime import UTC, date, datetime

import pytest

from store.book.drafts import RowDraft
from store.book.opening import Book
from store.book.words import SettingName, Species, Stage, Units
from store.herd.animal import DetailSheet
from store.herd.body import BodySheet
from store.herd.filling import Filling
from store.herd.goal import GoalSheet
from store.herd.sheet import Wrong
from store.herd.weighed import by_before, by_kind, doubt
from tests.farm import HandClock, hand, morning
from tests.store.herd.filled import animal, filled, register, write


def sheet(book: Book, name: str = "Hazel") -> BodySheet:
    """Hers."""
    return BodySheet(register(book), animal(book, name))


def weighed(book: Book, clock: HandClock, kg: float, name: str = "Hazel") -> Book:
    """A farm on which she was weighed, a month ago by now."""
    book.change([RowDraft("body", {"animal_id": animal(book, name), "weight_kg": kg})])
    clock.move(days=30)
    return book


def asked(book: Book, name: str = "Hazel", **typed: str) -> str:
    """What is asked about it."""
    with pytest.raises(Wrong) as problem:
        sheet(book, name).rows(filled(sheet(book, name), **typed).answers())
    assert problem.value.question == "weight_kg"
    return str(problem.value)


def test_pounds_typed_as_kilograms_are_named(book: Book, clock: HandClock) -> None:
    found = asked(weighed(book, clock, 612), weight_kg="1350")
    assert found == (
        "That is 1350.00 kg; before 612.00 kg. Were pounds typed as kilograms? That would be 612.35 kg. "
        "If it is right, type ! behind it, then Enter."
    )


@pytest.mark.parametrize(
    ("typed", "words"),
    [("278", "Were kilograms typed as pounds?"), ("0.6", "Were tonnes typed as kilograms?"),
     ("61", "before 612.00 kg. If it is right"), ("420", "before 612.00 kg. If it is right")],
)  # fmt: skip
def test_so_is_each_other_slip_and_what_is_none_is_asked_about(
    book: Book, clock: HandClock, typed: str, words: str
) -> None:
    assert words in asked(weighed(book, clock, 612), weight_kg=typed)


def test_kilograms_on_a_farm_that_counts_in_pounds(book: Book, clock: HandClock) -> None:
    book.change([RowDraft("setting", {"name": SettingName.UNITS, "value": "us"})])
    found = asked(weighed(book, clock, 612), weight_kg="612")
    assert "That is 612.00 lb; before 1349.23 lb. Were kilograms typed as pounds? That would be 1349.23 lb." in found


@pytest.mark.parametrize("typed", ["560", "700", "1350 !", "1350!", "1350 lb"])
def test_what_can_be_is_written(book: Book, clock: HandClock, typed: str) -> None:
    weighed(book, clock, 612)
    assert len(sheet(book).rows(filled(sheet(book), weight_kg=typed).answers())) == 1


def test_without_a_weight_before_her_girth_or_her_breed_tells(book: Book) -> None:
    """Hazel was never weighed: 182 cm round the heart are no 1000 kg, nor is a usual cow 1300."""
    assert "by her girth 458.72 kg. Were pounds typed as kilograms?" in asked(book, weight_kg="1000", girth_cm="182")
    assert "usual 600.00 kg. Were pounds typed as kilograms?" in asked(book, weight_kg="1300")
    assert len(sheet(book).rows(filled(sheet(book), weight_kg="480").answers())) == 1


@pytest.mark.parametrize(
    ("stage", "born", "kg", "words"),
    [(Stage.STEER, date(2024, 9, 10), 1100, "at this age about 436.41 kg. Were pounds typed as kilograms? "
      "That would be 498.95 kg."),
     (Stage.STEER, None, 1000, "grown 600.00 kg. Were pounds typed as kilograms? That would be 453.59 kg."),
     (Stage.CALF, date(2026, 3, 1), 84, "at this age about 49.56 kg. Were pounds typed as kilograms?"),
     (Stage.HEIFER, date(2024, 9, 10), 198, "Were kilograms typed as pounds? That would be 436.52 kg."),
     (Stage.DRY, None, 1100, "usual 600.00 kg. Were pounds typed as kilograms? That would be 498.95 kg.")],
)  # fmt: skip
def test_the_first_weight_is_held_against_its_age_and_its_grown_weight(
    stage: Stage, born: date | None, kg: float, words: str
) -> None:
    """Never weighed before, grown 600 kg: pounds typed as kilograms are named."""
    kind = by_kind({"species": Species.CATTLE, "stage": stage, "born_on": born}, 600, date(2026, 3, 11))
    assert kind is not None
    assert words in doubt(kg, kind, Units.METRIC)
    assert doubt(kind.kg * 0.8, kind, Units.METRIC) == ""


def test_behind_a_weight_that_was_a_slip_the_right_one_is_taken_and_the_slip_is_said(
    book: Book, clock: HandClock
) -> None:
    weighed(weighed(book, clock, 612), clock, 1350)
    assert "before 612.00 kg" in asked(book, weight_kg="278")
    found = sheet(book)
    assert len(found.rows(filled(found, weight_kg="615").answers())) == 1
    said = says(book, "Hazel", weight_kg="615")
    assert said == ["1350.00 kg before can hardly have been right; it is left out from now on"]


def test_a_weight_that_was_said_to_be_right_and_is_found_again_is_believed(book: Book, clock: HandClock) -> None:
    weighed(weighed(book, clock, 612), clock, 420)
    assert len(sheet(book).rows(filled(sheet(book), weight_kg="415").answers())) == 1
    weighed(book, clock, 415)
    assert "before 415.00 kg" in asked(book, weight_kg="612")


def test_a_bang_goes_behind_the_weight_that_was_asked_about(book: Book, clock: HandClock) -> None:
    found = Filling(sheet(weighed(book, clock, 612)))
    for key in "420":
        assert found.question is not None
        found.type(found.question, key)
    found.go(3)
    found.stand_at("weight_kg")
    found.type(found.questions[0], "!")
    assert found.texts["weight_kg"] == "420!"


def test_a_calf_may_double_its_weight_in_two_months_and_a_cow_may_not() -> None:
    assert doubt(88, by_before(40, 50, Stage.CALF), Units.METRIC) == ""
    assert doubt(88 * 15, by_before(40 * 15, 50, Stage.DRY), Units.METRIC) != ""


def test_a_day_that_has_been_is_its_own_and_a_later_weight_still_counts(book: Book, clock: HandClock) -> None:
    weighed(book, clock, 612)
    write(book, sheet(book), weight_kg="600", from_at="5 Mar")
    clock.move(minutes=1)
    course = register(book).course("body", animal(book, "Hazel"))
    assert [row["weight_kg"] for row in course] == [600, 612]
    assert course[0]["begins_at"] == datetime(2026, 3, 5, tzinfo=UTC)
    with pytest.raises(Wrong, match="is still to come"):
        filled(sheet(book), weight_kg="600", from_at="tomorrow").answers()


def says(book: Book, name: str, **typed: str) -> list[str]:
    """What a weight says."""
    found = sheet(book, name)
    return list(found.says(filled(found, **typed).answers(), hand(book, morning(book))))


def test_a_girth_alone_says_a_weight_and_how_sure_that_is(book: Book) -> None:
    assert says(book, "Hazel", girth_cm="182") == ["by the tape about 459 kg, between 413 kg and 505 kg"]
    said = says(book, "Hazel", girth_cm="210")
    assert said[1] == "her girth is 210; weight by heart girth is made for 80 to 200 cm, and unsure beyond that"


@pytest.mark.parametrize(("typed", "said"), [("630", "0.60 kg a day more since 11 Mar"), ("600", "0.40 kg a day less")])
def test_what_she_gained_since_the_last_weight_is_said(book: Book, clock: HandClock, typed: str, said: str) -> None:
    assert says(weighed(book, clock, 612), "Hazel", weight_kg=typed)[0].startswith(said)


def test_a_heifer_is_held_against_her_grown_weight_and_her_breed(book: Book, clock: HandClock) -> None:
    """Born 15 months ago, grown 600: 60 % are wanted."""
    sloe = animal(book, "Sloe")
    write(book, DetailSheet(register(book), sloe), born_on="10 Dec 2024", breed="Holstein")
    write(book, GoalSheet(register(book), sloe), mature_kg="600")
    clock.move(minutes=1)
    assert says(book, "Sloe", weight_kg="330 !")[-2:] == [
        "55 % of her grown weight; at 15 months 360 kg are wanted, if she is to calve at two years",
        "Holstein heifers of 15 months weigh 359 kg in the mean",
    ]
