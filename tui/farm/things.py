"""One animal, pen or feed, and every sheet that asks about it."""

from collections.abc import Callable, Iterator
from typing import Any
from uuid import UUID

from store.book.drafts import Subject
from store.book.reading.births import last_birth
from store.book.reading.watches import open_watches
from store.book.register import Register
from store.book.words import Stage
from store.herd.animal import AnimalSheet, DetailSheet
from store.herd.birth import BirthSheet
from store.herd.birth_again import CalvingAgain
from store.herd.body import BodySheet
from store.herd.breeding import BreedingSheet
from store.herd.bulling import NOT_BULLING, BullingSheet
from store.herd.calf import CalfSheet, WeaningSheet
from store.herd.composition import CompositionSheet
from store.herd.drying_off import DryingOffSheet
from store.herd.feed import FeedSheet, feeds_in_use
from store.herd.feed_limit import FeedLimitSheet
from store.herd.free import FreeSheet
from store.herd.goal import GoalSheet
from store.herd.leaving import LeavingSheet
from store.herd.look import LookSheet
from store.herd.measure import MeasureSheet
from store.herd.milk_test import MilkTestSheet
from store.herd.milking import MilkingSheet
from store.herd.moving import MovingSheet
from store.herd.named_moment import moment_text
from store.herd.pen import PenSheet
from store.herd.plan import PlanSheet
from store.herd.sheet import YardSheet
from store.herd.soaking import SoakingSheet
from store.herd.substitute import SubstituteSheet, substitute_words
from store.herd.treatment import TreatmentSheet
from store.herd.withheld import WithheldSheet
from store.round.dialect import said
from store.round.meat import meat_until
from tui.farm.listing import Chapter, Entry, Listing, opened
from tui.farm.register_words import Row, amounts, gets, plans
from tui.farm.sheet_form import SheetForm
from tui.place import Place
from tui.pronouns import MALES, NEVER_CALVES, pronouns


def asking(sheet: Callable[..., YardSheet], *of: Any) -> Callable[[Listing], Place]:
    """What opens a sheet about something, with the book as it stands."""
    return lambda listing: SheetForm(listing, sheet(listing.register, *of))


def to_ration(subject: Subject) -> Callable[[Listing], Place]:
    """What opens the ration of an animal or a pen."""
    return lambda listing: listing.rooms.ration(listing, subject)


def opening(chapter: Chapter) -> Callable[[Listing], Place]:
    """What opens another list; an empty one begins with its first."""
    return lambda listing: opened(Listing(listing.rooms, listing, chapter))


def animal(row: Row) -> Chapter:
    """One animal, and all that is asked about her."""
    id_, name, said_of = row["animal_id"], row["name"], pronouns(row["stage"])
    return Chapter(
        f"{name}",
        lambda register: [
            Entry("name, class, pen, tag", asking(AnimalSheet, id_)),
            Entry(f"what {said_of.who} gets: {gets(register, Subject(animal_id=id_))}",
                  opening(plan_of(Subject(animal_id=id_), name))),
            *_of_a_calf(row),
            Entry("moves to another pen, also for the vet or a visit", asking(MovingSheet, id_)),
            *([] if row["stage"] in NEVER_CALVES else [Entry("has calved", asking(BirthSheet, id_))]),
            Entry("weight or heart girth", asking(BodySheet, id_)),
            Entry("birth, calving, breed", asking(DetailSheet, id_)),
            Entry(f"looks at {said_of.whom} that come again and again", opening(_looks(row))),
            Entry("leaves: sold, died, gone home", _leaving(id_)),
            Entry("treatments, and how long milk and meat are withheld", opening(treatments(row))),
            *_withheld(row),
            *([Entry("drying off", asking(DryingOffSheet, id_))] if row["stage"] is Stage.IN_MILK else []),
            *([Entry("her calving was otherwise: when, who lives", _calving(id_))] if row["calved_on"] else []),
            *_of_breeding(register, row),
            Entry(f"what {said_of.who} is fed for: condition, gain, forage alone", asking(GoalSheet, id_)),
            *_milkings(row),
            Entry(f"{said_of.whose} ration: what {said_of.who} needs and gets", to_ration(Subject(animal_id=id_))),
        ],
    )  # fmt: skip


def _calving(animal_id: UUID) -> Callable[[Listing], Place]:
    """What opens the last calving of a cow, to be corrected."""

    def opens(listing: Listing) -> Place:
        desk, now = listing.walker.book.desk, listing.walker.book.clock.now()
        known = last_birth(desk, animal_id, now)
        if known is None:
            return listing.say("No calving of hers is written with its time. `has calved` writes one.")
        return SheetForm(listing, CalvingAgain(listing.register, animal_id, known, open_watches(desk, now)))

    return opens


def _of_a_calf(row: Row) -> list[Entry]:
    """A calf sucks and is weaned; any other that is not male may be milked."""
    id_ = row["animal_id"]
    if row["stage"] in MALES:
        return []
    if row["stage"] is not Stage.CALF:
        return [Entry("milking, and the calf that shares her milk", asking(MilkingSheet, id_))]
    return [
        Entry("its cow, and when it is shut away from her", asking(CalfSheet, id_)),
        Entry("weaned, or with another cow", asking(WeaningSheet, id_)),
    ]


