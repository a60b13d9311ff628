"""Treatments in words, where a round begins and ends: milk that was let through, and what is not typed yet."""

from collections.abc import Iterator
from datetime import datetime
from uuid import UUID

from store.book.facts.farm import Animal
from store.book.facts.span import span
from store.book.words import Fate
from store.round.gaps import gaps
from store.round.measured import holding
from store.round.meat import meat_until, sucks_treated
from store.round.saying import weight
from store.round.unsafe import unsafe_pails
from store.round.withholding import withheld_of
from tui.pails import use_words
from tui.telling import turn_words
from tui.walker import Walker
from tui.words import when

DO = {Fate.HOUSE: "Throw it away, and whatever it was poured into", Fate.SOLD_OR_GIVEN: "Tell who got it"}


def unsafe_before_words(walker: Walker) -> Iterator[str]:
    """`Hazel, Mon 9 Mar evening, 8.5 kg to the house: it was withheld ... Throw it away`."""
    for each in unsafe_pails(walker.snapshot):
        pail = each.pail
        if pail.fate and pail.turn and pail.milk_kg is not None:
            milk = f"{weight(pail.milk_kg, walker.farm.units)} {use_words(pail.fate)}"
            whose = walker.snapshot.names[each.cow_id]
            what = f"{whose}, {turn_words(pail.turn)}, {milk}: it was withheld, {each.withheld.why}"
            yield f"{what}. {DO[pail.fate]}; R opens that round: write it as thrown away."


def gap_words(walker: Walker) -> Iterator[str]:
    """`Hazel, udder tube: batch, how long meat is withheld`."""
    for gap in gaps(walker.snapshot):
        yield f"{walker.snapshot.names[gap.animal_id]}, {gap.product}: {', '.join(gap.missing)}. F at her step"


def treated_facts(walker: Walker, animal_id: UUID, now: datetime) -> Iterator[str]:
    """`milk withheld until Sat 14 Mar 18:20: ...`, and the same of its meat."""
    snapshot = walker.snapshot
    held = (
        ("milk", holding(withheld_of(snapshot, animal_id), span(now))),
        ("meat", meat_until(snapshot, animal_id, now)),
    )
    for what, each in held:
        if each:
            until = "for now" if each.until is None else f"until {when(each.until, walker.zone)}"
            yield f"{what} withheld {until}: {each.why}"


def sucks_words(walker: Walker, cow: Animal, calf: Animal, now: datetime) -> Iterator[str]:
    """That a calf takes what its cow is treated with."""
    if sucks_treated(walker.snapshot, cow.id, now):
        yield f"{calf.name} sucks {cow.name}, who is treated: ask your vet. Its meat too: your vet decides."
