"""A number and why: what it was made of, by which equation, where each part came from, and how sure that is.

An equation of the trade carries what is known of it as data: how it reads, its unit, the range that it was made for,
where it stands printed, and printed examples. The outside checks, the page that answers why, and the program's own sums
read that one place. `EQUATION.of(...)` gives a `Value`, which remembers what it was made of, down to what was typed.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from enum import StrEnum
from statistics import fmean
from typing import Generic, ParamSpec, TypeAlias

from msgspec import Struct

P = ParamSpec("P")
Range: TypeAlias = tuple[float, float]


class Sure(StrEnum):
    """How well a source stands, best first."""

    PRINTED = "printed"  # read in the source that is named
    MEMORY = "from memory"  # recalled from the source that is named, not read again
    PRACTICE = "common practice"
    ASSUMED = "assumed"  # a cautious starting value of ours


class Source(Struct, frozen=True):
    """Where an equation, a figure or a printed example stands."""

    words: str
    sure: Sure = Sure.PRINTED


class Printed(Struct, frozen=True):
    """A worked example: what a source prints for some inputs. within: half of its last digit, or more where it says so.

    source: the page and the table; rows of one table have the same words, and count as one check.
    """

    gives: float
    within: float
    source: Source
    inputs: Mapping[str, float]


class Value(Struct, frozen=True):
    """A number that reaches a screen. amount: in unit. came: where it is from, as `weighed 3 Mar`, `your setting`.

    equation None: it was typed, weighed, set, or stands in a table, whose source may be known. inputs: by argument.
    """

    amount: float
    name: str
    unit: str
    came: str
    equation: "Equation[...] | None" = None
    inputs: Mapping[str, "Value"] = {}
    source: Source | None = None

    def doubts(self) -> Iterator[str]:
        """What makes it unsure: inputs beyond the range that an equation was made for, here and further down."""
        if self.equation:
            yield from self.equation.beyond(self.inputs)
        for each in self.inputs.values():
            yield from each.doubts()

    def sources(self) -> Iterator[Source]:
        """Every source that it rests on, here and further down."""
        own = self.equation.source if self.equation else self.source
        if own:
            yield own
        for each in self.inputs.values():
            yield from each.sources()


class Equation(Struct, Generic[P], frozen=True):
    """One equation of the trade. Called with plain numbers it gives a plain number; `of` gives a Value.

    reads: in words that a keeper can follow, as `0.080 x weight^0.75`. ranges: by argument, where it holds by its
    source; beyond that a number still comes out, and says that it is unsure.
    """

    name: str
    reads: str
    unit: str
    source: Source
    formula: Callable[P, float]
    printed: tuple[Printed, ...] = ()
    ranges: Mapping[str, Range] = {}

    def __call__(self, *args: P.args, **kwargs: P.kwargs) -> float:
        """The number alone. Raises ValueError for impossible input, as the formula does."""
        return self.formula(*args, **kwargs)

    def of(self, name: str = "", /, **inputs: Value) -> Value:
        """The number with its why. name: what it is called here, else as the equation. Raises ValueError as above."""
        formula: Callable[..., float] = self.formula
        amount = formula(**{each: value.amount for each, value in inputs.items()})
        return Value(amount, name or self.name, self.unit, "reckoned", self, inputs)

    def beyond(self, inputs: Mapping[str, Value]) -> Iterator[str]:
        """A sentence for each input that lies outside of the range of this equation."""
        for each, (least, most) in self.ranges.items():
            found = inputs.get(each)
            if found and not least <= found.amount <= most:
                made_for = f"{self.name} is made for {least:g} to {most:g} {found.unit}"
                yield f"{found.name} is {found.amount:g}; {made_for}, and unsure beyond that"


def equation(
    name: str, reads: str, unit: str, source: Source, *printed: Printed, **ranges: Range
) -> Callable[[Callable[P, float]], Equation[P]]:
    """Makes a function an Equation: its name, how it reads, where from, printed examples, ranges by argument."""
    return lambda formula: Equation(name, reads, unit, source, formula, printed, ranges)


def example(gives: float, within: float, source: Source, **inputs: float) -> Printed:
    """A printed example of an equation, its inputs by argument."""
    return Printed(gives, within, source, inputs)


def given(amount: float, name: str, unit: str, came: str, source: Source | None = None) -> Value:
    """A number that is not reckoned: typed, weighed, set, or from a table."""
    return Value(amount, name, unit, came, source=source)


ARITHMETIC = Source("plain arithmetic", Sure.PRACTICE)
"""Nothing that could be otherwise: a sum, a difference, a share."""
TOTAL = Equation("together", "the sum of these", "", ARITHMETIC, lambda **parts: sum(parts.values()))
LEAST = Equation("the least", "the least of these", "", ARITHMETIC, lambda **parts: min(parts.values()))
MEAN = Equation("the mean", "the sum of these / how many", "", ARITHMETIC, lambda **parts: fmean(parts.values()))


def of_all(made: "Equation[...]", name: str, unit: str, parts: Iterable[Value]) -> Value:
    """Of any number of values of one unit: TOTAL, LEAST, MEAN. Raises ValueError where there is none."""
    inputs = {f"part_{at}": part for at, part in enumerate(parts)}
    amount = made.formula(**{each: part.amount for each, part in inputs.items()})
    return Value(amount, name, unit, "reckoned", made, inputs)


def total(name: str, unit: str, parts: Iterable[Value]) -> Value:
    """The sum of any number of values of one unit."""
    return of_all(TOTAL, name, unit, parts)
