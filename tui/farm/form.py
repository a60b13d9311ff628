"""A form: the questions of a sheet, all on one screen; at its end what the answers would change, then Enter writes."""

from abc import abstractmethod
from collections.abc import Sequence
from typing import Any, ClassVar

from store.book.drafts import RowDraft
from store.book.errors import BookError
from store.herd.sheet import Answers, Question, Sheet, Wrong
from store.round.amount import Unreadable
from tui.page import Line, Role, Size, Span, cut, line, wrapped
from tui.typed import is_pick
from tui.view import BACKSPACE, ENTER, Key, View, go_back, go_out

MOST = 120
FOUND = 6
"""So many of a long list are shown while letters narrow it."""
ASKED_CELLS = 27
NO_BREAK = "\u00a0"
"""Holds a choice and its digit in one row."""


class Form(View):
    """Enter goes from answer to answer; nothing is written before its last line."""

    def ask(self, sheet: Sheet) -> None:
        """Begin a sheet, with the answers that stand there at first."""
        self.sheet = sheet
        self.questions = sheet.questions()
        self.texts = {question.name: question.first for question in self.questions}
        self.at = 0
        self.fresh = True  # the first letter typed takes the place of what stands there
        self.leaving = False
        self.rows: Sequence[RowDraft] = ()
        self.effects: list[str] = []

    @abstractmethod
    def out(self) -> View | None:
        """Where it came from; nothing is written."""

    @abstractmethod
    def what_changes(self, rows: Sequence[RowDraft], answers: Answers) -> list[str]:
        """What these rows would change, in lines. Raises BookError."""

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
        return self.questions[self.at] if self.at < len(self.questions) else None

    @property
    def half_typed(self) -> str:
        """What was answered and is not written."""
        return next((text for each in self.questions if (text := self.texts[each.name]) != each.first), "")

    def takes(self, character: str) -> bool:
        """A digit or a first letter picks; else every character belongs to the answer."""
        self.leaving = False
        question = self.question
        if question is None or len(character) != 1 or not character.isprintable():
            return False
        if question.choices and not question.find:
            self._picks(question, character)
            return True
        before = "" if self.fresh else self.texts[question.name]
        if len(before) >= MOST:
            self.say(f"No more than {MOST} letters fit here; «{character}» was left out.")
        self.texts[question.name] = (before + character)[:MOST]
        self.fresh = False
        return True

    def _picks(self, question: Question, character: str) -> None:
        words = [word for word, _ in question.choices]
        if is_pick(character) and int(character) <= len(words):
            self.texts[question.name] = words[int(character) - 1]
            return
        here = words.index(self.texts[question.name]) if self.texts[question.name] in words else -1
        turned = words[here + 1 :] + words[: here + 1]
        found = next((word for word in turned if word.lower().startswith(character.lower())), None)
        if found is None:
            self.say(f"«{character}» picks nothing here. A digit, Left and Right, or a first letter does.")
            return
        self.texts[question.name] = found

    def other(self, by: int) -> View:
        """The choice before or after; what is typed keeps still."""
        question = self.question
        if question and question.choices and not question.find:
            words = [word for word, _ in question.choices]
            here = words.index(self.texts[question.name]) if self.texts[question.name] in words else 0
            self.texts[question.name] = words[(here + by) % len(words)]
        return self

    def enter(self) -> View | None:
        """Read the answer and go on; at the last line, write."""
        self.leaving = False
        if self.question is None:
            return self._written()
        try:
            self._read(self.question)
        except (Unreadable, KeyError) as problem:
            return self.say(_sentence(problem, self.question))
        return self.go(1)

    def _read(self, question: Question) -> Any:
        """The value of its answer; what letters have found then stands there whole."""
        value = question.read(self.texts[question.name])
        if question.find:
            self.texts[question.name] = next(word for word, each in question.choices if each == value)
        return value

    def go(self, by: int) -> View:
        """Another line; at the last one it is looked at what would be changed."""
        self.at = max(0, min(self.at + by, len(self.questions)))
        self.fresh, self.leaving = True, False
        if self.question is None:
            self._look_ahead()
        return self

    def to_end(self) -> View:
        """The last line at once; what was not asked stays as it stands there."""
        return self.go(len(self.questions))

    def _look_ahead(self) -> None:
        self.rows, self.effects = (), []
        try:
            answers = self._answers()
            self.rows = self.sheet.rows(answers)
            self.effects = self.what_changes(self.rows, answers) if self.rows else []
        except Wrong as problem:
            self.at = next(at for at, each in enumerate(self.questions) if each.name == problem.question)
            self.say(str(problem))
        except BookError as problem:
            self.say(str(problem))

    def _answers(self) -> dict[str, Any]:
        """Every answer, read. Raises Wrong."""
        answers = {}
        for question in self.questions:
            try:
                answers[question.name] = self._read(question)
            except (Unreadable, KeyError) as problem:
                raise Wrong(question.name, _sentence(problem, question)) from problem
        return answers

    def _written(self) -> View | None:
        if not self.rows:
            return self.say("Nothing here differs from what the book holds. Up goes back to the answers, Esc leaves.")
        try:
            return self.write(self.rows, self._answers())
        except BookError as problem:
            return self.say(str(problem))

    def back(self) -> View:
        """Take the last character away."""
        self.leaving = False
        question = self.question
        if question and not (question.choices and not question.find):
            self.texts[question.name] = self.texts[question.name][:-1]
            self.fresh = False
        return self

    def escape(self) -> View | None:
        """Out; what is typed and not written is said first."""
        if self.half_typed and not self.leaving:
            self.leaving = True
            return self.say(f"«{self.half_typed}» is answered and not written. Esc again leaves it, Enter goes on.")
        return self.out()

    def lines(self, size: Size) -> list[Line]:
        """Title, answers, and what is said to the one we stand at."""
        body: list[Line] = [*wrapped(self.sheet.title, size.width, Role.STRONG, "  "), ()]
        for at, question in enumerate(self.questions):
            body += self._row(question, size.width, here=at == self.at)
        words = " > WRITE IT " if self.question is None else "   write it "
        body.append(line("  ", Span(words, Role.HERE if self.question is None else Role.QUIET)))
        for effect in self.effects if self.question is None else ():
            body += wrapped(effect, size.width - 4, Role.TEXT, "      ")
        return body

    def _row(self, question: Question, width: int, *, here: bool) -> list[Line]:
        typed = self.texts[question.name]
        asked = f" {'>' if here else ' '} {question.words:<{ASKED_CELLS}}"
        if not here:
            return [line("  ", Span(cut(asked, width - 4)), Span(cut(typed, width - ASKED_CELLS - 8)))]
        cursor = "" if question.choices and not question.find else "_"
        row = line("  ", Span(asked, Role.HERE), Span(f"{typed[-(width - ASKED_CELLS - 12) :]}{cursor} ", Role.TYPED))
        return [row, *self._help(question, width)]

    def _help(self, question: Question, width: int) -> list[Line]:
        hint = wrapped(question.hint, width - 6, Role.QUIET, "       ") if question.hint else []
        if question.find:
            found = _narrowed(question, "" if self.fresh else self.texts[question.name])
            return [*hint, *(line("       ", Span(cut(word, width - 9), Role.QUIET)) for word in found)]
        choices = [f"{at} {word}".replace(" ", NO_BREAK) for at, (word, _) in enumerate(question.choices, 1)]
        return [*hint, *(wrapped("   ".join(choices), width - 6, Role.TEXT, "       ") if choices else [])]

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", lambda form: "write it" if form.question is None else "next",
            "Takes the answer and goes on; at the last line it writes.", lambda form: form.enter()),
        Key((), "letters", "type, or pick", "Every letter and digit belongs to the answer, or picks one of a list."),
        Key(("left",), "Left Right", "another choice", "The choice before or after.", lambda form: form.other(-1)),
        Key(("right",), "Right", "", "", lambda form: form.other(1)),
        Key(("up", "shift+tab"), "Up Down", "question", "The question above or below.", lambda form: form.go(-1)),
        Key(("down", "tab"), "Down", "", "", lambda form: form.go(1)),
        Key(("pagedown", "end"), "Page Down", "to the end", "To the last line; the rest stays as it stands there.",
            lambda form: form.to_end()),
        Key(BACKSPACE, "Backspace", "a letter back", "A letter back.", go_back),
        Key(("escape",), "Esc", "out", "Out; nothing is written.", lambda form: form.escape()),
        Key(("ctrl+c", "ctrl+q"), "Ctrl+Q", "", "", go_out),
    )  # fmt: skip


def _sentence(problem: Exception, question: Question) -> str:
    return (
        str(problem) if isinstance(problem, Unreadable) else f"Nothing is picked for «{question.words}». A digit picks."
    )


def _narrowed(question: Question, typed: str) -> list[str]:
    """The first few choices that hold every typed word."""
    words = typed.lower().split()
    found = [word for word, _ in question.choices if all(each in word.lower() for each in words)]
    more = [f"... {len(found) - FOUND} more; more letters narrow them"] if len(found) > FOUND else []
    return [*(f"> {word}" if at == 0 and typed else word for at, word in enumerate(found[:FOUND])), *more]
