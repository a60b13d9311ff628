"""Random small rations, and the same question answered by trying every mix there is."""

from itertools import product
from random import Random

import numpy as np
from numpy.typing import NDArray

from store.ration.model import TOLERANCE, WEIGHT, Kind, Model, Row

FEEDS, MEALS, MOST = 3, 2, 3


def a_model(seed: int) -> Model:
    """Three feeds in two meals of up to three quarters each; about half of them fit."""
    draw = Random(seed)
    dry = _each(draw, 0.1, 0.5)
    energy = _times(dry, _each(draw, 0.9, 2.2))
    protein = _times(dry, _each(draw, 20, 250))
    fat = _times(dry, _each(draw, 0.01, 0.12))
    rows = [
        _at_least("energy", energy, draw.uniform(0.3, 0.85)),
        _at_least("protein", protein, draw.uniform(0.3, 0.85)),
        Row("dry matter", Kind.LIMIT, dry, None, draw.uniform(0.5, 1) * MOST * sum(dry), MOST * sum(dry)),
        Row("fat", Kind.LIMIT, tuple(f - 0.07 * d for f, d in zip(fat, dry, strict=True)), None, 0.0, 0.2 * sum(dry)),
    ]
    for meal in range(MEALS):
        here = tuple(each if at % MEALS == meal else 0.0 for at, each in enumerate(dry))
        rows.append(Row(f"meal {meal}", Kind.LIMIT, here, None, draw.uniform(0.5, 1) * MOST * sum(here), 1.0))
    count = FEEDS * MEALS
    now = tuple(float(draw.choice((0, 0, 1, 2, 3))) for _ in range(count))
    whole = (True,) * count
    feeds = [tuple(range(at, at + MEALS)) for at in range(0, count, MEALS)]
    fresh = tuple(feed for feed in feeds if not any(now[at] for at in feed))
    most = (float(MOST),) * count
    costs = (_each(draw, 0.05, 0.5), _each(draw, 0.5, 0.7))
    return Model(tuple(rows), most, now, *costs, whole, fresh, draw.uniform(0, 2))


class Tried:
    """Every mix of a model."""

    def __init__(self, model: Model) -> None:
        """All of them: 4 ** 6."""
        self.mixes = np.array(list(product(*(range(int(most) + 1) for most in model.most))), float)
        self.cost = self.mixes @ np.array(model.cost)
        begun = sum((self.mixes[:, list(feed)].any(axis=1) for feed in model.fresh), np.zeros(len(self.mixes)))
        moved = np.abs(self.mixes - np.array(model.now)) @ np.array(model.change_weight)
        self.change = moved + begun * model.fresh_weight
        self.missed = sum((_missed(row, self.mixes) for row in model.rows), np.zeros(len(self.mixes)))

    def least(self, of: NDArray[np.float64]) -> float | None:
        """The least of something, of the mixes that keep every row; None where none does."""
        keeps = self.missed <= TOLERANCE
        return float(of[keeps].min()) if keeps.any() else None

    def missed_alone(self, row: Row) -> float | None:
        """The least by which one row is missed, of the mixes that keep the others; None where none keeps them."""
        own = _missed(row, self.mixes)
        keeps = self.missed - own <= TOLERANCE
        return float(own[keeps].min()) if keeps.any() else None


def _missed(row: Row, mixes: NDArray[np.float64]) -> NDArray[np.float64]:
    found = mixes @ np.array(row.per_quarter) / row.scale
    short = np.maximum((-np.inf if row.least is None else row.least / row.scale) - found, 0)
    over = np.maximum(found - (np.inf if row.most is None else row.most / row.scale), 0)
    weighed: NDArray[np.float64] = WEIGHT[row.kind] * (short + over)
    return weighed


def _at_least(name: str, of: tuple[float, ...], part: float) -> Row:
    most = MOST * sum(of)
    return Row(name, Kind.NEED, of, part * most, None, most)


def _each(draw: Random, least: float, most: float) -> tuple[float, ...]:
    """The same for a feed in each meal."""
    of = [draw.uniform(least, most) for _ in range(FEEDS)]
    return tuple(of[at // MEALS] for at in range(FEEDS * MEALS))


def _times(one: tuple[float, ...], other: tuple[float, ...]) -> tuple[float, ...]:
    return tuple(a * b for a, b in zip(one, other, strict=True))
