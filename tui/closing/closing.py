"""The end of the walk."""

from typing import ClassVar

from msgspec.structs import replace

from store.husbandry.why import Value
from store.round.summary import Summary, summarise
from tui.bench.coming import Coming
from tui.closing.draw import closing_lines
from tui.closing.short import Short, besides
from tui.frame import framed
from tui.page import Page, Size
from tui.place import BENCH_KEY, WHY_KEY, YARD_KEYS, Place, Rooms
from tui.telling import turn_words
from tui.view import ENTER, PAGE_KEYS, Key, go_back


class Closing(Place):
    """What became of the round; Up and Down mark what is not recorded and show the rest, Enter goes there."""

    def __init__(self, rooms: Rooms) -> None:
        """As the book holds it now."""
        super().__init__(rooms)
        self.row = 0
        self.short = Short()
        self.coming = Coming()

    @property
    def summary(self) -> Summary:
        """The round, summed."""
        return summarise(self.walker.snapshot, self.walker.steps)

    def draw(self, size: Size) -> Page:
        """Every list."""
        told = besides(self.short.told(self.walker), self.walker, self.coming)
        return framed(self, closing_lines(self.walker, self.summary, told, self.row, size.width), size)

    def enter(self) -> Place:
        """To the marked step."""
        missing = self.summary.not_recorded
        if not missing:
            return self.rooms.bench() if self.walker.ended() else self.say("Every step is recorded. E ends the round.")
        step = missing[min(self.row, len(missing) - 1)]
        return self.rooms.lamp(self.walker.steps.index(step))

    def choose(self, by: int) -> Place:
        """Mark another of what is not recorded; past the first and the last of it, more lines of the page."""
        row = self.row + by
        if self.scroll.moved or not 0 <= row < len(self.summary.not_recorded):
            return self.move(by)
        self.row = row
        return self

    def back(self) -> Place:
        """The last step again, to look or correct."""
        if not self.walker.steps:
            return self.say("There is nothing planned in this round.")
        return self.rooms.lamp(len(self.walker.steps) - 1, taken_up=False)

    def enter_words(self) -> str:
        """Where Enter goes."""
        if self.summary.not_recorded:
            return "go to the marked step"
        return "to the bench" if self.walker.ended() else "nothing is left"

    def numbers(self) -> tuple[Value, ...]:
        """The steps, the milk and the feed of the round."""
        from store.round.whys.totals import closing_numbers  # noqa: PLC0415 not on the way to the first frame

        return tuple(closing_numbers(self.as_asked(), self.summary))

    def numbers_of(self) -> str:
        """The round."""
        return turn_words(self.walker.turn)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", enter_words, "Goes to the marked step, to do it after all.", enter),
        Key(("up",), "Up Down", "line", "Marks the line above or below; behind the last one, more lines of the page.",
            lambda place: place.choose(-1)),
        Key(("down",), "Down", "", "", lambda place: place.choose(1)),
        *PAGE_KEYS,
        Key(("left",), "Left", "steps again", "Back through the steps, to look or correct.", go_back),
        Key(("m",), "M", "print", "This page as a text file, or on paper.", lambda place: place.rooms.printing(place)),
        Key(("e",), "E", "end it", "Ends the round: asks first.", lambda place: place.rooms.ending(place)),
        WHY_KEY,
        replace(BENCH_KEY, words="bench"),
        *(key for key in YARD_KEYS if key.sign not in ("B", "I")),
    )  # fmt: skip
