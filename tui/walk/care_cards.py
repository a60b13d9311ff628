"""A look that falls due, and a dose that label or vet have ordered."""

from store.book.facts.care import Look
from store.book.figures import DosedFigure
from store.book.words import Asks, Looks, State, Units
from store.round.amount import Unreadable
from store.round.care import look_number, look_unit
from store.round.steps import DoseStep, LookStep
from store.round.withdrawal import withdrawal_words
from tui.page import Line, Role, Size, Span, beside, large_lines, line, width_of, wrapped
from tui.walk.look_cards import findings
from tui.walk.shown import Shown
from tui.walk.title import animal_facts, scale_for, title
from tui.words import day, hours, look_figure, look_words, when

ORDERED = "Only as label or vet say: read the label again. Local rules and your vet decide."
EARLY_H = 1.0
"""Sooner than this before it is due, the screen says so. Common practice. [h]"""


def look_lines(shown: Shown, step: LookStep, size: Size) -> list[Line]:
    """The body of a look: findings to pick from, or a figure to type."""
    lines = title(step.name, animal_facts("LOOK", step.animal, step.place, shown), size)
    lines += [(Span("  "), *row) for row in large_lines(step.look.name, Role.AMOUNT, size.width - 4)]
    how = step.look.asks is Asks.HOW
    asked = findings(list(Looks), shown.row) if how else _figure(shown, step, size)
    return [*lines, (), *asked, (), *wrapped(_last(shown, step.look), size.width, Role.TEXT, "  ")]


def _figure(shown: Shown, step: LookStep, size: Size) -> list[Line]:
    """What is typed, large, and how it is read."""
    text, asks = shown.typed.get(0, ""), step.look.asks
    role = Role.TYPED if text else Role.QUIET
    drawn = [(Span("  "), *row) for row in large_lines(text or "?", role, size.width // 3, scale_for(size))]
    told = [line(Span(f"{asks.value} {_unit(asks, shown.units)}", Role.STRONG)), *_reading(shown, step)]
    return beside(drawn, told, max(14, max(map(width_of, drawn)) + 3))


def _reading(shown: Shown, step: LookStep) -> list[Line]:
    if not (text := shown.typed.get(0)):
        return []
    try:
        found = look_number(text, step.look.asks, shown.units)
    except Unreadable as problem:
        return [line(Span(str(problem), Role.WARNING))]
    return [line(Span(f"= {look_figure(step.look.asks, found, shown.units)}", Role.TYPED))]


def _unit(asks: Asks, units: Units) -> str:
    return "in points of your scale" if asks is Asks.CONDITION else f"in {look_unit(asks, units)}"


def _last(shown: Shown, look: Look) -> str:
    if look.last is None:
        return "LAST    never looked at, or more than a year ago"
    return f"LAST    {day(look.last.day)}: {look_words(look.last.found, shown.units)}"


def dose_lines(shown: Shown, step: DoseStep, size: Size) -> list[Line]:
    """The body of a dose: what, how much, when it was due, what was given before."""
    treatment = step.treatment
    facts = animal_facts(f"DOSE {step.number} of {treatment.doses}", step.animal, step.place, shown)
    lines = title(step.name, facts, size)
    lines += [(Span("  "), *row) for row in large_lines(treatment.product, Role.AMOUNT, size.width - 4)]
    lines += [(), line(Span(f"  AMOUNT  {treatment.amount}", Role.STRONG))]
    given = when(treatment.given_at[0], shown.walker.zone) if treatment.given_at else "none yet"
    typed = shown.typed.get(0)
    lines += [line(Span(f"  TYPED   {typed}", Role.TYPED))] if typed else []
    told = [
        f"WAY     {treatment.route or 'not written down'};  batch {treatment.batch or 'not written down'}",
        f"FOR     {treatment.why or 'not written down'}",
        f"LAST    {given}, every {treatment.every_h:g} h",
        f"THEN    withheld: {withdrawal_words(treatment.withdrawal)}",
    ]
    lines += [_due(shown, step), *(row for each in told for row in wrapped(each, size.width, Role.TEXT, "  "))]
    caution = f"{_on_paper(shown, step)}{ORDERED}"
    return [*lines, *wrapped(caution, size.width, Role.WARNING, "  ")]


def _on_paper(shown: Shown, step: DoseStep) -> str:
    """A dose of the last round of which nobody has typed in yet whether it was given."""
    left = shown.walker.snapshot.last.left(State.ON_PAPER)
    doses = (dosed for entry in left for dosed in entry.of(DosedFigure))
    on_paper = any(dosed.treatment_id == step.treatment.id for dosed in doses)
    return "The last round is ON PAPER: look there first whether this dose was given. " if on_paper else ""


def _due(shown: Shown, step: DoseStep) -> Line:
    late_h = (shown.now - step.due_at).total_seconds() / 3600
    due = f"  DUE     {when(step.due_at, shown.walker.zone)}"
    if late_h < -EARLY_H:
        return line(Span(f"{due}: TOO EARLY by {hours(-late_h)}", Role.WARNING))
    return line(Span(f"{due}, {hours(abs(late_h))} {'ago' if late_h > 0 else 'to go'}", Role.STRONG))
