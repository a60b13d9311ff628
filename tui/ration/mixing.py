"""A mix of the feeds on hand that fits, or what stands in the way and the nearest; Enter takes it as new.

Heavy: it loads the solver.
"""

from collections.abc import Iterator
from typing import TYPE_CHECKING, ClassVar
from uuid import UUID

from store.ration.mix import Mix, find_mix, in_words
from store.ration.parts import Missing, RationFeed
from store.ration.solving import Least
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, Over, Place
from tui.ration.page import side_by_side
from tui.ration.seen import NO_MARK, Seen
from tui.ration.trial import Cell, meals_kg
from tui.ration.trial import in_words as amount_words
from tui.scroll import Scroll
from tui.view import BACKSPACE, ENTER, PAGE_KEYS, Key, go_back

if TYPE_CHECKING:
    from tui.ration.ration import Ration

WAYS = {Least.COST: "the least cost", Least.CHANGE: "the least change"}
LOOKING = "Looking for a mix ... this may take some seconds."
FITS, FITS_NOT = "It meets every need within every limit.", "NOTHING FITS ALL: this is the nearest."
TIME = "There was no time to try all of them: a better one may exist."
ANY = "IN THE WAY  Any one of these would do, if you can live with it:"
SEVERAL = "IN THE WAY  No one need or limit alone: several would have to give."
TAKEN = "The mix stands as new; nothing is written. Enter starts it on a day."


class Mixing(Over):
    """Digits pick what is to be least, Space leaves a feed out or takes it in again; then it is looked for anew."""

    def __init__(self, ration: "Ration") -> None:
        """Over a ration: at the least cost first, of all feeds."""
        super().__init__(ration.rooms, ration)
        self.scroll = Scroll(follows=False, up="Page Up", down="Page Down")
        self.ration, self.case = ration, ration.case
        self.without: frozenset[UUID] = frozenset()
        self.marked: UUID | None = None
        self.find(Least.COST)

    def find(self, least: Least) -> None:
        """Look for a mix, once it stands on the screen that it is looked for."""
        self.least = least
        self.found: Mix | tuple[Missing, ...] | None = None

    @property
    def waits(self) -> bool:
        """While it is to be looked for."""
        return self.found is None

    def finish(self) -> None:
        """Look for it."""
        self.found = find_mix(self.case, self.least, self.without)

    def takes(self, character: str) -> bool:
        """A digit picks what is to be least."""
        ways = dict(zip("12", WAYS, strict=True))
        if character not in ways:
            return False
        self.find(ways[character])
        return True

    @property
    def tried(self) -> dict[Cell, float]:
        """The mix as amounts that are tried, those that it leaves out as nothing. [kg]"""
        mix = self.found.amounts if isinstance(self.found, Mix) else {}
        return {cell: mix.get(cell, 0.0) for cell in (*self.case.now, *mix)}

    @property
    def feeds(self) -> tuple[RationFeed, ...]:
        """Those that are given, that the mix has, and that the keeper left out."""
        named = {*(feed_id for _, feed_id in self.tried), *self.without}
        return tuple(feed for feed in self.case.feeds if feed.free or feed.feed.id in named)

    @property
    def row(self) -> int:
        """The marked line: of the marked feed, while it has one."""
        return next((at for at, feed in enumerate(self.feeds) if feed.feed.id == self.marked), 0)

    def choose(self, by: int) -> Place:
        """Another feed."""
        feeds = self.feeds
        self.marked = feeds[(self.row + by) % len(feeds)].feed.id if feeds else None
        return self

    def leave_out(self) -> Place:
        """Leave the marked feed out, or take it in again; then look anew."""
        if not self.feeds or isinstance(self.found, tuple):
            return self.say("There is no feed to leave out.")
        self.marked = self.feeds[self.row].feed.id
        self.without ^= {self.marked}
        self.find(self.least)
        return self

    def leave_out_words(self) -> str:
        """What Space does to the marked feed."""
        if not isinstance(self.found, Mix) or not self.feeds:
            return ""
        return "take it in" if self.feeds[self.row].feed.id in self.without else "leave it out"

    def enter(self) -> Place:
        """Take it as new, and back to the ration."""
        if not isinstance(self.found, Mix):
            return self.say("There is no mix to take.")
        self.ration.tried.clear()
        self.ration.try_out(self.tried)
        return self.ration.say(TAKEN)

    def draw(self, size: Size) -> Page:
        """What came, or that it is looked for."""
        title = f"  MIX  {self.case.name}: {WAYS[self.least]}"
        ways = "   ".join(
            f"{'>' if way is self.least else ' '} {at} {words}" for at, (way, words) in enumerate(WAYS.items(), 1)
        )
        head: list[Line] = [line(Span(title, Role.NAME)), line(Span(f"  {ways}", Role.QUIET))]
        names = [feed.feed.name for feed in self.case.feeds if feed.feed.id in self.without]
        head += wrapped(f"WITHOUT  {', '.join(names)}", size.width, Role.STRONG, "   ") if names else []
        return framed(self, [*head, *self._body(size)], size)

    def _body(self, size: Size) -> list[Line]:
        if self.found is None:
            return [(), *wrapped(LOOKING, size.width, Role.STRONG, "   ")]
        return self._mix(self.found, size) if isinstance(self.found, Mix) else self._unknown(self.found, size)

    def _mix(self, mix: Mix, size: Size) -> list[Line]:
        seen = self.ration.seen
        shown = Seen(
            self.case, seen.farm, self.feeds, seen.before, mix.balance, tried=self.tried, row=self.row, meal=NO_MARK
        )
        first, *below = (wrapped(words, size.width, role, "   ") for words, role in self._said(mix))
        said = self._meals(shown) if shown.feed else ""
        marked = wrapped(said, size.width, Role.STRONG, "   ") if said else []
        return [*first, *side_by_side(shown, size), *(row for rows in below for row in rows), *marked]

    def _meals(self, shown: Seen) -> str:
        """The marked feed in its measure, meal by meal; nothing where none is given."""
        feed, units = self.feeds[shown.marked], shown.farm.units
        meals = zip(self.case.slots, meals_kg(shown.new, feed, self.case.slots), strict=True)
        said = [f"{slot} {amount_words(kg, feed, units)}" for slot, kg in meals if kg]
        return f"{feed.feed.name}: {', '.join(said)}" if said else ""

    def _said(self, mix: Mix) -> Iterator[tuple[str, Role]]:
        """Whether it fits; below the mix what it lacks, what stands in the way, what was left out."""
        yield (FITS, Role.STRONG) if mix.fits else (FITS_NOT, Role.WARNING)
        if not mix.proven:
            yield TIME, Role.WARNING
        yield from ((in_words(self.case, each), Role.WARNING) for each in mix.short)
        if not mix.fits:
            yield (ANY if mix.in_way else SEVERAL), Role.STRONG
        yield from ((f"- {each}", Role.TEXT) for each in mix.in_way)
        yield from ((f"LEFT OUT  {each.says}", Role.QUIET) for each in mix.left_out)

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
        Key(("up",), "Up Down", "feed", "Another feed.", lambda place: place.choose(-1)),
        Key(("down",), "Down", "", "", lambda place: place.choose(1)),
        Key(("space",), "Space", leave_out_words, "Leaves the marked feed out of the mix, or takes it in again.",
            leave_out),
        Key((*BACKSPACE, "escape", "left", "m"), "Esc", "back", "Back to the ration as it was.", go_back),
        *PAGE_KEYS,
        HELP_KEY,
        LEAVE_KEY,
    )  # fmt: skip
