"""Signs that a keeper sees, in the words of the trade, and which of them mean ring now or ring today. No diagnosis.

Listed as such by veterinary handbooks and extension leaflets (veterinaryhandbook.com.au, bloat; nddb.coop, milk fever;
Colorado State, downer cow; ehc.gov.eg, calf scours); what none of them lists is common practice, from memory.
"""

from collections.abc import Collection, Iterator, Sequence

from msgspec import Struct

from store.book.words import Sign, Stage
from store.round.quarters import Mark

NOW, TODAY = "RING NOW", "RING TODAY"


class Seen(Struct, frozen=True):
    """A sign, in a few words; ring: what it means for the telephone; empty: tell it when you ring."""

    words: str
    ring: str = ""


COW = (
    Seen("down, cannot rise", NOW),
    Seen("wobbly, cold ears", NOW),
    Seen("flank drum-tight", NOW),
    Seen("dull, by herself", TODAY),
    Seen("off feed", TODAY),
    Seen("no cud, no dung", TODAY),
    Seen("lame", TODAY),
    Seen("loose dung"),
    Seen("breathing hard"),
)
CALF = (
    Seen("will not suck", NOW),
    Seen("cannot stand", NOW),
    Seen("eyes sunken", NOW),
    Seen("cold mouth", NOW),
    Seen("flank drum-tight", NOW),
    Seen("dull", TODAY),
    Seen("loose dung", TODAY),
    Seen("navel or joint hot", TODAY),
    Seen("breathing hard", TODAY),
)
DULL = COW[3]
CALL_NOW = (
    "down and cannot or will not rise; wobbly, cold or head turned to the flank in the first days after calving",
    "left flank tight as a drum, mouth open, staggering; a fit; heavy bleeding; womb or bowel out",
    "labour without progress, one leg or only a tail; a cow dull with a hot, hard, cold or blue quarter",
    "a calf that will not suck, cannot stand, eyes sunken; anybody who got at the feed store, before any sign",
)
CALL_TODAY = (
    "off feed with a drop in milk; no dung or cud for hours; cleansing not passed by a day; lame on one leg; feverish"
)


def signs_for(stage: Stage) -> tuple[Seen, ...]:
    """Nine signs to pick from, for a calf or a grown animal."""
    return CALF if stage is Stage.CALF else COW


def ring_words(picked: Sequence[Seen], marks: Collection[Mark]) -> Iterator[tuple[str, str]]:
    """When to ring, and because of which signs; a dull cow with a hard or hot quarter is no case for later."""
    bad = [mark for mark in marks if {Sign.HARD, Sign.HOT} & set(mark.signs)]
    now = [seen.words for seen in picked if seen.ring == NOW]
    now += [f"{DULL.words}, with a quarter {', '.join(mark.signs)}" for mark in bad if DULL in picked]
    today = [seen.words for seen in picked if seen.ring == TODAY and not (bad and seen is DULL)]
    yield from ((ring, "; ".join(words)) for ring, words in ((NOW, now), (TODAY, today)) if words)
