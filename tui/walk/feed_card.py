"""A feed step: each feed in scoops and weight, large; and what was given the last time."""

from textwrap import wrap

from store.book.figures import FedFigure, StrungFigure
from store.book.words import State
from store.round.amount import Unreadable, feed_amount
from store.round.saying import bare, weight
from store.round.steps import DueFeed, FeedStep, Step
from tui.page import Line, Role, Size, Span, beside, cut, large_lines, line, width_of, wrapped
from tui.telling import step_words
from tui.walk.feed_context import context
from tui.walk.shown import Shown
from tui.walk.title import animal_facts, tag_words, title
from tui.words import in_quarters, measure_word, measured, spelled

NAME_CELLS, TAG_CELLS = 10, 13
REFUSAL_CELLS = 48
ROWS_BESIDE_FEEDS = 15
"""Rows of a screen that the feeds of a step cannot have."""


def feed_lines(shown: Shown, step: FeedStep, size: Size) -> list[Line]:
    """The body of a feed step. The chosen feed is always large, the others while there is room."""
    facts = (
        animal_facts("FEED", step.animal, step.place, shown)
        if step.animal
        else [f"{step.kind.upper()} for the whole pen", _heads(step)]
    )
    lines = title(step.name, facts, size)
    scale = _scale(len(step.due), size.height - ROWS_BESIDE_FEEDS)
    for row, due in enumerate(step.due):
        is_large = scale > 0 or row == shown.row
        lines += _large(shown, row, due, size, max(scale, 1)) if is_large else [_small(shown, row, due, size)]
    return [*lines, *_strings(shown, step, size), *_barred(step, size), *context(shown, step, size)]


def _strings(shown: Shown, step: FeedStep, size: Size) -> list[Line]:
    """Strings or net: off before it goes down, into the bin; counted where she types it."""
    if not any(due.feed.baled for due in step.due):
        return []
    row = len(step.due)
    written = step.entry.the(StrungFigure) if step.entry and step.entry.state is State.DONE else None
    count = shown.typed.get(row) or (str(written.strings) if written else "not counted")
    mark, role = (">", Role.HERE) if row == shown.row else (" ", Role.TEXT)
    words = f" {mark} STRINGS or net off, out of the pen, into the bin: {count} "
    return [line(" ", Span(cut(words, size.width - 2), role))]


def _barred(step: FeedStep, size: Size) -> list[Line]:
    """A feed that one of these animals must not get."""
    return [
        row
        for due in step.due
        for animal in step.heads
        if animal.species in due.feed.not_for
        for row in wrapped(
            f"{due.feed.name.upper()} IS NOT FOR {animal.species.value.upper()}: {animal.name} must not get it.",
            size.width, Role.WARNING, "  ",
        )
    ]  # fmt: skip


def _scale(feeds: int, room: int) -> int:
    """How large every feed can be drawn in so many rows; 0: only the chosen one."""
    return next((scale for scale, rows in ((2, 6), (1, 4)) if rows * feeds <= room), 0)


