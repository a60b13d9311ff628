"""What the vet asks about an animal, filled in from the book: a heading and a sentence each, the important first."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from itertools import groupby

from store.book.facts.care import Look, Treatment
from store.book.facts.farm import Animal
from store.book.figures import FedFigure, LookedFigure
from store.book.reading.breeding import Carries
from store.book.snapshot import Written, notes_of
from store.book.turn import local
from store.book.words import Asks, Kind, Stage, State
from store.round.dialect import said
from store.round.looking_back import looking_back
from store.round.pails import went, withheld_in
from store.round.quarters import found_at, running
from store.round.saying import weight
from store.round.withholding import doses_given
from tui.telling import figure, lately
from tui.treated import treated_facts
from tui.walker import Walker
from tui.words import age, day, hours, look_words, when

Fact = tuple[str, str]
PAILS, ROUNDS, NOTES, DOSES = 5, 6, 5, 4
TREATED_WITHIN = timedelta(days=60)
NONE = "nothing recorded"


def who_words(walker: Walker, animal: Animal, carries: Carries | None) -> str:
    """Where she is in life: stage, age, calved, in calf."""
    today = walker.turn.day
    told = [said(animal.stage.value, walker.farm.dialect)]
    told += [f"{age(animal.born_on, today)} old"] if animal.born_on else []
    if animal.calved_on:
        told.append(f"calved {day(animal.calved_on)}, {(today - animal.calved_on).days} days ago")
    if carries and carries.due_on:
        told.append(f"in calf, due {day(carries.due_on)}")
    served = carries.served_on if carries else None
    return ", ".join([*told, f"served {day(served)}"] if served else told)


def vet_facts(walker: Walker, animal: Animal) -> Iterator[Fact]:
    """What was seen and done lately. Nothing recorded is said too: the vet asks."""
    if animal.stage is Stage.IN_MILK or walker.snapshot.pails.get(animal.id):
        yield "MILK", "; ".join(_milk(walker, animal)) or NONE
    yield from (("HELD", words) for words in treated_facts(walker, animal.id, walker.moment()))
    yield "FED", "; ".join(_fed(walker, animal)) or NONE
    yield "TAKEN", "; ".join(_looks(walker, animal)) or "no temperature, no condition on record"
    if quarters := list(_quarters(walker, animal)):
        yield "QUARTERS", "; ".join(quarters)
    yield "TREATED", "; ".join(_treated(walker, animal)) or "nothing in the last 60 days"
    yield from (("NOTE", words) for words in _notes(walker, animal))
    yield "TODAY", "; ".join(_today(walker, animal)) or "nothing written of her yet in this round"


def _milk(walker: Walker, animal: Animal) -> Iterator[str]:
    """Her last pails with the hours that each filled, this round's too; and how often she held back."""
    found, units = looking_back(walker.snapshot, animal.id), walker.farm.units
    weighed = [each for each in found.pails if each.pail.milk_kg is not None][:PAILS]
    for each in weighed:
        yield _pail(weight(each.pail.milk_kg or 0.0, units), each.elapsed_h)
    if held := found.held_back(PAILS):
        yield f"held back {held} of {len(weighed)}"


def _pail(milk: str, elapsed_h: float | None) -> str:
    return milk if elapsed_h is None else f"{milk} in {hours(elapsed_h)}"


def _fed(walker: Walker, animal: Animal) -> Iterator[str]:
    """What she and her pen got in this round, and the last time in this slot."""
    snapshot, units = walker.snapshot, walker.farm.units
    whose = {animal.id: "", animal.pen_id: " for her pen"}
    for entry in snapshot.counts().values():
        if entry.subject.id in whose and entry.state is State.DONE and entry.the(FedFigure):
            yield f"now {figure(walker, entry)}{whose[entry.subject.id]}"
    for id_, words in whose.items():
        given = snapshot.given_before.get(id_) if id_ else None
        told = given.given_kg.items() if given else ()
        if given and (fed := ", ".join(f"{snapshot.feeds[feed_id].name} {weight(kg, units)}" for feed_id, kg in told)):
            yield f"{day(given.day)} {fed}{words}"


