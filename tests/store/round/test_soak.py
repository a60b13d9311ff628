"""Soak steps: what stands in the bucket now, and what must be put to soak for the round after this one."""

from datetime import timedelta
from uuid import UUID

import pytest
from msgspec.structs import replace

from store.book.facts.feed import Batch, Portion, SoakLimit
from store.book.figures import SoakedFigure
from store.book.snapshot import Snapshot
from store.book.words import Soak, State, Water
from store.round.amount import Unreadable
from store.round.confirm import left_open, moved_on, skipped
from store.round.measured import soak_checked, soak_started
from store.round.plan import plan
from store.round.steps import SoakCheckStep, SoakStartStep
from tests.farm import MORNING
from tests.store.round.made import (
    NUTS,
    PULP,
    animal_named,
    dawn,
    hand,
    moved,
    pen_named,
    with_portions,
    without_animal,
    wrote,
)
from tests.store.round.named import soak_check_of, soak_start_of, steps_of

LUCERNE = "lucerne pellets"


def for_next(snapshot: Snapshot, *portions: tuple[UUID, Portion]) -> Snapshot:
    """The round with other plans for the round after it."""
    feeds = {**snapshot.feeds, **{portion.feed.id: portion.feed for _, portion in portions}}
    return replace(snapshot, portions_next={id_: (portion,) for id_, portion in portions}, feeds=feeds)


def pulp(kg: float) -> Portion:
    """So much of a soaked feed."""
    return Portion(PULP, kg, None)


def test_what_soaked_is_looked_into_first_and_the_next_is_begun_last() -> None:
    """Both at the bench: before the pens, and behind them."""
    kinds = [type(step) for step in plan(dawn())]
    assert (kinds[0], kinds[-2]) == (SoakCheckStep, SoakStartStep)
    assert {step.place for step in plan(dawn()) if step.kind == "soak"} == {"Bench"}


def test_the_check_needs_what_this_round_gives_and_the_start_what_the_next_one_gives() -> None:
    """More in the evening than in the morning."""
    fennel = animal_named(dawn(), "Fennel").id
    found = for_next(with_portions(dawn(), fennel, pulp(0.9)), (fennel, pulp(1.2)))
    check, start = soak_check_of(found, "beet pulp"), soak_start_of(found, "beet pulp")
    assert (check.due_kg, start.due_kg, start.for_slot) == (0.9, 1.2, "evening")
    assert check.step_id != start.step_id


def test_what_is_needed_is_summed_over_animals_and_over_the_heads_of_pens() -> None:
    """A cow with a plan of her own, and a pen of two fed as one: 0.9 + 2 x 0.4."""
    fennel, orchard = animal_named(dawn(), "Fennel").id, pen_named(dawn(), "Orchard").id
    portions = ((fennel, pulp(0.9)), (orchard, pulp(0.4)))
    found = for_next(with_portions(with_portions(dawn(), *portions[0]), *portions[1]), *portions)
    assert soak_check_of(found, "beet pulp").due_kg == pytest.approx(1.7)
    assert soak_start_of(found, "beet pulp").due_kg == pytest.approx(1.7)
    fuller = moved(found, "Hazel", "Orchard")
    assert soak_start_of(fuller, "beet pulp").due_kg == pytest.approx(2.1)


def test_nothing_is_soaked_for_whoever_is_gone() -> None:
    """Her plan is still in force, she is not kept any more; nor does an empty pen eat."""
    assert steps_of(without_animal(dawn(), "Fennel"), SoakStartStep) == []
    calf_pen = pen_named(dawn(), "Calf pen").id
    assert steps_of(for_next(without_animal(dawn(), "Rook"), (calf_pen, pulp(1.0))), SoakStartStep) == []


def test_nothing_is_soaked_where_nothing_soaked_is_fed() -> None:
    """Nor where none of it is due."""
    fennel = animal_named(dawn(), "Fennel").id
    for portion in (Portion(NUTS, 2.0, None), pulp(0.0)):
        found = for_next(with_portions(dawn(), fennel, portion), (fennel, portion))
        assert [step for step in plan(found) if step.kind == "soak"] == []


def test_each_soaked_feed_has_its_own_steps_by_name() -> None:
    """Two buckets."""
    fennel, hazel = (animal_named(dawn(), name).id for name in ("Fennel", "Hazel"))
    found = for_next(dawn(), (fennel, dawn().portions_next[fennel][1]), (hazel, pulp(0.5)))
    assert [step.name for step in steps_of(found, SoakStartStep)] == ["beet pulp", LUCERNE]


