"""What feeds are made of, until a tag or a test of the keeper's own says better.

Table values vary: protein and fibre by 15 %, minerals by 30 %, energy by 10 % (beefmagazine.com, feed composition tips
2018). Energy belongs to the needs of the same edition (2001); see the source of each row. Rows without an address are
from memory.
"""

from msgspec import Struct

DAIRY_2001 = "Nutrient Requirements of Dairy Cattle, 7th edition (2001), table 15-1, from memory"
TYPICAL = "typical values as extension services print them, from memory; energy from TDN as in 1989"


class TableFeed(Struct, frozen=True):
    """One feed. dm is % of the feed as it lies, the rest % of dry matter, nel Mcal a kg of it. None: no value."""

    name: str
    dm_percent: float
    cp_percent: float
    nel_mcal: float | None
    tdn_percent: float | None
    ndf_percent: float
    fat_percent: float
    ca_percent: float | None
    p_percent: float | None
    source: str


FEEDS: tuple[TableFeed, ...] = (
    TableFeed("Grass hay, immature (< 55 % NDF)", 84.0, 18.0, 1.35, 60.0, 49.6, 2.9, 0.72, 0.34, DAIRY_2001),
    TableFeed("Grass hay, mid (55-60 % NDF)", 83.8, 13.3, 1.17, 53.0, 57.7, 2.6, 0.66, 0.29, DAIRY_2001),
    TableFeed("Grass hay, mature (> 60 % NDF)", 84.4, 10.8, 1.02, 47.0, 69.1, 2.4, 0.47, 0.26, DAIRY_2001),
    TableFeed("Cocksfoot (orchardgrass) hay, typical", 88.0, 10.0, 1.32, 59.0, 67.0, 3.3, 0.32, 0.3, TYPICAL),
    TableFeed("Timothy hay, full bloom", 88.0, 8.0, 1.28, 57.0, 65.0, 2.6, 0.43, 0.2, TYPICAL),
    TableFeed("Lucerne (alfalfa) hay, early bloom", 90.0, 19.0, 1.32, 59.0, 45.0, 2.5, 1.41, 0.26, TYPICAL),
    TableFeed("Lucerne (alfalfa) hay, full bloom", 88.0, 16.0, 1.2, 54.0, 52.0, 2.0, 1.2, 0.23, TYPICAL),
    TableFeed(
        "Lucerne (alfalfa) pellets, grade 20",
        90.0,
        22.0,
        1.41,
        62.0,
        42.0,
        3.7,
        1.74,
        0.3,
        "milkproduction.com/Library/Articles/Feed_Ingredients.htm",
    ),
    TableFeed("Lucerne (alfalfa) meal/pellets 17 %", 90.3, 19.2, 1.25, 56.0, 41.6, 2.5, 1.47, 0.28, DAIRY_2001),
    TableFeed(
        "Pasture, spring, well managed",
        20.1,
        26.5,
        1.55,
        67.0,
        45.8,
        2.7,
        0.56,
        0.44,
        DAIRY_2001 + "; energy seen as 1.52 to 1.59, articles.extension.org/pages/18326",
    ),
    TableFeed("Bermudagrass hay, coastal", 89.0, 10.0, 1.25, 56.0, 73.0, 2.1, 0.47, 0.21, TYPICAL),
    TableFeed("Prairie (native) hay", 91.0, 7.0, 1.11, 50.0, 67.0, 2.0, 0.4, 0.15, TYPICAL),
    TableFeed("Red clover hay", 88.0, 15.0, 1.23, 55.0, 51.0, 2.5, 1.5, 0.25, TYPICAL),
    TableFeed("Wheat straw", 91.0, 3.0, 0.93, 43.0, 81.0, 1.8, 0.17, 0.06, TYPICAL),
    TableFeed("Maize (corn) silage, normal", 35.1, 8.8, 1.45, 68.8, 45.0, 3.2, 0.28, 0.26, DAIRY_2001),
    TableFeed("Pasture, summer mixed", 25.0, 17.0, 1.35, 60.0, 55.0, 3.0, 0.6, 0.3, "a planning guess, not published"),
    TableFeed(
        "Maize (corn), ground dry",
        88.1,
        9.4,
        2.01,
        88.7,
        9.5,
        4.2,
        0.04,
        0.3,
        DAIRY_2001 + "; protein, fibre and P seen on en.engormix.com a34192, which prints energy 2.09 and fat 4.0",
    ),
    TableFeed(
        "Maize (corn), cracked dry",
        88.1,
        9.4,
        1.91,
        85.0,
        9.5,
        4.2,
        0.04,
        0.3,
        DAIRY_2001 + "; energy of the ground grain x 0.95",
    ),
    TableFeed("Oats, rolled", 90.0, 13.2, 1.78, 78.5, 30.0, 5.1, 0.11, 0.4, DAIRY_2001),
    TableFeed("Barley, rolled", 91.0, 12.4, 1.86, 82.7, 20.8, 2.2, 0.06, 0.39, DAIRY_2001),
    TableFeed("Wheat, rolled", 89.4, 14.2, 1.99, 86.6, 13.4, 2.3, 0.05, 0.43, DAIRY_2001),
    TableFeed("Sorghum (milo), ground", 89.0, 11.0, 1.89, 82.0, 16.0, 3.1, 0.04, 0.32, TYPICAL),
    TableFeed("Wheat bran", 89.1, 17.3, 1.61, 71.5, 42.5, 4.3, 0.13, 1.18, DAIRY_2001),
    TableFeed("Wheat middlings", 89.5, 18.5, 1.67, 73.3, 36.7, 4.5, 0.16, 1.02, DAIRY_2001),
    TableFeed("Soya (soybean) hulls", 90.9, 13.9, 1.46, 67.3, 60.3, 2.7, 0.63, 0.17, DAIRY_2001),
    TableFeed(
        "Cottonseed hulls",
        89.0,
        6.2,
        0.9,
        42.0,
        85.0,
        2.5,
        0.18,
        0.12,
        DAIRY_2001 + "; TDN seen on aces.edu by-product-feeds-quick-reference-guide",
    ),
    TableFeed("Citrus pulp, dried", 85.8, 6.9, 1.76, 79.8, 24.2, 4.9, 1.92, 0.12, DAIRY_2001),
    TableFeed(
        "Maize (corn) distillers with solubles",
        90.2,
        29.7,
        1.97,
        79.5,
        38.8,
        10.0,
        0.22,
        0.83,
        DAIRY_2001 + "; protein, fibre, fat, P and energy seen on en.engormix.com a34192",
    ),
    TableFeed("Beet pulp, dried", 88.3, 10.0, 1.47, 69.1, 45.8, 1.1, 0.91, 0.09, DAIRY_2001),
    TableFeed("Molasses, cane", 74.3, 5.8, 1.72, 75.0, 0.0, 0.2, 1.0, 0.1, DAIRY_2001 + "; energy typical"),
    TableFeed(
        "Groundnut (peanut) meal, solvent",
        90.0,
        53.4,
        1.77,
        77.0,
        21.0,
        1.6,
        0.14,
        0.73,
        "protein, fat, Ca, P from pmc.ncbi.nlm.nih.gov/articles/PMC6095436 table 1; the rest from memory",
    ),
    TableFeed(
        "Soya (soybean) meal, 44 %",
        89.1,
        49.9,
        2.13,
        80.0,
        14.9,
        1.6,
        0.4,
        0.71,
        DAIRY_2001 + "; energy seen on sites.ext.vt.edu dairy 2001-09 energyvalue",
    ),
    TableFeed("Soya (soybean) meal, 48 %", 89.5, 53.8, 2.21, 81.4, 9.8, 1.1, 0.35, 0.7, DAIRY_2001),
    TableFeed("Rapeseed (canola) meal", 90.3, 37.8, 1.76, 69.9, 29.8, 5.4, 0.75, 1.1, DAIRY_2001),
    TableFeed("Cottonseed meal, solvent", 90.5, 44.9, 1.71, 66.4, 30.8, 1.9, 0.2, 1.15, DAIRY_2001),
    TableFeed("Maize (corn) gluten feed, dry", 89.4, 23.8, 1.73, 74.1, 35.5, 3.5, 0.07, 1.0, DAIRY_2001),
    TableFeed("Brewers grain, wet", 21.8, 28.4, 1.71, 71.6, 47.1, 5.2, 0.35, 0.59, DAIRY_2001),
    TableFeed("Apples", 17.0, 3.0, 1.6, 70.0, 25.0, 2.2, 0.06, 0.06, TYPICAL),
    TableFeed("Carrots", 12.0, 10.0, 1.91, 83.0, 20.0, 1.4, 0.4, 0.35, TYPICAL),
    TableFeed(
        "Rice bran, full fat",
        94.9,
        13.4,
        1.7,
        73.0,
        26.0,
        19.6,
        0.05,
        1.96,
        "protein, fat, Ca, P from pmc.ncbi.nlm.nih.gov/articles/PMC6095436 table 1; the 2001 table has 15.5 and 15.2",
    ),
    TableFeed(
        "Whole cottonseed, linted",
        90.1,
        23.5,
        1.94,
        77.2,
        50.3,
        19.3,
        0.17,
        0.6,
        DAIRY_2001 + "; energy seen on sites.ext.vt.edu dairy 2001-09 energyvalue",
    ),
    TableFeed("Vegetable oil, rice bran oil", 100.0, 0.0, 5.65, 184.0, 0.0, 100.0, 0.0, 0.0, DAIRY_2001),
    TableFeed(
        "Compound: dairy or cattle nuts, mixed feed, 14 % protein",
        88.0,
        15.9,
        1.67,
        73.0,
        28.0,
        3.4,
        0.9,
        0.6,
        "protein of such a tag; the rest is assumed. Use your own tag",
    ),
    TableFeed(
        "Compound: dairy or cattle nuts, mixed feed, 16 % protein",
        88.0,
        18.2,
        1.69,
        74.0,
        26.0,
        3.4,
        0.9,
        0.6,
        "protein of such a tag; the rest is assumed. Use your own tag",
    ),
    TableFeed("Mineral, see its tag", 97.0, 0.0, 0.0, 0.0, 0.0, 0.0, None, None, "use your own tag"),
    TableFeed("Whole milk, for calves", 12.5, 25.4, None, None, 0, 30.8, 1.0, 0.75, DAIRY_2001),
)

BY_NAME = {feed.name: feed for feed in FEEDS}
