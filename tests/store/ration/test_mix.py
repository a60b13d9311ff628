"""A mix that is found meets every need within every limit, in whole quarters; else what would have to give is said."""

from random import Random

import pytest
from msgspec.structs import replace

from store.book.facts.feed import Feed
from store.book.words import EVENING, MORNING
from store.ration.balance import balance
from store.ration.choices import BY_WEIGHT_KG
from store.ration.mix import Mix, find_mix
from store.ration.parts import Case, Need, Part, RationFeed, Verdict
from store.ration.solving import Least
from tests.store.ration.small_ration import GRAIN, HAY, amounts, barred, line, made_case, ration_feed, value
from tests.store.round.made import some_id

FREE_HAY = ration_feed(HAY, free=True)


def mix(case: Case, least: Least = Least.COST) -> Mix:
    """The mix of a case that has one, or a nearest."""
    found = find_mix(case, least)
    assert isinstance(found, Mix)
    return found


def random_case(seed: int) -> Case:
    """Hay and corn with limits drawn at random."""
    draw = Random(seed)
    most = (draw.uniform(1, 4), draw.uniform(2, 7), draw.uniform(15, 60))
    corn = ration_feed(GRAIN, most_meal_kg=most[0], most_day_kg=most[1], share_percent=most[2])
    hay = replace(ration_feed(HAY), price_per_kg=value(draw.uniform(0.1, 0.5), ""), free=draw.random() < 0.5)
    now = amounts(0 if hay.free else draw.choice((0, 4, 9)), draw.choice((0, 1.5, 3)))
    case = made_case(hay, corn, now=now, meal_limit_kg=draw.uniform(1, 5))
    besides = {(EVENING, GRAIN.id): draw.choice((0.0, 0.4))}
    return replace(case, besides=besides)


@pytest.mark.parametrize("least", Least)
@pytest.mark.parametrize("seed", range(40))
def test_a_mix_never_breaks_a_limit(seed: int, least: Least) -> None:
    case = random_case(seed)
    found = mix(case, least)
    if found.fits:
        assert not found.balance.broken
        assert {each.verdict for each in found.balance.lines} == {Verdict.ENOUGH}
    else:
        assert found.in_way or found.short or found.balance.broken
    assert all((kg / BY_WEIGHT_KG).is_integer() for kg in found.amounts.values())


def test_some_of_these_fit_and_some_do_not() -> None:
    fit = sum(mix(random_case(seed)).fits for seed in range(40))
    assert 8 < fit < 32


def test_no_cheaper_pair_of_hay_and_corn_meets_her_needs() -> None:
    """Every pair of quarters is tried."""
    case = made_case(ration_feed(HAY), ration_feed(GRAIN, most_day_kg=6), meal_limit_kg=3)
    found = mix(case)
    assert found.fits
    assert found.balance.cost is not None
    tried = (balance(case, amounts(hay * 0.25, corn * 0.25)) for hay in range(80) for corn in range(24))
    costs = [
        each.cost.amount for each in tried
        if each.cost and all(of.has and of.need.least and of.has.amount >= of.need.least.amount
                             for of in each.lines if of.need.least)
        and line(each.lines, Part.DRY_MATTER).has and line(each.lines, Part.DRY_MATTER).verdict is Verdict.ENOUGH
    ]  # fmt: skip
    assert found.balance.cost.amount == pytest.approx(min(costs))


def test_least_change_leaves_what_is_enough() -> None:
    now = amounts(13, 4)
    assert mix(made_case(ration_feed(HAY), ration_feed(GRAIN), now=now), Least.CHANGE).amounts == now


def test_corn_is_shared_out_over_the_meals() -> None:
    found = mix(made_case(FREE_HAY, ration_feed(GRAIN, most_meal_kg=3), meal_limit_kg=3))
    assert found.fits
    assert abs(found.amounts[MORNING, GRAIN.id] - found.amounts[EVENING, GRAIN.id]) <= BY_WEIGHT_KG


def test_what_would_have_to_give_is_said_with_how_much() -> None:
    """Hay alone is 15.3 Mcal; with 1 kg of corn a meal it is too little."""
    found = mix(made_case(FREE_HAY, ration_feed(GRAIN, most_meal_kg=0.5, most_day_kg=1)))
    assert not found.fits
    assert found.amounts == {(MORNING, GRAIN.id): 0.5, (EVENING, GRAIN.id): 0.5}
    assert [each.need.part for each in found.short] == [Part.ENERGY]
    assert any(each.startswith("energy:") and each.endswith("short") for each in found.in_way)


def test_a_feed_that_she_must_not_get_or_that_is_not_wanted_is_not_in_it() -> None:
    corn = ration_feed(GRAIN)
    case = made_case(FREE_HAY, barred(corn, "corn is not for her"))
    assert mix(case).amounts == {}
    assert [each.says for each in mix(case).left_out] == ["corn is not for her"]
    found = find_mix(made_case(FREE_HAY, corn), Least.COST, without=frozenset((GRAIN.id,)))
    assert isinstance(found, Mix)
    assert found.amounts == {}


def test_a_feed_without_a_price_is_left_out_where_cost_decides() -> None:
    free_of_price: RationFeed = replace(ration_feed(GRAIN), price_per_kg=None)
    case = made_case(FREE_HAY, free_of_price)
    assert mix(case).amounts == {}
    assert [each.what for each in mix(case).left_out] == ["corn"]
    assert mix(case, Least.CHANGE).amounts


