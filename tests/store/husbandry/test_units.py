"""What a keeper calls a unit."""

import pytest

from store.husbandry import units
from store.husbandry.units import Unit, spoken

EVERYWHERE = [
    ("kg", units.KG), ("kilos", units.KG), ("g", units.G), ("grams", units.G), ("lb", units.LB), ("lbs", units.LB),
    ("pounds", units.LB), ("oz", units.OZ), ("ounces", units.OZ), ("l", units.L), ("litre", units.L),
    ("liters", units.L), ("ml", units.ML), ("usgal", units.US_GAL), ("usqt", units.US_QT), ("uspt", units.US_PT),
    ("igal", units.IMPERIAL_GAL), ("iqt", units.IMPERIAL_QT), ("ipt", units.IMPERIAL_PT),
    ("impgal", units.IMPERIAL_GAL), ("impqt", units.IMPERIAL_QT), ("imppt", units.IMPERIAL_PT),
]  # fmt: skip
OF_THE_FARM = [
    ("gal", units.IMPERIAL_GAL, units.US_GAL),
    ("gallons", units.IMPERIAL_GAL, units.US_GAL),
    ("qt", units.IMPERIAL_QT, units.US_QT),
    ("quart", units.IMPERIAL_QT, units.US_QT),
    ("pt", units.IMPERIAL_PT, units.US_PT),
    ("pints", units.IMPERIAL_PT, units.US_PT),
]


@pytest.mark.parametrize("american", [False, True])
@pytest.mark.parametrize(("word", "unit"), EVERYWHERE)
def test_most_words_mean_the_same_on_every_farm(word: str, unit: Unit, american: bool) -> None:
    """A kilo is a kilo, and a gallon with its country said is that gallon."""
    assert spoken(word, american=american) == unit


@pytest.mark.parametrize(("word", "imperial", "american"), OF_THE_FARM)
def test_a_bare_gallon_quart_or_pint_is_the_farms_own(word: str, imperial: Unit, american: Unit) -> None:
    """Imperial where the farm is metric, American where it is not."""
    assert spoken(word, american=False) == imperial
    assert spoken(word, american=True) == american


@pytest.mark.parametrize("word", ["LB", "Lb", "lb.", "Lb."])
def test_capitals_and_a_full_stop_are_no_matter(word: str) -> None:
    """As one writes it on a feed bag."""
    assert spoken(word, american=False) == units.LB


@pytest.mark.parametrize("word", ["", ".", "scoop", "stone", "k g", "lbb"])
def test_what_is_no_unit_is_none(word: str) -> None:
    """Nothing is guessed."""
    assert spoken(word, american=False) is None
