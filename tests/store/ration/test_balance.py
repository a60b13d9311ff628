"""Some amounts against what a cow needs: sums by hand, what is not known, what is over, and what stands free."""

import pytest
from msgspec.structs import replace

from store.book.words import EVENING, MORNING
from store.ration.balance import balance
from store.ration.limits import OF_MEALS
from store.ration.parts import Part, Verdict
from tests.store.ration.small_ration import GRAIN, HAY, amounts, barred, line, made_case, ration_feed, said

BOTH = (ration_feed(HAY), ration_feed(GRAIN))


def test_energy_and_protein_are_the_sums_of_the_feeds() -> None:
    found = balance(made_case(*BOTH), amounts(10, 3))
    assert found.eaten_kg.amount == pytest.approx(10 * 0.85 + 3 * 0.9)
    energy = line(found.lines, Part.ENERGY)
    assert energy.has is not None
    assert energy.has.amount == pytest.approx(8.5 * 1.2 + 2.7 * 2.0)
    assert energy.percent == pytest.approx(15.6 / 20 * 100)
    assert energy.verdict is Verdict.SHORT
    protein = line(found.lines, Part.PROTEIN)
    assert protein.has is not None
    assert protein.has.amount == pytest.approx(8.5 * 120 + 2.7 * 100)


def test_lines_are_told_in_one_order() -> None:
    parts = [each.need.part for each in balance(made_case(*BOTH), amounts(10, 3)).lines]
    assert parts == [Part.ENERGY, Part.PROTEIN, Part.FORAGE, Part.FAT, Part.DRY_MATTER]


def test_three_percent_short_is_enough() -> None:
    enough = balance(made_case(*BOTH), amounts(12.25, 4))
    assert line(enough.lines, Part.ENERGY).percent == pytest.approx(98.5, abs=0.1)
    assert line(enough.lines, Part.ENERGY).verdict is Verdict.ENOUGH


def test_more_than_she_can_eat_is_over_and_more_energy_is_not() -> None:
    found = balance(made_case(*BOTH), amounts(14, 6))
    assert line(found.lines, Part.DRY_MATTER).verdict is Verdict.OVER
    assert line(found.lines, Part.ENERGY).verdict is Verdict.ENOUGH


def test_little_forage_is_short() -> None:
    assert line(balance(made_case(*BOTH), amounts(3, 5)).lines, Part.FORAGE).verdict is Verdict.SHORT


def test_what_nobody_knows_of_a_feed_is_not_known_and_never_nothing() -> None:
    found = balance(made_case(ration_feed(HAY), ration_feed(GRAIN, without="cp_percent")), amounts(10, 3))
    protein = line(found.lines, Part.PROTEIN)
    assert (protein.has, protein.verdict, protein.unknown_by) == (None, Verdict.NOT_KNOWN, ("corn",))
    assert line(found.lines, Part.ENERGY).verdict is Verdict.SHORT
    assert said(found.missing) == ["Of corn nobody knows: protein. F, feeds, corn, what it is made of."]


def test_a_feed_that_is_not_fed_leaves_nothing_unknown() -> None:
    found = balance(made_case(ration_feed(HAY), ration_feed(GRAIN, without="cp_percent")), amounts(10, 0))
    assert line(found.lines, Part.PROTEIN).has is not None


def test_without_dry_matter_nothing_of_the_whole_is_known() -> None:
    found = balance(made_case(ration_feed(HAY), ration_feed(GRAIN, without="dm_percent")), amounts(10, 3))
    assert {each.verdict for each in found.lines} == {Verdict.NOT_KNOWN}
    assert found.eaten_kg.amount == pytest.approx(8.5)


def test_hay_that_stands_free_is_eaten_up_to_what_is_left_of_her_appetite() -> None:
    case = made_case(ration_feed(HAY, free=True), ration_feed(GRAIN))
    found = balance(case, {(MORNING, GRAIN.id): 4.0})
    assert found.eaten_kg.amount == pytest.approx(15)
    assert found.forage_percent is not None
    assert found.forage_percent.amount == pytest.approx((15 - 3.6) / 15 * 100)


