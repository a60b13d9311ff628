"""What is typed at a feed, soak or milk step, as the draft it writes. Refuses in words, and asks about the unusual."""

from collections.abc import Mapping, Sequence
from uuid import UUID

from msgspec.structs import replace

from store.book.drafts import Draft
from store.book.facts.feed import Feed, Told
from store.book.facts.milk import Withholding
from store.book.facts.span import Span
from store.book.figures import FedFigure, Figure, MilkedFigure, SoakedFigure, StrungFigure
from store.book.snapshot import Written
from store.book.words import Fate, Soak, State, Units
from store.husbandry.milk.usual import usual_pail
from store.round.amount import Unreadable, feed_amount, pail_amount, whole_number
from store.round.confirm import Doubtful, Hand, draft, time_of
from store.round.saying import exact, weight
from store.round.steps import DueFeed, FeedStep, MilkStep, SoakCheckStep, SoakStartStep

STRINGS_MOST = 99
SURE = "!"
"""Typed behind an amount that was asked about: it is right all the same."""
ASKED_KG = 10.0
"""Cattle that are not used to it may die after so much grain at once (merckvetmanual.com, grain overload in ruminants):
a farm that has set no limit of its own is asked at this one. [kg]"""
PAIL_ASKED_KG = 30.0
"""More than this from a cow of which no pail is known yet is asked about. [kg] Common practice."""
IF_RIGHT = f"If it is right, type {SURE} behind it, then Enter."
TO_CALVES = (Fate.CALVES, Fate.OTHER_ANIMALS, Fate.THROWN_AWAY)
SCOOP_LEAST_KG, SCOOP_MOST_KG = 0.001, 50.0
"""What one measure of loose feed can hold. Nobody lifts more. Common practice."""
BALE_MOST_KG = 500.0
"""The same of what comes in bales."""
SCOOP_ASKED_KG, BALE_ASKED_KG = 10.0, 50.0
"""A measure of which nobody knows what it held is asked about above this. Common practice."""


def fed(hand: Hand, step: FeedStep, typed: Mapping[UUID, str], strings: str = "", *, sure: bool = False) -> Draft:
    """What the screen shows: as typed (by feed_id), else as given already, else as due. strings: as typed.

    Raises Unreadable, also for a feed that is not for one of these animals; Doubtful above the meal limit unless sure.
    """
    for due in step.due:
        _refuse_barred(step, due)
    given = {figure.feed_id: figure for figure in _given_already(step)}
    figures: tuple[Figure, ...] = tuple(
        _fed(hand, due, typed.get(due.feed.id, ""), given.get(due.feed.id)) for due in step.due
    )
    if (typed or any(part.instead for part in step.soaked)) and not sure:
        _ask_over_limit(hand, step, sum(each.given_kg or 0 for each in figures if isinstance(each, FedFigure)))
    if not strings and step.entry and step.entry.state is State.DONE:
        figures += step.entry.of(StrungFigure)
    if strings:
        figures += (StrungFigure(whole_number(strings, STRINGS_MOST, "strings")),)
    return draft(hand, step, State.DONE, figures)


def soak_started(hand: Hand, step: SoakStartStep, typed: str) -> Draft:
    """So much dry feed put to soak, with the farm's water to it. Raises Unreadable."""
    dry_kg = feed_amount(typed, step.feed, step.told, hand.units, by_weight=True).kg if typed else step.due_kg
    water_kg = dry_kg * step.limit.water_per_kg if step.limit else None
    return draft(hand, step, State.DONE, (SoakedFigure(Soak.STARTED, step.due_kg, dry_kg, water_kg, typed),))


def soak_checked(hand: Hand, step: SoakCheckStep, act: Soak, why: str = "") -> Draft:
    """The soaked feed is fit, or was thrown out, and why: all of it but what was fed before."""
    dry_kg = step.batch.dry_kg if step.batch else None
    if dry_kg is not None and act is Soak.THROWN_OUT:
        dry_kg = max(dry_kg - step.fed_kg, 0.0)
    return draft(hand, step, State.DONE, (SoakedFigure(act, step.due_kg, dry_kg),), why)


