"""A copy of the book on a stick or in a folder, while the round stays open; the copy is read again and counted."""

import os
from pathlib import Path
from typing import ClassVar

from platformdirs import user_state_path

from store.book.errors import BookError
from store.book.turn import local
from store.round.measured import SURE
from tui.page import Line, Role, Size, Span, cut, line, wrapped
from tui.place import Place, Rooms
from tui.typed import is_pick, path_of
from tui.view import Key
from tui.yard.wording import Wording

SHELVES = tuple(map(Path, ("/media", "/run/media", "/mnt", "/Volumes")))
"""Where a stick appears when it is put in. Common practice of Linux and macOS."""
PICKS_MOST = 9


def sticks() -> list[Path]:
    """The sticks that are in now, at most as many as digits can pick."""
    found = (path for shelf in SHELVES for depth in ("*", "*/*") for path in sorted(shelf.glob(depth)))
    return [path for path in found if os.path.ismount(path)][:PICKS_MOST]


def is_missing(folder: Path) -> bool:
    """Whether a folder would be on a stick, and no stick is there: a copy would land on the laptop itself."""
    above = [path for shelf in SHELVES for path in (folder, *folder.parents) if shelf in path.parents]
    return bool(above) and not any(os.path.ismount(path) for path in above)


def last_folder() -> str:
    """The folder of the last copy, kept in the laptop's state folder; empty where none was made."""
    try:
        return _note().read_text(encoding="utf-8").strip()
    except (OSError, UnicodeDecodeError):
        return ""


def _note() -> Path:
    return user_state_path("penwalk", appauthor=False) / "copies"


class Keeping(Wording):
    """Name a folder; Enter copies."""

    MOST: ClassVar[int] = 200

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it goes back to."""
        super().__init__(rooms, back)
        self.sticks = sticks()
        self.last = last_folder()

    def heading(self) -> str:
        """What is asked."""
        return "KEEP A COPY  of the whole book: on which stick, or in which folder?"

    def takes(self, character: str) -> bool:
        """A digit picks a stick, until something else is typed."""
        picks = not self.text or Path(self.text) in self.sticks
        if picks and is_pick(character) and int(character) <= len(self.sticks):
            self.text = str(self.sticks[int(character) - 1])
            return True
        return super().takes(character)

    def below(self, size: Size) -> list[Line]:
        """The sticks that are in, and what Enter alone does."""
        alone = f"Enter alone: {self.last}, as the last time." if self.last else "A folder begins with / or ~."
        if not self.sticks:
            alone = f"No stick is in. {alone}"
        picks = (f"  {at}  {path}" for at, path in enumerate(self.sticks, 1))
        return [
            *(line(Span(cut(each, size.width - 2))) for each in picks),
            *wrapped(alone, size.width, Role.QUIET, "  "),
        ]

    def enter(self) -> Place | None:
        """Copy the book, and say what is in the copy; what went wrong is said here, and what is typed stays."""
        named, sure = self.text.rstrip(f"{SURE} ").strip() or self.last, self.text.rstrip().endswith(SURE)
        folder = path_of(named)
        if not folder.is_absolute():
            return self.say("Name a folder, as /media/stick; it begins with / or ~. Backspace goes back.")
        if is_missing(folder):
            return self.say(f"No stick is in at {folder}. Put it in, then Enter; or name another folder.")
        if not folder.exists() and not sure:
            return self.say(f"There is no folder {folder}. To make it, type {SURE} behind it, then Enter.")
        try:
            said = self._copied(folder)
        except BookError as error:
            return self.say(str(error))
        return self.came_from.say(said)

    def _copied(self, folder: Path) -> str:
        """Copy; what is in the copy. Raises BookError."""
        from store.book.copying import copy_book  # noqa: PLC0415 each place loads only what it needs
        from tui.copied import copied_words, refuse_server  # noqa: PLC0415

        book = self.walker.book
        refuse_server(book.desk.place)
        now = book.clock.now()
        made = copy_book(Path(book.desk.place), folder, now, book.bench)
        _remember(folder)
        return (
            f"{copied_words(made.rounds, made.newest, local(now, self.walker.zone).date())}; read again: {made.place}"
        )

    KEYS: ClassVar[tuple[Key, ...]] = (
        Wording.KEYS[0],
        Key((), "1-9", "take a stick", "Takes a stick that is in; the folder can then be typed on."),
        *Wording.KEYS[1:],
    )


def _remember(folder: Path) -> None:
    """For the next time; where it cannot be kept, she types it again."""
    try:
        _note().parent.mkdir(parents=True, exist_ok=True)
        _note().write_text(f"{folder}\n", encoding="utf-8")
    except OSError:
        return
