"""Why: what the numbers of a step are made of, in plain arithmetic."""

from collections.abc import Iterator
from typing import ClassVar

from store.husbandry.milk.pail import KG_PER_L
from store.husbandry.milk.udder import FULL_H, FULL_RATE_H
from store.round.soaked import is_short
from store.round.steps import ApartStep, CoolStep, FeedStep, MilkStep, SoakedPart, SoakStartStep, Step
from store.round.tonight import nights_words
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, Over, Rooms
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, go_back
from tui.walk.lamp import Lamp
from tui.words import day, measured

PLACES_KG = 3


class Why(Over):
    """Over a lamp."""

    def __init__(self, rooms: Rooms, lamp: Lamp) -> None:
        """The step of a lamp."""
        super().__init__(rooms, lamp)
        self.lamp = lamp

    def draw(self, size: Size) -> Page:
        """Every number with what it is made of."""
        body: list[Line] = [(), line(Span(f"  WHY  {self.lamp.step.name} ({self.lamp.step.kind})", Role.STRONG)), ()]
        for sentence in reasons(self.lamp.step):
            body += wrapped(sentence, size.width, Role.TEXT, "  ")
        return framed(self, body, size)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(
            (*ENTER, *BACKSPACE, "w", "left", "escape"),
            "Enter",
            "back",
            "Back; nothing is written.",
            go_back,
        ),
        *SCROLL_KEYS,
        HELP_KEY,
        LEAVE_KEY,
    )


def reasons(step: Step) -> Iterator[str]:
    """Sentences for the numbers of a step."""
    if isinstance(step, FeedStep):
        yield from _feed(step)
    elif isinstance(step, MilkStep):
        yield from _milk(step)
    elif isinstance(step, ApartStep):
        yield from _apart(step)
    elif isinstance(step, SoakStartStep):
        yield f"{step.due_kg:.2f} kg dry: the sum of all plans of the {step.for_slot} for {step.feed.name}."
        if step.limit and step.water_kg is not None:
            yield f"{step.water_kg:.2f} kg water = {step.due_kg:.2f} kg x {step.limit.water_per_kg:g}, your rule."
    elif isinstance(step, CoolStep):
        yield f"{step.within_min:g} min from the first pail that is for people: your limit, F and then settings."
        yield "Half an hour is the good standard of extension leaflets: milk keeps the longer the sooner it is cold."
    else:
        yield f"{step.name} is here because it stands among this farm's own plans and tasks."


def _apart(step: ApartStep) -> Iterator[str]:
    rule, longest_h = step.calf.rule, step.calf.longest_h
    yield f"{step.calf.calf.name} shares {step.cow.name}'s milk; your longest time apart is {longest_h:g} h."
    if rule is None:
        yield "It has no rule of its own, so it is shut away every evening. F sets one."
    else:
        yield f"Your rule: {rule.apart_h:g} h apart, from day {rule.from_day} of its life, {nights_words(rule.nights)}."
        yield f"The hour = when the morning round usually begins - {min(rule.apart_h, longest_h):g} h that really pass."


def _feed(step: FeedStep) -> Iterator[str]:
    heads = len(step.heads)
    for due in step.due:
        since = f", your plan since {day(due.since)}" if due.since else ""
        each = f" = {due.due_kg / heads:.{PLACES_KG}f} kg a head x {heads} heads" if heads > 1 else ""
        yield f"{due.feed.name}: {due.due_kg:.{PLACES_KG}f} kg due{each}{since}."
        if due.told and due.told.holds_kg and due.measures is not None:
            weighed = f", weighed {day(due.told.weighed_at)}" if due.told.weighed_at else ""
            told = f"{measured(due.measures, due.told)} x {due.told.holds_kg:g} kg a {due.told.name}"
            yield f"    {told}{weighed} = {due.as_shown_kg:.{PLACES_KG}f} kg, the nearest quarter."
    yield from (_soaked(part) for part in step.soaked if part.instead or is_short(part))


def _soaked(part: SoakedPart) -> str:
    """What stands in for a soaked feed, and what of it is there."""
    if part.instead is None:
        return f"{part.feed.name}: {part.there_kg:.2f} kg = {part.due_kg:.2f} kg x the part of all due that soaked."
    most = f", at most {part.instead.most_kg:g} kg a head" if part.instead.most_kg is not None else ""
    in_place = f"{part.instead.kg:.2f} kg {part.instead.feed.name} in its place"
    return (
        f"{part.feed.name} was thrown out. {part.due_kg:.2f} kg x {part.instead.ratio:g}{most}: in it are {in_place}. "
        f"What that leaves, {part.instead.rest_kg:.2f} kg dry, is made up by hay, a kilogram for a kilogram: "
        "common practice."
    )


def _milk(step: MilkStep) -> Iterator[str]:
    if step.milking.pail:
        yield f"Milk = pail on the scale - {step.milking.pail.empty_kg:g} kg, the empty {step.milking.pail.name}."
    yield f"Litres = kilograms / {KG_PER_L:g}, the density of whole milk."
    rates = ", ".join(f"{rate:.3f}" for rate in step.rates_kg_h)
    yield f"Her last comparable pails by their hours at full rate, newest first: {rates or 'none'} kg an hour."
    yield "Usual = the least and most of these x her hours at full rate since she was emptied."
    yield f"Full rate: up to {FULL_RATE_H:g} h, then ever less, nothing at {FULL_H:g} h; no estimate past 24 h."
    if step.emptied_at is None:
        yield "Since when she fills is not known: no milking is written, or a calf was not written as shut away."
