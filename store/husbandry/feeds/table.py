"""What feeds are made of, until a label or a test of the keeper's own says better.

Energy stands here only where the table of 2001 prints it; elsewhere it is reckoned by the equations of that edition
(`energy.py`), so that two editions never meet in one sum.
"""

from collections.abc import Mapping

from msgspec import Struct

from store.husbandry.why import Source, Sure

DAIRY_2001 = Source("Nutrient Requirements of Dairy Cattle, 7th edition (2001), table 15-1", Sure.MEMORY)
TYPICAL = Source("typical values as extension services print them", Sure.MEMORY)
PELLETS = Source("milkproduction.com/Library/Articles/Feed_Ingredients.htm")
DISTILLERS = Source("en.engormix.com, distillers grains in dairy cattle nutrition, a34192")
BY_PRODUCTS = Source("aces.edu, by-product feeds quick reference guide")
NUT_MEAL = Source("pmc.ncbi.nlm.nih.gov/articles/PMC6095436, table 1; there of the feed as it lies")
VIRGINIA_2001 = Source("sites.ext.vt.edu/newsletter-archive/dairy/2001-09/energyvalue.html")
LABEL_ONLY = Source("protein of such a label; the rest is assumed. Use your own label", Sure.ASSUMED)
GUESS = Source("a planning guess, not published", Sure.ASSUMED)

PARTS = (
    "dm_percent", "cp_percent", "tdn_percent", "ndf_percent", "fat_percent", "ca_percent", "p_percent", "nel_mcal",
)  # fmt: skip
"""The columns that this table and a composition of the book share. dm_percent is % of the feed as it lies, the rest %
of the dry matter, nel_mcal Mcal for a kilogram of dry matter at three times maintenance, by the edition of 2001."""


class TableFeed(Struct, frozen=True):
    """One feed, its parts as in PARTS. None: no value here; lacks says why. seen: parts that another source prints."""

    name: str
    dm_percent: float
    cp_percent: float
    tdn_percent: float | None
    ndf_percent: float
    fat_percent: float
    ca_percent: float | None
    p_percent: float | None
    nel_mcal: float | None
    source: Source
    forage: bool = False
    lacks: str = ""
    seen: Mapping[str, Source] = {}

    def source_of(self, part: str) -> Source:
        """Where one of its parts stands."""
        return self.seen.get(part, self.source)


def _by(source: Source, parts: str) -> dict[str, Source]:
    return dict.fromkeys(parts.split(), source)


NEL, LABEL = "energy is reckoned from TDN", "see its label"

