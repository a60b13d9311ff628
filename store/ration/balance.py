"""How some amounts balance against what a head needs. Pure, and quick enough for every key."""

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from store.book.words import Stage
from store.husbandry.calf.growth import expected_kg_day, gets_mcal, milk_part
from store.husbandry.calf.milk import milk_mcal_per_kg
from store.husbandry.needs.growing import gains
from store.husbandry.ration.sums import Given, cost, lacking, share, supply
from store.husbandry.why import Value, total
from store.ration.fed import Fed, fed
from store.ration.limits import biggest_meal, broken
from store.ration.needs import TDN
from store.ration.parts import Amounts, Balance, Case, Head, Line, Missing, Need, Part, Verdict

SHORT_BELOW_PERCENT, OVER_ABOVE_PERCENT = 97.0, 103.0
"""Within three percent of what is needed is enough: no scoop is more exact. Assumed."""
COLUMNS = {
    Part.ENERGY: ("nel_mcal",), Part.PROTEIN: ("cp_percent",), Part.FIBRE: ("ndf_percent",), Part.FORAGE: (),
    Part.FAT: ("fat_percent",), Part.CALCIUM: ("ca_percent",), Part.PHOSPHORUS: ("p_percent",),
    Part.CA_TO_P: ("ca_percent", "p_percent"), Part.GAIN: ("tdn_percent",), Part.DRY_MATTER: (),
}  # fmt: skip
"""By part, in the order in which they are told: the columns of what a feed is made of that it hangs on."""
TDN_LEAST, TDN_MOST = 30.0, 100.0
"""Of a whole ration; outside of it no gain is reckoned. [% of dry matter]"""
ORDER = tuple(COLUMNS)


class _Given(Struct, frozen=True):
    """What is fed, and what that supplies by the word of the part."""

    case: Case
    fed: Fed
    supply: Mapping[str, Value]

    def unknown_by(self, need: Need) -> tuple[str, ...]:
        """The feeds because of which a part is not known."""
        columns = ("tdn_percent",) if need.unit == TDN else COLUMNS[need.part] or ("dm_percent",)
        lack = (lacking(self.fed.ration, column) for column in columns)
        return (*self.fed.unknown, *dict.fromkeys(name for names in lack for name in names))

    def has(self, need: Need) -> Value | None:
        """What it gives of a part."""
        if need.part is Part.GAIN:
            return self._gain(self.case.heads[0])  # asked of one alone
        found = self.supply.get("TDN" if need.unit == TDN else need.part)
        return replace(found, unit=need.unit) if found and need.unit == TDN else found

    def _gain(self, head: Head) -> Value | None:
        """What it makes one that grows gain."""
        if head.animal.stage is Stage.CALF and head.milk_kg and head.milk_fat_percent:
            return self._gain_on_milk(head, head.milk_kg, head.milk_fat_percent)
        tdn, dry = self.supply.get("TDN"), self.supply.get("dry matter")
        if not (tdn and dry and dry.amount and head.weight_kg and head.mature_kg):
            return None
        rich = share.of("TDN of what it eats", kg=tdn, dry_kg=dry)
        if not TDN_LEAST <= rich.amount <= TDN_MOST:
            return None
        of_head = {"weight_kg": head.weight_kg, "mature_kg": head.mature_kg}
        return gains(dry_matter_kg=dry, tdn_percent=rich, days_in_calf=head.days_in_calf, **of_head)

    def _gain_on_milk(self, head: Head, milk_kg: Value, fat_percent: Value) -> Value | None:
        """A calf lives on what it drinks, and on feed that is no forage; hay gives it little yet."""
        starter = total("feed that is no forage", "kg", (each.kg for each in self.fed.ration if not each.forage))
        of_milk = {"milk_kg": milk_kg, "mcal_per_kg": milk_mcal_per_kg.of(fat_percent=fat_percent)}
        gets = gets_mcal.of(starter_kg=starter, **of_milk)
        part = milk_part.of(gets_mcal=gets, **of_milk)
        weight_kg = head.weight_kg
        return expected_kg_day.of("gain", weight_kg=weight_kg, gets_mcal=gets, milk_part=part) if weight_kg else None


def balance(case: Case, amounts: Amounts) -> Balance:
    """What a head gets with some amounts against what it needs. Raises KeyError for a feed that the case has not."""
    found = fed(case, amounts)
    now = _Given(case, found, supply(found.ration))
    lines = tuple(_line(now, need) for need in sorted(case.needs, key=lambda need: ORDER.index(need.part)))
    price = cost(found.ration) if not found.unknown else None
    known = [each for each in found.ration if "dm_percent" in each.made]
    return Balance(
        lines,
        now.supply.get("dry matter") or supply(known)["dry matter"],
        price,
        biggest_meal(case, amounts),
        None if found.unknown else now.supply.get("forage"),
        tuple(broken(case, amounts, now.supply.get("dry matter"))),
        (*case.missing, *_of_parts(lines), *(() if price else _of_prices(found.ration))),
    )


def _line(now: _Given, need: Need) -> Line:
    unknown, has = now.unknown_by(need), now.has(need)
    if unknown or has is None:
        return Line(need, None, Verdict.NOT_KNOWN, None, unknown)
    whole = need.least or need.most
    percent = has.amount / whole.amount * 100 if whole and whole.amount else None
    return Line(need, has, _verdict(need, has.amount), percent)


def _verdict(need: Need, has: float) -> Verdict:
    if need.least and has < need.least.amount * SHORT_BELOW_PERCENT / 100:
        return Verdict.SHORT
    if need.most and has > need.most.amount * OVER_ABOVE_PERCENT / 100:
        return Verdict.OVER
    return Verdict.ENOUGH


def _of_parts(lines: Sequence[Line]) -> Iterator[Missing]:
    """Once for each feed: which parts of it nobody knows."""
    by_feed: dict[str, list[str]] = {}
    for line in lines:
        for name in line.unknown_by:
            by_feed.setdefault(name, []).append(line.need.part)
    for name, parts in by_feed.items():
        yield Missing(name, f"Of {name} nobody knows: {', '.join(parts)}. F, feeds, {name}, what it is made of.")


def _of_prices(ration: Sequence[Given]) -> Iterator[Missing]:
    for each in ration:
        if each.kg.amount and not each.price_per_kg:
            said = f"{each.name} has no price, so the cost is not known: D, {each.name}, a delivery with its price."
            yield Missing("cost", said)
