"""Two feeds mixed for one figure, what soaking makes of dry matter, and how late cutting makes hay poor."""

from store.husbandry.bounds import at_least_zero
from store.husbandry.why import Source, Sure, equation, example

MONTANA = Source("animalrangeextension.montana.edu/beef/articles/pearson-sqaures.html")
SLIDES = Source(
    "slideserve.com, balancing Ca and P: 27.24 parts of corn (8.8 %) and 9.76 of soybean meal (45.8 %) make 18.56 %"
)
TIMOTHY = Source("scilit.com/publications/3a10d3aaeacdaa80b9b4ce45a1eea909, timothy cut 27 May to 5 August, one site")


@equation(
    "share of the first of two feeds", "|target - second| / (|target - first| + |target - second|) x 100", "%",
    Source("the two-feed square", Sure.PRACTICE),
    example(13.8, 0.05, MONTANA, first_percent=12.25, second_percent=10.8, target_percent=11.0),
    example(97.3, 0.05, MONTANA, first_percent=8.95, second_percent=40.0, target_percent=9.8),
    example(27.24 / 37 * 100, 0.02, SLIDES, first_percent=8.8, second_percent=45.8, target_percent=18.56),
)  # fmt: skip
def first_of_two(first_percent: float, second_percent: float, target_percent: float) -> float:
    """How much of a mix of two feeds the first is, so that the mix has the target: all of the dry matter. [%]

    Raises ValueError below zero, and where the target does not lie between the two.
    """
    at_least_zero(first_percent=first_percent, second_percent=second_percent, target_percent=target_percent)
    least, most = sorted((first_percent, second_percent))
    if not least <= target_percent <= most or least == most:
        raise ValueError(f"target_percent is {target_percent}; it must lie between {least} and {most}")
    return (target_percent - second_percent) / (first_percent - second_percent) * 100


@equation(
    "dry matter of a soaked feed", "dry feed x its dry matter % / (dry feed + water)", "%",
    Source("plain arithmetic", Sure.PRACTICE),
)  # fmt: skip
def soaked(dry_kg: float, dm_percent: float, water_kg: float) -> float:
    """Dry matter of a feed with the water it soaked in; soaking changes nothing of what it supplies. [%]

    Raises ValueError below zero, or where there is nothing at all.
    """
    at_least_zero(dry_kg=dry_kg, dm_percent=dm_percent, water_kg=water_kg)
    if dry_kg + water_kg == 0:
        raise ValueError("dry_kg is 0; it must be above 0, or water_kg must be")
    return dry_kg * dm_percent / (dry_kg + water_kg)


@equation(
    "digestibility of timothy by its cutting date", "84.91 - 0.481 x days after 17 May", "%", TIMOTHY,
    days_after_17_may=(10.0, 80.0),
)  # fmt: skip
def timothy_digestibility(days_after_17_may: float) -> float:
    """How much of the dry matter of timothy is digested. [%] Of one place and year: later places are later."""
    return min(max(84.91 - 0.481 * days_after_17_may, 0.0), 100.0)