def _withheld(row: Row) -> list[Entry]:
    """Of a male there is no milk."""
    if row["stage"] in MALES:
        return []
    words = f"{pronouns(row['stage']).whose} milk is withheld on the vet's word, or yours"
    return [Entry(words, asking(WithheldSheet, row["animal_id"]))]


def _milkings(row: Row) -> list[Entry]:
    """Of a male there are none."""
    if row["stage"] in MALES:
        return []
    return [Entry("look back at her milkings", lambda listing: listing.rooms.looking_back(listing, row["animal_id"]))]


def _of_breeding(register: Register, row: Row) -> list[Entry]:
    """Not of a calf, nor of a male; a milk test of her that is milked."""
    id_, bulling = row["animal_id"], said("bulling", register.farm.dialect)
    if row["stage"] in NOT_BULLING:
        return []
    tested = [Entry("her milk was tested: fat, protein", asking(MilkTestSheet, id_))]
    return [
        Entry(f"{bulling}: seen now, or earlier", asking(BullingSheet, id_)),
        Entry("served, in calf, due", asking(BreedingSheet, id_)),
        *(tested if row["stage"] is Stage.IN_MILK else []),
    ]


def _leaving(id_: UUID) -> Callable[[Listing], Place]:
    """How she leaves; her meat may be withheld."""

    def opened_on(listing: Listing) -> Place:
        walker = listing.walker
        meat = meat_until(walker.snapshot, id_, walker.book.clock.now())
        return SheetForm(listing, LeavingSheet(listing.register, id_, meat))

    return opened_on


def plan_of(subject: Subject, name: str) -> Chapter:
    """What an animal or pen gets, feed by feed."""

    def entries(register: Register) -> Iterator[Entry]:
        for feed_id in dict.fromkeys(row["feed_id"] for row in plans(register, subject)):
            words = f"{register.name('feed_as', feed_id)}: {amounts(register, subject, feed_id)}"
            yield Entry(words, asking(PlanSheet, subject, name, feed_id))

    def new(listing: Listing) -> Place:
        if not feeds_in_use(listing.register):
            raise LookupError("There is no feed yet. Esc, then FEEDS: set one up first.")
        return SheetForm(listing, PlanSheet(listing.register, subject, name))

    each = ", for each head" if subject.pen_id else ""
    return Chapter(f"{name} GETS{each}", lambda register: list(entries(register)), "A adds a feed.", new)


def pen(row: Row) -> Chapter:
    pen_id, name = row["pen_id"], row["name"]
    subject = Subject(pen_id=pen_id)
    return Chapter(
        f"{name}",
        lambda register: [
            Entry("name, and place in the walk", asking(PenSheet, pen_id)),
            Entry(f"what each head gets: {gets(register, subject)}", opening(plan_of(subject, name))),
            Entry("its ration: what a head needs and gets", to_ration(subject)),
        ],
    )


def feed(row: Row) -> Chapter:
    feed_id, name = row["feed_id"], row["name"]

    def soaking(register: Register) -> list[Entry]:
        if not row["soaked"]:
            return []
        instead = f"thrown out, what is given instead: {substitute_words(register, feed_id)}"
        return [Entry("how it soaks", asking(SoakingSheet, feed_id)), Entry(instead, asking(SubstituteSheet, feed_id))]

    return Chapter(
        f"{name}",
        lambda register: [
            Entry("name, bales, soaking, whom it is never for", asking(FeedSheet, feed_id)),
            Entry("weigh a scoop, flake or bale of it", asking(MeasureSheet, None, feed_id)),
            Entry("what it is made of, from its label or a test", asking(CompositionSheet, feed_id)),
            Entry("where it stands free, as a mineral tub", asking(FreeSheet, feed_id)),
            *soaking(register),
            Entry("its limits: forage or not, most in a meal, a day, a step", asking(FeedLimitSheet, feed_id)),
        ],
    )


def treatments(row: Row) -> Chapter:
    """What an animal is treated with, and was; the newest first."""
    id_, name = row["animal_id"], row["name"]

    def entries(register: Register) -> Iterator[Entry]:
        own = (each for each in register.all("treatment_as") if each["animal_id"] == id_)
        for each in sorted(own, key=lambda each: each["first_at"], reverse=True):
            words = f"{each['product']}, from {moment_text(each['first_at'], register.farm.zone)}"
            yield Entry(
                f"{words}{'' if each['in_use'] else ', ended'}", asking(TreatmentSheet, id_, each["treatment_id"])
            )

    return Chapter(f"TREATMENTS OF {name}", lambda register: list(entries(register)),
                   "What label or vet have ordered. A begins one.", asking(TreatmentSheet, id_))  # fmt: skip


def _looks(row: Row) -> Chapter:
    id_, name = row["animal_id"], row["name"]
    return Chapter(
        f"LOOKS AT {name}",
        lambda register: [
            Entry(f"{each['name']}, {each['slot']}", asking(LookSheet, id_, each["look_id"]))
            for each in register.all("look_as")
            if each["animal_id"] == id_ and each["in_use"]
        ],
        "A foot, condition, signs of calving. A begins the first.",
        asking(LookSheet, id_),
    )