def _looks(walker: Walker, animal: Animal) -> Iterator[str]:
    """Each look at her as it was found last; a temperature first."""
    mine = [look for look in walker.snapshot.looks if look.animal_id == animal.id]
    for look in sorted(mine, key=lambda look: look.asks is not Asks.TEMPERATURE):
        yield from (f"{look.name} {words}" for words in _found(walker, look))


def _found(walker: Walker, look: Look) -> Iterator[str]:
    now = (each for entry in walker.snapshot.counts().values() if entry.state is State.DONE
           for each in entry.of(LookedFigure) if each.look_id == look.id)  # fmt: skip
    yield from (f"{look_words(found, walker.farm.units)} now" for found in now)
    if look.last:
        yield f"{look_words(look.last.found, walker.farm.units)} {day(look.last.day)}"


def _quarters(walker: Walker, animal: Animal) -> Iterator[str]:
    """The last rounds, newest first, then what was so again and again."""
    dialect, today = walker.farm.dialect, walker.turn.day
    by_turn = [(turn, tuple(of)) for turn, of in groupby(found_at(walker.snapshot, animal.id), lambda each: each.turn)]
    for turn, found in by_turn[: -ROUNDS - 1 : -1]:
        quarters = dict.fromkeys(each.quarter for each in found)
        told = (f"{said(q.value, dialect)}: {', '.join(f.sign for f in found if f.quarter is q)}" for q in quarters)
        yield f"{lately(turn, today)} {', '.join(told)}"
    for quarter, what, rounds in running(walker.snapshot, animal.id):
        yield f"{said(quarter.value, dialect)} {what} {rounds} rounds running"


def _treated(walker: Walker, animal: Animal) -> Iterator[str]:
    """Treatments of the last weeks, those that are over too: what, why, and each dose that was given."""
    since = walker.moment() - TREATED_WITHIN
    for treatment in walker.snapshot.treatments:
        given = tuple(each.latest for each in doses_given(walker.snapshot, treatment))
        if treatment.animal_id == animal.id and max((*given, treatment.first_at)) >= since:
            yield _treatment(walker, treatment, given)


def _treatment(walker: Walker, treatment: Treatment, given: tuple[datetime, ...]) -> str:
    why = f", for {treatment.why}" if treatment.why else ""
    times = ", ".join(when(at, walker.zone) for at in given[-DOSES:]) or "none given yet"
    over = "" if treatment.in_use else ", ended"
    what = ", ".join(each for each in (treatment.product, treatment.amount, treatment.route) if each)
    return f"{what}{why}: {len(given)} of {treatment.doses} given{over} ({times})"


def _notes(walker: Walker, animal: Animal) -> Iterator[str]:
    """Of the last round and this one, newest first."""
    snapshot = walker.snapshot
    mine = [each for each in notes_of((*snapshot.last.all_entries, *snapshot.entries)) if _is_hers(each, animal)]
    for entry in mine[: -NOTES - 1 : -1]:
        yield f"{when(entry.happened_at, walker.zone)} {walker.name_of(entry.person_id)}: {figure(walker, entry)}"


def _today(walker: Walker, animal: Animal) -> Iterator[str]:
    """What is written of her in this round; of a pail also what it counts as, where that is not where it was put."""
    entries = tuple(walker.snapshot.counts().values())
    pails = went(entries, withheld_in(walker.snapshot, walker.steps), walker.steps)
    strict = {each.pailful.step_id: f", COUNTS AS {each.use.value}" for each in pails if each.use != each.pailful.fate}
    for entry in entries:
        if _is_hers(entry, animal) and entry.kind is not Kind.NOTE:
            counts_as = strict.get(entry.step_id, "")
            yield f"{local(entry.happened_at, walker.zone):%H:%M} {figure(walker, entry)}{counts_as}"


def _is_hers(entry: Written, animal: Animal) -> bool:
    return entry.subject.animal_id == animal.id
