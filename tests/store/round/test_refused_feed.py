"""What is not given: a feed barred for a species, never; a meal above the farm's limit, only when sure."""

import pytest
from msgspec.structs import replace

from store.book.facts.feed import Feed, Portion
from store.book.figures import FedFigure
from store.book.opening import Book
from store.book.snapshot import Snapshot
from store.book.words import Species, State
from store.round.amount import Unreadable
from store.round.confirm import Doubtful, Hand, skipped
from store.round.measured import fed, left_over
from tests.farm import hand as hand_at
from tests.farm import morning
from tests.store.book.tools import all_rows
from tests.store.round.made import NUTS, animal_named, dawn, hand, pen_named, with_animal, with_portions, wrote
from tests.store.round.named import feed_of

MEDICATED = Feed(NUTS.id, "coated nuts", soaked=False, not_for=frozenset({Species.SHEEP, Species.HORSE}))


def fed_to(species: Species) -> Snapshot:
    """The orchard gets the barred feed, and Sloe is of some species."""
    sloe = replace(animal_named(dawn(), "Sloe"), species=species)
    return with_portions(with_animal(dawn(), sloe), pen_named(dawn(), "Orchard").id, Portion(MEDICATED, 1.0, None))


def limited(limit_kg: float | None) -> Hand:
    """A hand on a farm with a limit for a meal."""
    return replace(hand(dawn()), meal_limit_kg=limit_kg)


@pytest.mark.parametrize("species", Species)
def test_a_feed_barred_for_one_animal_of_a_pen_is_not_given_to_the_pen(species: Species) -> None:
    """One ewe among the cows is enough; the sentence names the feed, the species and her."""
    step = feed_of(fed_to(species), "Orchard")
    if species not in MEDICATED.not_for:
        assert fed(hand(dawn()), step, {}).state is State.DONE
        return
    with pytest.raises(Unreadable) as refused:
        fed(hand(dawn()), step, {})
    assert str(refused.value) == (
        f"coated nuts is not for {species.value} (Sloe). Nothing was written: S skips, and the plan has to be mended."
    )


def test_a_barred_feed_is_refused_however_it_is_typed_and_however_sure() -> None:
    """Nor is it left over where it was not given."""
    step = feed_of(fed_to(Species.SHEEP), "Orchard")
    for typed in ({}, {NUTS.id: "0"}, {NUTS.id: "1 kg"}):
        with pytest.raises(Unreadable, match="is not for sheep"):
            fed(hand(dawn()), step, typed, sure=True)
    with pytest.raises(Unreadable, match="is not for sheep"):
        left_over(hand(dawn()), step, step.due[0], "0.5 kg")


def test_a_barred_feed_can_be_skipped() -> None:
    """With what was due, for whoever mends the plan."""
    draft = skipped(hand(dawn()), feed_of(fed_to(Species.SHEEP), "Orchard"), "not needed today")
    assert draft.figures == (FedFigure(NUTS.id, None, 2.0, None),)


def test_a_refusal_writes_nothing(book: Book) -> None:
    """There is no draft, so there is nothing for the book."""
    before, found = all_rows(book.desk), morning(book)
    barred = replace(feed_of(found, "Sloe").due[0].feed, not_for=frozenset({Species.CATTLE}))
    changed = with_portions(found, animal_named(found, "Sloe").id, Portion(barred, 1.0, None))
    with pytest.raises(Unreadable):
        book.append(fed(hand_at(book, changed), feed_of(changed, "Sloe"), {}))
    assert all_rows(book.desk) == before


@pytest.mark.parametrize(("limit_kg", "typed", "asks"), [
    (3.0, "3.1 kg", True), (3.0, "3 kg", False), (3.0, "2 kg", False), (None, "9 kg", False), (None, "40 kg", True),
    (0.5, "1 kg", True),
])  # fmt: skip
def test_a_meal_above_the_limit_is_asked_about_once_and_written_when_sure(
    limit_kg: float | None, typed: str, asks: bool
) -> None:
    """The limit itself is inside; a farm without one is asked at ten kilograms."""
    step = feed_of(dawn(), "Hazel")
    words = {step.due[0].feed.id: typed}
    if asks:
        with pytest.raises(Doubtful, match=rf"kg in one meal; .* is {limit_kg or 10:.2f} kg\. If it is right"):
            fed(limited(limit_kg), step, words)
    else:
        fed(limited(limit_kg), step, words)
    assert fed(limited(limit_kg), step, words, sure=True).state is State.DONE


def test_the_limit_is_of_all_the_feeds_of_a_meal_together() -> None:
    """Two scoops of nuts (1.35 kg) and 1.75 kg of lucerne."""
    step = feed_of(dawn(), "Fennel")
    nuts, lucerne = (due.feed.id for due in step.due)
    with pytest.raises(Doubtful, match=r"That is 3\.10 kg in one meal"):
        fed(limited(3.0), step, {nuts: "2", lucerne: "1.75 kg"})
    assert fed(limited(3.0), step, {nuts: "2", lucerne: "1.6 kg"})


def test_what_is_given_as_planned_is_not_asked_about() -> None:
    """Whoever planned it has thought of it."""
    step = feed_of(dawn(), "Fennel")
    assert sum(due.as_shown_kg for due in step.due) > 3.0
    assert fed(limited(3.0), step, {}).state is State.DONE


def test_the_limit_of_a_pen_is_that_of_each_of_its_heads() -> None:
    """Two heads: twice as much."""
    orchard = pen_named(dawn(), "Orchard").id
    step = feed_of(with_portions(dawn(), orchard, Portion(NUTS, 1.0, None)), "Orchard")
    assert len(step.heads) == 2
    assert fed(limited(3.0), step, {NUTS.id: "6 kg"})
    with pytest.raises(Doubtful):
        fed(limited(3.0), step, {NUTS.id: "6.1 kg"})


def test_hay_has_no_limit() -> None:
    """Forage is no meal."""
    step = feed_of(dawn(), "Stall")
    assert fed(limited(3.0), step, {step.due[0].feed.id: "40 kg"}).state is State.DONE


def test_a_doubt_is_no_refusal_and_leaves_the_step_as_it_was() -> None:
    """Nothing is written while it asks."""
    assert not issubclass(Doubtful, Unreadable)
    after = wrote(dawn(), fed(limited(3.0), feed_of(dawn(), "Hazel"), {}))
    step = feed_of(after, "Hazel")
    with pytest.raises(Doubtful):
        fed(limited(3.0), step, {step.due[0].feed.id: "8 kg"})
    assert feed_of(after, "Hazel").entry == after.entries[0]
