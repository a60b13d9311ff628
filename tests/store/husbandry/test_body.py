"""Weights by the tape, condition and growth: their ranges, and what is refused."""

import pytest
from hypothesis import given as over
from hypothesis import strategies as st

from store.husbandry.body.condition import (
    BEEF_SCALE,
    DAIRY_SCALE,
    TARGETS,
    beef_points,
    dairy_points,
    points_feed_kg,
)
from store.husbandry.body.girth import spread_kg, weight_by_girth_kg
from store.husbandry.body.growth import (
    gain_kg_day,
    holstein_heifer_kg,
    on_a_line,
    part_of_mature_percent,
    wanted_kg,
)
from store.husbandry.why import given


def test_a_tape_beyond_its_range_says_that_it_is_unsure() -> None:
    """A small calf: the curve has turned there."""
    found = weight_by_girth_kg.of(girth_cm=given(54, "girth", "cm", "measured"))
    assert found.amount == pytest.approx(24.8, abs=0.1)
    assert list(found.doubts()) == [
        "girth is 54; weight by heart girth is made for 80 to 200 cm, and unsure beyond that"
    ]
    assert not list(weight_by_girth_kg.of(girth_cm=given(160, "girth", "cm", "measured")).doubts())


@pytest.mark.parametrize(("girth_cm", "kg"), [(80, 42.6), (100, 80.6), (120, 139.9), (160, 322.2), (180, 445.3)])
def test_a_heifer_by_the_tape(girth_cm: float, kg: float) -> None:
    assert weight_by_girth_kg(girth_cm) == pytest.approx(kg, abs=0.05)


@over(st.floats(80, 199), st.floats(0.1, 1))
def test_a_longer_tape_is_a_heavier_heifer(girth_cm: float, more_cm: float) -> None:
    assert weight_by_girth_kg(girth_cm + more_cm) > weight_by_girth_kg(girth_cm)
    least, most = spread_kg(weight_by_girth_kg(girth_cm))
    assert least < weight_by_girth_kg(girth_cm) < most


@over(st.floats(*DAIRY_SCALE))
def test_the_scales_turn_into_each_other(points: float) -> None:
    assert dairy_points(beef_points(points)) == pytest.approx(points)
    assert BEEF_SCALE[0] <= beef_points(points) <= BEEF_SCALE[1]


def test_half_a_point_in_hay() -> None:
    """Half a dairy point of 50 kg, 5.12 Mcal a kg, hay of 1.28: 100 kg of dry matter."""
    assert points_feed_kg(0.5, 50, 1.28) == pytest.approx(100)


def test_every_target_lies_on_its_scale() -> None:
    for each in TARGETS:
        assert each.scale[0] <= each.least <= each.most <= each.scale[1]


def test_a_heifer_at_her_age() -> None:
    """30, 60 and 90 % of 600 kg, between them evenly, beyond them no further."""
    assert [wanted_kg(age, 600) for age in (3, 6, 10.5, 15, 22, 30)] == pytest.approx([180, 180, 270, 360, 540, 540])
    assert holstein_heifer_kg(9) == pytest.approx((167.2 + 299.1) / 2)
    assert part_of_mature_percent(wanted_kg(15, 640), 640) == pytest.approx(60)


def test_what_cannot_be_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="days is 0; two weights of one day"):
        gain_kg_day(300, 310, 0)
    with pytest.raises(ValueError, match="mature_kg is 0"):
        part_of_mature_percent(300, 0)
    with pytest.raises(ValueError, match="nel_mcal is 0"):
        points_feed_kg(1, 50, 0)
    with pytest.raises(ValueError, match="girth_cm is -1"):
        weight_by_girth_kg(-1)
    with pytest.raises(ValueError, match="a line has at least two"):
        on_a_line([(1.0, 2.0)], 1)
