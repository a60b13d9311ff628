"""The vet's page about an animal as a text file, or on paper."""

import re
from collections.abc import Callable
from pathlib import Path

from tui.closing.printing import WIDTH, Printing, place_of, text_of
from tui.page import Line, Size
from tui.place import Place, Rooms

LONG = 99


class VetSheet(Printing):
    """Beside the round's own page, with the animal's name."""

    def __init__(self, rooms: Rooms, back: Place, name: str, lines: Callable[[Size], list[Line]]) -> None:
        """Over the vet's page of an animal."""
        super().__init__(rooms, back)
        self.name, self.lines = name, lines

    def place(self) -> Path:
        """`farm-2026-03-11-morning-vet-hazel.txt`."""
        of_round = place_of(self.walker)
        name = re.sub(r"\W+", "-", self.name.lower()).strip("-") or "animal"
        return of_round.with_name(f"{of_round.stem}-vet-{name}.txt")

    def text(self) -> str:
        """Every line of it."""
        return text_of(self.lines(Size(WIDTH, LONG)))
