"""The shape of a lactation by breed, until a cow's own pails say better: Wood's a, b, c in days and kilograms a day."""

from msgspec import Struct

from store.husbandry.why import Source, Sure

MILKMAN = Source(
    "data set milkman (R package doBy, GPL; Friggens, Ridder and Lovendahl 2007, J. Dairy Sci. 90:5453): least squares "
    "on the mean of each day from 4 to 305, cows milked twice, presumably without calves"
)
SIMMENTAL = Source("Animal Bioscience 2021, 34:949 (animbiosci.org, pubreader 24602): records to 305 days")
MIDDLING = Source("the mean b and c of the later lactations of data set milkman", Sure.ASSUMED)


class Shape(Struct, frozen=True):
    """Wood's curve. a [kg a day on day 1], b, c [by day]. source: where it is from."""

    a: float
    b: float
    c: float
    source: Source


FIRST = {
    "jersey": Shape(17.303, 0.03334, 0.00149, MILKMAN),
    "holstein": Shape(19.692, 0.08782, 0.00181, MILKMAN),
    "friesian": Shape(19.692, 0.08782, 0.00181, MILKMAN),
    "danish red": Shape(17.316, 0.06581, 0.00167, MILKMAN),
    "simmental": Shape(15.2317, 0.1029, 0.0015, SIMMENTAL),
}
"""Of the first lactation, by a word of the breed's name."""
LATER = {
    "jersey": Shape(20.627, 0.03637, 0.00241, MILKMAN),
    "holstein": Shape(24.132, 0.11299, 0.00303, MILKMAN),
    "friesian": Shape(24.132, 0.11299, 0.00303, MILKMAN),
    "danish red": Shape(18.227, 0.15177, 0.00397, MILKMAN),
}
"""Of the second, which stands for all later ones."""
ANY = Shape(20.0, 0.10036, 0.00314, MIDDLING)
"""Of a breed that is not in the table, or not known."""


def shape_of(breed: str, *, first: bool = False) -> Shape:
    """The shape for a breed as it is typed; of a breed that is not kept here, a middling one."""
    typed = breed.casefold()
    tables = (FIRST, LATER) if first else (LATER, FIRST)
    return next((shape for table in tables for word, shape in table.items() if word in typed), ANY)
