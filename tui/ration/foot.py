"""What stands below a ration: limits that it breaks, what is not known and its key, forage only, doubts, cautions."""

from collections.abc import Iterator

from tui.page import Line, Role, Size, wrapped
from tui.ration.first_step import forage_only_words
from tui.ration.numbers import balance_numbers
from tui.ration.seen import Seen

DOUBTS_MOST = 2


def foot_lines(seen: Seen, size: Size) -> list[Line]:
    """Each only where there is something to say."""
    rows: list[Line] = []
    for words, role in _sentences(seen):
        rows += wrapped(words, size.width, role, "   ")
    return rows


def _sentences(seen: Seen) -> Iterator[tuple[str, Role]]:
    for each in seen.after.broken:
        yield f"LIMIT  {each}", Role.WARNING
    yield from ((each, Role.TEXT) for each in seen.farm.trends)
    for head in seen.case.heads:
        yield from ((words, Role.TEXT) for words in forage_only_words(seen, head))
    for missing in dict.fromkeys(seen.after.missing):
        yield f"NOT KNOWN  {missing.says}", Role.TEXT
    yield from ((each, Role.QUIET) for each in _doubts(seen))


def _doubts(seen: Seen) -> Iterator[str]:
    found = list(dict.fromkeys(doubt for value in balance_numbers(seen.after) for doubt in value.doubts()))
    yield from (f"UNSURE  {each}." for each in found[:DOUBTS_MOST])
    if len(found) > DOUBTS_MOST:
        yield f"UNSURE  and {len(found) - DOUBTS_MOST} more: W shows each at its number."
