"""What a keeper's feed is made of: its label or test part by part, below that the row of the table it resembles."""

from collections.abc import Iterator, Mapping

from store.husbandry.feeds.energy import FATTY_PERCENT, energy_of
from store.husbandry.feeds.table import BY_NAME, PARTS, TableFeed
from store.husbandry.why import Source, Sure, Value, given

NAMES = {
    "dm_percent": "dry matter", "cp_percent": "protein", "tdn_percent": "TDN", "ndf_percent": "fibre (NDF)",
    "fat_percent": "fat", "ca_percent": "calcium", "p_percent": "phosphorus", "nel_mcal": "net energy (NEL)",
}  # fmt: skip
CAME = {"tag": "your label", "test": "your test", "table": "a table"}
"""By the word that the book has for it."""
TABLE = "table"
SPREAD = {
    "cp_percent": 15.0, "ndf_percent": 15.0, "fat_percent": 15.0, "ca_percent": 30.0, "p_percent": 30.0,
    "tdn_percent": 10.0, "nel_mcal": 10.0,
}  # fmt: skip
"""How far a feed lies from its table row, either way. [%]

Source: beefmagazine.com, feed composition tips 2018: organic parts 15 %, minerals 30 %, energy 10 %.
"""
NO_FAT_TOLD = Source("a feed of which nobody says its fat is taken as one that is not fatty", Sure.ASSUMED)


def made(typed: Mapping[str, float | None], origin: str, resembles: str) -> Mapping[str, Value]:
    """The parts of a feed that are known, by column (PARTS), each with where it is from; none for what is not known.

    typed: the columns of the newest composition; None: empty. origin: `tag`, `test` or `table`, as the book has it.
    resembles: a name of the table; any other text: it is like none of it. A composition that was itself taken from the
    table is read from the table as it stands now. Energy that nobody told is reckoned where TDN and protein are known.
    """
    row = BY_NAME.get(resembles)
    own = dict(_own(typed, origin, row))
    parts = own | {part: value for part, value in _of_table(row) if part not in own and not _outdone(part, own)}
    return parts | dict(_reckoned(parts))


def _own(typed: Mapping[str, float | None], origin: str, row: TableFeed | None) -> Iterator[tuple[str, Value]]:
    """What the keeper typed; what is the table's own figure was filled in from there. Energy of an old table is out."""
    if origin == TABLE and row:
        return
    for part in PARTS:
        amount = typed.get(part)
        if amount is None or (row and amount == getattr(row, part)) or (origin == TABLE and part == "nel_mcal"):
            continue
        yield part, given(amount, NAMES[part], _unit(part), CAME.get(origin, origin))


def _of_table(row: TableFeed | None) -> Iterator[tuple[str, Value]]:
    for part in PARTS if row else ():
        amount = getattr(row, part)
        if row and amount is not None:
            within = f", give or take {SPREAD[part]:g} %" if part in SPREAD else ""
            yield part, given(amount, NAMES[part], _unit(part), f"{TABLE}: {row.name}{within}", row.source_of(part))


def _outdone(part: str, own: Mapping[str, Value]) -> bool:
    """The table's energy does not stand beside a TDN of the keeper's own."""
    return part == "nel_mcal" and "tdn_percent" in own


def _reckoned(parts: Mapping[str, Value]) -> Iterator[tuple[str, Value]]:
    if "nel_mcal" not in parts and {"tdn_percent", "cp_percent"} <= parts.keys():
        no_fat = given(FATTY_PERCENT, NAMES["fat_percent"], "%", "not told", NO_FAT_TOLD)
        fat = parts.get("fat_percent", no_fat)
        yield "nel_mcal", energy_of(parts["tdn_percent"], parts["cp_percent"], fat)


def _unit(part: str) -> str:
    return "Mcal/kg" if part == "nel_mcal" else "%"
