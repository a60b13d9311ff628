"""What must hold of every why: each number comes out of its inputs, each leaf says where it is from."""

from collections.abc import Iterator

import pytest

from store.husbandry.why import Value


def nodes(value: Value) -> Iterator[Value]:
    """A number, and all that it is made of, down to the leaves."""
    yield value
    for each in value.inputs.values():
        yield from nodes(each)


def comes_out(value: Value) -> None:
    """Every equation, fed with the inputs that the why lists, gives the amount that it says; every leaf has a home."""
    for node in nodes(value):
        if node.equation:
            inputs = {name: each.amount for name, each in node.inputs.items()}
            assert node.equation.formula(**inputs) == pytest.approx(node.amount), node.name
            assert node.equation.source.words, node.name
            assert node.inputs, node.name
        else:
            assert node.came, node.name
        assert node.name
