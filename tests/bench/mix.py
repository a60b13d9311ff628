"""A mix looked for, beside the bare solver on the same programme: python -m tests.bench.mix [times]

Twelve feeds in two meals in quarters of a measure, for a cow in milk; one after the other in one run.
"""

import sys
from collections.abc import Iterator, Mapping
from time import perf_counter
from uuid import NAMESPACE_OID, uuid5

from highspy import Highs

from store.book.drafts import Subject
from store.book.facts.farm import Animal
from store.book.facts.feed import Feed, Told
from store.book.words import FEEDING, Origin, Species, Stage
from store.husbandry.feeds.made import made
from store.husbandry.feeds.table import BY_NAME
from store.husbandry.needs import dairy
from store.husbandry.why import Value, given
from store.ration.choices import choices
from store.ration.mix import Mix, find_mix, model_of
from store.ration.needs import LEAST, MOST
from store.ration.parts import Case, Head, Limits, Need, RationFeed
from store.ration.solving import SECONDS, Least, programme
from tests.bench.telling import Figures, ratio, say, tell

TIMES = 20
FEEDS = (
    ("Grass hay, mid (55-60 % NDF)", 2.05, 8.0, 0.23), ("Lucerne (alfalfa) hay, early bloom", 2.0, 4.0, 0.30),
    ("Barley, rolled", 0.55, 1.5, 0.34), ("Oats, rolled", 0.4, 1.5, 0.35), ("Beet pulp, dried", 0.4, 1.0, 0.42),
    ("Soya (soybean) meal, 44 %", 0.8, 1.0, 0.60), ("Wheat bran", 0.3, 1.0, 0.30), ("Wheat, rolled", 0.7, 1.5, 0.31),
    ("Rapeseed (canola) meal", 0.7, 1.0, 0.50), ("Maize (corn), cracked dry", 0.8, 1.5, 0.33),
    ("Citrus pulp, dried", 0.45, 1.0, 0.38), ("Vegetable oil, rice bran oil", 0.23, 0.1, 2.20),
)  # fmt: skip
"""Of the table; what a scoop holds, most a meal, a price: invented. [kg, kg, a kg]"""


def the_case(milk_kg: float) -> Case:
    """A cow of 450 kg; more milk than about 25 kg no mix of these is enough for."""
    cow = Animal(uuid5(NAMESPACE_OID, "cow"), "Bench", "", Species.CATTLE, Stage.IN_MILK, None, None, None)
    needs = dairy.in_milk(
        weight_kg=_value(450, "kg"), milk_kg=_value(milk_kg, "kg"), fat_percent=_value(4.5, "%"),
        protein_percent=_value(3.5, "%"), days_in_milk=_value(90, "days"), days_in_calf=None,
    )  # fmt: skip
    feeds = tuple(_feed(*each) for each in FEEDS)
    now = {(slot, feeds[0].feed.id): 4.1 for slot in FEEDING}
    subject = Subject(animal_id=cow.id)
    return Case(subject, "Bench", (Head(cow, ""),), feeds, FEEDING, now, tuple(_needs(needs)), _value(3, "kg"))


def _needs(found: Mapping[str, Value]) -> Iterator[Need]:
    limits = {"fat_percent": _value(6, "%"), "forage_percent": _value(50, "%")}
    for word, value in {**found, **limits}.items():
        if word in LEAST:
            yield Need(*LEAST[word], least=value)
        if word in MOST:
            yield Need(*MOST[word], most=value)


def _value(amount: float, unit: str) -> Value:
    return given(amount, "a figure", unit, "invented")


def _feed(name: str, holds_kg: float, most_kg: float, price: float) -> RationFeed:
    row, id_ = BY_NAME[name], uuid5(NAMESPACE_OID, name)
    told = Told(id_, "scoop", "scoops", holds_kg)
    limits = Limits(most_meal_kg=_value(most_kg, "kg"), share_percent=None if row.forage else _value(25, "%"))
    feed, parts = Feed(id_, name, soaked=False), made({}, Origin.TABLE, name)
    return RationFeed(feed, parts, Origin.TABLE, name, row.forage, _value(price, ""), None, told, limits)


def _ours(case: Case, least: Least) -> tuple[float, Mix]:
    begun = perf_counter()
    found = find_mix(case, least)
    took_s = perf_counter() - begun
    if not isinstance(found, Mix):
        raise SystemExit("the bench's cow has no mix")
    return took_s, found


def _bare(case: Case, least: Least) -> float:
    made_of = programme(model_of(case, tuple(choices(case, least))), least)
    solver: Highs = Highs()  # type: ignore[no-untyped-call]
    solver.silent()
    for name, value in (("threads", 1), ("mip_rel_gap", 0.0), ("mip_abs_gap", 1e-9), ("time_limit", SECONDS)):
        solver.setOptionValue(name, value)
    begun = perf_counter()
    solver.passModel(made_of)
    solver.run()
    return perf_counter() - begun


def main(times: int) -> None:
    """Ratios for the least cost and the least change, for a cow that is easy to feed and one that is not."""
    for milk_kg in (12.0, 20.0, 45.0):
        case = the_case(milk_kg)
        for least in Least:
            pairs = [(_ours(case, least), _bare(case, least)) for _ in range(times)]
            ours, bare = Figures("a mix found", [ours[0] for ours, _ in pairs]), Figures("bare", [b for _, b in pairs])
            fits = "fits" if pairs[0][0][1].fits else "nothing fits: the nearest, and what stands in the way"
            say(f"{milk_kg:g} kg milk, least {least}: {ratio(ours, bare)}, {fits}")
            tell(ours, bare)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else TIMES)
