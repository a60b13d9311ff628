"""The large sign of a ration says the worst: a limit, what is over, what is short, and of what; never energy alone."""

import pytest
from msgspec.structs import replace

from store.ration.balance import balance
from store.ration.parts import Balance, Case, Line, Need, Part, Verdict
from tests.tui.rations import BARLEY, HAY, MILK, MINERAL, NO_WEIGHT, NUTS, SHEEP, amounts, v
from tui.page import Page
from tui.ration.verdict import Sign, sign_lines, sign_of


def line(part: Part, verdict: Verdict, percent: float | None = None) -> Line:
    """A line of a balance."""
    unit = "%" if part in (Part.FIBRE, Part.FAT) else "g"
    return Line(Need(part, unit, least=v(100.0)), v(percent or 100.0), verdict, percent)


def with_lines(*lines: Line) -> Balance:
    """A balance of some lines, in which no limit is broken."""
    return replace(balance(MILK, MILK.now), lines=lines, broken=())


ENERGY, PROTEIN = line(Part.ENERGY, Verdict.ENOUGH, 100), line(Part.PROTEIN, Verdict.ENOUGH, 100)
CASES: dict[str, tuple[tuple[Line, ...], tuple[str, str, str]]] = {
    "all of it": ((ENERGY, PROTEIN), ("ENOUGH", "energy and protein", "")),
    "little protein": ((ENERGY, line(Part.PROTEIN, Verdict.SHORT, 81)), ("SHORT OF", "protein", "81%")),
    "the shorter of two": (
        (line(Part.ENERGY, Verdict.SHORT, 90), line(Part.PROTEIN, Verdict.SHORT, 70)), ("SHORT OF", "protein", "70%")),
    "protein before calcium": (
        (line(Part.CALCIUM, Verdict.SHORT, 50), line(Part.PROTEIN, Verdict.SHORT, 90)), ("SHORT OF", "protein", "90%")),
    "calcium alone": ((ENERGY, PROTEIN, line(Part.CALCIUM, Verdict.SHORT, 50)), ("SHORT OF", "calcium", "50%")),
    "little fibre": ((ENERGY, PROTEIN, line(Part.FIBRE, Verdict.SHORT, 90)), ("SHORT OF", "fibre", "")),
    "fat over, energy short": (
        (line(Part.ENERGY, Verdict.SHORT, 70), line(Part.FAT, Verdict.OVER, 120)), ("OVER", "fat", "")),
    "protein not known": ((ENERGY, line(Part.PROTEIN, Verdict.NOT_KNOWN)), ("NOT KNOWN", "protein", "")),
    "no line of energy": ((PROTEIN,), ("NOT KNOWN", "energy", "")),
}  # fmt: skip


@pytest.mark.parametrize("name", CASES)
def test_the_worst_is_said(name: str) -> None:
    lines, (word, of, percent) = CASES[name]
    found = sign_of(MILK, with_lines(*lines))
    assert found is not None
    assert (found.word, found.of, found.percent) == (word, of, percent)


def sign_with(case: Case, found: Balance) -> Sign:
    """The sign, which is there."""
    sign = sign_of(case, found)
    assert sign is not None
    return sign


def test_a_broken_limit_comes_before_what_is_short() -> None:
    much = amounts((NUTS, 3.5, 1.0), (HAY, 4.0, 4.0))
    found = sign_with(MILK, balance(MILK, much))
    assert (found.word, found.of) == ("OVER", "dairy nuts")


def test_a_meal_of_several_feeds_that_is_too_big_is_over_the_meal_limit() -> None:
    found = sign_with(MILK, balance(MILK, amounts((NUTS, 2.9, 1.0), (BARLEY, 0.5, 0), (HAY, 4.0, 4.0))))
    assert (found.word, found.of) == ("OVER", "meal limit")


def test_what_must_not_be_fed_at_all_is_never_whatever_is_kept_of_their_needs() -> None:
    found = sign_with(SHEEP, balance(SHEEP, amounts((MINERAL, 0.1, 0))))
    assert (found.word, found.of) == ("NEVER", "cattle mineral")


def test_where_no_needs_are_kept_and_nothing_is_broken_there_is_no_sign() -> None:
    assert sign_of(SHEEP, balance(SHEEP, SHEEP.now)) is None


def test_without_a_weight_it_is_not_known() -> None:
    assert sign_with(NO_WEIGHT, balance(NO_WEIGHT, NO_WEIGHT.now)).word == "NOT KNOWN"


@pytest.mark.parametrize(
    ("percent", "of", "width", "beside"),
    [
        ("77%", "energy", 100, ""),
        ("77%", "energy", 77, " 77%"),
        ("77%", "protein", 77, " PROTEIN 77%"),
        ("77%", "energy", 57, " ENERGY 77%"),
    ],
)
def test_what_it_is_of_stands_large_where_there_is_room_else_beside(
    percent: str, of: str, width: int, beside: str
) -> None:
    rows = Page(tuple(sign_lines(Sign("SHORT OF", of, percent), width))).text().splitlines()
    assert len(rows) == 3
    assert max(map(len, rows)) <= width
    assert rows[1].endswith(beside)
    assert ("ENERGY" in rows[1]) == (width < 60)


def test_a_feed_without_large_letters_is_said_in_plain_ones() -> None:
    page = Page(tuple(sign_lines(Sign("OVER", "干草"), 20))).text()
    assert "干草" in page
