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
    own_tdn = gain.tdn_kg.of(dry_matter_kg=eats, tdn_percent=rich)
    own_protein = growth.protein_g.of(**grows)
    carried = _carried(mature_kg, days_in_calf, rich)
    return {
        "tdn_kg": total("TDN", "kg", (own_tdn, carried[0])) if carried else own_tdn,
        "dry_matter_kg": eats,
        "protein_g": total("protein", "g", (own_protein, carried[1])) if carried else own_protein,
        "calcium_g": growth.calcium_g.of(**grows),
        "phosphorus_g": growth.phosphorus_g.of(**grows),
        **diet.GROWING,
    }


def _carried(mature_kg: Value, days_in_calf: Value | None, tdn_percent: Value) -> tuple[Value, Value] | None:
    """TDN and protein for the calf in her; None without."""
    if days_in_calf is None:
        return None
    calf = energy.calf_to_come_kg.of(weight_kg=mature_kg)
    mcal = carrying.carried_mcal.of(days_in_calf=days_in_calf, calf_kg=calf)
    protein = carrying.carried_protein_g.of(days_in_calf=days_in_calf, calf_kg=calf)
    return carrying.carried_tdn_kg.of(carried_mcal=mcal, tdn_percent=tdn_percent), protein
