"""Udder steps: a dry or close-up cow, and one in milk that is not milked now, are looked at and felt only."""

import pytest
from msgspec.structs import replace

from store.book.figures import FeltFigure
from store.book.words import Fill, Species, Stage, State
from store.round.confirm import felt, skipped
from store.round.steps import UdderStep
from store.round.udder import why_felt
from tests.store.round.made import animal_named, dawn, dusk, hand, walk, with_animal
from tests.store.round.named import steps_of, udder_of

FELT = (Stage.DRY, Stage.CLOSE_UP, Stage.IN_MILK)


@pytest.mark.parametrize("stage", Stage)
def test_a_cow_that_is_not_milked_is_felt_when_her_udder_may_fill(stage: Stage) -> None:
    """Dry, close to calving, or in milk and left alone now; no heifer, calf, steer or bull."""
    tansy = replace(animal_named(dawn(), "Tansy"), stage=stage)
    names = [step.name for step in steps_of(with_animal(dawn(), tansy), UdderStep)]
    assert names == (["Tansy"] if stage in FELT else [])


def test_a_cow_that_is_milked_now_is_not_felt_besides() -> None:
    """Fennel: milked in the morning, felt in the evening."""
    assert [step.name for step in steps_of(dawn(), UdderStep)] == ["Tansy"]
    assert [step.name for step in steps_of(dusk(), UdderStep)] == ["Fennel", "Tansy"]


@pytest.mark.parametrize(
    ("stage", "why"), [(Stage.CLOSE_UP, "close to calving"), (Stage.IN_MILK, "not her turn to be milked")]
)
def test_why_she_is_felt_is_said(stage: Stage, why: str) -> None:
    tansy = replace(animal_named(dawn(), "Tansy"), stage=stage)
    assert why_felt(with_animal(dawn(), tansy), tansy) == why


@pytest.mark.parametrize("species", [each for each in Species if each is not Species.CATTLE])
def test_no_other_animal_is_felt(species: Species) -> None:
    """A dry ewe is not."""
    tansy = replace(animal_named(dawn(), "Tansy"), species=species)
    assert steps_of(with_animal(dawn(), tansy), UdderStep) == []


def test_an_udder_is_felt_before_the_bucket_is_given() -> None:
    """Before milking or feeding changes it."""
    found = walk(dusk())
    assert found.index(("Stall", "Fennel", "udder")) == found.index(("Stall", "Fennel", "feed")) - 1


@pytest.mark.parametrize("fill", Fill)
def test_a_finding_is_written_as_it_felt(fill: Fill) -> None:
    """Whatever it was, the step is done."""
    draft = felt(hand(dawn()), udder_of(dawn(), "Tansy"), fill)
    assert (draft.state, draft.figures) == (State.DONE, (FeltFigure(fill),))


def test_an_udder_that_was_not_felt_has_no_finding() -> None:
    """Not even a slack one."""
    assert skipped(hand(dawn()), udder_of(dawn(), "Tansy"), "alone, not safe").figures == ()