def test_how_much_free_hay_is_eaten_is_not_known_without_an_appetite() -> None:
    case = made_case(ration_feed(HAY, free=True), ration_feed(GRAIN))
    blind = replace(case, needs=tuple(need for need in case.needs if need.part is not Part.DRY_MATTER))
    found = balance(blind, {(MORNING, GRAIN.id): 4.0})
    assert line(found.lines, Part.ENERGY).unknown_by == ("grass hay",)
    assert found.forage_percent is None
    assert found.cost is None


def test_what_heads_get_by_plans_of_their_own_is_counted() -> None:
    case = replace(made_case(*BOTH), besides={(EVENING, GRAIN.id): 3.0})
    alone, together = balance(case, amounts(10, 0)), balance(made_case(*BOTH), amounts(10, 3))
    assert alone.eaten_kg.amount == pytest.approx(together.eaten_kg.amount)
    assert alone.biggest_meal_kg.amount == pytest.approx(3)


def test_it_costs_what_its_feeds_cost_and_without_a_price_is_not_known() -> None:
    found = balance(made_case(*BOTH), amounts(10, 3))
    assert found.cost is not None
    assert found.cost.amount == pytest.approx(13 * 0.3)
    unpriced = replace(ration_feed(GRAIN), price_per_kg=None)
    without = balance(made_case(ration_feed(HAY), unpriced), amounts(10, 3))
    assert without.cost is None
    assert said(without.missing) == ["corn has no price, so the cost is not known: D, corn, a delivery with its price."]


def test_the_farms_own_limits_are_said_when_they_are_broken() -> None:
    limited = ration_feed(GRAIN, most_meal_kg=1.5, most_day_kg=2.5, share_percent=20)
    found = balance(made_case(ration_feed(HAY), limited, meal_limit_kg=2), amounts(10, 3))
    assert [each.says for each in found.broken] == [
        "corn in the morning: 3.00 kg; your limit is 1.50 kg a meal.",
        "corn in a day: 3.00 kg; your limit is 2.50 kg a day.",
        "corn: 24 % of the dry matter; your limit is 20 %.",
        "all loose feed, in the morning: 3.00 kg; your limit is 2.00 kg a meal.",
    ]
    assert balance(made_case(ration_feed(HAY), limited), amounts(10, 1.5)).broken == ()


@pytest.mark.parametrize(
    ("resembles", "meal_kg"), [("Lucerne (alfalfa) pellets, grade 20", 3), ("Maize (corn) silage, average", 0)]
)
def test_pellets_of_a_forage_count_in_a_meal_and_silage_does_not(resembles: str, meal_kg: float) -> None:
    """They are eaten as fast as nuts, and the round counts them so."""
    loose = replace(ration_feed(GRAIN), forage=True, resembles=resembles)
    found = balance(made_case(ration_feed(HAY), loose, meal_limit_kg=2), amounts(10, 3))
    assert found.biggest_meal_kg.amount == pytest.approx(meal_kg)
    assert [each.of for each in found.broken if each.of == OF_MEALS] == [OF_MEALS] * (meal_kg > 0)


def test_a_feed_that_they_must_not_get_comes_first() -> None:
    never = barred(ration_feed(GRAIN, most_meal_kg=1), "corn is never for sheep, and Gorse would get it.")
    first = balance(made_case(ration_feed(HAY), never), amounts(10, 3)).broken[0]
    assert (first.of, first.never) == ("corn", True)
    assert first.says.startswith("corn is never for sheep")


def test_every_figure_can_say_why() -> None:
    energy = line(balance(made_case(*BOTH), amounts(10, 3)).lines, Part.ENERGY).has
    assert energy is not None
    assert [each.name for each in energy.inputs.values()] == ["energy in grass hay", "energy in corn"]