def milked(hand: Hand, step: MilkStep, typed: str, fate: Fate, *, held_back: bool = False) -> Draft:
    """So much milk, and where it went. Raises Unreadable, also for withheld milk to the house or away from the farm."""
    pail = step.milking.pail
    amount = pail_amount(typed, pail, hand.units)
    if fate not in fates_of(step, time_of(hand, step)):
        raise Unreadable(f"{step.name}'s milk is withheld: {fate.value} is not among its uses. Down picks another.")
    pail_id = pail.id if pail and amount.gross_kg is not None else None
    figure = MilkedFigure(amount.milk_kg, amount.gross_kg, pail_id, amount.empty_kg, fate, typed, held_back)
    return draft(hand, step, State.DONE, (figure,))


def not_milked(hand: Hand, step: MilkStep, why: str) -> Draft:
    """Not milked, on purpose, or because the calf had it: never a zero. why: at most 80 letters."""
    return draft(hand, step, State.DONE, (MilkedFigure(None, typed=why),))


def is_not_milked(entry: Written | None) -> bool:
    """Whether an entry says that she was left out on purpose, or that the calf had it: such a step has no pail."""
    figure = entry.the(MilkedFigure) if entry and entry.state is State.DONE else None
    return figure is not None and figure.milk_kg is None


def ask_if_unusual(hand: Hand, step: MilkStep, draft: Draft) -> None:
    """Raise Doubtful for less than half or more than one and a half times her usual pail: often a slip of the keys.

    The bounds are common practice.
    """
    elapsed_h = (draft.happened_at - step.emptied_at).total_seconds() / 3600 if step.emptied_at else 0.0
    usual = usual_pail(step.rates_kg_h, elapsed_h) if elapsed_h > 0 else None
    for figure in draft.figures:
        kg = figure.milk_kg if isinstance(figure, MilkedFigure) else None
        if usual is None and kg is not None and kg > PAIL_ASKED_KG:
            raise Doubtful(f"That is {weight(kg, hand.units)} of milk at one milking. {IF_RIGHT}")
        if usual and kg is not None and not usual[0] / 2 <= kg <= usual[2] * 1.5:
            span = f"{weight(usual[0], hand.units).split()[0]} to {weight(usual[2], hand.units)}"
            raise Doubtful(f"That is {weight(kg, hand.units)} of milk; usual is {span}. {IF_RIGHT}")


def withholding_at(step: MilkStep, when: Span) -> Withholding | None:
    """What withholds her milk when she was milked; of several the strictest."""
    return holding(step.withheld, when)


def holding(withheld: Sequence[Withholding], when: Span) -> Withholding | None:
    """Of what withholds a cow's milk, what holds at any moment of a span; of several the one that ends last."""
    running = [each for each in withheld if each.may_hold(when)]
    return max(
        running, key=lambda each: (not each.to_calves, each.until is None, each.until or each.since), default=None
    )


def fates_of(step: MilkStep, when: Span) -> tuple[Fate, ...]:
    """Where her milk of then may go. Withheld: thrown away, and nowhere else; the record behind it is mended instead.

    What may have been withheld is. Colostrum may go to calves and other animals too.
    """
    withheld = withholding_at(step, when)
    if withheld is None:
        return tuple(Fate)
    return TO_CALVES if withheld.to_calves else (Fate.THROWN_AWAY,)


def _given_already(step: FeedStep) -> tuple[FedFigure, ...]:
    return step.entry.of(FedFigure) if step.entry and step.entry.state is State.DONE else ()


def _fed(hand: Hand, due: DueFeed, typed: str, given: FedFigure | None) -> FedFigure:
    if given and not typed:
        return given
    by_weight = due.measures is None
    kg = feed_amount(typed, due.feed, due.told, hand.units, by_weight=by_weight).kg if typed else due.as_shown_kg
    left_kg = given.left_kg if given else None
    return FedFigure(due.feed.id, due.told.id if due.told else None, due.due_kg, kg, typed, left_kg)


