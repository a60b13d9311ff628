"""Y: her last milkings, newest first: each with its hours, and where it lies against her usual."""

from collections.abc import Iterator
from typing import ClassVar

from store.book.facts.farm import Animal
from store.book.reading.lactation import read_lactation
from store.book.words import EVENING, MORNING, Fate, Units
from store.husbandry.why import Value
from store.round.looking_back import NEWEST, LookBack, looking_back
from store.round.saying import weight
from store.round.timed import GOT_OUT, LEFT_IN, NOT_KNOWN, PART, TOO_LONG, TimedPail
from store.round.whys.lactation import MilkTold, milk_values
from store.round.whys.past import back_numbers
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, cut, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, WHY_KEY, Over, Place, Rooms
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, go_back
from tui.walk.judged_lines import percent_words, rate_words
from tui.words import day, hours
from tui.yard.milk_told import only_hers, told_lines

LAST = 14
"""So many of her pails are counted for what she held back: a week of two a day."""
SLOT = {MORNING: "a.m.", EVENING: "p.m."}
USE = {Fate.OTHER_ANIMALS: "animals", Fate.SOLD_OR_GIVEN: "sold", Fate.THROWN_AWAY: "away"}
"""Uses that are too long for a column."""
MARK = {PART: "part only", GOT_OUT: "calf out", LEFT_IN: "some left", NOT_KNOWN: "", TOO_LONG: "over 24 h"}
"""Why a pail does not compare, for a column; that its hours are not known is said in theirs."""
LEAST, MOST = 70.0, 130.0
"""From where to where the strip goes; beyond, < and > say so. [%]"""
LEGEND = "  # compares  o does not  - her usual before it, | its middle, by the hours"
TABLE, STRIP_MOST = 61, 41
"""Columns that the table takes, and the strip at most."""


class LookingBack(Over):
    """A cow's milkings as a table, with a strip of where each pail lies."""

    def __init__(self, rooms: Rooms, back: Place, animal: Animal) -> None:
        """Of an animal; read from the snapshot."""
        super().__init__(rooms, back)
        self.animal = animal
        self.found = looking_back(self.walker.snapshot, animal.id)
        self.told = self._told()

    def _told(self) -> MilkTold:
        """What her pails say beyond themselves; read anew each time that one looks back."""
        asked = self.as_asked()
        calves = only_hers(asked.snapshot, self.animal.id)
        known = read_lactation(self.walker.book.desk, self.animal, calves, asked.now, asked.zone)
        return milk_values(asked, self.animal, self.found, known)

    def numbers(self) -> tuple[Value, ...]:
        """What is said above the table, then each milking an hour."""
        return (*self.told.values(), *back_numbers(self.as_asked(), self.found))

    def numbers_of(self) -> str:
        """Whose they are."""
        return f"{self.animal.name}, looking back"

    def draw(self, size: Size) -> Page:
        """The heads, then a row for each milking."""
        told = told_lines(self.told, self.units, size) if self.found.pails else []
        return framed(self, [*self._head(size), *told, *self._table(size)], size)

    def _head(self, size: Size) -> list[Line]:
        name = self.animal.name.upper()
        if not self.found.pails:
            sentence = f"{name}  no milking to look back at. They are kept of cows in milk and dry cows."
            return [(), *wrapped(sentence, size.width, Role.STRONG, "  ")]
        return [line(Span(cut(f"  {name}  {self._sums()}", size.width), Role.STRONG))]

    def _sums(self) -> str:
        """What she gives, and how often she held back."""
        given = (
            ""
            if self.found.day_kg is None
            else f"fills {weight(self.found.day_kg, self.units)} in 24 h ({len(self.found.compared)} pails)"
        )
        held, of = self.found.held_back(LAST), min(LAST, len(self.found.pails))
        trend = self.found.trend_percent
        newest = "" if trend is None else f"last {NEWEST}: {percent_words(trend)} those before"
        return ", ".join(filter(None, (given, newest, f"held back {held} of {of}" if held else "")))

    @property
    def units(self) -> Units:
        """The farm's."""
        return self.walker.farm.units

    def _table(self, size: Size) -> Iterator[Line]:
        if not self.found.pails:
            return
        yield line(Span(cut(LEGEND, size.width), Role.QUIET))
        unit, wide = ("lb" if self.units is Units.US else "kg"), _strip_width(size)
        yield line(
            Span(f"  {'round':<15}{unit:>6}  {'hours':<10}{unit + '/h':<7}{'use':<8}{'marks':<11}{_scale(wide)}")
        )
        for each in self.found.pails:
            yield (Span(f"  {_round(each):<15}"), *self._row(each, wide))

    def _row(self, each: TimedPail, wide: int) -> Iterator[Span]:
        pail = each.pail
        if pail.milk_kg is None:
            why = "still on paper" if pail.on_paper else f"not milked: {pail.typed or 'no reason typed'}"
            yield Span(f"   {why}", Role.QUIET)
            return
        took = "not known" if each.elapsed_h is None else hours(each.elapsed_h)
        rate = "" if each.kg_h is None else rate_words(each.kg_h, self.units)
        use = USE.get(pail.fate, pail.fate.value) if pail.fate else ""
        mark = MARK.get(each.why_not, each.why_not)
        yield Span(f"{weight(pail.milk_kg, self.units).split()[0]:>6}", Role.STRONG)
        yield Span(f"  {took:<10}{rate:<7}{use:<8}{mark:<11}")
        yield Span(strip(self.found, each, wide), Role.TEXT)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key((*ENTER, *BACKSPACE, "y", "left", "escape"), "Enter", "back", "Back; nothing is written.", go_back),
        *SCROLL_KEYS,
        WHY_KEY,
        HELP_KEY,
        LEAVE_KEY,
    )


def _round(each: TimedPail) -> str:
    turn = each.pail.turn
    return f"{day(turn.day)} {SLOT.get(turn.slot, turn.slot)}" if turn else ""


def _strip_width(size: Size) -> int:
    return max(min(size.width - TABLE - 1, STRIP_MOST), 0)


def _scale(wide: int) -> str:
    """The ends of the strip, and 100 % in the middle."""
    return f"{LEAST:.0f} %{'100':^{max(wide - 9, 3)}}{MOST:.0f} %" if wide >= 15 else ""


def strip(found: LookBack, each: TimedPail, wide: int) -> str:
    """Where a pail lies among her usual; < and > beyond the ends. Empty where that is not known."""
    percent, usual = found.percent(each), found.usual_kg_h(each)
    if percent is None or usual is None or wide < 2:
        return ""
    least, _, most = (_cell(100 * kg_h / usual[1], wide) for kg_h in usual)
    cells = ["-" if least <= at <= most else " " for at in range(wide)]
    cells[_cell(100, wide)] = "|"
    cells[_cell(percent, wide)] = "<" if percent < LEAST else ">" if percent > MOST else "o" if each.why_not else "#"
    return "".join(cells).rstrip()


def _cell(percent: float, wide: int) -> int:
    """The cell of the strip that a share of her usual falls into."""
    along = (min(max(percent, LEAST), MOST) - LEAST) / (MOST - LEAST)
    return round(along * (wide - 1))
