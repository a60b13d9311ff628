"""What an animal is called in a sentence, by its class."""

from msgspec import Struct

from store.book.words import Stage

MALES = (Stage.STEER, Stage.BULL)
NEVER_CALVES = (Stage.CALF, *MALES)
"""Of these no calving is asked."""


class Pronouns(Struct, frozen=True):
    """`she`, `her`, `her`."""

    who: str
    whom: str
    whose: str


HERS, HIS, ITS = Pronouns("she", "her", "her"), Pronouns("he", "him", "his"), Pronouns("it", "it", "its")
_OTHERWISE = {**dict.fromkeys(MALES, HIS), Stage.CALF: ITS, Stage.OTHER: ITS}


def pronouns(stage: Stage) -> Pronouns:
    """Of a class."""
    return _OTHERWISE.get(stage, HERS)
