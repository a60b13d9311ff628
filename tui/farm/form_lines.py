"""A form on the screen: each question with its answer, help to the one we stand at, and what would be changed."""

from collections.abc import Sequence

from store.herd.filling import Filling
from store.herd.sheet import Question
from tui.page import Line, Role, Size, Span, cut, line, wrapped

FOUND = 6
"""So many of a long list are shown while letters narrow it."""
ASKED_CELLS = 27
NO_BREAK = "\u00a0"
"""Holds a choice and its digit in one row."""
HELP, EFFECT = "       ", "      "


def form_lines(filling: Filling, effects: Sequence[str], size: Size) -> list[Line]:
    """Title, answers, and what is said to the one we stand at."""
    body: list[Line] = [*wrapped(filling.sheet.title, size.width, Role.STRONG, "  "), ()]
    for at, question in enumerate(filling.questions):
        body += _here(filling, question, size.width) if at == filling.at else [_row(filling, question, size.width)]
    at_end = filling.question is None
    body.append(line("  ", Span(f" {'> WRITE IT' if at_end else '  write it'} ", Role.HERE if at_end else Role.QUIET)))
    for effect in effects if at_end else ():
        body += wrapped(effect, size.width - 4, Role.TEXT, EFFECT)
    return body


def _row(filling: Filling, question: Question, width: int) -> Line:
    asked = f"   {cut(question.words, ASKED_CELLS - 1):<{ASKED_CELLS}}"
    return line("  ", Span(cut(asked, width - 4)), Span(cut(filling.texts[question.name], width - ASKED_CELLS - 8)))


def _here(filling: Filling, question: Question, width: int) -> list[Line]:
    typed = filling.texts[question.name][-(width - ASKED_CELLS - 12) :]
    asked = f" > {cut(question.words, ASKED_CELLS - 1):<{ASKED_CELLS}}"
    row = line("  ", Span(asked, Role.HERE), Span(f"{typed}{'' if question.picks else '_'} ", Role.TYPED))
    hint = wrapped(question.hint, width - 6, Role.QUIET, HELP) if question.hint else []
    if question.finds:
        words = _narrowed(question, "" if filling.fresh else filling.texts[question.name])
        return [row, *hint, *(line(HELP, Span(cut(word, width - 9), Role.QUIET)) for word in words)]
    choices = [f"{at} {word}".replace(" ", NO_BREAK) for at, (word, _) in enumerate(question.choices, 1)]
    return [row, *hint, *(wrapped("   ".join(choices), width - 6, Role.TEXT, HELP) if choices else [])]


def _narrowed(question: Question, typed: str) -> list[str]:
    """The first few choices that hold every typed word; Enter takes the first."""
    words = typed.lower().split()
    found = [word for word, _ in question.choices if all(each in word.lower() for each in words)]
    more = [f"... {len(found) - FOUND} more; more letters narrow them"] if len(found) > FOUND else []
    if not typed:
        return [*(f"{at} {word}" for at, word in enumerate(found[:FOUND], 1)), *more]
    return [*(f"> {word}" if at == 0 else f"  {word}" for at, word in enumerate(found[:FOUND])), *more]
