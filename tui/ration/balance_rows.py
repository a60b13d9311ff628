"""The balance, a line for each part: its verdict in a word, how much of the need it is, and the figures."""

from store.husbandry.ration.cautions import much_calcium
from store.ration.balance import OVER_ABOVE_PERCENT
from store.ration.held import held
from store.ration.parts import Line as Told
from store.ration.parts import Part, Verdict
from tui.page import Line, Role, Span, cut, line, width_of, wrapped
from tui.ration.said import figure, has_of, has_shortly, line_of, name_of, needs_are_kept, percent_of, short
from tui.ration.seen import Seen

NAME_CELLS, VERDICT_CELLS = 11, 6
MUCH = "much"
NOT_KEPT = "No needs are kept for them: amounts, cost and limits only."
NOT_KNOWN = "What they need is not known yet: what is missing stands below, with its key."
LEAST_CHANGE = 0.5
"""Less than this is not told. [percent of the need]"""
ROLES = {Verdict.SHORT: Role.WARNING, Verdict.OVER: Role.WARNING, Verdict.NOT_KNOWN: Role.QUIET}


def balance_rows(seen: Seen, width: int) -> list[Line]:
    """In so many cells; the figures where there is room for them."""
    if not seen.after.lines:
        why = NOT_KNOWN if needs_are_kept(seen.case) else NOT_KEPT
        return wrapped(why, width, Role.QUIET, "")
    return [*_units(seen, width), *(_row(seen, each, width) for each in seen.after.lines if not _is_eaten(each))]


def _is_eaten(each: Told) -> bool:
    """What she eats of what she can is said with the sums, and is no need; only more than that is told here."""
    return each.need.part is Part.DRY_MATTER and each.verdict is Verdict.ENOUGH


def _units(seen: Seen, width: int) -> list[Line]:
    """What the figures are counted in, where there is no room for it behind them."""
    energy = line_of(seen.after, Part.ENERGY)
    if energy is None or not energy.need.least or percent_of(energy) is None:
        return []
    room = width - NAME_CELLS - VERDICT_CELLS - 1 - len("100 % ")
    fuller, bare = has_of(energy, seen.farm.units), has_shortly(energy, seen.farm.units)
    if len(f" {fuller}") <= room or len(bare) > room:
        return []
    unit = figure(energy.need.least, seen.farm.units).split(" ", 1)[1]
    return [line(Span(cut(f"given/needed a day: {unit}, else g", width), Role.QUIET))]


def _row(seen: Seen, each: Told, width: int) -> Line:
    role = Role.STRONG if each.need.part is Part.ENERGY else Role.TEXT
    name = Span(f"{name_of(each.need.part):<{NAME_CELLS}}", role)
    verdict = Span(f"{_word(seen, each):<{VERDICT_CELLS}} ", ROLES.get(each.verdict, role))
    return line(name, verdict, cut(_figures(seen, each, width - width_of((name, verdict))), width))


def _word(seen: Seen, each: Told) -> str:
    """How it stands; calcium can be more than is well before calving."""
    beyond = each.need.part is Part.CALCIUM and (each.percent or 0.0) > OVER_ABOVE_PERCENT
    return MUCH if beyond and much_calcium(held(seen.case, seen.new)) else each.verdict


def _figures(seen: Seen, each: Told, room: int) -> str:
    """As much as there is room for: the percent first, then what is given of what is needed, then how it stands now."""
    percent, units, told = percent_of(each), seen.farm.units, has_of(each, seen.farm.units)
    if percent is None:
        ways = (told, has_shortly(each, units), short(each.has, units) if each.has else "")
        return next((words for words in ways if len(words) <= room), "")
    said = f"{percent:>3.0f} %"
    if len(whole := f"{said}  {told}{_was(seen, each)}") <= room:
        return whole
    fuller = (f"{said}  {told}", f"{said} {has_shortly(each, units)}")
    return next((words for words in fuller if len(words) <= room), said)


def _was(seen: Seen, each: Told) -> str:
    """How it stands now, where what is tried changes it."""
    before = line_of(seen.before, each.need.part)
    was, percent = percent_of(before) if before else None, percent_of(each)
    return "" if was is None or percent is None or abs(was - percent) < LEAST_CHANGE else f"   now {was:.0f} %"
