"""A form: the questions of a sheet, all on one screen; at its end what the answers would change, then Enter writes."""

from abc import abstractmethod
from collections.abc import Sequence
from typing import ClassVar

from store.book.drafts import RowDraft
from store.book.errors import BookError
from store.herd.filling import Filling
from store.herd.sheet import Answers, Question, Sheet, Wrong
from tui.farm.form_lines import form_lines
from tui.page import Line, Size
from tui.view import BACKSPACE, ENTER, Key, View, go_back, go_out


class Form(View):
    """Enter goes from answer to answer; nothing is written before its last line."""

    def ask(self, sheet: Sheet) -> None:
        """Begin a sheet."""
        self.sheet = sheet
        self.filling = Filling(sheet)
        self.leaving = False
        self.rows: Sequence[RowDraft] = ()
        self.effects: list[str] = []

    @abstractmethod
    def out(self) -> View | None:
        """Where it came from; nothing is written."""

    @abstractmethod
    def what_changes(self, rows: Sequence[RowDraft], answers: Answers) -> list[str]:
        """What these rows would change, in lines. Raises BookError."""

    def told(self, answers: Answers) -> str:
        """What is changed, in a line."""
        return self.sheet.told(answers)

    @abstractmethod
    def write(self, rows: Sequence[RowDraft], answers: Answers) -> View | None:
        """Write them, and where to go on. Raises BookError."""

    @property
    def scrolls(self) -> bool:
        """A long sheet moves with the question we stand at."""
        return True

    @property
    def question(self) -> Question | None:
        """The one we stand at; None at the last line."""
        return self.filling.question

    @property
    def half_typed(self) -> str:
        """What was answered and is not written."""
        return self.filling.unwritten

    def lines(self, size: Size) -> list[Line]:
        """The body of the screen."""
        return form_lines(self.filling, self.effects, size)

    def takes(self, character: str) -> bool:
        """A digit or a first letter picks; else every character belongs to the answer."""
        if self.question is None or len(character) != 1 or not character.isprintable():
            return False
        self.leaving = False
        self.said = self.filling.type(self.question, character) or ""
        return True

    def enter(self) -> View | None:
        """Read the answer and go on; at the last line, write."""
        self.leaving = False
        if self.question is None:
            return self._written()
        try:
            self.filling.read(self.question)
        except Wrong as problem:
            return self.say(str(problem))
        return self.go(1)

    def go(self, by: int) -> View:
        """Another line; at the last one it is looked at what would be changed."""
        self.filling.go(by)
        self.scroll.moved = 0
        self.leaving = False
        if self.question is None:
            self._look_ahead()
        return self

    def down(self) -> View:
        """The next question; at the last line, more of what is said there."""
        return self.move(1) if self.question is None else self.go(1)

    def to_end(self) -> View:
        """The last line at once, what was not asked stays as it stands there; at the last line, more of the page."""
        return self.leaf_page(1) if self.question is None else self.go(len(self.filling.questions))

    def turn(self, by: int) -> View:
        """The choice before or after."""
        self.filling.turn(by)
        return self

    def _look_ahead(self) -> None:
        self.rows, self.effects = (), []
        try:
            answers = self.filling.answers()
            self.rows = self.sheet.rows(answers)
            if self.rows or self.sheet.KEPT:
                self.effects = [self.told(answers), *self.what_changes(self.rows, answers)]
        except Wrong as problem:
            self.filling.stand_at(problem.question)
            self.say(str(problem))
        except BookError as problem:
            self.say(str(problem))

    def _written(self) -> View | None:
        if not (self.rows or self.sheet.KEPT):
            return self.say("Nothing here differs from what the book holds. Up goes back to the answers, Esc leaves.")
        try:
            return self.write(self.rows, self.filling.answers())
        except BookError as problem:
            return self.say(str(problem))

    def back(self) -> View:
        """Take the last character away."""
        self.leaving = False
        self.filling.backspace()
        return self

    def leave(self) -> View | None:
        """Leave the program, unless something is answered and not written."""
        if self.half_typed:
            return self.say(f"«{self.half_typed}» is answered and not written. Esc twice leaves this sheet without it.")
        return None

    def escape(self) -> View | None:
        """Out; what is answered and not written is said first."""
        if self.half_typed and not self.leaving:
            self.leaving = True
            return self.say(f"«{self.half_typed}» is answered and not written. Esc again leaves it, Enter goes on.")
        return self.out()

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", lambda form: "write it" if form.question is None else "next",
            "Takes the answer and goes on; at the last line it writes.", lambda form: form.enter()),
        Key((), "letters", "type, or pick", "Every letter and digit belongs to the answer, or picks one of a list."),
        Key(("left",), "Left Right", "another choice", "The choice before or after.", lambda form: form.turn(-1)),
        Key(("right",), "Right", "", "", lambda form: form.turn(1)),
        Key(("up", "shift+tab"), "Up Down", "question",
            "The question above or below; at the last line Down shows more of the page.", lambda form: form.go(-1)),
        Key(("down", "tab"), "Down", "", "", lambda form: form.down()),
        Key(("pagedown", "end"), "Page Down", "to the end", "To the last line; the rest stays as it stands there.",
            lambda form: form.to_end()),
        Key(BACKSPACE, "Backspace", "a letter back", "A letter back.", go_back),
        Key(("escape",), "Esc", "out", "Out; nothing is written.", lambda form: form.escape()),
        Key(("ctrl+c", "ctrl+q"), "Ctrl+Q", "", "", go_out),
    )  # fmt: skip
