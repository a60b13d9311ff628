"""What each class needs, which ones have no needs here, and what stays out of them."""

from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from msgspec.structs import replace

from store.book.clock import new_id
from store.book.drafts import Draft, Subject
from store.book.figures import ForecastFigure
from store.book.opening import Book
from store.book.register import read_register
from store.book.words import Kind, State
from store.husbandry.needs.carrying import carried_calcium_g, carried_phosphorus_g
from store.ration.asked import Asked
from store.ration.balance import balance
from store.ration.classes import needs_of
from store.ration.parts import Amounts, Case, Part, Verdict
from tests.farm import morning
from tests.store.feedroom.made import named, person
from tests.store.ration.small_ration import Row, case_of, line, pen_case, ration_book, said, value


def changed(name: str, stage: str, *, species: str = "cattle", born: str = "2021-05-20", **more: str) -> Row:
    """An animal of the small farm as another class."""
    cells = {"id": f"{name}-x", "animal_id": name, "begins_at": "2026-03-01", "name": name.title(), "stage": stage}
    return "animal_as", cells | {"species": species, "born_on": born} | more


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Book]:
    """The small farm with weights, breeds and what its feeds are made of."""
    found = ration_book(tmp_path)
    yield found
    found.close()


def least(case: Case, part: Part) -> float:
    """What is needed of a part at least."""
    found = next(need.least for need in case.needs if need.part is part)
    assert found is not None
    return found.amount


def test_a_dry_cow_needs_what_keeps_her_and_the_calf_in_her(book: Book) -> None:
    """530 kg, 222 days in calf: 0.080 x 490^0.75 to keep herself, and 2 to 3 Mcal for the calf."""
    case = case_of(book, "Tansy")
    assert least(case, Part.ENERGY) == pytest.approx(10.7, abs=0.4)
    assert case.heads[0].days_in_calf is not None
    assert case.heads[0].days_in_calf.came == "served 1 Aug 2025"


def test_days_in_calf_are_told_from_the_day_she_is_due_where_nobody_knows_when_she_was_served(tmp_path: Path) -> None:
    row = {"id": "t2", "animal_id": "tansy", "begins_at": "2026-02-01", "breed": "Milking Shorthorn"}
    book = ration_book(tmp_path, ("breeding", row | {"due_on": "2026-05-11"}))
    days = case_of(book, "Tansy").heads[0].days_in_calf
    book.close()
    assert days is not None
    assert (days.amount, days.came) == (281 - 61, "due 11 May")


def test_one_that_grows_needs_tdn_for_the_gain_that_is_wanted(book: Book) -> None:
    case = case_of(book, "Sloe")
    wanted = case.heads[0].gain_kg_day
    assert wanted is not None
    assert wanted.came == "starting value for a heifer"
    found = balance(case, case.now)
    energy, gain = line(found.lines, Part.ENERGY), line(found.lines, Part.GAIN)
    assert energy.need.unit == "kg TDN"
    assert energy.need.least is not None
    assert 5 < energy.need.least.amount < 8
    assert gain.need.least is not None
    assert gain.need.least.amount == 0.6
    assert gain.has is not None
    assert energy.has is not None
    assert energy.has.unit == "kg TDN"


def test_a_gain_that_no_feed_makes_is_said(tmp_path: Path) -> None:
    goal = {"id": "g", "animal_id": "sloe", "begins_at": "2026-01-01", "gain_kg_day": "2.9", "mature_kg": "700"}
    book = ration_book(tmp_path, ("feeding_goal", goal))
    case = case_of(book, "Sloe")
    book.close()
    assert case.needs == ()
    assert said(case.missing) == ["No feed makes Sloe gain 2.90 kg a day: F, animals, Sloe, what it is fed for."]


def test_a_cow_below_the_condition_wanted_needs_energy_to_regain_it_past_her_first_months(book: Book) -> None:
    """Half a point of 54.5 kg in 75 days is 0.363 kg a day, at 5.12 Mcal a kilogram 1.86 Mcal."""
    asked = Asked(book.desk, read_register(book.desk, book.clock.now()), morning(book), book.clock.now())
    thin = {"condition": value(2.5), "condition_goal": value(3.0)}
    for name, days, more in (("Hazel", 200, 1.86), ("Hazel", 60, 0), ("Tansy", 200, 0)):
        head = replace(case_of(book, name).heads[0], condition_goal=None, days_in_milk=value(days, "days"))
        holds, slipped = needs_of(asked, head), needs_of(asked, replace(head, **thin))
        assert holds is not None
        assert slipped is not None
        assert slipped["energy"].amount - holds["energy"].amount == pytest.approx(more, abs=0.01), (name, days)


def due(day: str) -> Row:
    """When the heifer is due."""
    return "breeding", {"id": "s-f", "animal_id": "sloe", "begins_at": "2026-01-30", "breed": "Angus", "due_on": day}


def gain_on(case: Case, amounts: Amounts) -> float:
    """What some amounts make it gain."""
    has = line(balance(case, amounts).lines, Part.GAIN).has
    assert has is not None
    return has.amount


def test_the_calf_in_a_heifer_takes_its_part_before_she_gains(tmp_path: Path) -> None:
    """From 9.6 kg of dry matter with 56 % digestible, three weeks before she calves, nothing is left for a gain."""
    early, late = tmp_path / "early", tmp_path / "late"
    early.mkdir()
    late.mkdir()
    with closing(ration_book(early, due("2026-12-01"))) as one, closing(ration_book(late, due("2026-03-25"))) as other:
        young, near = case_of(one, "Sloe"), case_of(other, "Sloe")
    assert gain_on(young, young.now) > 0.15
    assert gain_on(near, near.now) < 0.05
    more = {meal: kg * 1.8 for meal, kg in near.besides.items()}
    assert gain_on(near, more) < gain_on(young, more)


