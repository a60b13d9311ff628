"""Counts, udders and calves under the lamp."""

from collections.abc import Sequence
from datetime import datetime

from store.book.figures import CountedFigure
from store.book.words import Apart, Fill
from store.round.steps import ApartStep, CountStep, SharedCalf, UdderStep
from tui.page import Line, Role, Size, Span, beside, large_lines, line, width_of, wrapped
from tui.walk.shown import Shown
from tui.walk.title import animal_facts, scale_for, title
from tui.words import age, clock, hours

FILL_WORDS = {
    Fill.SLACK: "slack",
    Fill.COMFORTABLE: "comfortable",
    Fill.FULL: "full",
    Fill.TIGHT: "tight, or dripping",
}
SINCE = {Apart.SHUT_AWAY: "since", Apart.LET_IN: "since", Apart.GOT_OUT: "found with her at"}
LOOK = "All up?  Chewing?  Dung right?  Anybody apart from the others?"
UDDER = "Look and feel only: even and cool on all four quarters. Do not open the teats."
CALF = "Water, hay and a dry bed in the pen. Latch tried. It can see its dam."


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
    return [*lines, *findings([FILL_WORDS[fill] for fill in Fill], shown.row)]


def findings(choices: Sequence[str], picked: int) -> list[Line]:
    """What can be found, numbered, the picked one marked."""
    lines: list[Line] = []
    for row, words in enumerate(choices):
        here = row == picked
        lines.append(line("  ", Span(f" {'>' if here else ' '} {row + 1}  {words} ", Role.HERE if here else Role.TEXT)))
    return lines


def apart_lines(shown: Shown, step: ApartStep, size: Size) -> list[Line]:
    """What is to be done with the calf, and how long it has been."""
    away = step.want is Apart.SHUT_AWAY
    what = f"SHUT AWAY from {step.cow.name}" if away else f"LET IN to {step.cow.name}"
    born = step.calf.calf.born_on
    facts = [what, step.place, f"{age(born, shown.today)} old" if born else ""]
    lines = [*title(step.name, facts, size), *_since(shown, step.calf, size), ()]
    return [*lines, *(wrapped(CALF, size.width, Role.STRONG, "  ") if away else [])]


def _since(shown: Shown, calf: SharedCalf, size: Size) -> list[Line]:
    if calf.last is None or calf.last.state is None:
        return wrapped(
            "Where the calf was is not known: nothing was written, or it is on paper.", size.width, Role.WARNING, "  "
        )
    elapsed_h = (shown.now - calf.last.at).total_seconds() / 3600
    drawn = large_lines(hours(elapsed_h), Role.AMOUNT, 50, scale_for(size))
    figure = [(Span("  "), *row) for row in drawn]
    told = [
        line(Span(calf.last.state.value, Role.STRONG)),
        line(f"{SINCE[calf.last.state]} {clock(calf.last.at, shown.walker.farm.zone)}"),
        *_too_long(calf, elapsed_h),
    ]
    return beside(figure, told, max(map(width_of, figure)) + 3)


def _too_long(calf: SharedCalf, elapsed_h: float) -> list[Line]:
    if calf.last is None or calf.last.state is not Apart.SHUT_AWAY:
        return []
    if elapsed_h > calf.longest_h:
        return [line(Span(f"PAST your limit of {calf.longest_h:g} h", Role.WARNING))]
    return [line(f"your limit {calf.longest_h:g} h")]


def calf_words(calf: SharedCalf, now: datetime, zone: str) -> tuple[str, bool]:
    """Where a calf is, in a line for the milking; and whether that is as it should be."""
    last = calf.last
    if last is None or last.state is None:
        return f"{calf.calf.name}: where it was is not known", False
    elapsed = hours((now - last.at).total_seconds() / 3600)
    if last.state is not Apart.SHUT_AWAY:
        when = f"{SINCE[last.state]} {clock(last.at, zone)}"
        return f"{calf.calf.name}: {last.state.value}, {when}, so the pail says little", False
    return f"{calf.calf.name}: shut away {clock(last.at, zone)}, {elapsed} ago, your limit {calf.longest_h:g} h", True
