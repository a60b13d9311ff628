"""Why: the numbers of a place; Enter walks into one, and on into what it is made of, down to what was typed or set."""

import re
from collections.abc import Sequence
from itertools import chain
from typing import ClassVar

from store.book.words import Units
from store.husbandry.why import Value
from store.round.dialect import said
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, apart, line, width_of, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, Over, Place, Rooms
from tui.view import BACKSPACE, ENTER, PAGE_KEYS, Key, go_back
from tui.why.amounts import exactly, shown
from tui.why.terms import source_words, terms_of

IN_KILOGRAMS = "Reckoned in kilograms, litres and degrees C; said in your units."
AMOUNT_COLUMN = 46
_NOUGHTS = re.compile(r"\.0+(?= )|(?<=\.\d)0+(?= )")
"""Places of a number that say nothing."""


class Why(Over):
    """Over the place whose numbers these are."""

    def __init__(self, rooms: Rooms, back: Place, heading: str, values: tuple[Value, ...]) -> None:
        """At the list of the numbers. heading: whose they are."""
        super().__init__(rooms, back)
        self.heading, self.values = heading, values
        self.path: list[Value] = []
        self.rows = [0]
        """The marked line of the list, and of each number walked into."""

    @property
    def lines(self) -> Sequence[Value]:
        """What can be walked into: the numbers of the place, or what the one at hand is made of."""
        return tuple(self.path[-1].inputs.values()) if self.path else self.values

    def choose(self, by: int) -> Place:
        """Another line; past the first and the last of them, more of the page."""
        row = self.rows[-1] + by
        if self.scroll.moved or not 0 <= row < len(self.lines):
            return self.move(by)
        self.rows[-1] = row
        return self

    def enter(self) -> Place:
        """Into the marked number."""
        if not self.lines:
            return self.say("Nothing stands behind it: this is where it comes from. Backspace goes back up.")
        self.path.append(self.lines[self.rows[-1]])
        self.rows.append(0)
        self.scroll.moved = 0
        return self

    def enter_words(self) -> str:
        """Nothing where nothing stands behind the number at hand."""
        return "how it is reckoned" if self.lines else ""

    def back(self) -> Place:
        """Back up; from the list to the place."""
        if not self.path:
            return super().back()
        self.path.pop()
        self.rows.pop()
        self.scroll.moved = 0
        return self

    def draw(self, size: Size) -> Page:
        """The list, or the number at hand with what it is made of."""
        way = " > ".join([f"WHY  {self.heading}", *(self._said(each.name) for each in self.path[:-1])])
        body: list[Line] = [(), *wrapped(way, size.width, Role.STRONG, "  "), ()]
        body += self._number(self.path[-1], size) if self.path else self._inputs(self.values, size.width)
        return framed(self, body, size)

    def _number(self, value: Value, size: Size) -> list[Line]:
        """Its name and amount, how it reads, what is in it, its source and how sure, what makes it unsure."""
        width = size.width
        body = [*wrapped(f"{self._said(value.name)} = {self._amounts(value)}", width, Role.AMOUNT, "  "), ()]
        how = ("HOW", self._said(value.equation.reads)) if value.equation else ("FROM", value.came)
        body += _told(*how, width)
        body += [*self._inputs(tuple(value.inputs.values()), width)]
        source = value.equation.source if value.equation else value.source
        body += _told("SOURCE", source_words(source), width) if source else []
        for doubt in dict.fromkeys(value.doubts()):
            body += _told("UNSURE", doubt, width, Role.WARNING)
        us = [IN_KILOGRAMS] if value.equation and self.units is Units.US else []
        for term in (*terms_of(value), *us):
            body += wrapped(self._said(term), width, Role.QUIET, "  ")
        return body

    def _amounts(self, value: Value) -> str:
        """As the place says it, and exactly where that is more."""
        told, exact = shown(value, self.units, self.walker.zone), exactly(value, self.units, self.walker.zone)
        return told if told == exact or _NOUGHTS.sub("", told) == exact else f"{told}, exactly {exact}"

    def _inputs(self, values: Sequence[Value], width: int) -> list[Line]:
        """A line for each number: its name, amount and where it came from; one is marked."""
        return [row for at, value in enumerate(values) for row in self._input(at, value, width)]

    def _input(self, at: int, value: Value, width: int) -> list[Line]:
        say = shown if not self.path else exactly
        amount, here = say(value, self.units, self.walker.zone), at == self.rows[-1]
        came = "reckoned: Enter shows how" if value.equation else value.came
        name = f" {'>' if here else ' '} {self._said(value.name)}"
        wide = min(width - 3, max(AMOUNT_COLUMN, width_of([Span(f"{name}  {amount} ")])))
        first = Span(apart(name, f"{amount} ", wide), Role.HERE if here else Role.TEXT)
        if wide + len(came) + 5 < width:
            return [line("  ", first, Span(f"  {came}", Role.QUIET))]
        return [line("  ", first), *wrapped(came, width, Role.QUIET, "       ")]

    def _said(self, words: str) -> str:
        known = self.walker.snapshot
        own = ([each.name for each in things] for things in (known.feeds.values(), known.animals, known.pens))
        return said(words, self.walker.farm.dialect, chain.from_iterable(own))

    @property
    def units(self) -> Units:
        """The farm's."""
        return self.walker.farm.units

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key((*ENTER, "right"), "Enter", enter_words, "Into the marked number: what it is made of.",
            lambda place: place.enter()),
        Key(("up",), "Up Down", "line", "The number above or below.", lambda place: place.choose(-1)),
        Key(("down",), "Down", "", "", lambda place: place.choose(1)),
        Key((*BACKSPACE, "left", "escape"), "Backspace", "back", "Back up a number; from the list to the place.",
            go_back),
        Key(("w",), "W", "", "From any depth to the place it was opened at.", lambda place: place.came_from),
        *PAGE_KEYS,
        HELP_KEY,
        LEAVE_KEY,
    )  # fmt: skip


def _told(heading: str, words: str, width: int, role: Role = Role.TEXT) -> list[Line]:
    first, *rest = wrapped(words, width - 10, role, "")
    return [line(f"  {heading:<8}", *first), *(line(" " * 10, *row) for row in rest)]
