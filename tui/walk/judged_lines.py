"""A pail against her usual, in words."""

from store.book.words import Units
from store.husbandry.milk.udder import UNSURE_H
from store.husbandry.units import KG_PER_LB
from store.round.judging import Judged
from store.round.saying import weight
from tui.words import hours

LONG = f"over {UNSURE_H:g} h: unsure"


def usual_words(judged: Judged, units: Units) -> str:
    """`usual 4.9 to 6.4 kg`."""
    if judged.usual_kg is None:
        return "usual: not known"
    least, _, most = (weight(kg, units) for kg in judged.usual_kg)
    return f"usual {least.split()[0]} to {most}"


def before_words(judged: Judged, units: Units) -> str:
    """Before she is milked: `12 h 29 since it was emptied; usual 4.9 to 6.4 kg, of 7 pails`."""
    elapsed_h = judged.timed.elapsed_h
    since = "hours since it was emptied: not known" if elapsed_h is None else f"{hours(elapsed_h)} since it was emptied"
    if judged.unsure:
        return f"{since}, {LONG}; {usual_words(judged, units)}"
    return f"{since}; {usual_words(judged, units)}{f', of {judged.of} pails' if judged.usual_kg else ''}"


def judged_words(judged: Judged, units: Units) -> str:
    """Behind the weighing: `0.496 kg/h, 11.9 kg a day; 4 % under her usual 6.2 kg, of 7 pails`."""
    if judged.timed.why_not:
        return f"not compared: {judged.timed.why_not}{_rate(judged, units)}"
    a_day = "" if judged.day_kg is None else f", {weight(judged.day_kg, units)} a day"
    return f"{_rate(judged, units).strip('; ')}{a_day}; {against_words(judged, units)}"


def against_words(judged: Judged, units: Units) -> str:
    """`4 % under her usual 6.2 kg, of 7 pails`."""
    if judged.percent is None or judged.usual_kg is None:
        return f"no usual yet, {judged.of} pails compare"
    of = f"her usual {weight(judged.usual_kg[1], units)}, of {judged.of} pails"
    return f"{percent_words(judged.percent)} {of}"


def percent_words(percent: float) -> str:
    """`12 % under`, `3 % over`, `as much as`."""
    rounded = round(percent)
    return f"{abs(rounded)} % {'under' if rounded < 0 else 'over'}" if rounded else "as much as"


def rate_words(kg_h: float, units: Units) -> str:
    """`0.496`, in pounds `1.094`; the unit is the farm's. [kg/h]"""
    return f"{kg_h / KG_PER_LB if units is Units.US else kg_h:.3f}"


def _rate(judged: Judged, units: Units) -> str:
    kg_h = judged.timed.kg_h
    return "" if kg_h is None else f"; {rate_words(kg_h, units)} {'lb' if units is Units.US else 'kg'}/h"


def drop_words(judged: Judged, units: Units) -> str:
    """`10.5 kg is 12 % under her usual 11.9 for 12 h`."""
    usual_kg, percent = judged.usual_kg, judged.percent
    if usual_kg is None or percent is None:
        return weight(judged.milk_kg, units)
    usual = weight(usual_kg[1], units).split()[0]
    unsure = f" ({LONG})" if judged.unsure else ""
    told = f"{weight(judged.milk_kg, units)} is {percent_words(percent)} her usual {usual}"
    return f"{told} for {hours(judged.timed.elapsed_h or 0)}{unsure}"
