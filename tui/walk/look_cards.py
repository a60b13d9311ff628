"""Counts, udders and calves under the lamp."""

from collections.abc import Sequence

from store.book.figures import CountedFigure, FeltFigure
from store.book.words import Fill
from store.round.steps import CountStep, UdderStep
from store.round.udder import last_felt, why_felt
from tui.page import Line, Role, Size, Span, beside, large_lines, line, width_of, wrapped
from tui.walk.apart_card import staying_lines
from tui.walk.quarter_cards import marked_lines
from tui.walk.shown import Shown
from tui.walk.title import animal_facts, scale_for, title
from tui.words import when

FILL_WORDS = {
    Fill.SLACK: "slack",
    Fill.COMFORTABLE: "comfortable",
    Fill.FULL: "full",
    Fill.TIGHT: "tight, or dripping",
}
LOOK = "All up?  Chewing?  Dung right?  Anybody apart from the others?"
UDDER = "Look and feel only: even and cool on all four quarters. Do not open the teats."


def count_lines(shown: Shown, step: CountStep, size: Size) -> list[Line]:
    """Heads expected, large; what was counted before where it was short."""
    text = shown.typed.get(0, "")
    drawn = large_lines(text or "?", Role.TYPED if text else Role.QUIET, size.width // 3, scale_for(size))
    figure = [(Span("  "), *row) for row in drawn]
    told = [line(Span("heads you see", Role.STRONG)), line(f"of {len(step.heads)} expected"), *_short(step)]
    names = ", ".join(animal.name for animal in step.heads) or "nobody now: the calf is with its cow"
    return [
        *title(step.name, ["COUNT"], size),
        *beside(figure, told, max(14, max(map(width_of, figure)) + 3)),
        (),
        line(Span(f"  {LOOK}", Role.STRONG)),
        *wrapped(f"HERE    {names}", size.width, Role.TEXT, "  "),
        *staying_lines(shown, step.pen.id, size),
    ]


def _short(step: CountStep) -> list[Line]:
    counted = step.entry.the(CountedFigure) if step.entry else None
    if counted is None or not counted.missing:
        return []
    return [line(Span(f"{counted.missing} MISSING: find them; this count stays open", Role.WARNING))]


def udder_lines(shown: Shown, step: UdderStep, size: Size) -> list[Line]:
    """The findings to pick from."""
    facts = animal_facts("UDDER", step.animal, step.place, shown)
    lines = [*title(step.name, facts, size), *wrapped(UDDER, size.width, Role.STRONG, "  "), ()]
    lines += findings([FILL_WORDS[fill] for fill in Fill], shown.row)
    lines += wrapped(_felt_words(shown, step), size.width, Role.TEXT, "  ")
    return [*lines, *marked_lines(shown.walker, step.animal.id, size)]


def _felt_words(shown: Shown, step: UdderStep) -> str:
    """How she was felt last, and why she is felt now."""
    entry = last_felt(shown.walker.snapshot, step.animal.id)
    felt = entry.the(FeltFigure) if entry else None
    last = (
        f"{felt.fill.value}, {when(entry.happened_at, shown.walker.zone)}" if entry and felt else "not felt last round"
    )
    return f"LAST    {last}. Felt now: {why_felt(shown.walker.snapshot, step.animal)}"


def findings(choices: Sequence[str], picked: int) -> list[Line]:
    """What can be found, numbered, the picked one marked."""
    lines: list[Line] = []
    for row, words in enumerate(choices):
        here = row == picked
        lines.append(line("  ", Span(f" {'>' if here else ' '} {row + 1}  {words} ", Role.HERE if here else Role.TEXT)))
    return lines
