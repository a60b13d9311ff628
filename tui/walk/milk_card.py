"""A milk step: the pail as it stands on the scale, what that is in milk, what is usual, and where it goes."""

from store.book.words import Fate, State
from store.round.amount import PailAmount, Unreadable, pail_amount
from store.round.steps import MilkStep
from tui.page import Line, Role, Size, Span, beside, cut, large_lines, line, width_of, wrapped
from tui.walk.shown import Shown
from tui.walk.title import animal_facts, scale_for, title
from tui.words import age, bare, hours, volume, weight

CAUTION = "Treated or just calved: none to the house until label or vet allow."


def milk_lines(shown: Shown, step: MilkStep, size: Size) -> list[Line]:
    """The body of a milk step."""
    facts = animal_facts("MILK", step.animal, step.place, shown.today)
    return [
        *title(step.name, facts, size),
        *_figures(shown, step, size),
        (),
        *_context(shown, step, size),
        _goes_to(shown),
        *wrapped(CAUTION, size.width, Role.WARNING, "          "),
    ]


def _figures(shown: Shown, step: MilkStep, size: Size) -> list[Line]:
    """The typed weight and what it is in milk, both large."""
    scale = scale_for(size)
    amount, problem = _amount(shown, step)
    text = shown.typed.get(0, "")
    left = large_lines(text or "?", Role.TYPED if text else Role.QUIET, size.width // 2 - 8, scale)
    column = 2 + max(map(width_of, left)) + 2
    words = beside([(Span("  "), *each) for each in left], [line(each) for each in _scale_words(step, amount)], column)
    if problem:
        return [*words, *wrapped(problem, size.width, Role.WARNING, "  ")]
    if amount is None:
        return words
    right = large_lines(bare(amount.milk_kg), Role.AMOUNT, size.width // 2, scale)
    figure = beside(right, [line(each) for each in _milk_words(shown, step, amount)], max(map(width_of, right)) + 2)
    equals = [(Span("=  " if at == scale else "   ", Role.STRONG), *each) for at, each in enumerate(figure)]
    return beside(words, equals, column + 20)


def _amount(shown: Shown, step: MilkStep) -> tuple[PailAmount | None, str]:
    """What is typed, else what the book holds; and why it cannot be read."""
    if shown.typed.get(0):
        try:
            return pail_amount(shown.typed[0], step.milking.pail, shown.units), ""
        except Unreadable as problem:
            return None, str(problem)
    written = step.entry.milked if step.entry and step.entry.state is State.DONE else None
    if written is None or written.milk_kg is None:
        return None, ""
    return PailAmount(written.milk_kg, written.gross_kg, written.empty_kg), ""


def _scale_words(step: MilkStep, amount: PailAmount | None) -> list[str]:
    if amount and amount.gross_kg is None:
        return ["milk alone,", "by volume"]
    pail = step.milking.pail
    return [
        "on the scale",
        f"- {bare(pail.empty_kg)} kg {pail.name}" if pail else "no pail weight known",
    ]


def _milk_words(shown: Shown, step: MilkStep, amount: PailAmount) -> list[str]:
    unit = weight(amount.milk_kg, shown.units)
    return [f"{'kg milk' if unit.endswith('kg') else 'kg = ' + unit} = {volume(amount.milk_kg, shown.units)}",
            *_usual(shown, step)]  # fmt: skip


def _usual(shown: Shown, step: MilkStep) -> list[str]:
    if step.usual_kg is None:
        return ["usual: not known yet"]
    least, most = (weight(kg, shown.units) for kg in step.usual_kg)
    return [f"usual {least.split()[0]} to {most}"]


def _context(shown: Shown, step: MilkStep, size: Size) -> list[Line]:
    last = step.milking.last_milked_at
    elapsed = f"{hours((shown.walker.book.clock.now() - last).total_seconds() / 3600)} ago" if last else "not known"
    before = "  ".join(weight(kg, shown.units).split()[0] for kg in step.milking.pails_before_kg[:3])
    words = [
        *_apart(shown, step),
        "WEIGH   let the froth settle, then the pail as it stands on the scale",
        f"LAST    milked {elapsed}; {_usual(shown, step)[0]}",
        f"BEFORE  {before or 'nothing recorded'}   last {shown.walker.turn.slot}s, newest first",
    ]
    return [line(Span(cut(f"  {each}", size.width - 1))) for each in words]


def _apart(shown: Shown, step: MilkStep) -> list[str]:
    """The calves that share her milk. When they were shut away is not kept in this book yet: it says so."""
    calves = [f"{calf.name}{f' {age(calf.born_on, shown.today)}' if calf.born_on else ''}" for calf in step.calves]
    return [f"CALF    {' and '.join(calves)}, shares her milk. Shut away since: not known"] if calves else []


def _goes_to(shown: Shown) -> Line:
    spans: list[Span] = [Span("  GOES TO ")]
    for row, fate in enumerate(Fate):
        words = f"> {fate.value.upper()} " if row == shown.row else f"  {fate.value} "
        spans.append(Span(words, Role.HERE if row == shown.row else Role.TEXT))
    return tuple(spans)
