"""What a dairy cow needs in a day: in milk, dry, close to calving. Energy is net energy for milk, edition 2001.

Keys: energy [Mcal], protein_g, calcium_g, phosphorus_g, dry_matter_kg (what she can eat), and those of `diet` [% of dry
matter]. Every function raises ValueError for what cannot be; Value.doubts() says what lies beyond what is known.
"""

from collections.abc import Iterator, Mapping

from store.husbandry.needs import appetite, diet, energy, protein
from store.husbandry.why import Source, Sure, Value, given, total

CLOSE_UP_D = given(265.0, "days in calf", "days", "a starting value",
                   Source("close to calving is the last three weeks: the middle of them", Sure.ASSUMED))  # fmt: skip
NO_CALF = given(0.0, "days in calf", "days", "none known")


def in_milk(  # noqa: PLR0913 - what a need hangs on, by name
    *,
    weight_kg: Value,
    milk_kg: Value,
    fat_percent: Value,
    days_in_milk: Value,
    protein_percent: Value | None = None,
    lactose_percent: Value | None = None,
    days_in_calf: Value | None = None,
    gain_kg_day: Value | None = None,
) -> Mapping[str, Value]:
    """A cow in milk. milk_kg: a day, what a calf takes included. None: not known, or none.

    protein_percent: crude. gain_kg_day: wanted, below zero where she may lose.
    """
    per_kg = _energy_of_milk(fat_percent, protein_percent, lactose_percent)
    energies = (
        *_alive(weight_kg, days_in_calf),
        energy.in_milk_mcal.of(milk_kg=milk_kg, mcal_per_kg=per_kg),
        *_change(gain_kg_day),
    )
    corrected = appetite.fat_corrected_kg.of(milk_kg=milk_kg, fat_percent=fat_percent)
    eats = appetite.milking_kg.of(fat_corrected_kg=corrected, weight_kg=weight_kg, days_in_milk=days_in_milk)
    milk = {"milk_kg": milk_kg, "fat_percent": fat_percent}
    carried = days_in_calf or NO_CALF
    return {
        "energy": total("energy", "Mcal", energies),
        "dry_matter_kg": eats,
        "protein_g": _sum("protein", protein.carrying_protein_g.of(weight_kg=weight_kg, days_in_calf=carried),
                          protein.milk_protein_g.of(**milk)),
        "calcium_g": _sum("calcium", protein.alive_calcium_g.of(weight_kg=weight_kg, days_in_calf=carried),
                          protein.milk_calcium_g.of(**milk)),
        "phosphorus_g": _sum("phosphorus", protein.alive_phosphorus_g.of(weight_kg=weight_kg, days_in_calf=carried),
                             protein.milk_phosphorus_g.of(**milk)),
        **diet.IN_MILK,
    }  # fmt: skip


def dry(*, weight_kg: Value, days_in_calf: Value | None = None) -> Mapping[str, Value]:
    """A dry cow. weight_kg: the calf in her included. days_in_calf None: no calf in her."""
    carried = days_in_calf or NO_CALF
    return {
        "energy": total("energy", "Mcal", _alive(weight_kg, days_in_calf)),
        "dry_matter_kg": appetite.dry_kg.of(weight_kg=weight_kg, days_in_calf=carried),
        "protein_g": protein.carrying_protein_g.of("protein", weight_kg=weight_kg, days_in_calf=carried),
        "calcium_g": protein.alive_calcium_g.of("calcium", weight_kg=weight_kg, days_in_calf=carried),
        "phosphorus_g": protein.alive_phosphorus_g.of("phosphorus", weight_kg=weight_kg, days_in_calf=carried),
        **diet.DRY,
    }


def close_up(*, weight_kg: Value, days_in_calf: Value | None = None) -> Mapping[str, Value]:
    """A cow in her last three weeks: a dry one who eats less and less. days_in_calf None: the middle of them."""
    return dry(weight_kg=weight_kg, days_in_calf=days_in_calf or CLOSE_UP_D)


def _sum(name: str, *parts: Value) -> Value:
    return total(name, "g", parts)


def _energy_of_milk(fat: Value, crude_protein: Value | None, lactose: Value | None) -> Value:
    """By as much as was tested of it."""
    if crude_protein is None:
        return energy.milk_by_fat.of(fat_percent=fat)
    if lactose is None:
        return energy.milk.of(fat_percent=fat, protein_percent=crude_protein)
    return energy.tested_milk.of(fat_percent=fat, protein_percent=crude_protein, lactose_percent=lactose)


def _alive(weight_kg: Value, days_in_calf: Value | None) -> Iterator[Value]:
    """Keeping alive by her own weight, and the calf in her."""
    if days_in_calf is None:
        yield energy.maintenance.of(weight_kg=weight_kg)
        return
    calf = energy.calf_to_come_kg.of(weight_kg=weight_kg)
    carries = {"days_in_calf": days_in_calf, "calf_kg": calf}
    own = energy.own_weight_kg.of(weight_kg=weight_kg, conceptus_kg=energy.conceptus_kg.of(**carries))
    yield energy.maintenance.of(weight_kg=own)
    yield energy.pregnancy.of(**carries)


def _change(gain_kg_day: Value | None) -> Iterator[Value]:
    if gain_kg_day is not None:
        yield energy.weight_change.of(gain_kg_day=gain_kg_day)
