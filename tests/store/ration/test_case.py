"""What the case of an animal or a pen reads from the book, and what it says is missing."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from store.book.opening import Book
from store.book.words import EVENING, MORNING
from store.ration.balance import balance
from store.ration.parts import Part
from tests.store.feedroom.made import named
from tests.store.ration.small_ration import Row, case_of, line, pen_case, ration_book, said


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Book]:
    """The small farm with weights, breeds and what its feeds are made of."""
    found = ration_book(tmp_path)
    yield found
    found.close()


def test_every_figure_of_a_cow_says_where_it_is_from(book: Book) -> None:
    (head,) = case_of(book, "Fennel").heads
    came = {
        name: getattr(head, name).came
        for name in ("weight_kg", "milk_fat_percent", "days_in_milk", "age_days", "mature_kg")
    }
    assert came == {
        "weight_kg": "weighed 20 Feb",
        "milk_fat_percent": "your milk test of 18 Feb",
        "days_in_milk": "calved 9 Jan",
        "age_days": "born 2 Apr 2020",
        "mature_kg": "starting value for a Jersey",
    }


def test_milk_is_her_pails_and_what_the_calf_takes(book: Book) -> None:
    (head,) = case_of(book, "Fennel").heads
    assert head.milk_kg is not None
    pails, calf = head.milk_kg.inputs.values()
    assert (pails.came, calf.name) == ("mean of 7 pails", "what Rook takes")
    assert pails.amount == pytest.approx((6.2 + 5.5 + 6 + 5.5 + 5.6 + 5.5 + 6.1) / 7)
    assert calf.amount == pytest.approx(60 * 0.15)
    assert calf.inputs["together"].inputs["percent_of_weight"].came == "a starting value"


def test_a_cow_without_a_calf_is_told_by_the_hours_of_her_pails(book: Book) -> None:
    (head,) = case_of(book, "Hazel").heads
    assert head.milk_kg is not None
    assert head.milk_kg.came.endswith("pails, as 24 hours")
    assert head.milk_kg.amount == pytest.approx(15.3, abs=0.5)
    assert head.weight_kg is not None
    assert head.weight_kg.came == "by heart girth of 20 Feb"
    assert head.milk_fat_percent is not None
    assert head.milk_fat_percent.came == "starting value for an Ayrshire"


def test_a_cow_of_450_kg_needs_what_the_trade_says(book: Book) -> None:
    """450 kg, 14.8 kg of milk with 4.9 % fat: about 7.8 Mcal to keep alive and 0.85 for each kilogram of milk."""
    case = case_of(book, "Fennel")
    energy = next(need.least for need in case.needs if need.part is Part.ENERGY)
    assert energy is not None
    assert energy.amount == pytest.approx(20.4, abs=0.5)
    eats = next(need.most for need in case.needs if need.part is Part.DRY_MATTER)
    assert eats is not None
    assert 13 < eats.amount < 16


def test_an_animal_gets_its_own_plan_and_besides_a_heads_share_of_its_pens(book: Book) -> None:
    case = case_of(book, "Fennel")
    nuts, hay = named(book, "dairy nuts"), named(book, "grass hay")
    assert case.now[MORNING, nuts] == pytest.approx(2.7)
    assert (EVENING, hay) not in case.now
    assert case.besides[EVENING, hay] == pytest.approx(4.1)
    found = balance(case, case.now)
    assert found.eaten_kg.amount == pytest.approx((2.7 + 2.025) * 0.88 + 1.8 * 0.9 + 8.2 * 0.85)
    assert line(found.lines, Part.ENERGY).percent == pytest.approx(84, abs=4)


def test_a_pen_is_told_for_its_mean_head_with_what_each_gets_alone_beside(book: Book) -> None:
    case, fennel, hazel = pen_case(book, "Stall"), case_of(book, "Fennel"), case_of(book, "Hazel")
    assert {head.animal.name for head in case.heads} == {"Fennel", "Hazel"}
    nuts, hay = named(book, "dairy nuts"), named(book, "grass hay")
    assert case.now == {(MORNING, hay): 4.1, (EVENING, hay): 4.1}
    assert case.besides[MORNING, nuts] == pytest.approx((2.7 + 2.0) / 2)
    needs = [next(n.least for n in each.needs if n.part is Part.ENERGY) for each in (case, fennel, hazel)]
    mean, first, second = (each.amount for each in needs if each)
    assert mean == pytest.approx((first + second) / 2)


def stands_in(name: str, pen: str) -> Row:
    """An animal somewhere else than on the small farm."""
    return "standing", {"id": f"{name}-s", "animal_id": name, "begins_at": "2026-01-10", "pen_id": pen}


@pytest.mark.parametrize(
    ("pen", "row"),
    [
        ("Orchard", stands_in("rook", "orchard")),
        ("Stall", ("body", {"id": "h2", "animal_id": "hazel", "begins_at": "2026-03-01", "girth_cm": ""})),
    ],
)
def test_no_mean_is_told_of_a_pen_in_which_one_is_not_reckoned(tmp_path: Path, pen: str, row: Row) -> None:
    book = ration_book(tmp_path, row)
    case = pen_case(book, pen)
    book.close()
    assert case.needs == ()
    assert "Of some in here no needs are known, so no mean is told; each alone: G, its name, then J." in said(
        case.missing
    )


def test_no_gain_is_told_of_a_pen_of_several(tmp_path: Path) -> None:
    book = ration_book(tmp_path, stands_in("tansy", "stall"), stands_in("rook", "orchard"))
    pen, alone = pen_case(book, "Orchard"), case_of(book, "Rook")
    book.close()
    assert [need.part for need in alone.needs] == [Part.GAIN]
    assert not [need for need in pen.needs if need.part is Part.GAIN]


def test_what_is_missing_names_the_key_that_supplies_it(tmp_path: Path) -> None:
    forgotten = ("body", {"id": "forgotten", "animal_id": "fennel", "begins_at": "2026-03-01", "girth_cm": ""})
    book = ration_book(tmp_path, forgotten)
    case = case_of(book, "Fennel")
    book.close()
    assert case.heads[0].weight_kg is None
    assert said(case.missing) == ["Fennel has no weight: F, animals, Fennel, weight or heart girth."]
    assert case.needs == ()
    assert balance(case, case.now).lines == ()


def test_an_old_weight_is_said(book: Book) -> None:
    assert said(case_of(book, "Tansy").missing) == [
        "The weight of Tansy is 111 days old: F, animals, Tansy, weigh or tape anew."
    ]


def test_the_farms_settings_stand_before_starting_values(tmp_path: Path) -> None:
    rows = (
        ("setting", {"id": "f", "name": "forage_least_percent", "value": "65", "begins_at": "2026-01-01"}),
        ("setting", {"id": "c", "name": "calf_milk_percent", "value": "20", "begins_at": "2026-01-01"}),
    )
    book = ration_book(tmp_path, *rows)
    case = case_of(book, "Fennel")
    book.close()
    forage = next(need.least for need in case.needs if need.part is Part.FORAGE)
    assert forage is not None
    assert (forage.amount, forage.came) == (65, "your setting")
    assert case.heads[0].milk_kg is not None
    assert list(case.heads[0].milk_kg.inputs.values())[1].amount == pytest.approx(60 * 0.2)


def test_feeds_say_what_they_cost_what_is_there_and_their_measure(book: Book) -> None:
    nuts = next(each for each in case_of(book, "Fennel").feeds if each.feed.name == "dairy nuts")
    assert nuts.price_per_kg is not None
    assert nuts.price_per_kg.amount == pytest.approx(95 / 250)
    assert nuts.there_kg is not None
    assert nuts.told is not None
    assert (nuts.told.name, nuts.told.holds_kg, nuts.forage) == ("scoop", 0.675, False)
    assert nuts.limits.most_meal_kg is not None
    assert nuts.limits.most_meal_kg.came == "your limit"


def test_a_weight_that_can_hardly_be_hers_is_said_with_the_likely_slip(tmp_path: Path) -> None:
    """She was typed in pounds: 992 lb are 450 kg. The rest of her ration is reckoned all the same."""
    typed = ("body", {"id": "slip", "animal_id": "fennel", "begins_at": "2026-03-02", "weight_kg": "992"})
    book = ration_book(tmp_path, typed)
    case = case_of(book, "Fennel")
    book.close()
    (told,) = said(case.missing)
    assert told.startswith("The weight of Fennel can hardly be right. That is 992.00 kg; before 450.00 kg.")
    assert "pounds typed as kilograms" in told
    assert told.endswith("449.96 kg. F, animals, Fennel, weight.")
    assert case.needs
