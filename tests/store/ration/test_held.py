"""What a case hands to the cautions."""

from msgspec.structs import replace

from store.book.words import Species
from store.ration.held import held
from tests.store.ration.small_ration import GRAIN, HAY, amounts, made_case, ration_feed


def test_what_is_given_what_stands_free_and_whom_it_can_reach() -> None:
    hay = replace(ration_feed(HAY), free=True)
    found = held(made_case(hay, ration_feed(GRAIN)), amounts(0, 2), [Species.SHEEP], changed=True)
    assert [(each.kg, each.free) for each in found.fed] == [(0.0, True), (2.0, False)]
    assert Species.SHEEP in found.species
    assert found.changed


def test_the_lightest_head_counts_and_none_where_a_weight_is_not_known() -> None:
    case = made_case(ration_feed(HAY))
    light = [replace(head, weight_kg=None) for head in case.heads]
    assert held(replace(case, heads=tuple(light)), {}).weight_kg is None
