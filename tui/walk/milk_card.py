"""A milk step: the pail as it stands on the scale, what that is in milk, what is usual, and where it goes."""

from store.book.figures import MilkedFigure
from store.book.words import Fate, State
from store.round.amount import PailAmount, Unreadable, pail_amount
from store.round.judging import Judged, judged
from store.round.measured import fates_of
from store.round.saying import bare, weight
from store.round.steps import MilkStep
from store.round.timed import HELD_BACK, PART
from tui.page import Line, Role, Size, Span, beside, cut, large_lines, line, width_of, wrapped
from tui.walk.apart_card import calf_words, left_in_lines
from tui.walk.judged_lines import before_words, judged_words, usual_words
from tui.walk.milked_last import last_lines, milk_title
from tui.walk.poured import POURED, poured_lines
from tui.walk.quarter_cards import marked_lines
from tui.walk.shown import Shown
from tui.walk.title import animal_facts, scale_for, title
from tui.walk.withheld_card import withheld_lines
from tui.words import volume

BEFORE = "  BEFORE  Wipe. First squirts clear? Four quarters alike? If not: M, S or V"
WEIGH = "  WEIGH   let the froth settle, then the pail as it stands on the scale"


def milk_lines(shown: Shown, step: MilkStep, size: Size, fate: Fate) -> list[Line]:
    """The body of a milk step."""
    facts = animal_facts(milk_title(shown.walker, step), step.animal, step.place, shown)
    return [
        *title(step.name, facts, size),
        *last_lines(shown.walker, step, size),
        *_figures(shown, step, size),
        (),
        *withheld_lines(shown, step, size),
        _goes_to(shown, step, fate),
        *_poured(shown, step, fate, size),
        *_marked(shown, size),
        *marked_lines(shown.walker, step.animal.id, size),
        *_context(shown, step, size),
    ]


def _marked(shown: Shown, size: Size) -> list[Line]:
    """How she was milked, which Enter writes with the pail."""
    words = ", ".join(mark for mark in sorted(shown.marks) if not mark.startswith(POURED))
    return wrapped(f"MARKED  {words}", size.width, Role.STRONG, "  ") if words else []


def _figures(shown: Shown, step: MilkStep, size: Size) -> list[Line]:
    """The typed weight and what it is in milk, both large."""
    scale = scale_for(size)
    amount, problem = _amount(shown, step)
    text = shown.typed.get(0, "")
    left = large_lines(text or "?", Role.TYPED if text else Role.QUIET, size.width // 2 - 8, scale)
    column = 2 + max(map(width_of, left)) + 2
    told = _scale_words(step, amount)
    words = beside([(Span("  "), *each) for each in left], [line(each) for each in told], column)
    if problem:
        return [*words, *wrapped(problem, size.width, Role.WARNING, "  ")]
    if amount is None:
        return words
    right = large_lines(bare(amount.milk_kg), Role.AMOUNT, size.width // 2, scale)
    figure = beside(right, [line(each) for each in _milk_words(shown, step, amount)], max(map(width_of, right)) + 2)
    equals = [(Span("=  " if at == scale else "   ", Role.STRONG), *each) for at, each in enumerate(figure)]
    return beside(words, equals, column + max(map(len, told)) + 1)


def _amount(shown: Shown, step: MilkStep) -> tuple[PailAmount | None, str]:
    """What is typed, else what the book holds; and why it cannot be read."""
    if shown.typed.get(0):
        try:
            return pail_amount(shown.typed[0], step.milking.pail, shown.units), ""
        except Unreadable as problem:
            return None, str(problem)
    written = step.entry.the(MilkedFigure) if step.entry and step.entry.state is State.DONE else None
    if written is None or written.milk_kg is None:
        return None, ""
    return PailAmount(written.milk_kg, written.gross_kg, written.empty_kg), ""


def _scale_words(step: MilkStep, amount: PailAmount | None) -> list[str]:
    if amount and amount.gross_kg is None:
        return ["milk alone,", "by volume"]
    pail = step.milking.pail
    return ["on the scale", f"- {bare(pail.empty_kg)} kg {pail.name}" if pail else "no pail weight known"]


def _milk_words(shown: Shown, step: MilkStep, amount: PailAmount) -> list[str]:
    unit = weight(amount.milk_kg, shown.units)
    return [f"{'kg milk' if unit.endswith('kg') else 'kg = ' + unit} = {volume(amount.milk_kg, shown.units)}",
            usual_words(_judged(shown, step, amount.milk_kg), shown.units)]  # fmt: skip


def _judged(shown: Shown, step: MilkStep, milk_kg: float) -> Judged:
    return judged(
        step, milk_kg, shown.done(step).latest, whole=PART not in shown.marks, held_back=HELD_BACK in shown.marks
    )


def _judgement(shown: Shown, step: MilkStep) -> list[Line]:
    """Once a pail is typed and read: an hour, a day, and against her own; the strong one is a drop."""
    amount, _ = _amount(shown, step)
    if amount is None:
        return []
    found = _judged(shown, step, amount.milk_kg)
    role = Role.WARNING if found.is_drop(shown.walker.farm.milk_limits.drop_percent) else Role.STRONG
    return [line(Span(f"  THIS IS {judged_words(found, shown.units)}", role))]


def _context(shown: Shown, step: MilkStep, size: Size) -> list[Line]:
    """Around the pail; before there is one, also what to do at her."""
    pails = [pail.milk_kg for pail in step.milking.pails_before if pail.milk_kg is not None]
    before = "  ".join(weight(kg, shown.units).split()[0] for kg in pails[:3])
    zone = shown.walker.farm.zone
    calves = [calf_words(calf, shown.now, zone) for calf in step.calves]
    lines = [line(Span(f"  CALF    {words}", Role.TEXT if fine else Role.WARNING)) for words, fine in calves]
    is_before = not shown.typed.get(0) and step.state is not State.DONE
    lines += [
        *((*left_in_lines(step), line(BEFORE)) if is_before else ()),
        line(f"  UDDER   {before_words(_judged(shown, step, 0.0), shown.units)}"),
        *_judgement(shown, step),
        line(f"  LAST    {before or 'nothing recorded'}, newest first; Y looks back"),
        *((line(WEIGH),) if is_before else ()),
    ]
    return [tuple(Span(cut(span.text, size.width - 1), span.role) for span in each) for each in lines]


def _goes_to(shown: Shown, step: MilkStep, fate: Fate) -> Line:
    spans: list[Span] = [Span("  GOES TO ")]
    for each in fates_of(step, shown.done(step)):
        words = f"> {each.value.upper()} " if each is fate else f"  {each.value} "
        spans.append(Span(words, Role.HERE if each is fate else Role.TEXT))
    return tuple(spans)


def _poured(shown: Shown, step: MilkStep, fate: Fate, size: Size) -> list[Line]:
    amount, _ = _amount(shown, step)
    return poured_lines(shown, step, fate, amount.milk_kg if amount else None, size)
