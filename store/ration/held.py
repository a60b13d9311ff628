"""What a ration holds as the usual cautions ask for it: what a head gets of each feed, and whom it can reach."""

from collections.abc import Iterable

from store.book.words import Species
from store.husbandry.ration.cautions import Fed, Held
from store.ration.fed import day_kg
from store.ration.heads import lightest
from store.ration.parts import Amounts, Case


def held(case: Case, amounts: Amounts, beside: Iterable[Species] = (), *, changed: bool = False) -> Held:
    """Some amounts of a case. beside: kinds of animal that stand with them. changed: it is another ration than now."""
    by_day = day_kg(case, amounts)
    weight = lightest(case.heads)
    return Held(
        [Fed(each.feed.name, each.resembles, by_day.get(each.feed.id, 0.0), each.made, each.free)
         for each in case.feeds],
        frozenset({*(head.animal.species for head in case.heads), *beside}),
        frozenset(head.animal.stage for head in case.heads),
        weight.amount if weight else None,
        changed=changed,
    )  # fmt: skip
