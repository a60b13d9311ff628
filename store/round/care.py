"""What is found and given at an animal, as the draft it writes: a look that was due, a dose, a quarter of an udder."""

from collections.abc import Iterable, Iterator, Mapping
from uuid import UUID

from store.book.drafts import Draft, Subject
from store.book.figures import DosedFigure, LookedFigure, QuarterFigure
from store.book.words import (
    CONDITION_POINTS,
    GIRTH_CM,
    MARKS,
    TEMPERATURE_C,
    Asks,
    Kind,
    Looks,
    Quarter,
    Sign,
    State,
    Units,
)
from store.husbandry.units import CM_PER_INCH, celsius
from store.round.amount import Unreadable, number_and_unit
from store.round.confirm import Hand, draft, unplanned
from store.round.steps import DoseStep, LookStep, QuarterStep

BOUNDS = {Asks.CONDITION: CONDITION_POINTS, Asks.GIRTH: GIRTH_CM, Asks.TEMPERATURE: TEMPERATURE_C}
UNITS = {Asks.CONDITION: "", Asks.GIRTH: "cm", Asks.TEMPERATURE: "C"}
"""What a bare number is on a metric farm."""
US_UNITS = {Asks.CONDITION: "", Asks.GIRTH: "in", Asks.TEMPERATURE: "F"}


def looked(hand: Hand, step: LookStep, looks: Looks) -> Draft:
    """How it has come on."""
    return draft(hand, step, State.DONE, (LookedFigure(step.look.id, looks),))


def look_measured(hand: Hand, step: LookStep, typed: str) -> Draft:
    """A score, a girth or a temperature. Raises Unreadable, also for what no animal has."""
    number = look_number(typed, step.look.asks, hand.units)
    condition, girth, temperature = (
        number if step.look.asks is asks else None for asks in (Asks.CONDITION, Asks.GIRTH, Asks.TEMPERATURE)
    )
    figure = LookedFigure(step.look.id, None, condition, girth, temperature, typed)
    return draft(hand, step, State.DONE, (figure,))


def look_number(typed: str, asks: Asks, units: Units) -> float:
    """Condition points, cm or degrees C of what was typed. Raises Unreadable."""
    number, word = number_and_unit(typed)
    unit = word.strip("°").lower() or look_unit(asks, units).lower()
    sizes = {"in": number * CM_PER_INCH, "f": celsius(number)}
    known = (UNITS[asks].lower(), US_UNITS[asks].lower())
    least, most = BOUNDS[asks]
    if unit not in known:
        either = " or ".join(dict.fromkeys(each for each in (UNITS[asks], US_UNITS[asks]) if each))
        raise Unreadable(f"«{word}» is no unit for {asks.value}. Type {either or 'the points alone, as 2.5'}.")
    found = sizes.get(unit, number)
    if not least <= found <= most:
        span = f"{least:g} to {most:g} {UNITS[asks]}".strip()
        raise Unreadable(f"«{typed.strip()}» is no {asks.value} of an animal. Expected {span}. Look at it again.")
    return found


def look_unit(asks: Asks, units: Units) -> str:
    """What a bare number is."""
    return (US_UNITS if units is Units.US else UNITS)[asks]


def dosed(hand: Hand, step: DoseStep) -> Draft:
    """The dose is given."""
    return draft(hand, step, State.DONE, (DosedFigure(step.treatment.id, step.number, given=True),))


def quarters_found(hand: Hand, cow_id: UUID, signs: Mapping[Quarter, Iterable[Sign]]) -> Draft:
    """What was found at some quarters of a cow, whether she is milked or not."""
    figures = (figure for quarter, found in signs.items() for figure in _figures(quarter, found))
    return unplanned(hand, Kind.LOOK, Subject(animal_id=cow_id), *figures)


def quarter_looked(hand: Hand, step: QuarterStep, signs: Iterable[Sign]) -> Draft:
    """How a marked quarter is now. Raises Unreadable where neither a mark nor clear again is among the signs."""
    figures = tuple(_figures(step.mark.quarter, signs))
    if not any(figure.sign in MARKS or figure.sign is Sign.CLEAR for figure in figures):
        how_full = f"{figures[0].sign.value} only says how full it is. " if figures else ""
        raise Unreadable(f"{how_full}How is it now? Digits pick what you see and feel, 7 where it is clear again.")
    return draft(hand, step, State.DONE, figures)


def _figures(quarter: Quarter, signs: Iterable[Sign]) -> Iterator[QuarterFigure]:
    return (QuarterFigure(quarter, sign) for sign in sorted(signs, key=tuple(Sign).index))
