"""Find a mix: whole quarters of the feeds on hand that meet the needs within every limit, at least cost or change.

Where nothing fits: the nearest that does, what stays short in it, and what would have to give, by how much. Heavy: it
loads the solver.
"""

from collections.abc import Sequence
from uuid import UUID

from msgspec import Struct
from msgspec.structs import replace

from store.ration.balance import balance
from store.ration.choices import NEW_FEED_KG, Choice, choices, fresh, held, left_out
from store.ration.even_meals import evened
from store.ration.model import Model, Solved
from store.ration.needed import rows
from store.ration.parts import Amounts, Balance, Case, Line, Missing, Part, Verdict
from store.ration.solving import Least, in_the_way, nearest, solve
from store.round.saying import exact


class Mix(Struct, frozen=True):
    """A mix. fits: it meets every need within every limit; else it is the nearest.

    in_way: what stands in the way, in words: if any one of these gave so much, the others would be kept. left_out:
    feeds that were not looked at, or stay as they are, and why.
    proven: no better one exists; else time ran out.
    """

    fits: bool
    amounts: Amounts
    balance: Balance
    in_way: tuple[str, ...]
    left_out: tuple[Missing, ...]
    proven: bool

    @property
    def short(self) -> tuple[Line, ...]:
        """The parts of which it has too little, or too much."""
        return tuple(line for line in self.balance.lines if line.verdict in (Verdict.SHORT, Verdict.OVER))


def find_mix(case: Case, least: Least, without: frozenset[UUID] = frozenset()) -> Mix | tuple[Missing, ...]:
    """The mix; or what must be known first. without: feeds that the keeper does not want in it, by id."""
    unknown = _unknown(case)
    if unknown:
        return unknown
    stays = tuple(each for each in held(case, least) if each[0].feed.id not in without)
    asked = _holding(case, frozenset(feed.feed.id for feed, _ in stays))
    ids = without | {feed.feed.id for feed, _ in stays}
    found = tuple(each for each in choices(asked, least) if each.feed.feed.id not in ids)
    model = model_of(asked, found)
    solved = solve(model, least)
    in_way = () if solved else _ways(asked, found, model)
    even = evened(model, found, solved or nearest(model), least)
    amounts = {**_amounts(found, even), **_of(case, asked)}
    after = balance(case, amounts)
    fits = solved is not None and not after.broken and all(each.verdict is Verdict.ENOUGH for each in after.lines)
    said = (*(Missing(feed.feed.name, words) for feed, words in stays), *left_out(asked, least))
    return Mix(fits, amounts, after, in_way, tuple(dict.fromkeys(said)), even.proven)


def _holding(case: Case, ids: frozenset[UUID]) -> Case:
    """The same case with some feeds as something that is given anyhow."""
    besides = dict(case.besides)
    for (slot, id_), kg in case.now.items():
        if id_ in ids:
            besides[slot, id_] = besides.get((slot, id_), 0.0) + kg
    return replace(case, besides=besides, now={meal: kg for meal, kg in case.now.items() if meal[1] not in ids})


def _of(case: Case, asked: Case) -> Amounts:
    """What is held, as it is given now."""
    return {meal: kg for meal, kg in case.now.items() if meal not in asked.now}


def _ways(case: Case, found: Sequence[Choice], model: Model) -> tuple[str, ...]:
    said = (_way_words(case, balance(case, _amounts(found, way))) or name for name, way in in_the_way(model))
    return tuple(dict.fromkeys(said))


def model_of(case: Case, found: Sequence[Choice]) -> Model:
    """The case as an integer programme over some choices."""
    return Model(
        tuple(rows(case, found)),
        tuple(each.most for each in found),
        tuple(each.now for each in found),
        tuple(each.cost for each in found),
        tuple(each.step_kg if each.whole else 0.0 for each in found),
        tuple(each.whole for each in found),
        fresh(found),
        NEW_FEED_KG,
    )


def _unknown(case: Case) -> tuple[Missing, ...]:
    """What is given and not known, so that no sum would be true; or needs that could not be reckoned."""
    if not any(need.part is Part.ENERGY for need in case.needs):
        nothing = Missing("energy", f"How much energy {case.name} needs is not reckoned, so no mix can be looked for.")
        return (*case.missing, nothing)
    lines = balance(case, case.now).lines
    by = dict.fromkeys(name for line in lines for name in line.unknown_by)
    return tuple(
        Missing(name, f"{name} is given, and nobody knows what is in it. F, feeds, {name}, what it is made of.")
        for name in by
    )


def _amounts(found: Sequence[Choice], solved: Solved) -> Amounts:
    return {
        (each.slot, each.feed.feed.id): count * each.step_kg
        for each, count in zip(found, solved.quarters, strict=True)
        if count and each.slot
    }


def _way_words(case: Case, gave: Balance) -> str:
    """What a mix breaks, or has too little of."""
    lines = (line for line in gave.lines if line.verdict in (Verdict.SHORT, Verdict.OVER))
    return "; ".join((*(each.says for each in gave.broken), *(in_words(case, line) for line in lines)))


def in_words(case: Case, line: Line) -> str:
    """`energy: 19.7 of 22.4 Mcal, 2.7 short`."""
    whole = line.need.least if line.verdict is Verdict.SHORT else line.need.most
    if line.has is None or whole is None:
        return f"{line.need.part}: not known"
    has, need, unit = line.has.amount, whole.amount, line.need.unit
    word = "short" if has < need else "over"
    if unit == "kg":
        return f"{line.need.part}: {exact(has, case.units)} of {exact(need, case.units)}, {word}"
    return f"{line.need.part}: {has:.4g} of {need:.4g} {unit}, {abs(need - has):.4g} {word}"
