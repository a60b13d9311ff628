"""The program on the terminal. Wiring only: theme, stage, the ways in and out."""

import asyncio
import gc
import signal
import sys
import threading
from collections.abc import Sequence
from functools import partial
from typing import ClassVar

from rich.segment import Segment
from textual.app import App, ComposeResult
from textual.color import Color
from textual.filter import LineFilter

from store.book.clock import Clock
from tui.keyboard import Keyboard
from tui.rooms import House
from tui.stage import Stage
from tui.terminal import ENDING
from tui.theme import LOOKS, NO_COLOUR
from tui.view import View
from tui.walker import Walker


class Colourless(LineFilter):
    """Leaves bold and reverse and takes every colour away, so that NO_COLOR puts no colour code on the wire."""

    def apply(self, segments: list[Segment], background: Color) -> list[Segment]:  # noqa: ARG002
        """The segments without colour."""
        return [Segment(s.text, s.style.without_color if s.style else None, s.control) for s in segments]


class StageApp(App[None]):
    """One view after another on one stage."""

    ENABLE_COMMAND_PALETTE = False
    BINDINGS: ClassVar = []
    CSS = "Screen { layout: vertical; overflow: hidden; }"

    def __init__(self, first: View, clock: Clock, look: str = "dark") -> None:
        """With a first view. look: dark or light; NO_COLOR in the environment wins."""
        super().__init__(driver_class=Keyboard)
        self.first, self.clock = first, clock
        self.broken: Exception | None = None
        self.look = NO_COLOUR if self.no_color else LOOKS[look]
        self.title = "Penwalk"

    def compose(self) -> ComposeResult:
        """Nothing but the stage."""
        yield Stage(self.first, self.look, self.clock)

    def on_mount(self) -> None:
        """Leave in order on a signal; load what writing needs as soon as the first frame stands."""
        if self.look.background:
            self.screen.styles.background = self.look.background
        loop = asyncio.get_running_loop()
        for number in ENDING:
            loop.add_signal_handler(number, partial(self.exit, None, 128 + number))
        signal.pthread_sigmask(signal.SIG_UNBLOCK, ENDING)
        self.call_after_refresh(threading.Thread(target=_load_writing, daemon=True).start)

    def get_line_filters(self) -> Sequence[LineFilter]:
        """With NO_COLOR, one filter more than Textual's own, which only turns colours grey.

        Else none: Textual's own makes true colours of names, and a look has no names.
        """
        return [*super().get_line_filters(), Colourless()] if self.no_color else []

    def _handle_exception(self, error: Exception) -> None:
        """Whatever breaks while the screen stands: leave in order, so that it is said in plain words after it.

        What breaks on a way out that was begun already changes nothing of that way.
        """
        if self.return_code is None:
            self.broken = error
        self.exit(return_code=1 if self.broken else self.return_code or 0)

    async def action_quit(self) -> None:
        """Textual's own way out: through the stage, so that nothing half typed is lost."""
        stage = self.query_one(Stage)
        stage.go(stage.view.leave())


class PenwalkApp(StageApp):
    """One sitting at the bench."""

    def __init__(self, walker: Walker, look: str = "dark", said: str = "") -> None:
        """With the round at hand. said: a first sentence."""
        self.house = House(walker)
        first = self.house.enter()
        if said:
            first.say(said)
        super().__init__(first, walker.book.clock, look)


def _load_writing() -> None:
    import store.book.writing  # noqa: F401, PLC0415 heavy: after the first frame, and in a thread

    configure = sys.modules["sqlalchemy.orm"].configure_mappers
    configure()
    gc.freeze()  # what was loaded stays: else a collection of all of it stops a key for 50 ms some steps later
