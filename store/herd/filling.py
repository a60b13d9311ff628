"""A sheet while it is filled in: what is typed at each question, and what it is read as. No screen."""

from datetime import date, datetime
from typing import Any

from store.book.turn import local
from store.herd.days import day_words
from store.herd.sheet import Answers, Question, Sheet, Wrong, YardSheet
from store.round.amount import Unreadable
from store.round.measured import SURE

MOST = 120


class Filling:
    """Answers as typed, and the question one stands at. Behind the last question stands the line that writes."""

    def __init__(self, sheet: Sheet) -> None:
        """With the answers that stand there at first."""
        self.sheet = sheet
        self.questions = sheet.questions()
        self.texts = {question.name: question.first for question in self.questions}
        self.at = 0
        self.fresh = True  # the first letter typed takes the place of what stands there; a ! goes behind it

    @property
    def question(self) -> Question | None:
        """The one we stand at; None behind the last."""
        return self.questions[self.at] if self.at < len(self.questions) else None

    @property
    def unwritten(self) -> str:
        """The last answer that is another than at first, or what was emptied; empty where there is none."""
        other = [each for each in self.questions if self.texts[each.name] != each.first]
        return (self.texts[other[-1].name] or f"{other[-1].words}: nothing") if other else ""

    def go(self, by: int) -> None:
        """Another line, never past either end."""
        self.at = max(0, min(self.at + by, len(self.questions)))
        self.fresh = True

    def type(self, question: Question, character: str) -> str | None:
        """A character of an answer, or one that picks. What is wrong with it, in words; None where it is taken."""
        if question.picks:
            return self._pick(question, character)
        before = "" if self.fresh and character != SURE else self.texts[question.name]
        self.texts[question.name] = (before + character)[:MOST]
        self.fresh = False
        return f"No more than {MOST} letters fit here; «{character}» was left out." if len(before) >= MOST else None

    def backspace(self) -> None:
        """The last character away."""
        if self.question and not self.question.picks:
            self.texts[self.question.name] = self.texts[self.question.name][:-1]
            self.fresh = False

    def turn(self, by: int) -> None:
        """The choice before or after."""
        if self.question and self.question.picks:
            words = [word for word, _ in self.question.choices]
            here = self._picked(self.question, words)
            self.texts[self.question.name] = words[((here if by > 0 else max(here, 0)) + by) % len(words)]

    def read(self, question: Question) -> Any:
        """The value of an answer; what letters have found, and a day, then stand there whole. Raises Wrong."""
        typed = self.texts[question.name]
        if question.was is not None and typed == question.first:
            return question.was
        if question.finds and len(typed) == 1 and typed in "123456789":
            typed = question.choices[min(int(typed), len(question.choices)) - 1][0]
        try:
            value = question.read(typed)
        except (Unreadable, KeyError) as problem:
            raise Wrong(question.name, _sentence(problem, question, typed)) from problem
        if question.finds:
            self.texts[question.name] = next(word for word, each in question.choices if each == value)
        elif isinstance(value, date) and typed != question.first:
            self.texts[question.name] = day_words(self._day(value))
        return value

    def _day(self, value: date) -> date:
        """A day, or the farm's day of a moment."""
        if isinstance(value, datetime) and isinstance(self.sheet, YardSheet):
            return local(value, self.sheet.zone).date()
        return value

    def answers(self) -> Answers:
        """Every answer, read. Raises Wrong for the first that cannot be."""
        return {question.name: self.read(question) for question in self.questions}

    def stand_at(self, name: str) -> None:
        """At a question by its name."""
        self.at = next(at for at, each in enumerate(self.questions) if each.name == name)
        self.fresh = True

    def _pick(self, question: Question, character: str) -> str | None:
        words = [word for word, _ in question.choices]
        if character in "123456789" and int(character) <= len(words):
            self.texts[question.name] = words[int(character) - 1]
            return None
        here = self._picked(question, words) + 1
        turned = words[here:] + words[:here]
        found = next((word for word in turned if word.lower().startswith(character.lower())), None)
        if found is None:
            return f"«{character}» picks nothing here. A digit, Left and Right, or a first letter does."
        self.texts[question.name] = found
        return None

    def _picked(self, question: Question, words: list[str]) -> int:
        """Which of the choices stands there; -1: none yet."""
        return words.index(self.texts[question.name]) if self.texts[question.name] in words else -1


def _sentence(problem: Exception, question: Question, typed: str) -> str:
    if question.picks and question.choices:
        return f"«{question.words}» needs an answer. Pick one: a digit, or Left and Right."
    if question.picks:
        return f"There is nothing to pick for «{question.words}» yet. Esc leaves; set that up first."
    return str(problem) if typed.strip() else f"«{question.words}» needs an answer. Type it, then Enter."
