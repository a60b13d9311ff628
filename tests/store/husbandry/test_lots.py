"""Which delivery the newest lot of a feed began with."""

import pytest

from store.husbandry.lots import lot_began


@pytest.mark.parametrize(
    ("lots", "at"),
    [(["B", "A"], 0), (["B", "B", "A"], 1), (["A"], 0), (["A", "A"], 1), (["", ""], 0), (["B", "", "B"], 0)],
)
def test_a_lot_began_with_the_first_delivery_of_it_in_a_row(lots: list[str], at: int) -> None:
    """A lot that was not written may be another one."""
    assert lot_began(lots) == at


def test_no_delivery_has_no_lot() -> None:
    with pytest.raises(ValueError, match="lots is empty"):
        lot_began([])
