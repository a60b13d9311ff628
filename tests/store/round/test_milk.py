"""Milk steps: who is milked, into which pail, with which calves at her side."""

import pytest
from msgspec.structs import replace

from store.book.figures import MilkedFigure
from store.book.words import Fate
from store.round.amount import Unreadable
from store.round.measured import milked
from store.round.steps import MilkStep
from tests.store.round.made import dawn, dusk, hand, moved, without_animal
from tests.store.round.named import milk_of, steps_of


def test_a_cow_has_a_milk_step_in_the_slots_she_is_milked_in() -> None:
    """Fennel keeps her calf overnight: mornings only. Hazel: both."""
    assert [step.name for step in steps_of(dawn(), MilkStep)] == ["Fennel", "Hazel"]
    assert [step.name for step in steps_of(dusk(), MilkStep)] == ["Hazel"]


def test_a_cow_who_is_not_milked_has_no_milk_step() -> None:
    """Taken off the milking, she is off the walk."""
    fennel = milk_of(dawn(), "Fennel").animal.id
    milkings = {id_: found for id_, found in dawn().milkings.items() if id_ != fennel}
    assert [step.name for step in steps_of(replace(dawn(), milkings=milkings), MilkStep)] == ["Hazel"]


def test_a_milk_step_knows_the_pail_and_its_empty_weight() -> None:
    """So that what the scale says can be read."""
    pail = milk_of(dawn(), "Hazel").milking.pail
    assert pail is not None
    assert (pail.name, pail.empty_kg) == ("steel pail", 1.4)


def test_a_milk_step_knows_the_calves_that_share_her_milk() -> None:
    """Rook drinks from Fennel; nobody drinks from Hazel."""
    assert [calf.calf.name for calf in milk_of(dawn(), "Fennel").calves] == ["Rook"]
    assert milk_of(dawn(), "Hazel").calves == ()


def test_a_calf_that_is_gone_is_not_named_at_her_side() -> None:
    """Only animals that are kept are in the yard."""
    assert milk_of(without_animal(dawn(), "Rook"), "Fennel").calves == ()


def test_a_cow_that_moves_is_milked_where_she_stands() -> None:
    """The same step, in another place of the walk."""
    before, after = milk_of(dawn(), "Hazel"), milk_of(moved(dawn(), "Hazel", "Orchard"), "Hazel")
    assert (before.place, after.place) == ("Stall", "Orchard")
    assert before.step_id == after.step_id


def test_a_pail_may_say_that_she_held_back() -> None:
    """It is written like any other, and marked."""
    (figure,) = milked(hand(dawn()), milk_of(dawn(), "Hazel"), "5.4", Fate.CALVES, held_back=True).figures
    assert isinstance(figure, MilkedFigure)
    assert figure.milk_kg == pytest.approx(4.0)
    assert figure.held_back


def test_milk_poured_into_no_pail_of_the_farm_is_what_the_scale_says() -> None:
    """No pail is planned for her: nothing is subtracted, and none is kept with it."""
    hazel = milk_of(dawn(), "Hazel").milking
    bare = replace(dawn(), milkings={hazel.animal_id: replace(hazel, pail=None)})
    (figure,) = milked(hand(bare), milk_of(bare, "Hazel"), "7.9", Fate.HOUSE).figures
    assert figure == MilkedFigure(7.9, 7.9, None, 0.0, Fate.HOUSE, "7.9")
    with pytest.raises(Unreadable, match="too much for one milking"):
        milked(hand(bare), milk_of(bare, "Hazel"), "81", Fate.HOUSE)
