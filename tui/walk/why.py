"""Why: what the numbers of a step are made of, in plain arithmetic."""

from collections.abc import Iterator
from typing import ClassVar

from store.husbandry.milk.pail import KG_PER_L
from store.husbandry.milk.udder import FULL_H, FULL_RATE_H
from store.round.steps import ApartStep, CoolStep, MilkStep, Step
from store.round.tonight import nights_words
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, Over, Rooms
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, go_back
from tui.walk.lamp import Lamp


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
    if isinstance(step, MilkStep):
        yield from _milk(step)
    elif isinstance(step, ApartStep):
        yield from _apart(step)
    elif isinstance(step, CoolStep):
        yield f"{step.within_min:g} min from the first pail that is for people: your limit, F and then settings."
        yield "Half an hour is the good standard of extension leaflets: milk keeps the longer the sooner it is cold."


def _apart(step: ApartStep) -> Iterator[str]:
    rule, longest_h = step.calf.rule, step.calf.longest_h
    yield f"{step.calf.calf.name} shares {step.cow.name}'s milk; your longest time apart is {longest_h:g} h."
    if rule is None:
        yield "It has no rule of its own, so it is shut away every evening. F sets one."
    else:
        yield f"Your rule: {rule.apart_h:g} h apart, from day {rule.from_day} of its life, {nights_words(rule.nights)}."
        yield f"The hour = when the morning round usually begins - {min(rule.apart_h, longest_h):g} h that really pass."


def _milk(step: MilkStep) -> Iterator[str]:
    if step.milking.pail:
        yield f"Milk = pail on the scale - {step.milking.pail.empty_kg:g} kg, the empty {step.milking.pail.name}."
    yield f"Litres = kilograms / {KG_PER_L:g}, the density of whole milk."
    rates = ", ".join(f"{rate:.3f}" for rate in step.rates_kg_h)
    yield f"Her last comparable pails by their hours at full rate, newest first: {rates or 'none'} kg an hour."
    yield "Usual = their middle, the newer counting more, x her hours at full rate since she was emptied."
    yield "The range is as wide as her pails differ: about nine of ten lie in it."
    yield f"Full rate: up to {FULL_RATE_H:g} h, then ever less, nothing at {FULL_H:g} h; no estimate past 24 h."
    if step.emptied_at is None:
        yield "Since when she fills is not known: no milking is written, or a calf was not written as shut away."
