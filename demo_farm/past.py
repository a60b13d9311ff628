"""The thirty days before the pretend morning, walked step by step. Every figure, name and mishap is invented."""

import random
from collections.abc import Callable, Iterator
from datetime import date, datetime, time, timedelta
from typing import Any
from uuid import UUID

from msgspec.structs import replace

from store.book.clock import PretendClock
from store.book.drafts import Draft, Subject
from store.book.facts.span import span
from store.book.opening import Book
from store.book.reading import read_facts, read_snapshot
from store.book.snapshot import Snapshot
from store.book.turn import Turn, from_wall
from store.book.words import (
    EVENING,
    MORNING,
    NIGHT,
    SKIP_REASONS,
    Asks,
    Fate,
    Fill,
    Looks,
    Quarter,
    Sign,
    Soak,
    Stage,
    State,
)
from store.round.care import dosed, look_measured, looked, quarter_looked, quarters_found
from store.round.confirm import Hand, counted, done, felt, got_out, left_open, moved_on, noted, parted, skipped
from store.round.cool import cooled
from store.round.measured import fates_of, fed, milked, soak_checked, soak_started
from store.round.plan import plan
from store.round.steps import (
    ApartStep,
    CoolStep,
    CountStep,
    DoseStep,
    FeedStep,
    LookStep,
    MilkStep,
    QuarterStep,
    SoakCheckStep,
    SoakStartStep,
    Step,
    UdderStep,
)

FIRST_DAY, DAYS = date(2026, 2, 9), 30
BEGINS = {MORNING: time(6, 30), EVENING: time(17, 45), NIGHT: time(22)}
STEP_S = {MORNING: (40, 140), EVENING: (55, 160), NIGHT: (60, 300)}
MILKING_S, QUARTER_S = 240, 20  # how long a step takes, how much longer a milking, a look at a quarter [s]
KG_H = {"Briar": 0.52, "Fennel": 0.48, "Hazel": 0.66}  # how fast each cow fills [kg/h]
NIGHT_H, LONG_H = 12.6, 16.0  # longer than this apart: a milking between is on paper only [h]
STRINGS = {"Stall": "2", "Orchard": "4", "Long field": "4"}

NOT_NEEDED, _, RAN_OUT, WOULD_NOT, NO_TIME, NOT_SAFE, _ = SKIP_REASONS
TOM = {"02-12 evening", "02-15 morning", "02-15 evening", "02-22 morning", "02-27 evening", "03-01 morning",
       "03-05 evening", "03-08 morning", "03-08 evening", "03-10 evening"}  # fmt: skip
PIP = {"02-21 morning"}
ON_PAPER = {"02-18 evening"}
SKIPPED = {
    ("02-11 evening", "Water trough runs", "task"): NO_TIME,
    ("02-12 morning", "Move the steers' feeder", "task"): NOT_SAFE,
    ("02-16 morning", "Sloe", "feed"): WOULD_NOT,
    ("02-19 evening", "Tansy", "udder"): WOULD_NOT,
    ("02-24 morning", "Move the steers' feeder", "task"): NOT_SAFE,
    ("03-02 evening", "Water bucket full", "task"): NOT_NEEDED,
    ("03-04 morning", "Mineral tub full and dry", "task"): RAN_OUT,
    ("03-06 morning", "Move the steers' feeder", "task"): NOT_SAFE,
    ("03-09 evening", "Sorrel", "udder"): NO_TIME,
}
MOVED_ON = {("03-10 evening", "Sloe", "look")}
LESS = {
    ("02-14 morning", "Dock"): "1 1/2",
    ("02-23 evening", "Fennel"): "1 1/4",
    ("03-03 morning", "Rook"): "1/4",
    ("03-09 evening", "Hazel"): "1",
    ("03-10 evening", "Hazel"): "1 1/2",
}
OUT_AT_NIGHT = {("03-07 morning", "Fennel"): "2.9"}  # her calf had got out; what the pail weighed then [kg]
HELD_BACK = {("03-05 morning", "Briar"): "4.4"}  # what the pail weighed [kg]
QUARTERS = {
    ("03-05 morning", "Briar"): {Quarter.LEFT_HIND: (Sign.LITTLE_MILK,)},
    ("03-09 evening", "Hazel"): {Quarter.RIGHT_HIND: (Sign.CLOTS,)},
}
STILL = {("03-10 morning", "Hazel"): (Sign.CLOTS, Sign.HARD), ("03-10 evening", "Hazel"): (Sign.CLOTS,)}
"""How a marked quarter was after that; each other one was clear again."""
SOLD = {("Fennel", 2), ("Fennel", 6)}  # Wednesdays and Sundays
FILLING_FROM = date(2026, 3, 7)
SHUT = "Feed room shut and chained"
NOTES = {
    ("02-18 evening", SHUT, "task"): ("Lights out. This evening is on the sheet by the door.", True),
    ("02-21 morning", SHUT, "task"): ("Pip did the round, Ann beside.", False),
    ("03-07 morning", "Rook", "apart"): ("The calf pen's latch had lifted in the night. Wired.", False),
    ("03-09 evening", "Hazel", "milk"): ("Treated after this milking. Keep none of her milk.", True),
    ("03-10 evening", "Sorrel", "udder"): ("Bag filling, and restless after dark. Look at her first.", True),
}


