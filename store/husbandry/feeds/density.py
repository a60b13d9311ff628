"""What a measure of a feed likely weighs before anybody has weighed it: a range to propose, never a figure to use."""

from msgspec import Struct

from store.husbandry.bounds import at_least_zero
from store.husbandry.units import KG_PER_LB, L_PER_US_GAL
from store.husbandry.why import ARITHMETIC, Source, Sure, Value, equation, example, given

L_PER_FT3 = 28.316846592
L_PER_BUSHEL = L_PER_US_GAL * 9.3092
"""A US bushel. Source of both: NIST Handbook 44 (2024), Appendix C."""
KG_PER_L_PER_LB_FT3 = KG_PER_LB / L_PER_FT3

FAO = Source("fao.org/docrep/S4314E/s4314e0q.htm, appendix XI, bulk density")
ALABAMA = Source("aces.edu, by-product feeds quick reference guide, table 2, bulk density of commodities")
ALABAMA_TON = Source(ALABAMA.words + "; courses.ecampus.oregonstate.edu/ans312: a ton of shelled corn fills 44.5 ft3")
DEERE = Source("manuals.deere.com OMN300820: 32 lb a bushel are 413 kg/m3, 48 lb 619; its own factor is 0.25 % off")
RECALLED = Source("usual bulk densities", Sure.MEMORY)


class Bulk(Struct, frozen=True):
    """How heavy a feed lies. [kg/L] like: the rows of the table that it is the likely form of."""

    name: str
    least: float
    most: float
    source: Source
    like: tuple[str, ...] = ()


def _lb_ft3(least: float, most: float) -> tuple[float, float]:
    return round(least * KG_PER_L_PER_LB_FT3, 2), round(most * KG_PER_L_PER_LB_FT3, 2)


BULKS = (
    Bulk("citrus pulp, loose or pelleted", *_lb_ft3(20, 45), ALABAMA, ("Citrus pulp, dried",)),
    Bulk("maize, whole", *_lb_ft3(45, 45), ALABAMA),
    Bulk("maize, ground", 0.60, 0.64, FAO, ("Maize (corn), ground dry",)),
    Bulk("maize, cracked", 0.62, 0.68, RECALLED, ("Maize (corn), cracked dry",)),
    Bulk("oats, whole", *_lb_ft3(26, 26), ALABAMA),
    Bulk("oats, rolled", 0.30, 0.36, RECALLED, ("Oats, rolled",)),
    Bulk("barley, whole", 0.619, 0.619, DEERE),
    Bulk("barley, ground", 0.38, 0.41, FAO),
    Bulk("barley, rolled", 0.40, 0.48, RECALLED, ("Barley, rolled",)),
    Bulk("wheat, whole", 0.72, 0.83, FAO),
    Bulk("wheat, ground", 0.60, 0.62, FAO),
    Bulk("wheat bran", 0.17, 0.25, FAO, ("Wheat bran",)),
    Bulk("wheat middlings, loose or pelleted", *_lb_ft3(30, 40), ALABAMA, ("Wheat middlings",)),
    Bulk("soya hulls, loose or pelleted", *_lb_ft3(28, 40), ALABAMA, ("Soya (soybean) hulls",)),
    Bulk("distillers grains, dried", 0.29, 0.56, RECALLED, ("Maize (corn) distillers with solubles",)),
    Bulk("rice bran", 0.32, 0.33, FAO, ("Rice bran, full fat",)),
    Bulk("whole cottonseed", *_lb_ft3(25, 25), ALABAMA, ("Whole cottonseed, linted",)),
    Bulk("soya meal", 0.56, 0.60, FAO, ("Soya (soybean) meal, 44 %",)),
    Bulk("soya meal, rich", 0.65, 0.67, FAO, ("Soya (soybean) meal, 48 %",)),
    Bulk("groundnut meal", 0.46, 0.46, FAO, ("Groundnut (peanut) meal, solvent",)),
    Bulk("cottonseed meal", 0.59, 0.64, FAO, ("Cottonseed meal, solvent",)),
    Bulk("maize gluten feed", 0.41, 0.52, FAO, ("Maize (corn) gluten feed, dry",)),
    Bulk("lucerne meal", 0.25, 0.35, FAO),
    Bulk("lucerne pellets", 0.60, 0.70, RECALLED,
         ("Lucerne (alfalfa) pellets, grade 20", "Lucerne (alfalfa) meal/pellets 17 %")),
    Bulk("beet pulp, shreds or pellets", 0.25, 0.68, RECALLED, ("Beet pulp, dried",)),
    Bulk("cottonseed hulls", 0.18, 0.20, RECALLED, ("Cottonseed hulls",)),
    Bulk("mixed feed, textured or pelleted", 0.50, 0.68, RECALLED,
         ("Compound: dairy or cattle nuts, mixed feed, 14 % protein",
          "Compound: dairy or cattle nuts, mixed feed, 16 % protein")),
    Bulk("loose mineral", 1.0, 1.3, RECALLED, ("Mineral, see its tag",)),
    Bulk("fine salt", 1.12, 1.28, FAO),
    Bulk("ground limestone", 1.08, 1.14, FAO),
    Bulk("molasses", 1.33, 1.44, Source(FAO.words + "; Texas Agr. Exp. Station, Bulletin 86: 12 lb a gal"),
         ("Molasses, cane",)),
    Bulk("vegetable oil", 0.92, 0.92, RECALLED, ("Vegetable oil, rice bran oil",)),
    Bulk("milk", 1.03, 1.03, RECALLED, ("Whole milk, for calves",)),
)  # fmt: skip
"""Feeds of one name differ by how they are ground and how they lie: always weigh one measure."""


def pours(resembles: str) -> bool:
    """Whether a feed like a row of the table is poured and eaten as grain is; hay and silage are not."""
    return any(resembles in each.like for each in BULKS)


@equation(
    "weight of a measure", "litres x bulk density", "kg", ARITHMETIC,
    example(2000 * KG_PER_LB, 3 * KG_PER_LB, ALABAMA_TON,
            holds_l=44.5 * L_PER_FT3, kg_per_l=45 * KG_PER_L_PER_LB_FT3),
    example(413.0, 2.0, DEERE, holds_l=1000.0, kg_per_l=32 * KG_PER_LB / L_PER_BUSHEL),
    example(619.0, 2.0, DEERE, holds_l=1000.0, kg_per_l=48 * KG_PER_LB / L_PER_BUSHEL),
)  # fmt: skip
def weight(holds_l: float, kg_per_l: float) -> float:
    """What a level measure of so many litres weighs. [kg] Raises ValueError below zero."""
    at_least_zero(holds_l=holds_l, kg_per_l=kg_per_l)
    return holds_l * kg_per_l


class Likely(Struct, frozen=True):
    """Between what a measure lies that nobody weighed. To be shown as a range; no plan is reckoned with it."""

    least_kg: Value
    most_kg: Value


def likely(resembles: str, holds_l: Value) -> Likely | None:
    """What a level measure of a feed like a row of the table weighs. None: no density of such a feed is known."""
    found = next((each for each in BULKS if resembles in each.like), None)
    if found is None:
        return None
    least, most = (
        given(each, f"bulk density of {found.name}", "kg/L", "a table", found.source)
        for each in (found.least, found.most)
    )
    return Likely(weight.of(holds_l=holds_l, kg_per_l=least), weight.of(holds_l=holds_l, kg_per_l=most))
