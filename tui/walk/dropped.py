"""A pail far under her usual is written: the usual questions, and a note of what it was. No diagnosis."""

from typing import ClassVar

from store.book.drafts import Subject
from store.round.confirm import noted
from store.round.dialect import said
from store.round.judging import Judged
from store.round.steps import MilkStep
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, cut, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, UNDO_KEY, VET_KEY, Place, Rooms
from tui.typed import is_pick
from tui.view import BACKSPACE, ENTER, PAGE_KEYS, Key, go_back
from tui.walk.judged_lines import drop_words, percent_words
from tui.walk.several import Several
from tui.yard.wording import Wording

QUESTIONS = {
    "water": "water: trough empty, frozen or foul",
    "feed": "feed: a change, less, or off feed",
    "hot weather": "hot weather",
    "bulling": "bulling",
    "the calf got to her": "the calf got to her (G her step, M: had got out)",
    "clots or a hard quarter": "clots or a hard quarter (V: when to call)",
}
"""In short for the note, and as they are asked: what keepers go through first. Common practice."""
OTHER = "another reason, in your words"


class Dropped(Several):
    """Digits pick one or more; Enter writes them as a note, with nothing picked it goes on."""

    def __init__(self, rooms: Rooms, there: Place, step: MilkStep, judged: Judged) -> None:
        """On the way to where the walk goes on."""
        super().__init__(rooms, there)
        self.step = step
        self.judged = judged
        self.picked: set[int] = set()

    def takes(self, character: str) -> bool:
        """A digit picks a line, or takes the pick away."""
        if not is_pick(character) or int(character) > len(QUESTIONS) + 1:
            return False
        self.picked ^= {int(character) - 1}
        return True

    def enter(self) -> Place:
        """The note, or on."""
        if len(QUESTIONS) in self.picked:
            return OtherReason(self.rooms, self)
        return self.write(self.reasons()) if self.picked else self.came_from

    def reasons(self) -> str:
        """What is picked, in short."""
        return ", ".join(words for row, words in enumerate(QUESTIONS) if row in self.picked)

    def picked_words(self) -> str:
        """All of it, the one to type too."""
        return ", ".join(words for row, words in enumerate((*QUESTIONS, OTHER)) if row in self.picked)

    def write(self, reasons: str) -> Place:
        """A note on her of what it was."""
        words = f"milk {percent_words(self.judged.percent or 0)} usual: {reasons}"
        hand = self.walker.hand()
        problem = self.walker.write(noted(hand, Subject(animal_id=self.step.animal.id), words, tell=False))
        return self.say(problem) if problem else self.came_from.say("The note is written.")

    def draw(self, size: Size) -> Page:
        """What dropped, and the questions."""
        walker = self.walker
        told = f"DROP  {self.step.name}: {drop_words(self.judged, walker.farm.units)}. It is written. Usual questions:"
        body: list[Line] = [(), *wrapped(told, size.width, Role.WARNING, "  "), ()]
        for row, question in enumerate((*QUESTIONS.values(), OTHER)):
            here = row in self.picked
            words = cut(f" {'x' if here else ' '} {row + 1}  {said(question, walker.farm.dialect)} ", size.width - 2)
            body.append(line(" ", Span(words, Role.HERE if here else Role.TEXT)))
        return framed(self, body, size)

    def enter_words(self) -> str:
        """What Enter would do now."""
        return "write the note" if self.picked else "go on"

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", enter_words, "Writes what is picked as a note on her; with nothing picked goes on.", enter),
        Key((), "1-7", "pick, one or more", "Picks a line, or takes the pick away."),
        Key((*BACKSPACE, "left", "escape"), "Backspace", "on, no note", "Goes on without a note.", go_back),
        UNDO_KEY,
        VET_KEY,
        *PAGE_KEYS,
        HELP_KEY,
        LEAVE_KEY,
    )


class OtherReason(Wording):
    """Another reason, in the keeper's words, beside what is picked."""

    MOST = 120

    def __init__(self, rooms: Rooms, asked: Dropped) -> None:
        """Over the questions."""
        super().__init__(rooms, asked)
        self.asked = asked

    def heading(self) -> str:
        """Whose."""
        return f"DROP  {self.asked.step.name}: the reason in your words"

    def enter(self) -> Place:
        """Write the note."""
        if not self.text.strip():
            return self.say("Nothing is typed. Type the reason, or Esc goes back.")
        written = self.asked.write(", ".join(each for each in (self.asked.reasons(), self.text.strip()) if each))
        return self.say(self.asked.said) if written is self.asked else written