def _large(shown: Shown, row: int, due: DueFeed, size: Size, scale: int) -> list[Line]:
    """One feed: the number large; beside it the measure and feed, the number in words, the weight."""
    mark = ">" if _lines(shown) > 1 and row == shown.row else " "
    number, role = _number(shown, row, due)
    figure = [(Span(f"{mark if at == 0 else ' '} ", Role.STRONG), *each)
              for at, each in enumerate(large_lines(number, role, size.width // 2, scale))]  # fmt: skip
    column = max(14, max(map(width_of, figure)) + 3)
    words = [line(Span(cut(text, size.width - column - 1), role)) for text, role in _words(shown, row, due)]
    return [*beside(figure, words, column), ()]


def _small(shown: Shown, row: int, due: DueFeed, size: Size) -> Line:
    number, role = _number(shown, row, due)
    return line("  ", Span(number, role), cut(f" {_what(due)}", size.width - len(number) - 4))


def _number(shown: Shown, row: int, due: DueFeed) -> tuple[str, Role]:
    """The large figure: what is typed, else what was given, else what is due."""
    if shown.typed.get(row):
        return shown.typed[row], Role.TYPED
    given = _given(shown, due)
    if given and given.given_kg is not None and due.told and due.told.holds_kg and due.measures is not None:
        number = given.given_kg / due.told.holds_kg
        return in_quarters(round(number, 6)) or bare(number), Role.AMOUNT
    if due.measures is not None and not given:
        return in_quarters(due.measures) or bare(due.measures), Role.AMOUNT
    kg = given.given_kg if given and given.given_kg is not None else due.as_shown_kg
    return weight(kg, shown.units).split()[0], Role.AMOUNT


def _words(shown: Shown, row: int, due: DueFeed) -> list[tuple[str, Role]]:
    if shown.typed.get(row):
        return [(_what(due), Role.STRONG), *_reading(shown, row, due)]
    what = (
        _what(due) if due.measures is not None else f"{weight(due.as_shown_kg, shown.units).split()[1]}  {_what(due)}"
    )
    lines = [(what, Role.STRONG)]
    if due.measures is not None and not _given(shown, due):
        lines.append((spelled(due.measures), Role.TEXT))
    return [*lines, (_weighs(shown, due), Role.TEXT)]


def _what(due: DueFeed) -> str:
    """`scoop DRY, now SOAKED   LUCERNE PELLETS, RED bucket`."""
    name = due.feed.name.upper()
    measure = f"{measure_word(due.measures, due.told)} " if due.told and due.measures is not None else ""
    bucket = f", {due.feed.bucket} bucket" if due.feed.bucket else ""
    return f"{measure}DRY, now SOAKED  {name}{bucket}" if due.feed.soaked else f"{measure} {name}".strip()


def _weighs(shown: Shown, due: DueFeed) -> str:
    dry = " dry" if due.feed.soaked else ""
    given = _given(shown, due)
    if given and given.given_kg is not None:
        return f"{weight(given.given_kg, shown.units)}{dry} given"
    exact = f"{weight(due.as_shown_kg, shown.units)}{dry}"
    if weight(due.as_shown_kg, shown.units) != weight(due.due_kg, shown.units):
        exact += f"   (plan {weight(due.due_kg, shown.units)})"
    if due.told and due.told.holds_kg is None:
        exact += f"   nobody has weighed this {due.told.name} yet"
    return exact


def _reading(shown: Shown, row: int, due: DueFeed) -> list[tuple[str, Role]]:
    """What the typed text means, or why it means nothing yet."""
    try:
        amount = feed_amount(shown.typed[row], due.feed, due.told, shown.units, by_weight=due.measures is None)
    except Unreadable as problem:
        return [(row, Role.WARNING) for row in wrap(str(problem), REFUSAL_CELLS)]
    dry = " dry" if due.feed.soaked else ""
    told = f"{measured(amount.measures, due.told)}, " if amount.measures is not None and due.told else ""
    return [
        (f"= {told}{weight(amount.kg, shown.units)}{dry}", Role.TYPED),
        (f"plan {weight(due.due_kg, shown.units)}", Role.QUIET),
    ]


def _lines(shown: Shown) -> int:
    due = shown.step.due if isinstance(shown.step, FeedStep) else ()
    return len(due) + any(each.feed.baled for each in due)


def _given(shown: Shown, due: DueFeed) -> FedFigure | None:
    entry = shown.step.entry
    if entry is None or entry.state is not State.DONE:
        return None
    return next((figure for figure in entry.of(FedFigure) if figure.feed_id == due.feed.id), None)


def _heads(step: FeedStep) -> str:
    names = ", ".join(animal.name for animal in step.heads)
    return f"{len(step.heads)} heads: {names}" if len(step.heads) > 1 else f"1 head: {names}"


def told_in_short(shown: Shown, step: Step, width: int) -> list[str]:
    """A step for a board: the animal, her tag, and every amount, in as many rows as they need; nothing is cut off."""
    if not isinstance(step, FeedStep):
        return [cut(step_words(shown.walker, step), width)]
    tag = tag_words(step.animal) if step.animal else f"{len(step.heads)} heads"
    rows = [f"{step.name.upper():<9} {tag:<{TAG_CELLS}}"]
    for row, due in enumerate(step.due):
        amount = f" {_short(shown, row, due)}  "
        if row and len(rows[-1]) + len(amount) > width:
            rows.append(" " * (NAME_CELLS + TAG_CELLS))
        rows[-1] += amount
    return [cut(each.rstrip(), width) for each in rows]


def _short(shown: Shown, row: int, due: DueFeed) -> str:
    if shown.typed.get(row):
        return " ".join(words for words, _ in _reading(shown, row, due)[:1]) + f" {due.feed.name}"
    dry = f" DRY, now soaked in the {due.feed.bucket} bucket" if due.feed.soaked and due.feed.bucket else ""
    told = measured(due.measures, due.told) if due.told and due.measures is not None else ""
    amount = told or weight(due.as_shown_kg, shown.units)
    return f"{amount} {due.feed.name}{dry}"
