"""What a merge brought in, in words; and what benches wrote differently, side by side."""

from collections.abc import Iterator
from pathlib import Path

from store.book.changed_apart import ChangedApart
from store.book.contradictions import Contradiction
from store.book.merging import Came, Merged
from tui.words import day, when


def merged_words(merged: Merged, other: Path, zone: str) -> str:
    """A line for each bench and person, the changes, and the contradictions. zone: the farm's."""
    if not merged.rows:
        return f"Nothing new came in from {other}: this book holds all of it."
    return "\n".join([f"{merged.rows} new rows came in from {other}.", *_lines(merged, zone)])


def _lines(merged: Merged, zone: str) -> Iterator[str]:
    yield from (_came(each) for each in merged.came)
    if merged.changed:
        yield "  Changed: " + ", ".join(f"{_thing(table)} {count}" for table, count in merged.changed)
    if merged.contradictions:
        count = len(merged.contradictions)
        yield f"{_many(count, 'step')} written differently on two benches. The newest counts; G and a few letters, to correct."  # noqa: E501
    for each in merged.contradictions:
        yield from _contradiction(each, zone)
    if merged.apart:
        things = _many(len(merged.apart), "thing")
        yield f"{things} changed differently on two benches. The later counts; F, to change it again."
    for apart in merged.apart:
        yield from _apart(apart, zone)


def _came(came: Came) -> str:
    told = [
        _many(came.rounds, "round"),
        _many(came.steps, "step"),
        *([_many(came.notes, "note")] if came.notes else []),
    ]
    return f"  {came.person} at {came.bench}: {', '.join(told)}"


def _contradiction(found: Contradiction, zone: str) -> Iterator[str]:
    turn = f"{day(found.day)} {found.slot}, " if found.day else ""
    yield f"  {turn}{' '.join(filter(None, (found.name, found.kind.value)))}:"
    for version in found.versions:
        told = f"{version.person} at {version.bench}, {when(version.written_at, zone)}: {version.words}"
        yield f"    {'counts ' if version.counts else '       '}{told}"


def _apart(found: ChangedApart, zone: str) -> Iterator[str]:
    yield f"  {found.name}, {_thing(found.table)}:"
    for counts, side in zip(("       ", "counts "), found.sides, strict=True):
        yield f"    {counts}{'here' if side.here else 'there'}, {when(side.written_at, zone)}: {side.words}"


def _thing(table: str) -> str:
    return table.removesuffix("_as").replace("_", " ")


def _many(count: int, word: str) -> str:
    return f"{count} {word}{'' if count == 1 else 's'}"
