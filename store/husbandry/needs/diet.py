"""What the whole of a day's feed must hold at least or at most, by class. [% of its dry matter]

Where the trade disagrees these are starting values, for the keeper to set.
"""

from collections.abc import Mapping

from store.husbandry.why import Source, Sure, Value, given

FIBRE = Source("agweb.com, Revisiting forage NDF: 28 % or more, 32 % where it is short or poor, forage over half")
FORAGE_FIBRE = Source(
    "hoards.com/article-35249: 15 to 19 % after the 8th edition (2021); the most of it, as a starting value",
    Sure.ASSUMED,
)
DRY_FIBRE = Source("studylib.net/doc/7201686, guidelines after the 7th edition (2001), dry cows: above 33 %")
FAT = Source("sites.ext.vt.edu/newsletter-archive/dairy/1996-11/knowfeed.html, of the whole ration")
BEEF_FAT = Source("forage-fed beef and young stock", Sure.MEMORY)
STARTING = Source("a starting value: keepers differ", Sure.ASSUMED)


def _limit(amount: float, name: str, source: Source) -> Value:
    came = "a starting value" if source.sure is Sure.ASSUMED else "a table"
    return given(amount, name, "% of dry matter", came, source)


def _limits(fibre: Value, forage: float, forage_source: Source, fat: Value) -> Mapping[str, Value]:
    return {
        "fibre_percent": fibre,
        "forage_percent": _limit(forage, "forage at least", forage_source),
        "forage_ndf_percent": _limit(19.0, "fibre of forage at least", FORAGE_FIBRE),
        "fat_percent": fat,
    }


_DRY_FIBRE = _limit(33.0, "fibre at least", DRY_FIBRE)
_BEEF_FAT = _limit(6.0, "fat at most", BEEF_FAT)
IN_MILK = _limits(_limit(28.0, "fibre at least", FIBRE), 50.0, FIBRE, _limit(7.0, "fat at most", FAT))
DRY = _limits(_DRY_FIBRE, 70.0, STARTING, _BEEF_FAT)
SUCKLER = _limits(_DRY_FIBRE, 70.0, STARTING, _BEEF_FAT)
GROWING = _limits(_limit(28.0, "fibre at least", STARTING), 50.0, STARTING, _BEEF_FAT)
"""Least fibre, least forage, least fibre from forage, most fat; by the names that every needs have."""
