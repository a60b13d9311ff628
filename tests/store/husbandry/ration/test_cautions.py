"""Each caution where a ration calls for it, and not where it does not."""

import pytest

from store.book.words import Species, Stage
from store.husbandry.feeds.made import made
from store.husbandry.ration.cautions import (
    CALF,
    CATTLE,
    CAUTIONS,
    CLOSE_UP,
    COTTONSEED,
    DECIDE,
    DRY,
    HORSE,
    IN_MILK,
    MINERAL,
    SHEEP,
    UNCHECKED,
    Fed,
    Held,
    cautions,
    checked,
)

HAY, BARLEY, LUCERNE = "Grass hay, mid (55-60 % NDF)", "Barley, rolled", "Lucerne (alfalfa) hay, early bloom"
NUTS, OIL = "Compound: dairy or cattle nuts, mixed feed, 16 % protein", "Vegetable oil, rice bran oil"


def fed(kg: float, resembles: str, name: str = "") -> Fed:
    """So much of a feed that is as a row of the table."""
    return Fed(name or resembles, resembles, kg, made({}, "table", resembles))


def held(
    *each: Fed, species: str = CATTLE, stage: str = IN_MILK, kg: float | None = 500, changed: bool = False
) -> Held:
    return Held(each, frozenset({CATTLE, species}), frozenset({stage}), kg, changed)


WITH = {
    "change": held(fed(10, HAY), changed=True),
    "starch": held(fed(10, HAY), fed(3, BARLEY)),
    "whole grain": held(fed(2, BARLEY, "whole barley")),
    "fat": held(fed(0.2, OIL)),
    "copper": held(fed(0.1, MINERAL), species=SHEEP),
    "medicated feed": held(fed(2, NUTS), species=HORSE),
    "calcium before calving": held(fed(5, LUCERNE), stage=CLOSE_UP),
    "young calves": held(fed(0.2, COTTONSEED), stage=CALF),
}
WITHOUT = {
    "change": held(fed(10, HAY)),
    "starch": held(fed(10, HAY), fed(2.5, BARLEY)),
    "whole grain": held(fed(2, BARLEY, "rolled barley"), fed(1, "Whole cottonseed, linted")),
    "fat": held(fed(0, OIL), fed(2, BARLEY)),
    "copper": held(fed(0.1, MINERAL)),
    "medicated feed": held(fed(2, BARLEY), species=HORSE),
    "calcium before calving": held(fed(5, LUCERNE)),
    "young calves": held(fed(1, COTTONSEED)),
}


@pytest.mark.parametrize("caution", [pytest.param(each, id=each.of) for each in CAUTIONS])
def test_a_caution_is_said_where_it_is_called_for_alone(caution: object) -> None:
    of, says = getattr(caution, "of", ""), getattr(caution, "says", "")
    assert says in cautions(WITH[of])
    assert says not in cautions(WITHOUT[of])


def test_grain_of_a_head_whose_weight_nobody_knows_is_cautioned_of() -> None:
    assert len(cautions(held(fed(0.5, BARLEY), kg=None))) == 2


def test_cows_on_hay_bear_less_grain_than_milking_ones() -> None:
    assert cautions(held(fed(2, BARLEY))) == ()
    assert cautions(held(fed(2, BARLEY), stage=DRY)) != ()


def test_who_decides_is_said_once_and_last() -> None:
    said = cautions(held(fed(3, BARLEY), fed(0.2, OIL), fed(2, NUTS), species=HORSE, changed=True))
    assert said[-1] == DECIDE
    assert len(said) == len(set(said)) == 5
    assert cautions(held(fed(10, HAY))) == ()


def test_a_ration_is_unchecked_until_somebody_is_named() -> None:
    assert checked(None) == checked(" ") == UNCHECKED
    assert checked("the vet, in March") == ""


def test_the_words_are_those_of_the_book() -> None:
    assert {CATTLE, SHEEP, HORSE} <= set(Species)
    assert {CLOSE_UP, DRY, IN_MILK, CALF} <= set(Stage)


@pytest.mark.parametrize("caution", [pytest.param(each, id=each.of) for each in CAUTIONS])
def test_a_caution_is_short_has_a_source_and_names_no_dose(caution: object) -> None:
    says = getattr(caution, "says", "")
    assert len(says) <= 120
    assert " mg" not in says
    assert getattr(caution, "source").words  # noqa: B009


def test_what_stands_free_is_held_though_no_plan_gives_it() -> None:
    tub = Fed("tub", MINERAL, 0.0, free=True)
    assert len(cautions(held(tub, species=SHEEP))) == 2
    assert cautions(held(Fed("tub", MINERAL, 0.0), species=SHEEP)) == ()
