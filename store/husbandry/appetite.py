"""How much a head can eat: the rule of thumb by body weight and forage."""

from store.husbandry.bounds import at_least_zero

POOR_BELOW_TDN, GOOD_ABOVE_TDN = 52.0, 59.0
POOR, MIDDLE, GOOD = (1.8, 2.2), (2.2, 2.5), (2.5, 2.7)
"""What a beef cow eats of forage by its TDN [% of dry matter], dry and milking. [% of body weight]
Source: oklahomafarmreport.com, 2 October 2024, David Lalman on feed intake; he says there that the rule gave about 6 lb
a day more than dry cows really ate. Others print 2.0 and 2.3 for the middle class (beefmagazine.com)."""
GROWING_PERCENT = 3.0
"""Young growing cattle on forage. Source: progressivecattle.com, "Forage intake in beef cattle" (700 lb: 21 lb)."""
MIDDLE_TDN = 55.0
"""Where nobody knows the hay: the middle class. Common practice."""


def most_dry_matter_kg(weight_kg: float, tdn_percent: float | None, *, milking: bool, growing: bool = False) -> float:
    """The most dry matter that a head eats a day. [kg]

    weight_kg: hers. tdn_percent: of the forage; None: not known. Raises ValueError below zero.
    """
    tdn = MIDDLE_TDN if tdn_percent is None else tdn_percent
    at_least_zero(weight_kg=weight_kg, tdn_percent=tdn)
    if growing:
        return weight_kg * GROWING_PERCENT / 100
    dry, in_milk = POOR if tdn < POOR_BELOW_TDN else GOOD if tdn > GOOD_ABOVE_TDN else MIDDLE
    return weight_kg * (in_milk if milking else dry) / 100
