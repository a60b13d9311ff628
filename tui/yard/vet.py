"""Call the vet: the signs that mean call, the number, and what she will ask about the animal. No diagnosis, no dose."""

from collections.abc import Iterator
from typing import ClassVar

from store.book.facts.farm import Animal
from store.round.dialect import said
from store.round.looking_back import LookBack, looking_back
from store.round.saying import weight
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.place import Over, Place, Rooms
from tui.telling import entry_words
from tui.treated import treated_facts
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, go_back
from tui.walk.title import tag_words
from tui.words import age, day

CALL_NOW = (
    "down and cannot or will not rise; wobbly, cold or head turned to the flank in the first days after calving",
    "left flank tight as a drum, mouth open, staggering; a fit; heavy bleeding; womb or bowel out",
    "labour without progress, one leg or only a tail; a cow dull with a hot, hard, cold or blue quarter",
    "a calf that will not suck, cannot stand, eyes sunken; anybody who got at the feed store, before any sign",
)
"""Signs that extension leaflets and veterinary handbooks list as emergencies; common practice, not a diagnosis."""
PAILS = 5
"""So many of her last pails are told."""
CALL_TODAY = (
    "off feed with a drop in milk; no dung or cud for hours; cleansing not passed by a day; lame on one leg; feverish"
)


class Vet(Over):
    """What to say on the telephone."""

    def __init__(self, rooms: Rooms, back: Place, animal: Animal | None) -> None:
        """About an animal, if we stand at one."""
        super().__init__(rooms, back)
        self.animal = animal

    def draw(self, size: Size) -> Page:
        """Signs, number, facts."""
        number = self.walker.farm.vet or "no number is set: F, then SETTINGS"
        body: list[Line] = [(), line(Span(f"  VET  {number}", Role.NAME)), (), line(Span("  CALL NOW", Role.WARNING))]
        dialect = self.walker.farm.dialect
        for signs in CALL_NOW:
            body += wrapped(said(signs, dialect), size.width, Role.TEXT, "    ")
        body += [
            line(Span("  CALL TODAY", Role.WARNING)),
            *wrapped(said(CALL_TODAY, dialect), size.width, Role.TEXT, "    "),
            (),
        ]
        for fact in self.facts():
            body += wrapped(fact, size.width, Role.STRONG, "  ")
        return framed(self, body, size)

    def facts(self) -> Iterator[str]:
        """What the book knows of her that the vet asks first."""
        animal, today = self.animal, self.walker.turn.day
        if animal is None:
            return
        calved = f", calved {day(animal.calved_on)} ({age(animal.calved_on, today)} ago)" if animal.calved_on else ""
        stage = said(animal.stage.value, self.walker.farm.dialect)
        yield f"{animal.name.upper()}  {tag_words(animal)}  {stage}{calved}"
        yield from self._milk(looking_back(self.walker.snapshot, animal.id))
        now = self.walker.book.clock.now()
        yield from treated_facts(self.walker, animal.id, now)
        for treatment in self.walker.snapshot.treatments:
            if treatment.animal_id == animal.id and treatment.in_use:
                given = f"{len(treatment.given_at)} of {treatment.doses} before this round"
                yield f"treatment: {treatment.product}, {treatment.amount}, {treatment.why}; given {given}"
        mine = [entry for entry in self.walker.snapshot.entries if entry.subject.animal_id == animal.id]
        for entry in mine[-3:]:
            yield entry_words(self.walker, entry)

    def _milk(self, found: LookBack) -> Iterator[str]:
        """Her last pails, this round's too, and how often she held back."""
        pails = [each.pail.milk_kg for each in found.pails if each.pail.milk_kg is not None][:PAILS]
        if pails:
            units, held = self.walker.farm.units, found.held_back(PAILS)
            told = "  ".join(weight(kg, units).split()[0] for kg in pails)
            held_words = f"; held back {held} of {len(pails)}" if held else ""
            yield f"milk, newest first: {told} {weight(pails[0], units).split()[1]}{held_words}"

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(
            (*ENTER, *BACKSPACE, "v", "left", "escape"),
            "Enter",
            "back",
            "Back; nothing is written.",
            go_back,
        ),
        *SCROLL_KEYS,
    )
