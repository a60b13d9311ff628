"""Four quarters as one sees them from behind, what was found at each in words, and the signs to pick from."""

from collections.abc import Collection, Mapping, Sequence
from uuid import UUID

from store.book.words import Quarter, Sign
from store.round.dialect import said
from store.round.quarters import Mark, found_at, open_marks, running
from store.round.steps import QuarterStep
from tui.frame import WHOLE
from tui.page import Line, Role, Size, Span, cut, line, wrapped
from tui.telling import lately
from tui.walk.shown import Shown
from tui.walk.title import animal_facts, title
from tui.walker import Walker

ALL = tuple(Quarter)
FILLED = {Sign.SLACK: "█░░", Sign.FULL: "██░", Sign.TIGHT: "███"}
ROWS = ((Quarter.LEFT_FRONT, Quarter.RIGHT_FRONT), (Quarter.LEFT_HIND, Quarter.RIGHT_HIND))
"""As one stands behind her: the front ones are further off, her left is on the left."""
BEHIND = "seen from behind: left and right are her own"
WIDEST = 76
"""More cells than this the drawing does not need."""
NARROW = 60


def quarter_lines(shown: Shown, step: QuarterStep, size: Size) -> list[Line]:
    """The body of a quarter that is asked about: how it was, the four, and what can be found."""
    walker, quarter = shown.walker, step.mark.quarter
    facts = animal_facts(_name(quarter, walker).upper(), step.animal, step.place, shown)
    picked = frozenset(sign for sign in Sign if sign.value in shown.marks)
    again = [rounds for each, _, rounds in running(walker.snapshot, step.animal.id) if each is quarter]
    asked = ", ".join(
        (was_words(step.mark, walker), *(f"the same quarter {rounds} rounds running" for rounds in again))
    )
    drawn = udder_drawing(walker, step.animal.id, {quarter: picked}, quarter, size)
    signs = sign_lines(picked, size)
    return [
        *title(step.name, facts, size),
        *wrapped(f"{asked}; how is it now?", size.width, Role.WARNING, "  "),
        *([*drawn, *signs] if size.height >= WHOLE.height else [*signs, *drawn]),
    ]


def was_words(mark: Mark, walker: Walker) -> str:
    """`LEFT HIND was hard, hot Mon evening, clear again Tue morning`."""
    signs, today = ", ".join(mark.signs), walker.turn.day
    clear = f", clear again {lately(mark.clear_in, today)}" if mark.clear_in else ""
    return f"{_name(mark.quarter, walker).upper()} was {signs} {lately(mark.at, today)}{clear}"


def marked_lines(walker: Walker, cow_id: UUID, size: Size) -> list[Line]:
    """Quarters that are not clear yet, wherever her udder or milk is looked at."""
    words = "; ".join(was_words(mark, walker) for mark in open_marks(walker.snapshot, cow_id))
    return wrapped(f"QUARTER {words}: look at it again", size.width, Role.WARNING, "  ") if words else []


def udder_drawing(
    walker: Walker, cow_id: UUID, picked: Mapping[Quarter, Collection[Sign]], here: Quarter | None, size: Size
) -> list[Line]:
    """The four quarters, each with what is picked for it, else with what is known; `here` is marked."""
    wide = max((min(size.width - 4, WIDEST) - 3) // 2, 1)
    lines: list[Line] = []
    for row, corners in zip(ROWS, ("┌┬┐", "├┼┤"), strict=True):
        names = [_named(quarter, walker, quarter is here, wide) for quarter in row]
        told = [_told(walker, cow_id, quarter, picked.get(quarter, ())) for quarter in row]
        lines.append(_between(corners, names))
        lines.append(_between("│││", [Span(_filled(f" {words}", wide, " "), role) for words, role in told]))
    return [*lines, line(f"  └{cut(f'─ {BEHIND} ', 2 * wide + 1):─<{2 * wide + 1}}┘")]


def _between(bars: str, cells: Sequence[Span]) -> Line:
    return line(f"  {bars[0]}", cells[0], bars[1], cells[1], bars[2])


def _named(quarter: Quarter, walker: Walker, here: bool, wide: int) -> Span:
    name = _name(quarter, walker)
    number = ALL.index(quarter) + 1
    words = f"> {number} {name.upper()} " if here else f" {number} {name} "
    return Span(_filled(f"─{words}", wide, "─"), Role.HERE if here else Role.TEXT)


def _told(walker: Walker, cow_id: UUID, quarter: Quarter, picked: Collection[Sign]) -> tuple[str, Role]:
    """What is picked; else what this round found; else how it was while it is asked about."""
    snapshot = walker.snapshot
    now = [each for each in found_at(snapshot, cow_id) if each.quarter is quarter and each.turn == snapshot.turn]
    last = {each.sign for each in now if each.at == now[-1].at}
    if picked or last:
        return signs_words(picked or last), Role.TYPED if picked else Role.STRONG
    mark = next((each for each in open_marks(snapshot, cow_id) if each.quarter is quarter), None)
    if mark:
        return f"was {', '.join(mark.signs)} {lately(mark.at, walker.turn.day)}", Role.WARNING
    return "nothing told", Role.QUIET


def signs_words(signs: Collection[Sign]) -> str:
    """`███ tight, hard, hot`: how full it is comes first."""
    full = [f"{FILLED[sign]} {sign.value}" for sign in FILLED if sign in signs]
    return ", ".join((*full, *(sign.value for sign in Sign if sign in signs and sign not in FILLED)))


def sign_lines(picked: Collection[Sign], size: Size) -> list[Line]:
    """Every sign of a quarter with its digit."""
    return crossed_lines(list(Sign), {at for at, sign in enumerate(Sign, start=1) if sign in picked}, size)


def crossed_lines(words: Sequence[str], picked: Collection[int], size: Size) -> list[Line]:
    """What can be picked, each with its digit, some in a row; what is picked has a cross."""
    in_a_row = 3 if size.width >= NARROW else 2
    wide = min(size.width - 4, WIDEST) // in_a_row
    cells = [
        Span(f"[{'x' if at in picked else ' '}] {at} {each}".ljust(wide), _role(at in picked))
        for at, each in enumerate(words, start=1)
    ]
    return [line("  ", *cells[at : at + in_a_row]) for at in range(0, len(cells), in_a_row)]


def _role(is_picked: bool) -> Role:
    return Role.HERE if is_picked else Role.TEXT


def _filled(words: str, wide: int, filler: str) -> str:
    return cut(words, wide).ljust(wide, filler)


def _name(quarter: Quarter, walker: Walker) -> str:
    return said(quarter.value, walker.farm.dialect)
