"""The one widget: it takes every key, hands it to the view that is shown, and paints that view's page.

Key, disk and picture happen in one handler, with no message between: that is fast, and loses no key.
"""

from functools import lru_cache

from rich.segment import Segment
from textual import events
from textual.geometry import Region
from textual.strip import Strip
from textual.widget import Widget

from store.book.clock import Clock
from store.book.errors import BookError
from tui.bench.bench import Bench
from tui.frame import unread
from tui.guard import EnterGuard
from tui.page import Line, Page, Role, Size
from tui.place import Place
from tui.theme import Look
from tui.view import ENTER, View
from tui.yard.returned import AWAY, Returned, is_long_ago

TOO_QUICK = "That Enter came too soon after the last one and was not counted. Press it again."
KEPT = 256
"""So many lines are kept as they went onto the screen: most of them stay, or come again, at the next key."""
A_MINUTE_S = 60.0
BEHIND_S = 0.02
"""So long after it began it is the next minute on any clock. [s]"""


class Stage(Widget, can_focus=True):
    """Shows one view at a time."""

    DEFAULT_CSS = "Stage { width: 100%; height: 100%; }"

    def __init__(self, view: View, look: Look, clock: Clock) -> None:
        """At a first view."""
        super().__init__()
        self.view = view
        self.look = look
        self.guard = EnterGuard()
        self.page = Page(())
        self.strip_of = lru_cache(KEPT)(self._strip)
        self.clock = clock
        self.last_key_at = clock.now()

    def on_mount(self) -> None:
        """Take the keys; keep the clock in the header running."""
        self.focus()
        self._wait()

    def _wait(self) -> None:
        """Until the clock shows another minute; it is asked anew each time, as it may be set, or the laptop sleep."""
        now = self.clock.now()
        self.set_timer(A_MINUTE_S - now.second - now.microsecond / 1e6 + BEHIND_S, self.minute)

    def minute(self) -> None:
        """Another minute: what it has changed is painted, and what falls due in it rings, where a view says so."""
        try:
            rings = self.view.minute()
        except BookError as error:
            rings = False
            self.view.say(str(error))
        if rings:
            self.app.bell()
        self.paint()
        self._wait()

    def on_resize(self) -> None:
        """Draw for the new size."""
        self.paint()

    def on_key(self, event: events.Key) -> None:
        """One key: to the view, to the disk if it writes, and onto the screen."""
        event.stop()
        event.prevent_default()
        self.go(self._press(event))

    def _press(self, event: events.Key) -> View | None:
        if event.key not in ENTER:
            self.guard.other()
        elif not self.guard.enter(self.clock.ticks()):
            return self.view.say(TOO_QUICK)
        if self._away():
            return self.view.trying(self._wake)
        view = self.view.press(event.key, event.character)
        if event.key in ENTER:
            self.guard.done(self.clock.ticks())
        return view

    def _away(self) -> bool:
        """After a long pause the first key only wakes: it is looked at first what the time has changed."""
        now, before = self.clock.now(), self.last_key_at
        self.last_key_at = now
        return now - before > AWAY and not self.view.half_typed and not isinstance(self.view, Returned | Bench)

    def _wake(self) -> View:
        """The next round if it has begun since; else what the time has changed in this one."""
        if not isinstance(self.view, Place):
            return self.view
        walker = self.view.walker
        if walker.is_over():
            return self.view.rooms.enter()
        return self.view.rooms.returned(self.view) if is_long_ago(walker) else self.view

    def go(self, view: View | None) -> None:
        """Show a view; none: leave the program."""
        if view is None:
            self.app.exit(return_code=0)
            return
        self.view = view
        self.paint()
        if view.waits:
            self.call_after_refresh(self.finish)

    def finish(self) -> None:
        """What the view waits for, now that it is seen that it does; a key may have led elsewhere."""
        if self.view.waits:
            self.view.finish()
            self.paint()

    def paint(self) -> None:
        """Draw the page and put on the screen what changed of it."""
        before, self.page = self.page, self._drawn(Size(self.size.width, self.size.height))
        if len(before.lines) != len(self.page.lines):
            self.refresh()
            return
        rows = (row for row, pair in enumerate(zip(before.lines, self.page.lines, strict=True)) if pair[0] != pair[1])
        changed = [Region(0, row, self.size.width, 1) for row in rows]
        if changed:
            self.refresh(*changed)

    def _drawn(self, size: Size) -> Page:
        """The page of the view; while the book cannot be read, the one before and why."""
        try:
            return self.view.draw(size)
        except BookError as error:
            return unread(self.page, str(error), size)

    def render_lines(self, crop: Region) -> list[Strip]:
        """Lines of the page, past Textual's own way, which asks each of them for borders and tints."""
        lines = self.page.lines
        rows = (lines[row] if row < len(lines) else () for row in crop.line_range)
        return [self.strip_of(line, self.size.width).crop(*crop.column_span) for line in rows]

    def _strip(self, line: Line, width: int) -> Strip:
        """A line in the look of the theme."""
        strip = Strip([Segment(span.text, self.look.styles[span.role]) for span in line])
        strip = strip.adjust_cell_length(width, self.look.styles[Role.TEXT])
        for each in self.app.get_line_filters():
            strip = strip.apply_filter(each, self.background_colors[1])
        return strip
