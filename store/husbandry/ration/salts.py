"""Minerals: how a supplement fills a gap, cations less anions before calving, and what grass tetany hangs on."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import Source, Sure, equation, example

VERMONT = Source("pss.uvm.edu/vtcrops/?Page=articles/DCAD.html")
OETZEL = Source("en.engormix.com n13889, Manitoba Agriculture 2008, a review of potassium and tetany ratios, table 1")
PASTURES = Source(
    "scilit.net/publications/e7f1fe2307fcc7f4861eb0d86304a5d1, 27 pastures: mean ratio 2.45, here of the mean minerals"
)
PURDUE = Source("ansc.purdue.edu/courses/ansc221v/how2cap.htm, calcium and phosphorus in rations")
SLIDES = Source("slideserve.com, balancing Ca and P, daily amounts")
CLOSE_UP_MEQ = (-150.0, -100.0)
"""For the last three weeks before calving. [mEq/kg] Source: hoards.com/blog-12474, told there for 100 g."""
TETANY_FROM = 2.2
"""From this ratio on tetany was met eight times as often. OETZEL"""


@equation(
    "cations less anions", "434.9 x Na + 255.74 x K - 282.06 x Cl - 623.75 x S", "mEq/kg", VERMONT,
    example(434.98, 0.1, OETZEL, na_percent=1.0, k_percent=0.0, cl_percent=0.0, s_percent=0.0),
    example(255.74, 0.005, OETZEL, na_percent=0.0, k_percent=1.0, cl_percent=0.0, s_percent=0.0),
    example(-282.06, 0.005, OETZEL, na_percent=0.0, k_percent=0.0, cl_percent=1.0, s_percent=0.0),
    example(-623.75, 0.005, OETZEL, na_percent=0.0, k_percent=0.0, cl_percent=0.0, s_percent=1.0),
)  # fmt: skip
def dcad(na_percent: float, k_percent: float, cl_percent: float, s_percent: float) -> float:
    """Of the whole ration, each in % of the dry matter. [mEq for a kg, a tenth of it for 100 g] Raises below zero."""
    at_least_zero(na_percent=na_percent, k_percent=k_percent, cl_percent=cl_percent, s_percent=s_percent)
    return 434.9 * na_percent + 255.74 * k_percent - 282.06 * cl_percent - 623.75 * s_percent


@equation(
    "tetany ratio", "255.74 x K / (499 x Ca + 822.64 x Mg)", "", OETZEL,
    example(2.45, 0.06, PASTURES, k_percent=3.29, ca_percent=0.39, mg_percent=0.19),
)  # fmt: skip
def tetany_ratio(k_percent: float, ca_percent: float, mg_percent: float) -> float:
    """Potassium to calcium and magnesium of a pasture, by equivalents. Raises ValueError below zero, or of neither."""
    at_least_zero(k_percent=k_percent, ca_percent=ca_percent, mg_percent=mg_percent)
    if not ca_percent + mg_percent:
        raise ValueError("ca_percent and mg_percent are 0; one must be above 0")
    return 255.74 * k_percent / (499.0 * ca_percent + 822.64 * mg_percent)


@equation(
    "supplement that fills a gap", "what lacks / what it holds %", "g", Source("plain arithmetic", Sure.PRACTICE),
    example(0.94, 0.005, PURDUE, lacks_g=0.174, percent=18.5),
    example(0.88, 0.005, PURDUE, lacks_g=0.3347, percent=38.0),
    example(24.3, 0.05, SLIDES, lacks_g=4.5, percent=18.5), example(12.95, 0.005, SLIDES, lacks_g=5.05, percent=39.0),
)  # fmt: skip
def supplement(lacks_g: float, percent: float) -> float:
    """How much of a supplement holds what lacks. [g] percent: of it as it lies. Raises below zero, or at 0 %."""
    at_least_zero(lacks_g=lacks_g, percent=percent)
    if percent == 0:
        raise ValueError("percent is 0; it must be above 0")
    return lacks_g / percent * 100
