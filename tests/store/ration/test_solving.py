"""The mix that the solver finds is the best there is: every mix of random small rations is tried."""

import pytest

from store.ration.model import Kind, Model, Row, missed
from store.ration.solving import TIE, Least, in_the_way, nearest, solve
from tests.store.ration.small_models import Tried, a_model

SEEDS = range(60)


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("least", Least)
def test_no_mix_is_better_than_the_one_found(seed: int, least: Least) -> None:
    model = a_model(seed)
    tried = Tried(model)
    best = tried.least(tried.cost if least is Least.COST else tried.change)
    found = solve(model, least)
    assert (found is None) == (best is None)
    if found and best is not None:
        assert found.proven
        assert not found.amiss
        assert found.score == pytest.approx(best, abs=1e-6)
        assert all(missed(row, found.quarters) == 0 for row in model.rows)


def test_about_half_of_these_rations_fit() -> None:
    fit = sum(solve(a_model(seed), Least.COST) is not None for seed in SEEDS)
    assert len(SEEDS) / 4 < fit < 3 * len(SEEDS) / 4


@pytest.mark.parametrize("seed", SEEDS)
def test_the_nearest_mix_misses_the_least(seed: int) -> None:
    model = a_model(seed)
    assert nearest(model).score == pytest.approx(Tried(model).missed.min(), abs=2 * TIE)


@pytest.mark.parametrize("seed", SEEDS)
def test_what_stands_in_the_way_is_each_row_that_is_enough_alone(seed: int) -> None:
    """And it gives no more than it has to."""
    model = a_model(seed)
    if solve(model, Least.COST) is None:
        tried = Tried(model)
        alone = {row.name: tried.missed_alone(row) for row in model.rows}
        ways = dict(in_the_way(model))
        assert set(ways) == {name for name, least in alone.items() if least is not None}
        for name, found in ways.items():
            assert found.score == pytest.approx(alone[name], abs=2 * TIE)
            assert {each for each, _ in found.amiss} == {name}


def test_a_limit_is_not_broken_for_a_need() -> None:
    """Four quarters would be enough, and two are allowed."""
    rows = (Row("energy", Kind.NEED, (1.0,), 4.0, None, 4.0), Row("a meal", Kind.LIMIT, (1.0,), None, 2.0, 2.0))
    model = Model(rows, (8.0,), (0.0,), (1.0,), (1.0,), (True,))
    assert solve(model, Least.COST) is None
    found = nearest(model)
    assert found.quarters == (2.0,)
    assert found.amiss == (("energy", -2.0),)
    assert [(name, each.quarters) for name, each in in_the_way(model)] == [("energy", (2.0,)), ("a meal", (4.0,))]


def test_what_need_not_be_whole_fills_what_is_left() -> None:
    rows = (Row("full", Kind.LIMIT, (0.5, 0.45), 1.2, 1.2, 1.0),)
    model = Model(rows, (2.0, 99.0), (0.0, 0.0), (0.1, 1.0), (1.0, 1.0), (True, False))
    found = solve(model, Least.COST)
    assert found
    assert list(found.quarters) == pytest.approx([2.0, 0.2 / 0.45])


def test_the_solver_says_nothing(capfd: pytest.CaptureFixture[str]) -> None:
    """What it prints would be written into the screen."""
    solve(a_model(1), Least.COST)
    nearest(a_model(1))
    assert capfd.readouterr() == ("", "")
