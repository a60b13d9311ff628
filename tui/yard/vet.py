"""Call the vet: the number, what is seen now, and what she will ask about the animal. No diagnosis, no dose."""

import re
from typing import ClassVar

from store.book.drafts import Subject
from store.book.facts.farm import Animal
from store.book.reading.breeding import read_carries
from store.round.confirm import noted
from store.round.dialect import said
from store.round.quarters import open_marks
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, large_lines, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, Place, Rooms, unless_half_typed
from tui.typed import is_pick
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, go_back
from tui.walk.quarter_cards import crossed_lines
from tui.walk.several import Several
from tui.walk.title import tag_words
from tui.walker import Walker
from tui.yard.vet_facts import vet_facts, who_words
from tui.yard.vet_sheet import VetSheet
from tui.yard.vet_signs import CALL_NOW, CALL_TODAY, NOW, Seen, ring_words, signs_for

DECIDES = "Common practice; no diagnosis. Local rules and your vet decide."
INDENT = 13
NUMBER = re.compile(r"\+?[(\d][\d ()/-]{3,}\d")
NO_NUMBER = "VET  no number is set: F, then SETTINGS"


class Vet(Several):
    """What to say on the telephone about an animal. Digits pick what is seen now; Enter writes it as a note."""

    def __init__(self, rooms: Rooms, back: Place, animal: Animal) -> None:
        """About an animal."""
        super().__init__(rooms, back)
        self.scroll.follows = False
        self.animal = animal
        self.carries = read_carries(self.walker.book.desk, animal.id, self.walker.book.clock.now())
        self.picked: frozenset[int] = frozenset()

    @property
    def signs(self) -> tuple[Seen, ...]:
        """What is picked, in the order of the list."""
        return tuple(seen for at, seen in enumerate(signs_for(self.animal.stage), start=1) if at in self.picked)

    def takes(self, character: str) -> bool:
        """A digit picks a sign, or takes it away."""
        if not is_pick(character) or int(character) > len(signs_for(self.animal.stage)):
            return False
        self.picked ^= {int(character)}
        return True

    def draw(self, size: Size) -> Page:
        """Number, animal, signs; then the facts."""
        return framed(self, [(), *self.lines(size)], size)

    def lines(self, size: Size) -> list[Line]:
        """All of it, for the screen and for paper."""
        walker, dialect = self.walker, self.walker.farm.dialect
        words = [said(seen.words, dialect) for seen in signs_for(self.animal.stage)]
        head = f"{self.animal.name.upper()}  {tag_words(self.animal)}  {who_words(walker, self.animal, self.carries)}"
        rings = ring_words(self.signs, open_marks(walker.snapshot, self.animal.id))
        body = [*number_lines(walker, size), *wrapped(head, size.width, Role.STRONG, "  ")]
        body += crossed_lines(words, self.picked, size)
        for ring, because in rings:
            role = Role.WARNING if ring == NOW else Role.STRONG
            body += _headed(ring, f"{said(because, dialect)}. {DECIDES}", size, role)
        for heading, fact in vet_facts(walker, self.animal):
            body += _headed(heading, fact, size, Role.TEXT)
        for at, signs in enumerate(CALL_NOW):
            body += _headed("" if at else "CALL NOW", said(signs, dialect), size, Role.WARNING)
        return [*body, *_headed("CALL TODAY", said(CALL_TODAY, dialect), size, Role.TEXT)]

    def enter(self) -> Place:
        """Write what is seen as a note for the vet, and stay; with nothing picked, back."""
        if not self.picked:
            return self.came_from
        words = f"for the vet, seen now: {'; '.join(seen.words for seen in self.signs)}"
        problem = self.walker.write(noted(self.walker.hand(), Subject(animal_id=self.animal.id), words, tell=True))
        if problem:
            return self.say(problem)
        self.picked = frozenset()
        return self.say("The note is written, and told to the next person. M prints this page, Enter goes back.")

    def picked_words(self) -> str:
        """The signs that are picked."""
        return "; ".join(said(seen.words, self.walker.farm.dialect) for seen in self.signs)

    def enter_words(self) -> str:
        """A note, once something is picked."""
        return "write it as a note" if self.picked else "back"

    def print_it(self) -> Place:
        """The page as a text file, or on paper."""
        return VetSheet(self.rooms, self, self.animal.name, self.lines)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", enter_words, "Writes what is picked as a note; with nothing picked, back.", enter),
        Key((), "1-9", "seen now", "Picks a sign that is seen now, or takes it away."),
        Key(("m",), "M", "print", "This page as a text file, or on paper.", print_it),
        Key(("a",), "A", "another animal", "About another animal.",
            lambda place: unless_half_typed(place, lambda: place.rooms.whom(place.came_from))),
        Key((*BACKSPACE, "v", "left", "escape"), "Backspace", "back", "Back; nothing is written.", go_back),
        *SCROLL_KEYS,
        HELP_KEY,
        LEAVE_KEY,
    )  # fmt: skip


def number_lines(walker: Walker, size: Size) -> list[Line]:
    """The number, large, and below it what else is written with it."""
    vet = walker.farm.vet
    if not vet:
        return [line(Span(f"  {NO_NUMBER}", Role.WARNING))]
    number = max(NUMBER.findall(vet), key=len, default=vet).strip()
    drawn = large_lines(number, Role.NAME, size.width - 8)
    lines = [line(f"  {'VET' if at == 0 else '':<5}", *row) for at, row in enumerate(drawn)]
    return [*lines, *(wrapped(vet, size.width, Role.STRONG, " " * 7) if number != vet else [])]


def _headed(heading: str, words: str, size: Size, role: Role) -> list[Line]:
    """A sentence behind its heading, in as many rows as it needs."""
    rows = wrapped(words, size.width - INDENT, role, "")
    return [
        line(Span(f"  {heading if at == 0 else '':<{INDENT - 2}}", Role.QUIET), *row) for at, row in enumerate(rows)
    ]