def _refuse_barred(step: FeedStep, due: DueFeed) -> None:
    for animal in step.heads:
        if animal.species in due.feed.not_for:
            raise Unreadable(
                f"{due.feed.name} is not for {animal.species.value} ({animal.name}). Nothing was written: S skips, "
                "and the plan has to be mended."
            )


def _ask_over_limit(hand: Hand, step: FeedStep, given_kg: float) -> None:
    fodder = any(due.feed.baled for due in step.due)
    if not fodder and given_kg > limit_of(hand.meal_limit_kg) * len(step.heads):
        limit = exact(limit_of(hand.meal_limit_kg), hand.units)
        whose = "your limit" if hand.meal_limit_kg else "the most that is not asked about"
        raise Doubtful(f"That is {exact(given_kg, hand.units)} in one meal; {whose} is {limit}. {IF_RIGHT}")


def limit_of(meal_limit_kg: float | None) -> float:
    """The most of loose feed in a meal of one head that is not asked about: the farm's own, if it has one. [kg]"""
    return ASKED_KG if meal_limit_kg is None else meal_limit_kg


def left_over(hand: Hand, step: FeedStep, due: DueFeed, typed: str) -> Draft:
    """So much of a feed was left; the rest of the step as it stands. Raises Unreadable, also above what was given."""
    if step.state is State.SKIPPED:
        raise Unreadable(f"{step.name} was skipped here, so nothing can be left. Type what was given first.")
    left_kg = feed_amount(typed, due.feed, due.told, hand.units, by_weight=due.measures is None).kg
    given = fed(hand, step, {})
    figures = tuple(_with_left(hand, figure, due, left_kg) for figure in given.figures)
    return replace(given, figures=figures)


def _with_left(hand: Hand, figure: Figure, due: DueFeed, left_kg: float) -> Figure:
    if not isinstance(figure, FedFigure) or figure.feed_id != due.feed.id:
        return figure
    given_kg = figure.given_kg or 0.0
    if left_kg > given_kg:
        left, given = exact(left_kg, hand.units), exact(given_kg, hand.units)
        raise Unreadable(f"{left} is more than the {given} that was given. Type what was left.")
    return replace(figure, left_kg=left_kg)


def scoop_weight(typed: str, feed: Feed, told: Told, units: Units) -> float:
    """What one level measure weighs. [kg]

    Raises Unreadable, also for nothing and for more than anybody lifts; Doubtful for less than half or more than twice
    of before, and for much where there is no before, unless ! is behind.
    """
    kg = feed_amount(typed.rstrip(f"{SURE} "), feed, None, units).kg
    most_kg = BALE_MOST_KG if feed.baled else SCOOP_MOST_KG
    if not SCOOP_LEAST_KG <= kg <= most_kg:
        span = f"{weight(SCOOP_LEAST_KG, units)} to {weight(most_kg, units)}"
        raise Unreadable(f"«{typed}» is {weight(kg, units)}. One {told.name} of {feed.name} holds {span}.")
    asked = "" if typed.rstrip().endswith(SURE) else scoop_doubt(kg, feed, told.holds_kg, units)
    if asked:
        raise Doubtful(f"That is {exact(kg, units)} a {told.name}{asked}. {IF_RIGHT}")
    return kg


def scoop_doubt(kg: float, feed: Feed, before_kg: float | None, units: Units) -> str:
    """Why a measure can hardly hold so much, as it goes on behind the weight; empty: it can."""
    if before_kg:
        return "" if before_kg / 2 <= kg <= before_kg * 2 else f"; before it was {exact(before_kg, units)}"
    most_kg = BALE_ASKED_KG if feed.baled else SCOOP_ASKED_KG
    return f", much for one measure of {feed.name}" if kg > most_kg else ""