def past_rounds(book: Book, chance: random.Random) -> Iterator[tuple[Step, Draft]]:
    """Every entry in the order written. Each is written into the book too, so that later rounds are drawn from it."""
    for number in range(DAYS * len(BEGINS)):
        turn = Turn(FIRST_DAY + timedelta(days=number // len(BEGINS)), tuple(BEGINS)[number % len(BEGINS)])
        yield from _round(book, turn, chance)


def _round(book: Book, turn: Turn, chance: random.Random) -> Iterator[tuple[Step, Draft]]:
    wall = datetime.combine(turn.day, BEGINS[turn.slot])
    zone = read_facts(book.desk, book.clock.now()).zone
    snapshot = read_snapshot(book.desk, turn, from_wall(wall, zone))
    for step in _steps(book, snapshot):
        wall += timedelta(seconds=_step_s(step, turn, chance))
        hand = Hand(turn, _who(snapshot, turn, step), from_wall(wall, zone), snapshot.farm.units)
        for draft in _drafts(hand, step, chance):
            book.clock = PretendClock(draft.happened_at)
            book.append(draft)
            yield step, draft


def _steps(book: Book, snapshot: Snapshot) -> Iterator[Step]:
    """As planned before the round; but the milk into ice, if any is, with the pails that were written by then."""
    for step in plan(snapshot):
        now = read_snapshot(book.desk, snapshot.turn, book.clock.now()) if isinstance(step, CoolStep) else None
        yield from (each for each in plan(now) if each.step_id == step.step_id) if now else (step,)


def _step_s(step: Step, turn: Turn, chance: random.Random) -> int:
    if isinstance(step, QuarterStep | CoolStep):
        return QUARTER_S if isinstance(step, QuarterStep) else 0  # the ice stands ready
    return chance.randint(*STEP_S[turn.slot]) + MILKING_S * isinstance(step, MilkStep)


def _who(snapshot: Snapshot, turn: Turn, step: Step) -> UUID:
    """Ann, unless it was Tom's round, or Pip's: there Ann does what is for adults."""
    flagged = (step, getattr(step, "animal", None))
    grown = any(getattr(each, flag, False) for each in flagged for flag in ("adult_only", "two_people"))
    name = "Tom" if _name(turn) in TOM else "Pip" if _name(turn) in PIP and not grown else "Ann"
    return next(person.id for person in snapshot.people if person.name == name)


def _drafts(hand: Hand, step: Step, chance: random.Random) -> Iterator[Draft]:
    """What was written at a step: mostly one entry."""
    usual = USUAL.get(type(step), _done)(hand, step, chance)
    when = (_name(hand.turn), step.name, step.kind.value)
    if isinstance(step, MilkStep):
        yield from _out_at_night(hand, step)
        yield from _marked(hand, step)
    if when[0] in ON_PAPER:
        yield left_open(hand, step, State.ON_PAPER)
    elif when in MOVED_ON:
        yield moved_on(hand, step)
    elif when in SKIPPED:
        yield skipped(hand, step, SKIPPED[when])
    else:
        yield usual
    if when in NOTES:
        words, tell = NOTES[when]
        yield noted(hand, step.subject if step.subject.animal_id else Subject(), words, tell=tell)


def _out_at_night(hand: Hand, step: MilkStep) -> Iterator[Draft]:
    """A calf that was found with her, before she is milked."""
    for calf in step.calves:
        if (_name(hand.turn), step.name) in OUT_AT_NIGHT:
            found = replace(hand, now=hand.now - timedelta(minutes=4))
            yield got_out(found, step.animal.id, calf.calf.id, calf.last.at if calf.last else None)


def _marked(hand: Hand, step: MilkStep) -> Iterator[Draft]:
    """A quarter that was not as the others, found before she was milked."""
    found = QUARTERS.get((_name(hand.turn), step.name))
    if found:
        yield quarters_found(replace(hand, now=hand.now - timedelta(minutes=3)), step.animal.id, found)


def _name(turn: Turn) -> str:
    return f"{turn.day:%m-%d} {turn.slot}"


def _fed(hand: Hand, step: FeedStep, _: random.Random) -> Draft:
    """As shown, or the first feed of it otherwise; at hay the strings too."""
    less = LESS.get((_name(hand.turn), step.name))
    return fed(hand, step, {step.due[0].feed.id: less} if less else {}, STRINGS.get(step.name, ""))


def _milked(hand: Hand, step: MilkStep, chance: random.Random) -> Draft:
    """By the hours since she was emptied; where that is not known, a night."""
    filled_h = (hand.now - step.emptied_at).total_seconds() / 3600 if step.emptied_at else LONG_H
    milk_kg = KG_H[step.name] * chance.uniform(0.92, 1.08) * (filled_h if filled_h < LONG_H else NIGHT_H)
    usual = f"{milk_kg + (step.milking.pail.empty_kg if step.milking.pail else 0):.1f}"
    when, fates = (_name(hand.turn), step.name), fates_of(step, span(hand.now))
    sold = Fate.SOLD_OR_GIVEN in fates and (step.name, hand.turn.day.weekday()) in SOLD
    typed = OUT_AT_NIGHT.get(when) or HELD_BACK.get(when) or usual
    return milked(hand, step, typed, Fate.SOLD_OR_GIVEN if sold else fates[0], held_back=when in HELD_BACK)


def _felt(hand: Hand, step: UdderStep, _: random.Random) -> Draft:
    """Dry: slack. Close to calving it fills; in milk, with her calf in the day, it is comfortable."""
    if step.animal.stage is Stage.DRY:
        return felt(hand, step, Fill.SLACK)
    near = step.animal.stage is Stage.CLOSE_UP and hand.turn.day >= FILLING_FROM
    return felt(hand, step, Fill.FULL if near else Fill.COMFORTABLE)


def _looked(hand: Hand, step: LookStep, _: random.Random) -> Draft:
    """Tansy holds her condition; Sloe's foot mends; Sorrel is a cow that is near, no more."""
    if step.look.asks is Asks.CONDITION:
        return look_measured(hand, step, "3")
    return looked(hand, step, Looks.RIGHT if hand.turn.slot == NIGHT else Looks.BETTER)


def _quarter(hand: Hand, step: QuarterStep, _: random.Random) -> Draft:
    return quarter_looked(hand, step, STILL.get((_name(hand.turn), step.name), (Sign.CLEAR,)))


def _cooled(hand: Hand, step: CoolStep, _: random.Random) -> Draft:
    """In ice; where that was late, the milk is kept all the same."""
    return cooled(hand, step, Fate.HOUSE)


def _done(hand: Hand, step: Step, _: random.Random) -> Draft:
    return done(hand, step)


USUAL: dict[type[Step], Callable[[Hand, Any, random.Random], Draft]] = {
    FeedStep: _fed,
    MilkStep: _milked,
    UdderStep: _felt,
    LookStep: _looked,
    QuarterStep: _quarter,
    CoolStep: _cooled,
    DoseStep: lambda hand, step, _: dosed(hand, step),
    CountStep: lambda hand, step, _: counted(hand, step, len(step.heads)),
    ApartStep: lambda hand, step, _: parted(hand, step),
    SoakCheckStep: lambda hand, step, _: soak_checked(hand, step, Soak.FIT),
    SoakStartStep: lambda hand, step, _: soak_started(hand, step, ""),
}