def test_the_bones_of_the_calf_in_a_heifer_are_in_her_minerals(tmp_path: Path) -> None:
    """A beef cow's table counts 5.8 g of calcium and 3.2 g of phosphorus a day for a calf of 38.5 kg."""
    assert carried_calcium_g(200, 38.5) == pytest.approx(5.8 / 0.5, abs=0.2)
    assert carried_phosphorus_g(200, 38.5) == pytest.approx(3.2 / 0.68, abs=0.1)
    assert carried_calcium_g(190, 38.5) == 0
    with closing(ration_book(tmp_path, due("2026-03-25"))) as book:
        case = case_of(book, "Sloe")
    assert least(case, Part.CALCIUM) > 37
    assert least(case, Part.PHOSPHORUS) > 21


def test_a_suckler_in_calf_and_weaned_needs_a_dry_cows_feed(tmp_path: Path) -> None:
    """530 kg, about ten months after calving: the printed row has 24 lb of dry matter with 49 % TDN, 5.4 kg."""
    book = ration_book(tmp_path, changed("tansy", "suckler", calved_on="2025-05-10"))
    case = case_of(book, "Tansy")
    book.close()
    assert least(case, Part.ENERGY) == pytest.approx(5.3, abs=0.4)


def test_a_calf_on_milk_and_a_sheep_have_no_needs_here(tmp_path: Path) -> None:
    book = ration_book(tmp_path, changed("hazel", "other", species="sheep"))
    rook, hazel = case_of(book, "Rook"), case_of(book, "Hazel")
    book.close()
    assert hazel.needs == ()
    assert said(rook.missing) == ["Rook lives on milk: only what it should gain is reckoned; of feed amounts and cost."]
    assert said(hazel.missing) == ["Hazel: no needs are kept for a sheep; amounts, cost and limits only."]
    assert balance(hazel, hazel.now).eaten_kg.amount > 0


def test_a_calf_on_milk_is_told_what_it_should_gain_of_milk_and_starter(book: Book) -> None:
    """60 kg, 9 kg of her milk of 4.9 % fat and 0.34 kg of nuts are 7.73 Mcal, 32.5 MJ. Printed for milk: 9.05 MJ keep
    it alive, 8.18 MJ more make 0.6 kg, so that 23.4 MJ make 0.6 x (23.4 / 8.18)^(1 / 1.2) = 1.44 kg; starter is used a
    little worse."""
    case = case_of(book, "Rook")
    milk = case.heads[0].milk_kg
    assert milk is not None
    assert milk.amount == pytest.approx(60 * 0.15)
    found = balance(case, case.now)
    assert [each.need.part for each in found.lines] == [Part.GAIN]
    gain = found.lines[0].has
    assert gain is not None
    assert gain.amount == pytest.approx(1.41, abs=0.03)
    without = balance(case, {}).lines[0].has
    assert without is not None
    assert without.amount < gain.amount


def test_a_mixed_pen_says_so_and_tells_only_what_is_told_alike(book: Book) -> None:
    case = pen_case(book, "Orchard")
    told = said(case.missing)
    assert "Not all are of one class: Sloe (heifer) and Tansy (dry)." in " ".join(told)
    assert any(each.startswith("Energy is counted in Mcal") for each in told)
    parts = {need.part for need in case.needs}
    assert Part.PROTEIN in parts
    assert Part.ENERGY not in parts


def forecast(book: Book, low_c: float) -> None:
    """Somebody types the weather of tonight."""
    figure = ForecastFigure(low_c, None, wet=False)
    now = book.clock.now()
    book.append(
        Draft(new_id(now), Kind.WEATHER, Subject(), None, State.DONE, now, person(book), None, figures=(figure,))
    )


def test_a_cold_night_is_said_and_in_no_need_for_nobody_typed_who_is_outside(book: Book) -> None:
    mild = case_of(book, "Tansy")
    assert not [each for each in mild.missing if each.what == "cold"]
    forecast(book, -10.0)  # 14 F: 18 degrees F below what a dry winter coat bears
    cold = case_of(book, "Tansy")
    assert least(cold, Part.ENERGY) == pytest.approx(least(mild, Part.ENERGY))
    assert [each.says for each in cold.missing if each.what == "cold"] == [
        "Who is outside: cattle out there need about 18 % more energy tonight, which is not in here. C, weather, asks "
        "for hay."
    ]
    assert not [each for each in case_of(book, "Fennel").missing if each.what == "cold"]


def test_a_feed_that_is_barred_is_said_before_anything_else(tmp_path: Path) -> None:
    never = ("not_for", {"id": "n", "feed_id": "dairy-nuts", "species": "sheep", "begins_at": "2026-01-01"})
    book = ration_book(tmp_path, changed("hazel", "other", species="sheep"), never)
    case = case_of(book, "Hazel")
    found = balance(case, case.now)
    assert found.broken[0].says == "dairy nuts is never for sheep, and Hazel would get it."
    assert named(book, "dairy nuts") in {feed_id for _, feed_id in case.now}
    book.close()


def test_short_stays_short_in_a_pen_of_one_class(book: Book) -> None:
    case = pen_case(book, "Stall")
    assert line(balance(case, case.now).lines, Part.ENERGY).verdict is Verdict.SHORT