# fmt: off
HAYS = (
    TableFeed("Grass hay, immature (< 55 % NDF)", 84.0, 18.0, 60.0, 49.6, 2.9, 0.72, 0.34, None, DAIRY_2001, True, NEL),
    TableFeed("Grass hay, mid (55-60 % NDF)", 83.8, 13.3, 53.0, 57.7, 2.6, 0.66, 0.29, None, DAIRY_2001, True, NEL),
    TableFeed("Grass hay, mature (> 60 % NDF)", 84.4, 10.8, 47.0, 69.1, 2.4, 0.47, 0.26, None, DAIRY_2001, True, NEL),
    TableFeed("Cocksfoot (orchardgrass) hay, typical", 88.0, 10.0, 59.0, 67.0, 3.3, 0.32, 0.3, None, TYPICAL, True,
              NEL),
    TableFeed("Timothy hay, full bloom", 88.0, 8.0, 57.0, 65.0, 2.6, 0.43, 0.2, None, TYPICAL, True, NEL),
    TableFeed("Lucerne (alfalfa) hay, early bloom", 90.0, 19.0, 59.0, 45.0, 2.5, 1.41, 0.26, None, TYPICAL, True, NEL),
    TableFeed("Lucerne (alfalfa) hay, full bloom", 88.0, 16.0, 54.0, 52.0, 2.0, 1.2, 0.23, None, TYPICAL, True, NEL),
    TableFeed("Lucerne (alfalfa) pellets, grade 20", 90.0, 22.0, 62.0, 42.0, 3.7, 1.74, 0.3, None, PELLETS, True, NEL,
              _by(TYPICAL, "tdn_percent")),
    TableFeed("Lucerne (alfalfa) meal/pellets 17 %", 90.3, 19.2, 56.0, 41.6, 2.5, 1.47, 0.28, None, DAIRY_2001, True,
              NEL),
    TableFeed("Bermudagrass hay, coastal", 89.0, 10.0, 56.0, 73.0, 2.1, 0.47, 0.21, None, TYPICAL, True, NEL),
    TableFeed("Prairie (native) hay", 91.0, 7.0, 50.0, 67.0, 2.0, 0.4, 0.15, None, TYPICAL, True, NEL),
    TableFeed("Red clover hay", 88.0, 15.0, 55.0, 51.0, 2.5, 1.5, 0.25, None, TYPICAL, True, NEL),
    TableFeed("Wheat straw", 91.0, 3.0, 43.0, 81.0, 1.8, 0.17, 0.06, None, TYPICAL, True, NEL),
)
GREEN = (
    TableFeed("Pasture, spring, well managed", 20.1, 26.5, 67.0, 45.8, 2.7, 0.56, 0.44, 1.55, DAIRY_2001, True),
    TableFeed("Pasture, summer mixed", 25.0, 17.0, 60.0, 55.0, 3.0, 0.6, 0.3, None, GUESS, True, NEL),
    TableFeed("Maize (corn) silage, normal", 35.1, 8.8, 68.8, 45.0, 3.2, 0.28, 0.26, 1.45, DAIRY_2001, True),
)
GRAINS = (
    TableFeed("Maize (corn), ground dry", 88.1, 9.4, 88.7, 9.5, 4.2, 0.04, 0.3, 2.01, DAIRY_2001,
              seen=_by(DISTILLERS, "cp_percent ndf_percent p_percent")),
    TableFeed("Maize (corn), cracked dry", 88.1, 9.4, 85.0, 9.5, 4.2, 0.04, 0.3, 1.91, DAIRY_2001,
              seen=_by(DISTILLERS, "cp_percent ndf_percent p_percent")),
    TableFeed("Oats, rolled", 90.0, 13.2, 78.5, 30.0, 5.1, 0.11, 0.4, 1.78, DAIRY_2001),
    TableFeed("Barley, rolled", 91.0, 12.4, 82.7, 20.8, 2.2, 0.06, 0.39, 1.86, DAIRY_2001),
    TableFeed("Wheat, rolled", 89.4, 14.2, 86.6, 13.4, 2.3, 0.05, 0.43, 1.99, DAIRY_2001),
    TableFeed("Sorghum (milo), ground", 89.0, 11.0, 82.0, 16.0, 3.1, 0.04, 0.32, None, TYPICAL, lacks=NEL),
)
BY_PRODUCT_FEEDS = (
    TableFeed("Wheat bran", 89.1, 17.3, 71.5, 42.5, 4.3, 0.13, 1.18, 1.61, DAIRY_2001),
    TableFeed("Wheat middlings", 89.5, 18.5, 73.3, 36.7, 4.5, 0.16, 1.02, 1.67, DAIRY_2001),
    TableFeed("Soya (soybean) hulls", 90.9, 13.9, 67.3, 60.3, 2.7, 0.63, 0.17, 1.46, DAIRY_2001),
    TableFeed("Cottonseed hulls", 89.0, 6.2, 42.0, 85.0, 2.5, 0.18, 0.12, None, DAIRY_2001, lacks=NEL,
              seen=_by(BY_PRODUCTS, "tdn_percent")),
    TableFeed("Citrus pulp, dried", 85.8, 6.9, 79.8, 24.2, 4.9, 1.92, 0.12, 1.76, DAIRY_2001),
    TableFeed("Maize (corn) distillers with solubles", 90.2, 29.7, 79.5, 38.8, 10.0, 0.22, 0.83, 1.97, DAIRY_2001,
              seen=_by(DISTILLERS, "cp_percent ndf_percent fat_percent p_percent nel_mcal")),
    TableFeed("Beet pulp, dried", 88.3, 10.0, 69.1, 45.8, 1.1, 0.91, 0.09, 1.47, DAIRY_2001),
    TableFeed("Molasses, cane", 74.3, 5.8, 75.0, 0.0, 0.2, 1.0, 0.1, None, DAIRY_2001, lacks=NEL,
              seen=_by(TYPICAL, "tdn_percent")),
    TableFeed("Groundnut (peanut) meal, solvent", 90.0, 53.4, 77.0, 21.0, 1.6, 0.14, 0.73, None, TYPICAL, lacks=NEL,
              seen=_by(NUT_MEAL, "dm_percent cp_percent fat_percent ca_percent p_percent")),
    TableFeed("Soya (soybean) meal, 44 %", 89.1, 49.9, 80.0, 14.9, 1.6, 0.4, 0.71, 2.13, DAIRY_2001,
              seen=_by(VIRGINIA_2001, "nel_mcal")),
    TableFeed("Soya (soybean) meal, 48 %", 89.5, 53.8, 81.4, 9.8, 1.1, 0.35, 0.7, 2.21, DAIRY_2001),
    TableFeed("Rapeseed (canola) meal", 90.3, 37.8, 69.9, 29.8, 5.4, 0.75, 1.1, 1.76, DAIRY_2001),
    TableFeed("Cottonseed meal, solvent", 90.5, 44.9, 66.4, 30.8, 1.9, 0.2, 1.15, 1.71, DAIRY_2001),
    TableFeed("Maize (corn) gluten feed, dry", 89.4, 23.8, 74.1, 35.5, 3.5, 0.07, 1.0, 1.73, DAIRY_2001),
    TableFeed("Brewers grain, wet", 21.8, 28.4, 71.6, 47.1, 5.2, 0.35, 0.59, 1.71, DAIRY_2001),
    TableFeed("Apples", 17.0, 3.0, 70.0, 25.0, 2.2, 0.06, 0.06, None, TYPICAL, lacks=NEL),
    TableFeed("Carrots", 12.0, 10.0, 83.0, 20.0, 1.4, 0.4, 0.35, None, TYPICAL, lacks=NEL),
)
FATS = (
    TableFeed("Rice bran, full fat", 94.9, 13.4, 73.0, 26.0, 19.6, 0.05, 1.96, None, TYPICAL, lacks=NEL,
              seen=_by(NUT_MEAL, "dm_percent cp_percent fat_percent ca_percent p_percent")),
    TableFeed("Whole cottonseed, linted", 90.1, 23.5, 77.2, 50.3, 19.3, 0.17, 0.6, 1.94, DAIRY_2001,
              seen=_by(VIRGINIA_2001, "nel_mcal")),
    TableFeed("Vegetable oil, rice bran oil", 100.0, 0.0, 184.0, 0.0, 100.0, 0.0, 0.0, 5.65, DAIRY_2001),
)
BOUGHT = (
    TableFeed("Compound: dairy or cattle nuts, mixed feed, 14 % protein", 88.0, 15.9, 73.0, 28.0, 3.4, 0.9, 0.6, None,
              LABEL_ONLY, lacks=NEL),
    TableFeed("Compound: dairy or cattle nuts, mixed feed, 16 % protein", 88.0, 18.2, 74.0, 26.0, 3.4, 0.9, 0.6, None,
              LABEL_ONLY, lacks=NEL),
    TableFeed("Mineral, see its tag", 97.0, 0.0, 0.0, 0.0, 0.0, None, None, 0.0, LABEL_ONLY, lacks=LABEL),
    TableFeed("Whole milk, for calves", 12.5, 25.4, None, 0.0, 30.8, 1.0, 0.75, None, DAIRY_2001,
              lacks="a calf's milk is told in ME, 5.37 Mcal for a kilogram of dry matter"),
)
# fmt: on
FEEDS: tuple[TableFeed, ...] = HAYS + GREEN + GRAINS + BY_PRODUCT_FEEDS + FATS + BOUGHT
BY_NAME = {feed.name: feed for feed in FEEDS}
