"""What the whole of a day's feed must hold at least or at most, by class. [% of its dry matter]

Where the trade disagrees these are starting values, for the keeper to set.
"""

from collections.abc import Mapping

from store.husbandry.starting import FAT_MOST_PERCENT, FORAGE_LEAST_PERCENT
from store.husbandry.why import Source, Sure, Value, given

FIBRE = Source("agweb.com, Revisiting forage NDF: 28 % or more, 32 % where it is short or poor")
DRY_FIBRE = Source("studylib.net/doc/7201686, guidelines after the 7th edition (2001), dry cows: above 33 %")
YOUNG_FIBRE = Source("as a cow in milk: a starting value", Sure.ASSUMED)
FORAGE_FIBRE = Source(
    "hoards.com/article-35249: 15 to 19 % after the 8th edition (2021); the most of it, as a starting value",
    Sure.ASSUMED,
)


def _least(fibre: float, source: Source) -> Mapping[str, Value]:
    of_forage = given(19.0, "fibre of forage", "% of dry matter", "a starting value", FORAGE_FIBRE)
    return {
        "fibre_percent": given(fibre, "fibre", "% of dry matter", "a table", source),
        "forage_ndf_percent": of_forage,
        "forage_percent": FORAGE_LEAST_PERCENT,
        "fat_percent": FAT_MOST_PERCENT,
    }


IN_MILK, DRY, GROWING = _least(28.0, FIBRE), _least(33.0, DRY_FIBRE), _least(28.0, YOUNG_FIBRE)
"""Least fibre (NDF), least fibre from forage, least forage, most fat; by the names that all needs have."""
