"""What a heifer or a steer needs in a day. Energy is total digestible nutrients (TDN), editions 1996 and 2001.

Keys: tdn_kg, protein_g, calcium_g, phosphorus_g, dry_matter_kg (what it eats of a feed just rich enough), and those of
`diet` [% of dry matter]. Raises ValueError for what cannot be, a gain that no feed makes among it.
"""

from collections.abc import Mapping

from store.husbandry.needs import carrying, diet, energy, gain, growth
from store.husbandry.why import Value, total


def growing(
    *, weight_kg: Value, gain_kg_day: Value, mature_kg: Value, days_in_calf: Value | None = None, heifer: bool = True
) -> Mapping[str, Value]:
    """For a wanted gain. mature_kg: its weight when finished or full-grown. days_in_calf None: no calf in her.

    heifer: a dairy heifer; False: a steer or a beef heifer, which eats more.
    """
    grows = {"weight_kg": weight_kg, "gain_kg_day": gain_kg_day, "mature_kg": mature_kg}
    rich = (gain.heifer_tdn_percent if heifer else gain.steer_tdn_percent).of(**grows)
    eats = (gain.heifer_eats_kg if heifer else gain.steer_eats_kg).of(weight_kg=weight_kg, tdn_percent=rich)
    own = {
        "tdn_kg": gain.tdn_kg.of(dry_matter_kg=eats, tdn_percent=rich),
        "protein_g": growth.protein_g.of(**grows),
        "calcium_g": growth.calcium_g.of(**grows),
        "phosphorus_g": growth.phosphorus_g.of(**grows),
    }
    carried = _carried(mature_kg, days_in_calf, rich) if days_in_calf else {}
    return {
        **{word: _with(value, carried.get(word)) for word, value in own.items()},
        "dry_matter_kg": eats,
        **diet.GROWING,
    }


def gains(
    *, weight_kg: Value, mature_kg: Value, dry_matter_kg: Value, tdn_percent: Value, days_in_calf: Value | None = None
) -> Value:
    """What so much of a feed makes of it; the calf in her takes its part first. [kg a day] Raises as `gain_kg_day`."""
    left = dry_matter_kg
    if days_in_calf:
        mcal = _carried_mcal(mature_kg, days_in_calf)
        left = carrying.left_kg.of(dry_matter_kg=left, carried_mcal=mcal, tdn_percent=tdn_percent)
    of_it = {"weight_kg": weight_kg, "mature_kg": mature_kg, "tdn_percent": tdn_percent}
    return gain.gain_kg_day.of(dry_matter_kg=left, **of_it)


def _with(own: Value, carried: Value | None) -> Value:
    return total(own.name, own.unit, (own, carried)) if carried else own


def _carried(mature_kg: Value, days_in_calf: Value, tdn_percent: Value) -> Mapping[str, Value]:
    """For the calf in her, by the same words."""
    of_it = {"days_in_calf": days_in_calf, "calf_kg": energy.calf_to_come_kg.of(weight_kg=mature_kg)}
    mcal = _carried_mcal(mature_kg, days_in_calf)
    return {
        "tdn_kg": carrying.carried_tdn_kg.of(carried_mcal=mcal, tdn_percent=tdn_percent),
        "protein_g": carrying.carried_protein_g.of(**of_it),
        "calcium_g": carrying.carried_calcium_g.of(**of_it),
        "phosphorus_g": carrying.carried_phosphorus_g.of(**of_it),
    }


def _carried_mcal(mature_kg: Value, days_in_calf: Value) -> Value:
    calf = energy.calf_to_come_kg.of(weight_kg=mature_kg)
    return carrying.carried_mcal.of(days_in_calf=days_in_calf, calf_kg=calf)
