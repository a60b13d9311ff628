"""Every printed example that stands beside an equation, against that equation."""

import pytest

from store.husbandry.why import Equation, Printed
from tests.outside.counted import equations


@pytest.mark.parametrize(
    ("made", "printed"),
    [pytest.param(made, each, id=f"{made.name}: {each.gives:g}") for _, made in equations() for each in made.printed],
)
def test_a_printed_example_comes_out(made: "Equation[...]", printed: Printed) -> None:
    assert made.formula(**printed.inputs) == pytest.approx(printed.gives, abs=printed.within), printed.source.words


def test_what_is_said_of_an_equation_is_in_it() -> None:
    """Its ranges and its examples are told of its own arguments, and every one has a source in words."""
    for _, made in equations():
        arguments = set(made.formula.__code__.co_varnames[: made.formula.__code__.co_argcount])
        assert set(made.ranges) <= arguments, made.name
        assert all(set(each.inputs) <= arguments and each.source.words for each in made.printed), made.name
        assert made.source.words, made.name