def test_what_is_given_and_not_known_must_be_known_first() -> None:
    found = find_mix(made_case(FREE_HAY, ration_feed(GRAIN, without="cp_percent"), now=amounts(0, 2)), Least.COST)
    assert not isinstance(found, Mix)
    assert [each.says for each in found] == [
        "corn is given, and nobody knows what is in it. F, feeds, corn, what it is made of."
    ]


def test_without_needs_there_is_nothing_to_meet() -> None:
    found = find_mix(replace(made_case(FREE_HAY), needs=()), Least.COST)
    assert not isinstance(found, Mix)
    assert [each.says for each in found] == [
        "How much energy Dapple needs is not reckoned, so no mix can be looked for."
    ]


def test_grain_does_not_push_out_the_hay_that_stands_free() -> None:
    """She lacks a little: a little corn more is the least change, whatever becomes of the hay."""
    found = mix(made_case(FREE_HAY, ration_feed(GRAIN), now=amounts(0, 1)), Least.CHANGE)
    cheap = [balance(made_case(FREE_HAY, ration_feed(GRAIN)), amounts(0, n * BY_WEIGHT_KG)) for n in range(60)]
    enough = next(n for n, each in enumerate(cheap) if all(of.verdict is Verdict.ENOUGH and (
        not of.need.least or (of.has and of.has.amount >= of.need.least.amount)) for of in each.lines))  # fmt: skip
    assert found.fits
    assert sum(found.amounts.values()) == enough * BY_WEIGHT_KG


def test_what_is_given_and_has_no_price_stays_where_cost_decides() -> None:
    """Hay of the farm's own never came with a price."""
    own_hay: RationFeed = replace(ration_feed(HAY), price_per_kg=None)
    found = mix(made_case(own_hay, ration_feed(GRAIN), now=amounts(9, 0)))
    assert found.amounts[MORNING, HAY.id] == 9
    assert found.balance.forage_percent is not None
    assert any(each.says.startswith("grass hay has no price and stays as it is") for each in found.left_out)
    free = mix(made_case(replace(FREE_HAY, price_per_kg=None), ration_feed(GRAIN)))
    assert free.fits
    assert any("counted as costing nothing" in each.says for each in free.left_out)


def test_a_mineral_stays_as_it_is() -> None:
    salts = Feed(some_id("salts"), "mineral", soaked=False)
    made = {"dm_percent": 97.0, "cp_percent": 0.0, "tdn_percent": 0.0, "ndf_percent": 0.0, "fat_percent": 0.0,
            "ca_percent": 16.0, "p_percent": 6.0, "nel_mcal": 0.0}  # fmt: skip
    mineral = replace(ration_feed(GRAIN), feed=salts, made={part: value(each, "%") for part, each in made.items()})
    case = made_case(FREE_HAY, ration_feed(GRAIN), mineral, now={(MORNING, salts.id): 0.12})
    for least in Least:
        found = mix(case, least)
        assert found.amounts[MORNING, salts.id] == 0.12
        assert any("stays as it is" in each.says for each in found.left_out)


def test_two_hays_that_stand_free_are_eaten_alike() -> None:
    """What the mix counts of them is what the balance counts."""
    other = Feed(some_id("clover"), "clover hay", soaked=False, baled=True)
    rich = {part: value(each.amount * (2 if part == "cp_percent" else 1), "%") for part, each in FREE_HAY.made.items()}
    clover = replace(FREE_HAY, feed=other, made=rich)
    for protein_g in (1500, 1800, 2100, 2400):
        case = made_case(FREE_HAY, clover, ration_feed(GRAIN))
        needs = tuple(replace(n, least=value(protein_g, "g")) if n.part is Part.PROTEIN else n for n in case.needs)
        found = mix(replace(case, needs=needs))
        whole = line(found.balance.lines, Part.PROTEIN).has
        assert whole is not None
        assert found.fits == (whole.amount >= protein_g)


def test_a_mix_does_not_fit_where_another_line_is_short() -> None:
    """Gain follows from the rest, and no row of the mix asks for it."""
    case = made_case(FREE_HAY, ration_feed(GRAIN))
    gain = Need(Part.GAIN, "kg", least=value(0.6))
    found = mix(replace(case, needs=(*case.needs, gain)))
    assert not found.fits


def test_a_cow_on_forage_only_gets_no_grain_while_she_holds_condition() -> None:
    """Typed grain breaks the rule; once she has slipped, it does not."""
    case = made_case(FREE_HAY, ration_feed(GRAIN), now=amounts(0, 1))
    (head,) = case.heads
    holds = replace(head, forage_only=True, condition=value(3.25, ""), condition_goal=value(3.25, ""))
    kept = replace(case, heads=(holds,))
    assert mix(kept, Least.CHANGE).amounts == {}
    said = "corn: Dapple gets forage only while she holds condition 3.25, your rule."
    assert [each.says for each in mix(kept).left_out] == [said]
    assert said in [each.says for each in balance(kept, amounts(0, 1)).broken]
    slipped = replace(case, heads=(replace(holds, condition=value(3.0, "")),))
    assert mix(slipped, Least.CHANGE).amounts
    assert not balance(slipped, amounts(0, 1)).broken
