"""A pail that is poured together with others: the marks of a milk step for it, and what its card says of them."""

from collections.abc import Iterable
from uuid import UUID

from store.book.figures import PouredFigure
from store.book.words import Fate, State
from store.round.measured import is_not_milked, withholding_at
from store.round.pails import Pailful, Went, late_fate, mixed, pailfuls, still_to_come, withheld_in
from store.round.steps import MilkStep, Step
from tui.page import Line, Role, Size, wrapped
from tui.pails import mix_words
from tui.walk.shown import Shown

POURED = "poured into "


def mark_of(step_id: UUID) -> str:
    """The mark for the pail of another milk step."""
    return f"{POURED}{step_id.hex}"


def poured_into(marks: Iterable[str]) -> tuple[UUID, ...]:
    """The milk steps that marks name."""
    return tuple(UUID(hex=each.removeprefix(POURED)) for each in sorted(marks) if each.startswith(POURED))


def poured_marks(step: MilkStep) -> set[str]:
    """What the book holds as poured together already."""
    written = step.entry.of(PouredFigure) if step.entry and step.entry.state is State.DONE else ()
    return {mark_of(each.into_step_id) for each in written}


def others(steps: Iterable[Step], step: Step) -> tuple[MilkStep, ...]:
    """The steps of the other cows that are milked in a round."""
    return tuple(each for each in steps if isinstance(each, MilkStep) and each.step_id != step.step_id)


def use_shown(shown: Shown, step: MilkStep, fate: Fate) -> Fate:
    """What the milk would count as, poured together as it stands on the screen."""
    return _went(shown, step, fate, 0.0).use


def poured_lines(shown: Shown, step: MilkStep, fate: Fate, milk_kg: float | None, size: Size) -> list[Line]:
    """What was poured together, and what becomes of all of it; nothing for a pail that stands alone."""
    went = _went(shown, step, fate, milk_kg or 0.0)
    if milk_kg is not None and len(went.mixed) > 1:
        words = mix_words(shown.walker, went)
    else:
        into = poured_into(shown.marks)
        others_ = others(shown.walker.steps, step)
        names = [each.name for each in others_ if each.step_id in into and not is_not_milked(each.entry)]
        words = f"with {', '.join(names)}" if names else ""
    role = Role.STRONG if went.use is fate else Role.WARNING
    return wrapped(f"TOGETHER {words}", size.width, role, "  ") if words else []


def _went(shown: Shown, step: MilkStep, fate: Fate, milk_kg: float) -> Went:
    """Where this pail goes if it is written as shown, with all that is written of the others."""
    snapshot, when, into = shown.walker.snapshot, shown.done(step), poured_into(shown.marks)
    this = Pailful(step.step_id, step.animal.id, when, milk_kg, fate, withholding_at(step, when), into)
    entries = tuple(snapshot.counts().values())
    written = pailfuls(entries, withheld_in(snapshot, shown.walker.steps))
    pails = [*(each for each in written if each.step_id != step.step_id), this]
    found = mixed([*pails, *still_to_come(pails, shown.walker.steps)], late_fate(entries))
    return found[len(pails) - 1]
