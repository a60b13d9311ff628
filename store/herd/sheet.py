"""A sheet: what is asked about one thing of the yard, and the rows that the answers become.

Answers come as typed text; every question reads its own. What only several answers together can say wrongly is said
by `rows`. A sheet knows no screen and writes nothing.
"""

from abc import ABC, abstractmethod
from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import datetime
from enum import Enum, auto
from typing import Any, TypeAlias
from uuid import UUID

from msgspec import Struct
from msgspec.structs import replace

from store.book.clock import new_id
from store.book.drafts import Draft, RowDraft, Subject
from store.book.register import SAME, Register, Values
from store.book.turn import local
from store.book.words import State
from store.herd.dating import Step, rows_of
from store.herd.days import begins_at, day_words
from store.round.confirm import Hand

Choices: TypeAlias = tuple[tuple[str, Any], ...]
"""What can be picked: words, and the value behind them."""
Answers: TypeAlias = Mapping[str, Any]
"""By question: what was read of its answer."""


AS_BEFORE = "as before, out of use"
"""Stands for what was picked once and cannot be picked any more."""


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


class Question(Struct, frozen=True):
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
    """A question that is answered by picking; the first choice stands there unless another value is named.

    A first value that is not among them is offered all the same, so that nothing takes its place unseen. Of equal words
    each but the first gets a number.
    """
    known = first is None or any(value == first for _, value in choices)
    offered = tuple(_told_apart(choices if known else (*choices, (AS_BEFORE, first))))
    word = next((word for word, value in offered if value == first), offered[0][0] if offered else "")
    return Question(name, words, dict(offered).__getitem__, hint, word, offered, Ask.PICK)


def pick_one(name: str, words: str, choices: Choices, hint: str = "") -> Question:
    """A question of which nothing is picked at first, so that nothing happens that nobody said."""
    return replace(pick(name, words, choices, hint=hint), first="")


def _told_apart(choices: Choices) -> Iterator[tuple[str, Any]]:
    seen: dict[str, int] = {}
    for word, value in choices:
        seen[word] = seen.get(word, 0) + 1
        yield (word if seen[word] == 1 else f"{word} ({seen[word]})"), value


def yes_or_no(name: str, words: str, *, first: bool, hint: str = "") -> Question:
    """A question that is answered by yes or no."""
    return pick(name, words, (("yes", True), ("no", False)), first, hint)


class Sheet(ABC):
    """What is asked about one thing."""

    FROM = "from_at"
    """The name of the question from when on it counts; a sheet without it counts from now."""
    TAKE_BACK = "take_back"
    """The name of the question whether what is planned for later is taken back."""
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

    def entries(self, answers: Answers, hand: Hand) -> Sequence[Draft]:  # noqa: ARG002
        """The entries that are written with the rows, each with a step id; they can be taken back with them."""
        return ()

    def entries_back(self, answers: Answers, hand: Hand) -> Sequence[Draft]:
        """The entries that make it as before when it is taken back: none of them happened."""
        return [
            replace(each, state=State.OPEN, figures=(), happened_at=hand.now, happened_from=None)
            for each in self.entries(answers, hand)
        ]

    def says(self, answers: Answers, hand: Hand) -> Sequence[str]:  # noqa: ARG002
        """What follows from the answers besides other steps, in lines."""
        return ()

    def new_id(self) -> UUID:
        """The id of something new."""
        return new_id(self.register.at)

    def question_from(self) -> Question:
        """From when on it counts."""
        hint = "now, or a day as 5 Mar 2026, tomorrow"
        return Question(self.FROM, "counts from", begins_at(self.register.at, self.zone), hint, "now")

    def coming(self, table: str, same: Mapping[str, Any]) -> tuple[Values, ...]:
        """The rows of a thing that are planned already and begin later."""
        rows = self.register.course(table, *(same[name] for name in SAME[table]))
        return tuple(row for row in rows if row["begins_at"] > self.register.at)

    def since(self, answers: Answers) -> str:
        """From when on it counts, in words for the note; empty: from now."""
        begins: datetime | None = answers.get(self.FROM)
        return f", from {day_words(local(begins, self.zone).date())}" if begins else ""

    def from_words(self, row: Values) -> str:
        """From when on a planned row counts: `from 13 Mar 2026`."""
        return f"from {day_words(local(row['begins_at'], self.zone).date())}"

    def question_coming(self, *planned: str) -> tuple[Question, ...]:
        """Whether what is planned for later is taken back; not asked where nothing is. planned: it, in words."""
        hint = f"planned: {'; '.join(planned)}"
        return (yes_or_no(self.TAKE_BACK, "take back what is planned", first=False, hint=hint),) if planned else ()

    def dated(self, table: str, answers: Answers, same: Mapping[str, Any], values: Mapping[str, Any]) -> list[RowDraft]:
        """Rows that make some columns of a thing so, from the moment asked on."""
        return self.in_steps(table, answers, same, [(answers.get(self.FROM) or self.register.at, values)])

    def in_steps(self, table: str, answers: Answers, same: Mapping[str, Any], steps: Sequence[Step]) -> list[RowDraft]:
        """Rows that make some columns of a thing so, step by step, each from its moment on."""
        course = self.register.course(table, *(same[name] for name in SAME[table]))
        rows = rows_of(course, self.register.at, steps, take_back=bool(answers.get(self.TAKE_BACK)))
        return [RowDraft(table, {**row, **same}) for row in rows]
