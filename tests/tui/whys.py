"""What must hold of every why: each number comes out of its inputs, each leaf says where it is from."""

import re
from collections.abc import Iterator
from datetime import date

import pytest

from store.book.words import Units
from store.husbandry.measures import in_quarters
from store.husbandry.moments import DAY, MOMENT
from store.husbandry.why import Value
from tui.letters import large
from tui.why.amounts import in_units, shown
from tui.words import spelled


def nodes(value: Value) -> Iterator[Value]:
    """A number, and all that it is made of, down to the leaves."""
    yield value
    for each in value.inputs.values():
        yield from nodes(each)


def comes_out(value: Value) -> None:
    """Every equation, fed with the inputs that the why lists, gives the amount that it says; every leaf has a home."""
    for node in nodes(value):
        assert node.name
        if node.equation:
            inputs = {name: each.amount for name, each in node.inputs.items()}
            assert node.equation.formula(**inputs) == pytest.approx(node.amount), node.name
            assert node.equation.source.words, node.name
            assert node.inputs, node.name
        else:
            assert node.came, node.name


def is_said(value: Value, page: str, units: Units, zone: str) -> bool:
    """Whether a page, as it is drawn, says the amount of a number."""
    ways = list(_ways(value, units, zone))
    small = any(re.search(rf"(?<![\d.]){re.escape(words)}(?![\d.]\d)", page) for words in ways)
    return small or any(_large(words.split(" kg")[0], page) for words in ways)


def _large(words: str, page: str) -> bool:
    """Whether a page says it in large letters."""
    return any(rows and all(row.rstrip() in page for row in rows) for rows in (large(words, size) for size in (1, 2)))


def _ways(value: Value, units: Units, zone: str) -> Iterator[str]:
    """As a place may say it: with or without its unit beside it, in words, a time without its day."""
    words = shown(value, units, zone)
    amount, unit = in_units(value.amount, value.unit, units)
    yield words
    if value.unit == MOMENT:
        yield words.split()[-1]
    elif value.unit == DAY:
        on = date.fromordinal(round(amount))
        yield from (f"{on:%A}", f"{on.day} {on:%B}")
    elif value.equation is in_quarters:
        yield from (spelled(value.amount), words.removesuffix(f" {value.unit}"))
    else:
        yield from _by_unit(words, amount, unit)


def _by_unit(words: str, amount: float, unit: str) -> Iterator[str]:
    if unit == "%":
        yield f"{abs(round(amount))} %" if round(amount) else "as much as"
    elif unit.endswith("/h"):
        yield f"{amount:.3f}"
    elif unit == "heads":
        yield f"{amount:.0f}"
    elif unit in ("kg", "lb"):
        yield words.split(maxsplit=1)[0]
    elif "/" in unit:
        yield from (words.split(maxsplit=1)[0], words.replace("/", " a "))
