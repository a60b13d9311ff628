"""Milk steps: who is milked, into which pail, with which calves at her side."""

from dataclasses import replace

from store.round.plan import plan
from tests.store.round.made import demo, demo_evening, milk_of, moved


def test_a_cow_has_a_milk_step_in_the_slots_she_is_milked_in() -> None:
    """Fennel keeps her calf overnight: mornings only. Hazel: both."""
    assert [step.name for step in plan(demo()) if step.kind == "milk"] == ["Fennel", "Hazel"]
    assert [step.name for step in plan(demo_evening()) if step.kind == "milk"] == ["Hazel"]


def test_a_cow_who_is_not_milked_has_no_milk_step() -> None:
    """Taken off the milking, she is off the walk."""
    fennel = milk_of(demo(), "Fennel").animal.id
    milkings = {id_: found for id_, found in demo().milkings.items() if id_ != fennel}
    assert [step.name for step in plan(replace(demo(), milkings=milkings)) if step.kind == "milk"] == ["Hazel"]


def test_a_milk_step_knows_the_pail_and_its_empty_weight() -> None:
    """So that what the scale says can be read."""
    pail = milk_of(demo(), "Hazel").milking.pail
    assert pail is not None
    assert (pail.name, pail.empty_kg) == ("steel pail", 1.4)


def test_a_milk_step_knows_the_calves_that_share_her_milk() -> None:
    """Rook drinks from Fennel; nobody drinks from Hazel."""
    assert [calf.name for calf in milk_of(demo(), "Fennel").calves] == ["Rook"]
    assert milk_of(demo(), "Hazel").calves == ()


def test_a_calf_that_is_gone_is_not_named_at_her_side() -> None:
    """Only animals that are kept are in the yard."""
    left = tuple(animal for animal in demo().animals if animal.name != "Rook")
    assert milk_of(replace(demo(), animals=left), "Fennel").calves == ()


def test_her_usual_milk_is_the_range_of_her_last_pails_of_the_slot() -> None:
    """Seven mornings are in the book."""
    step = milk_of(demo(), "Hazel")
    pails_kg = step.milking.pails_before_kg
    assert len(pails_kg) == 7
    assert step.usual_kg == (min(pails_kg), max(pails_kg))


def test_two_pails_are_too_few_to_say_what_is_usual() -> None:
    """Then the step says nothing of it."""
    hazel = milk_of(demo(), "Hazel").milking
    few = replace(hazel, pails_before_kg=hazel.pails_before_kg[:2])
    assert milk_of(replace(demo(), milkings={hazel.animal_id: few}), "Hazel").usual_kg is None


def test_a_cow_that_moves_is_milked_where_she_stands() -> None:
    """The same step, in another place of the walk."""
    before, after = milk_of(demo(), "Hazel"), milk_of(moved(demo(), "Hazel", "Orchard"), "Hazel")
    assert (before.place, after.place) == ("Stall", "Orchard")
    assert before.step_id == after.step_id
