"""The smallest programs to measure against: one that only shows a word, one that only counts key presses."""

import os
import sys
from pathlib import Path
from typing import ClassVar

from textual.app import App, ComposeResult
from textual.binding import Binding
from textual.screen import Screen
from textual.widgets import Footer, Static

WORD = "painted-word"
NOTE = "PENWALK_BENCH_NOTE"
"""An environment variable: the file to note the number of loaded modules in, once the first frame stands."""


class Bare(App[None]):
    """A word and a footer."""

    BINDINGS: ClassVar = [Binding("q", "quit", "leave")]

    def compose(self) -> ComposeResult:
        """The word."""
        yield Static(WORD)
        yield Footer()

    def on_mount(self) -> None:
        """Note what was loaded for it, if somebody asks."""
        self.call_after_refresh(note_modules)


class Count(Screen[None]):
    """A figure that a key raises."""

    BINDINGS: ClassVar = [Binding("space", "count", "count"), Binding("q", "app.quit", "leave")]
    presses = 0

    def compose(self) -> ComposeResult:
        """The figure."""
        yield Static("figure 0.")

    def action_count(self) -> None:
        """One more."""
        self.presses += 1
        self.query_one(Static).update(f"figure {self.presses}.")


class Counter(App[None]):
    """Counts."""

    def on_mount(self) -> None:
        """Straight to the figure."""
        self.push_screen(Count())


def note_modules() -> None:
    """Write down how many modules are loaded now."""
    if place := os.environ.get(NOTE):
        Path(place).write_text(str(len(sys.modules)), encoding="utf-8")


def bare() -> None:
    """Show the word."""
    Bare().run(mouse=False)


def counter() -> None:
    """Count."""
    Counter().run(mouse=False)


def noted_penwalk() -> None:
    """The command, noting the modules when its first frame stands, in the place of what it loads after that."""
    from tui import app, cli  # noqa: PLC0415 only here

    app._load_writing = note_modules
    sys.exit(cli.main(sys.argv[1:]))
