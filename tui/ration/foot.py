"""What stands below a ration: limits that it breaks, what is not known and its key, forage only, doubts, cautions."""

from collections.abc import Iterator

from store.husbandry.ration.cautions import cautions, checked
from store.ration.forage_only import has_slipped
from store.ration.held import held
from store.ration.parts import Missing
from tui.page import Line, Role, Size, wrapped
from tui.ration.calf_lines import calf_words
from tui.ration.first_step import forage_only_words
from tui.ration.seen import Seen
from tui.ration.trial import changed
from tui.ration.water_line import water_words

DOUBTS_MOST, MISSING_MOST, FORAGE_ONLY_MOST = 2, 6, 3


def foot_lines(seen: Seen, size: Size) -> list[Line]:
    """Each only where there is something to say."""
    return [row for words, role in _sentences(seen) for row in wrapped(words, size.width, role, "   ")]


def broken_lines(seen: Seen, size: Size) -> list[Line]:
    """Each limit that what is new breaks; then where a change ends that is not over."""
    said = (*(f"LIMIT  {each.says}" for each in seen.after.broken), *seen.farm.coming)
    return [row for words in said for row in wrapped(words, size.width, Role.WARNING, "   ")]


def _sentences(seen: Seen) -> Iterator[tuple[str, Role]]:
    yield from ((each, Role.TEXT) for each in (*seen.farm.trends, *calf_words(seen)))
    yield from ((words, Role.TEXT) for words in _forage_only(seen))
    missing = [f"NOT KNOWN  {each}" for each in dict.fromkeys(_with_key(seen, each) for each in seen.after.missing)]
    yield from ((each, Role.TEXT) for each in missing[:MISSING_MOST])
    if len(missing) > MISSING_MOST:
        yield f"NOT KNOWN  and {len(missing) - MISSING_MOST} more of that kind.", Role.TEXT
    yield from ((each, Role.QUIET) for each in _doubts(seen))
    other = bool(changed(seen.case, {**seen.tried, **seen.reading.amounts}))
    yield from ((each, Role.QUIET) for each in care_words(seen, other=other))
    yield from ((each, Role.QUIET) for each in (checked(seen.farm.checked_by), *water_words(seen)) if each)


def _with_key(seen: Seen, missing: Missing) -> str:
    """What is not known; a weight is also typed from here."""
    here = missing.what in ("weight", "old weight") and len(seen.case.heads) == 1
    return f"{missing.says} Shorter: M here." if here else missing.says


def _forage_only(seen: Seen) -> Iterator[str]:
    """Of those that slipped first."""
    heads = sorted(seen.case.heads, key=has_slipped, reverse=True)
    found = [words for head in heads for words in forage_only_words(seen, head)]
    yield from found[:FORAGE_ONLY_MOST]
    if len(found) > FORAGE_ONLY_MOST:
        yield f"FORAGE ONLY  and {len(found) - FORAGE_ONLY_MOST} more. Each alone: G, its name, then J."


def _doubts(seen: Seen) -> Iterator[str]:
    yield from (f"UNSURE  {each}." for each in seen.doubts[:DOUBTS_MOST])
    if len(seen.doubts) > DOUBTS_MOST:
        yield f"UNSURE  and {len(seen.doubts) - DOUBTS_MOST} more: W shows each at its number."


def care_words(seen: Seen, *, other: bool) -> Iterator[str]:
    """What is usually said of such a ration. other: with what is said of any change that is not in steps yet."""
    found = cautions(held(seen.case, seen.new, seen.farm.beside, changed=other))
    if found:
        yield f"CARE  {' '.join(found)}"
