"""The integer programme on HiGHS. Heavy: loaded with the mix, never before the first frame."""

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
    return _run(model, least, elastic=False)


def nearest(model: Model) -> Solved:
    """The quarters that miss the rows by the least, in parts of their scale, limits a hundredfold; then by cost."""
    found = _run(model, Least.COST, elastic=True)
    if found is None:
        raise ValueError("no quarters at all are allowed; each choice must allow 0 or more")
    return found


def _run(model: Model, least: Least, *, elastic: bool) -> Solved | None:
    solver: Highs = Highs()  # type: ignore[no-untyped-call]
    solver.silent()
    for name, value in (("threads", 1), ("mip_rel_gap", 0.0), ("mip_abs_gap", 1e-9), ("time_limit", SECONDS)):
        solver.setOptionValue(name, value)
    solver.setOptionValue("mip_feasibility_tolerance", 1e-9)
    solver.setOptionValue("primal_feasibility_tolerance", 1e-9)
    solver.passModel(programme(model, least, elastic=elastic))
    solver.run()
    return _read(solver, model)


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


def programme(model: Model, least: Least, *, elastic: bool = False) -> HighsLp:
    """The model as the solver takes it: choices, then more and less than now, then what each row lacks and has over."""
    choices, rows = len(model.most), len(model.rows)
    changes = choices if least is Least.CHANGE and not elastic else 0
    slacks = rows if elastic else 0
    made = HighsLp()
    made.num_col_, made.num_row_ = choices + 2 * changes + 2 * slacks, rows + changes
    made.col_cost_ = _costs(model, changes, elastic=elastic)
    made.col_lower_ = np.zeros(made.num_col_)
    made.col_upper_ = np.concatenate([np.array(model.most), np.full(2 * (changes + slacks), kHighsInf)])
    whole = [HighsVarType.kInteger if each else HighsVarType.kContinuous for each in model.whole]
    made.integrality_ = whole + [HighsVarType.kContinuous] * (2 * (changes + slacks))
    lower, upper = zip(*(_bounds(row) for row in model.rows), strict=True) if rows else ((), ())
    now = np.array(model.now[:changes])
    made.row_lower_, made.row_upper_ = np.concatenate([lower, now]), np.concatenate([upper, now])
    _fill(made, _matrix(model, changes, slacks))
    return made


def _bounds(row: Row) -> tuple[float, float]:
    least = -kHighsInf if row.least is None else row.least / row.scale
    return least, kHighsInf if row.most is None else row.most / row.scale


def _costs(model: Model, changes: int, *, elastic: bool) -> NDArray[np.float64]:
    """What each column counts. Elastic: cost only decides between mixes that miss alike, so it is made very small."""
    if elastic:
        weights = np.array([WEIGHT[row.kind] for row in model.rows])
        highest = sum(cost * most for cost, most in zip(model.cost, model.most, strict=True) if cost > 0)
        return np.concatenate([np.array(model.cost) * (TIE / max(highest, 1.0)), weights, weights])
    if changes:
        weights = np.array(model.change_weight)
        return np.concatenate([np.zeros(changes), weights, weights])
    return np.array(model.cost)


TIE = 1e-5
"""In the nearest mix cost counts less than this part of one missed row."""


def _matrix(model: Model, changes: int, slacks: int) -> NDArray[np.float64]:
    """Rows in parts of their scale, then for each change: choice - more + less = now."""
    choices, rows = len(model.most), len(model.rows)
    sums = np.array([[each / row.scale for each in row.per_quarter] for row in model.rows]).reshape(rows, choices)
    above = np.hstack([sums, np.zeros((rows, 2 * changes)), np.eye(slacks), -np.eye(slacks)]) if slacks else None
    if above is not None:
        return above
    same = np.eye(changes)
    below = np.hstack([np.eye(changes, choices), -same, same])
    return np.vstack([np.hstack([sums, np.zeros((rows, 2 * changes))]), below]) if changes else sums


def _fill(made: HighsLp, dense: NDArray[np.float64]) -> None:
    """Give the matrix to the programme, row by row, without its zeros."""
    rows, columns = np.nonzero(dense)
    made.a_matrix_.format_ = MatrixFormat.kRowwise
    made.a_matrix_.start_ = np.searchsorted(rows, np.arange(dense.shape[0] + 1))
    made.a_matrix_.index_, made.a_matrix_.value_ = columns, dense[rows, columns]


def in_the_way(model: Model, found: Solved) -> tuple[str, ...]:
    """The rows without which less would be missed than in the nearest mix that was found: they stand in the way.

    A row that is kept with room to spare may be one of them, since whole quarters leap over it.
    """
    freed = ((row.name, nearest(model.without(row.name)).score) for row in model.rows)
    return tuple(name for name, score in freed if score < found.score - ENOUGH_BETTER)


ENOUGH_BETTER = 1e-4
"""Less than this part of one row's scale is no better mix; it lies above what cost decides (TIE)."""
