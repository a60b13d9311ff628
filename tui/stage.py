"""The one widget: it takes every key, hands it to the place that is shown, and paints that place's page.

Key, disk and picture happen in one handler, with no message between: that is fast, and loses no key.
"""

from rich.segment import Segment
from textual import events
from textual.geometry import Region
from textual.strip import Strip
from textual.widget import Widget

from tui.guard import EnterGuard
from tui.page import Page, Role, Size
from tui.place import ENTER, Place
from tui.theme import Look
from tui.yard.returned import AWAY, Returned, is_long_ago

TOO_QUICK = "That Enter came too soon after the last one and was not counted. Press it again."
TICK_S = 5.0


class Stage(Widget, can_focus=True):
    """Shows one place at a time."""

    DEFAULT_CSS = "Stage { width: 100%; height: 100%; }"

    def __init__(self, place: Place, look: Look) -> None:
        """At a first place."""
        super().__init__()
        self.place = place
        self.look = look
        self.guard = EnterGuard()
        self.page = Page(())
        self.last_key_at = place.walker.book.clock.now()

    def on_mount(self) -> None:
        """Take the keys; keep the clock in the header running."""
        self.focus()
        self.set_interval(TICK_S, self.paint)

    def on_resize(self) -> None:
        """Draw for the new size."""
        self.paint()

    def on_key(self, event: events.Key) -> None:
        """One key: to the place, to the disk if it writes, and onto the screen."""
        event.stop()
        event.prevent_default()
        self.go(self._press(event))

    def _press(self, event: events.Key) -> Place | None:
        if event.key not in ENTER:
            self.guard.other()
        elif not self.guard.enter(self.place.walker.book.clock.ticks()):
            return self.place.say(TOO_QUICK)
        if self._away():
            return self._wake()
        place = self.place.press(event.key, event.character)
        if event.key in ENTER:
            self.guard.done(self.place.walker.book.clock.ticks())
        return place

    def _away(self) -> bool:
        """After a long pause the first key only wakes: it is looked at first what the time has changed."""
        now, before = self.place.walker.book.clock.now(), self.last_key_at
        self.last_key_at = now
        return now - before > AWAY and not self.place.half_typed and not isinstance(self.place, Returned)

    def _wake(self) -> Place:
        """The next round if it has begun since; else what the time has changed in this one."""
        walker = self.place.walker
        if walker.is_over():
            return self.place.rooms.enter()
        return self.place.rooms.returned(self.place) if is_long_ago(walker) else self.place

    def go(self, place: Place | None) -> None:
        """Show a place; none: leave the program."""
        if place is None:
            self.app.exit(return_code=0)
            return
        self.place = place
        self.paint()

    def paint(self) -> None:
        """Draw the page and put on the screen what changed of it."""
        before, self.page = self.page, self.place.draw(Size(self.size.width, self.size.height))
        if len(before.lines) != len(self.page.lines):
            self.refresh()
            return
        rows = (row for row, pair in enumerate(zip(before.lines, self.page.lines, strict=True)) if pair[0] != pair[1])
        changed = [Region(0, row, self.size.width, 1) for row in rows]
        if changed:
            self.refresh(*changed)

    def render_line(self, y: int) -> Strip:
        """One line of the page in the look of the theme."""
        spans = self.page.lines[y] if y < len(self.page.lines) else ()
        strip = Strip([Segment(span.text, self.look.styles[span.role]) for span in spans])
        return strip.adjust_cell_length(self.size.width, self.look.styles[Role.TEXT])
