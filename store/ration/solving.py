"""The integer programme on HiGHS. Heavy: loaded with the mix, never before the first frame."""

from collections.abc import Iterator, Sequence
from enum import StrEnum

import numpy as np
from highspy import Highs, HighsLp, HighsModelStatus, HighsVarType, MatrixFormat, kHighsInf
from numpy.typing import NDArray

from store.ration.model import WEIGHT, Model, Row, Solved, missed

SECONDS = 3.0
"""A keeper does not wait longer; then the best that was found is said to be that. Ours."""


class Least(StrEnum):
    """What a mix is to make least."""

    COST = "cost"
    CHANGE = "change"


def solve(model: Model, least: Least) -> Solved | None:
    """The best quarters that keep every row; None where no quarters do."""
    return _read(_run(programme(model, least)), model)


def nearest(model: Model) -> Solved:
    """The quarters that miss the rows by the least, in parts of their scale, limits a hundredfold; then by cost."""
    found = _read(_run(programme(model, Least.COST, elastic=range(len(model.rows)))), model)
    if found is None:
        raise ValueError("no quarters at all are allowed; each choice must allow 0 or more")
    return found


def in_the_way(model: Model) -> Iterator[tuple[str, Solved]]:
    """Where nothing fits: each name of a row that needs to give alone, and the quarters in which it gives the least.

    Nothing where no row alone is enough. Whether it may be is asked without whole quarters first, which is quick.
    """
    for name in dict.fromkeys(row.name for row in model.rows):
        made = programme(model, Least.COST, elastic=[at for at, row in enumerate(model.rows) if row.name == name])
        if _fits(_run(made, whole=False)):
            found = _read(_run(made), model)
            if found:
                yield name, found


def _run(made: HighsLp, *, whole: bool = True) -> Highs:
    solver: Highs = Highs()  # type: ignore[no-untyped-call]
    solver.silent()
    for name, value in (("threads", 1), ("mip_rel_gap", 0.0), ("mip_abs_gap", 1e-9), ("time_limit", SECONDS)):
        solver.setOptionValue(name, value)
    solver.setOptionValue("mip_feasibility_tolerance", 1e-9)
    solver.setOptionValue("primal_feasibility_tolerance", 1e-9)
    solver.setOptionValue("solve_relaxation", not whole)
    solver.passModel(made)
    solver.run()
    return solver


def _fits(solver: Highs) -> bool:
    return bool(solver.getModelStatus() == HighsModelStatus.kOptimal)


def _read(solver: Highs, model: Model) -> Solved | None:
    status, found = solver.getModelStatus(), solver.getSolution()
    if status == HighsModelStatus.kInfeasible or not found.value_valid:
        return None
    columns = np.array(found.col_value)[: len(model.most)]
    quarters = tuple(float(round(at)) if whole else float(at) for at, whole in zip(columns, model.whole, strict=True))
    amiss = ((row.name, missed(row, quarters)) for row in model.rows)
    score = float(solver.getInfo().objective_function_value)
    proven = status == HighsModelStatus.kOptimal
    return Solved(quarters, score, tuple(each for each in amiss if each[1]), proven)


def programme(model: Model, least: Least, *, elastic: Sequence[int] = ()) -> HighsLp:
    """The model as the solver takes it: choices, then more and less than now, then what rows lack and have over.

    elastic: the rows, by place, that may be missed; then that is to be least, and cost only decides between equals.
    """
    choices, rows = len(model.most), len(model.rows)
    counts_change = least is Least.CHANGE and not elastic
    changes, begun = (choices, len(model.fresh)) if counts_change else (0, 0)
    loose = 2 * (changes + len(elastic))
    made = HighsLp()
    made.num_col_, made.num_row_ = choices + loose + begun, rows + changes + begun
    made.col_cost_ = _costs(model, changes, elastic)
    made.col_lower_ = np.zeros(made.num_col_)
    made.col_upper_ = np.concatenate([np.array(model.most), np.full(loose, kHighsInf), np.ones(begun)])
    whole = [HighsVarType.kInteger if each else HighsVarType.kContinuous for each in model.whole]
    made.integrality_ = whole + [HighsVarType.kContinuous] * loose + [HighsVarType.kInteger] * begun
    lower, upper = zip(*(_bounds(row) for row in model.rows), strict=True) if rows else ((), ())
    now, none = np.array(model.now[:changes]), np.zeros(begun)
    made.row_lower_ = np.concatenate([lower, now, none - kHighsInf])
    made.row_upper_ = np.concatenate([upper, now, none])
    _fill(made, _matrix(model, changes, elastic))
    return made


def _bounds(row: Row) -> tuple[float, float]:
    least = -kHighsInf if row.least is None else row.least / row.scale
    return least, kHighsInf if row.most is None else row.most / row.scale


def _costs(model: Model, changes: int, elastic: Sequence[int]) -> NDArray[np.float64]:
    """What each column counts."""
    if elastic:
        weights = np.array([WEIGHT[model.rows[at].kind] for at in elastic])
        highest = sum(cost * most for cost, most in zip(model.cost, model.most, strict=True) if cost > 0)
        return np.concatenate([np.array(model.cost) * (TIE / max(highest, 1.0)), weights, weights])
    if changes:
        weights = np.array(model.change_weight)
        return np.concatenate([np.zeros(changes), weights, weights, np.full(len(model.fresh), model.fresh_weight)])
    return np.array(model.cost)


TIE = 1e-5
"""In the nearest mix all that it may cost together counts as this part of one missed row."""


def _matrix(model: Model, changes: int, elastic: Sequence[int]) -> NDArray[np.float64]:
    """Rows in parts of their scale with what they lack and have over; for each change: choice - more + less; and for
    each feed that may be begun: its choices, and as much less where it is.
    """
    choices, rows = len(model.most), len(model.rows)
    sums = np.array([[each / row.scale for each in row.per_quarter] for row in model.rows]).reshape(rows, choices)
    gives = np.eye(rows)[:, list(elastic)]
    if not changes:
        return np.hstack([sums, gives, -gives])
    same, begun = np.eye(changes), len(model.fresh)
    of_feed = np.array([[float(at in feed) for at in range(choices)] for feed in model.fresh]).reshape(begun, choices)
    blocks = [
        [sums, np.zeros((rows, 2 * changes + begun))],
        [np.eye(choices), -same, same, np.zeros((changes, begun))],
        [of_feed, np.zeros((begun, 2 * changes)), -np.diag(of_feed @ np.array(model.most))],
    ]
    return np.vstack([np.hstack(block) for block in blocks])


def _fill(made: HighsLp, dense: NDArray[np.float64]) -> None:
    """Give the matrix to the programme, row by row, without its zeros."""
    rows, columns = np.nonzero(dense)
    made.a_matrix_.format_ = MatrixFormat.kRowwise
    made.a_matrix_.start_ = np.searchsorted(rows, np.arange(dense.shape[0] + 1))
    made.a_matrix_.index_, made.a_matrix_.value_ = columns, dense[rows, columns]