def test_water_is_by_the_farms_own_rule() -> None:
    """Two kilograms to a kilogram of dry pellets, in today's air."""
    step = soak_start_of(dawn(), LUCERNE)
    assert step.limit == SoakLimit(Water.COLD, 5, 16, 2)
    assert step.water_kg == pytest.approx(1.8)


def test_without_a_rule_nothing_is_said_about_water_or_hours() -> None:
    """Nobody wrote one for today's air."""
    found = replace(dawn(), soak_limits={})
    assert (soak_start_of(found, LUCERNE).water_kg, soak_start_of(found, LUCERNE).limit) == (None, None)
    assert soak_check_of(found, LUCERNE).limit is None
    (figure,) = soak_started(hand(found), soak_start_of(found, LUCERNE), "").figures
    assert figure == SoakedFigure(Soak.STARTED, 0.9, 0.9, None)


def test_the_check_knows_the_batch_that_stands_in_the_bucket() -> None:
    """Put to soak the evening before."""
    batch = soak_check_of(dawn(), LUCERNE).batch
    assert batch is not None
    assert (batch.dry_kg, batch.water_kg) == (0.9, 1.8)
    assert timedelta(hours=12) < MORNING - batch.started_at < timedelta(hours=12.5)


def test_the_check_of_a_batch_that_nobody_wrote_down_knows_none() -> None:
    """The bucket is looked into all the same."""
    step = soak_check_of(replace(dawn(), batches={}), LUCERNE)
    assert step.batch is None
    assert soak_checked(hand(dawn()), step, Soak.FIT).figures == (SoakedFigure(Soak.FIT, 0.9, None),)


@pytest.mark.parametrize("act", [Soak.FIT, Soak.THROWN_OUT])
def test_a_check_writes_what_was_found_and_how_much_stood_there(act: Soak) -> None:
    """Fit to feed, or thrown out: done, either way."""
    batch = Batch(MORNING - timedelta(hours=12), 1.1, 2.2)
    lucerne = soak_check_of(dawn(), LUCERNE).feed.id
    step = soak_check_of(replace(dawn(), batches={lucerne: batch}), LUCERNE)
    draft = soak_checked(hand(dawn()), step, act)
    assert (draft.state, draft.subject.feed_id) == (State.DONE, lucerne)
    assert draft.figures == (SoakedFigure(act, 0.9, 1.1),)


@pytest.mark.parametrize(("typed", "dry_kg", "water_kg"), [("", 0.9, 1.8), ("1.5", 1.5, 3.0), ("500 g", 0.5, 1.0)])
def test_so_much_is_put_to_soak_with_the_water_for_it(typed: str, dry_kg: float, water_kg: float) -> None:
    """What was due stays beside it."""
    draft = soak_started(hand(dawn()), soak_start_of(dawn(), LUCERNE), typed)
    (figure,) = draft.figures
    assert isinstance(figure, SoakedFigure)
    assert (figure.act, figure.due_kg, figure.typed) == (Soak.STARTED, 0.9, typed)
    assert figure.dry_kg == pytest.approx(dry_kg)
    assert figure.water_kg == pytest.approx(water_kg)


def test_what_is_no_weight_is_not_put_to_soak() -> None:
    """In a sentence."""
    with pytest.raises(Unreadable, match="goes by weight"):
        soak_started(hand(dawn()), soak_start_of(dawn(), LUCERNE), "3 l")


def test_a_soak_that_was_not_begun_keeps_what_was_due() -> None:
    """Skipped, moved on, or left open: none of it is in the bucket."""
    step = soak_start_of(dawn(), LUCERNE)
    for draft in (skipped(hand(dawn()), step, "ran out"), moved_on(hand(dawn()), step), left_open(hand(dawn()), step)):
        assert draft.figures == (SoakedFigure(Soak.STARTED, 0.9, None),)


def test_a_check_and_a_start_of_one_feed_have_histories_of_their_own() -> None:
    """The one thrown out, the other one begun."""
    after = wrote(dawn(), soak_checked(hand(dawn()), soak_check_of(dawn(), LUCERNE), Soak.THROWN_OUT))
    assert soak_check_of(after, LUCERNE).state is State.DONE
    assert soak_start_of(after, LUCERNE).state is State.OPEN
