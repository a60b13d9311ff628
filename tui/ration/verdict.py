"""The large sign of a ration: the worst of what a keeper must know, with what it is of always beside it."""

from collections.abc import Iterator

from msgspec import Struct

from store.ration.parts import Balance, Case, Part, Verdict
from store.ration.parts import Line as Told
from tui.page import Line, Role, Span, large_lines, width_of, wrapped
from tui.ration.said import line_of, name_of, needs_are_kept, percent_of

FEEDS_HER = (Part.ENERGY, Part.PROTEIN)
"""What comes first where several are short."""
NEVER, SHORT_OF = "NEVER", "SHORT OF"


class Sign(Struct, frozen=True):
    """`SHORT OF`, `energy`, `77%`. percent: empty where there is none. role: how it looks."""

    word: str
    of: str
    percent: str = ""
    role: Role = Role.WARNING


def sign_of(case: Case, balance: Balance) -> Sign | None:
    """A limit that is broken, what is over, short, or not known, in this order; None: no needs are kept for them."""
    found = (*_over(balance), *_short(balance), *_not_known(case, balance))
    enough = Sign(Verdict.ENOUGH.upper(), " and ".join(FEEDS_HER), role=Role.NAME) if balance.lines else None
    return next(iter(found), enough)


def _over(balance: Balance) -> Iterator[Sign]:
    for each in balance.broken:
        yield Sign(NEVER if each.never else Verdict.OVER.upper(), each.of)
    for line in balance.lines:
        if line.verdict is Verdict.OVER:
            yield Sign(Verdict.OVER.upper(), name_of(line.need.part))


def _short(balance: Balance) -> Iterator[Sign]:
    """Energy and protein first, of these the one that is shorter."""
    short = [line for line in balance.lines if line.verdict is Verdict.SHORT]
    for line in sorted(short, key=_worst):
        percent = percent_of(line)
        yield Sign(SHORT_OF, name_of(line.need.part), "" if percent is None else f"{percent:.0f}%")


def _worst(line: Told) -> tuple[bool, float]:
    return line.need.part not in FEEDS_HER, line.percent or 0.0


def _not_known(case: Case, balance: Balance) -> Iterator[Sign]:
    for part in FEEDS_HER if needs_are_kept(case) else ():
        line = line_of(balance, part)
        if line is None or line.verdict is Verdict.NOT_KNOWN:
            yield Sign(Verdict.NOT_KNOWN.upper(), part)


def sign_lines(sign: Sign, width: int) -> list[Line]:
    """All of it large; where that is too wide the percent, or what it is of, in plain letters beside."""
    for large, plain in (
        (f"{sign.word} {sign.of} {sign.percent}".rstrip(), ""),
        (f"{sign.word} {sign.of}", sign.percent),
        (sign.word, f"{sign.of.upper()} {sign.percent}".rstrip()),
    ):
        rows = large_lines(large, sign.role, width - (len(plain) + 1 if plain else 0))
        if len(rows) > 1:
            at = len(rows) // 2
            return [(*row, Span(f" {plain}", sign.role)) if plain and row is rows[at] else row for row in rows]
    return wrapped(f"{sign.word} {sign.of.upper()} {sign.percent}".rstrip(), width, sign.role, "")


def widest(rows: list[Line]) -> int:
    """Cells that some lines take."""
    return max(map(width_of, rows), default=0)
