"""A mix of the feeds on hand that fits, or what stands in the way and the nearest; Enter takes it as new.

Heavy: it loads the solver.
"""

from typing import TYPE_CHECKING, ClassVar

from store.ration.mix import Mix, find_mix, in_words
from store.ration.parts import Missing
from store.ration.solving import Least
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, Over, Place
from tui.ration.page import side_by_side
from tui.ration.seen import Seen
from tui.ration.trial import Cell, rows
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, go_back

if TYPE_CHECKING:
    from tui.ration.ration import Ration

WAYS = {Least.COST: "the least cost", Least.CHANGE: "the least change"}
FITS, FITS_NOT = "It meets every need within every limit.", "NOTHING FITS ALL: this is the nearest."
TIME = "There was no time to try all of them: a better one may exist."
NO_MARK = -1
"""No line of a mix is marked."""
TAKEN = "The mix stands as new; nothing is written. Enter starts it on a day."


class Mixing(Over):
    """Digits pick what is to be least; it is looked for at once."""

    def __init__(self, ration: "Ration") -> None:
        """Over a ration: at the least cost first."""
        super().__init__(ration.rooms, ration)
        self.ration = ration
        self.find(Least.COST)

    def find(self, least: Least) -> None:
        """Look for a mix."""
        self.least = least
        self.found: Mix | tuple[Missing, ...] = find_mix(self.ration.case, least)

    def takes(self, character: str) -> bool:
        """A digit picks what is to be least."""
        ways = dict(zip("12", WAYS, strict=True))
        if character not in ways:
            return False
        self.find(ways[character])
        return True

    def tried(self, mix: Mix) -> dict[Cell, float]:
        """The mix as amounts that are tried, those that it leaves out as nothing. [kg]"""
        return {cell: mix.amounts.get(cell, 0.0) for cell in (*self.ration.case.now, *mix.amounts)}

    def enter(self) -> Place:
        """Take it as new, and back to the ration."""
        if not isinstance(self.found, Mix):
            return self.say("There is no mix to take.")
        self.ration.tried.clear()
        self.ration.try_out(self.tried(self.found))
        return self.ration.say(TAKEN)

    def draw(self, size: Size) -> Page:
        """What came."""
        title = f"  MIX  {self.ration.case.name}: {WAYS[self.least]}"
        ways = "   ".join(
            f"{'>' if way is self.least else ' '} {at} {words}" for at, (way, words) in enumerate(WAYS.items(), 1)
        )
        head: list[Line] = [line(Span(title, Role.NAME)), line(Span(f"  {ways}", Role.QUIET))]
        body = self._mix(self.found, size) if isinstance(self.found, Mix) else self._unknown(self.found, size)
        return framed(self, [*head, *body], size)

    def _mix(self, mix: Mix, size: Size) -> list[Line]:
        case, seen, tried = self.ration.case, self.ration.seen, self.tried(mix)
        shown = Seen(case, seen.farm, rows(case, tried), seen.before, mix.balance, (), tried, row=NO_MARK)
        said = [(FITS, Role.STRONG) if mix.fits else (FITS_NOT, Role.WARNING)]
        said += [] if mix.proven else [(TIME, Role.WARNING)]
        said += [(in_words(case, each), Role.WARNING) for each in mix.short]
        said += [(f"IN THE WAY  {each}", Role.TEXT) for each in mix.in_way]
        said += [(f"LEFT OUT  {each.says}", Role.QUIET) for each in mix.left_out]
        below = [row for words, role in said for row in wrapped(words, size.width, role, "   ")]
        return [*below[:1], *side_by_side(shown, size), *below[1:]]

    def _unknown(self, missing: tuple[Missing, ...], size: Size) -> list[Line]:
        """What must be known first."""
        words = ("No mix can be looked for yet:", *dict.fromkeys(each.says for each in missing))
        return [(), *(row for each in words for row in wrapped(each, size.width, Role.WARNING, "   "))]

    def enter_words(self) -> str:
        """Only where there is a mix."""
        return "take it as new" if isinstance(self.found, Mix) else ""

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", enter_words, "Takes the mix as new; nothing is written.", enter),
        Key((), "1 2", "what is least", "1 the least cost, 2 the least change from now."),
        Key((*BACKSPACE, "escape", "left", "m"), "Esc", "back", "Back to the ration as it was.", go_back),
        *SCROLL_KEYS,
        HELP_KEY,
        LEAVE_KEY,
    )
