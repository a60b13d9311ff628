"""Treatments in words, where a round begins and ends: milk that was let through, and what is not typed yet."""

from collections.abc import Iterator

from store.book.words import Fate
from store.round.gaps import gaps
from store.round.saying import weight
from store.round.unsafe import unsafe_pails
from tui.pails import use_words
from tui.telling import turn_words
from tui.walker import Walker

DO = {Fate.HOUSE: "Throw it away, and whatever it was poured into", Fate.SOLD_OR_GIVEN: "Tell who got it"}


def unsafe_before_words(walker: Walker) -> Iterator[str]:
    """`Hazel, Mon 9 Mar evening, 8.5 kg to the house: it was withheld ... Throw it away`."""
    for each in unsafe_pails(walker.snapshot):
        pail = each.pail
        if pail.fate and pail.turn and pail.milk_kg is not None:
            milk = f"{weight(pail.milk_kg, walker.farm.units)} {use_words(pail.fate)}"
            what = f"{each.cow.name}, {turn_words(pail.turn)}, {milk}: it was withheld, {each.withheld.why}"
            yield f"{what}. {DO[pail.fate]}; R opens that round: write it as thrown away."


def gap_words(walker: Walker) -> Iterator[str]:
    """`Hazel, udder tube: batch, how long meat is withheld`."""
    for gap in gaps(walker.snapshot):
        yield f"{walker.snapshot.names[gap.animal_id]}, {gap.product}: {', '.join(gap.missing)}. F at her step"
