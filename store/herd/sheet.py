"""A sheet: what is asked about one thing of the yard, and the rows that the answers become.

Answers come as typed text; every question reads its own. What only several answers together can say wrongly is said
by `rows`. A sheet knows no screen and writes nothing.
"""

from abc import ABC, abstractmethod
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum, auto
from typing import Any, TypeAlias
from uuid import UUID

from store.book.clock import new_id
from store.book.drafts import RowDraft, Subject
from store.book.register import SAME, Register
from store.book.turn import local
from store.herd.answers import begins_at

Choices: TypeAlias = tuple[tuple[str, Any], ...]
"""What can be picked: words, and the value behind them."""
Answers: TypeAlias = Mapping[str, Any]
"""By question: what was read of its answer."""


class Wrong(ValueError):
    """An answer that does not fit the others; str() is the sentence for the keeper, `question` where to mend it."""

    def __init__(self, question: str, sentence: str) -> None:
        """Of a question, by its name."""
        super().__init__(sentence)
        self.question = question


class Ask(Enum):
    """How a question is answered."""

    TYPE = auto()
    PICK = auto()  # one of a few, by a digit, a first letter or Left and Right
    FIND = auto()  # one of many, which letters narrow


@dataclass(frozen=True, slots=True)
class Question:
    """One question of a sheet.

    name: of its answer. words: what is asked. hint: what can be typed, or what it is for.
    first: the answer that stands there at first, as typed.
    read: the value of a typed answer; raises Unreadable with a sentence.
    choices: what can be picked, or found by letters. ask: how it is answered.
    was: the value behind the first answer, where its text is rounded; left as it stands, it stays this very value.
    """

    name: str
    words: str
    read: Callable[[str], Any] = str
    hint: str = ""
    first: str = ""
    choices: Choices = ()
    ask: Ask = Ask.TYPE
    was: Any = None

    @property
    def picks(self) -> bool:
        """Whether it is answered by picking alone."""
        return self.ask is Ask.PICK

    @property
    def finds(self) -> bool:
        """Whether letters narrow a list."""
        return self.ask is Ask.FIND


def pick(name: str, words: str, choices: Choices, first: Any = None, hint: str = "") -> Question:
    """A question that is answered by picking; the first choice stands there unless another one is named."""
    word = next((word for word, value in choices if value == first), choices[0][0] if choices else "")
    return Question(name, words, dict(choices).__getitem__, hint, word, choices, Ask.PICK)


def yes_or_no(name: str, words: str, *, first: bool, hint: str = "") -> Question:
    """A question that is answered by yes or no."""
    return pick(name, words, (("yes", True), ("no", False)), first, hint)


class Sheet(ABC):
    """What is asked about one thing."""

    FROM = "from_at"
    """The name of the question from when on it counts; a sheet without it counts from now."""
    KEPT = False
    """Whether the answers are kept even where they change no row, as a forecast is."""

    @property
    @abstractmethod
    def title(self) -> str:
        """What the sheet is about."""

    @abstractmethod
    def questions(self) -> tuple[Question, ...]:
        """In the order in which they are asked."""

    @abstractmethod
    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The rows to write. Raises Wrong."""

    @abstractmethod
    def told(self, answers: Answers) -> str:
        """What was changed, in a few words, for the note that is kept with it."""

    def subject(self) -> Subject:
        """What the note is about; the whole yard where there is no one thing."""
        return Subject()


class YardSheet(Sheet):
    """A sheet about something in a book."""

    def __init__(self, register: Register) -> None:
        """With what is in force."""
        self.register = register
        self.units, self.zone = register.farm.units, register.farm.zone
        self.today = local(register.at, self.zone).date()

    def new_id(self) -> UUID:
        """The id of something new."""
        return new_id(self.register.at)

    def question_from(self) -> Question:
        """From when on it counts."""
        hint = "now, or a day as 5 Mar 2026, tomorrow"
        return Question(self.FROM, "counts from", begins_at(self.register.at, self.zone), hint, "now")

    def dated(self, table: str, answers: Answers, same: Mapping[str, Any], values: Mapping[str, Any]) -> list[RowDraft]:
        """One row more for a thing, where it differs from what is in force; columns not named stay as they are."""
        before = self.register.get(table, *(same[name] for name in SAME[table]))
        if before is not None and all(before[name] == value for name, value in values.items()):
            return []
        kept = {name: value for name, value in (before or {}).items() if name not in OWN}
        begins = {"begins_at": answers[self.FROM]} if answers.get(self.FROM) else {}
        return [RowDraft(table, {**kept, **same, **values, **begins})]


OWN = ("id", "begins_at", "written_at")
"""Columns that every dated row has for itself."""
