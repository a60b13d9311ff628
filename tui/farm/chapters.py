"""The chapters of my farm: which lists there are, and which sheet opens behind each line."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any
from uuid import UUID

from store.book.drafts import Subject
from store.book.register import Register
from store.herd.animal import AnimalSheet, DetailSheet, kept
from store.herd.birth import BirthSheet
from store.herd.body import BodySheet
from store.herd.composition import CompositionSheet
from store.herd.feed import FeedSheet, feeds_in_use
from store.herd.leaving import LeavingSheet
from store.herd.look import LookSheet
from store.herd.measure import MeasureSheet
from store.herd.milking import MilkingSheet
from store.herd.moving import MovingSheet
from store.herd.pail import PailSheet
from store.herd.pen import PenSheet
from store.herd.person import PersonSheet
from store.herd.plan import PlanSheet
from store.herd.sheet import YardSheet
from store.herd.soaking import SoakingSheet
from store.herd.task import TaskSheet
from store.round.saying import exact
from tui.farm.listing import Chapter, Entry, Listing, opened
from tui.farm.sheet_form import SheetForm
from tui.place import Place

Row = Mapping[str, Any]


def asking(sheet: Callable[..., YardSheet], *of: Any) -> Callable[[Listing], Place]:
    """What opens a sheet about something, with the book as it stands."""
    return lambda listing: SheetForm(listing, sheet(listing.register, *of))


def opening(chapter: Chapter) -> Callable[[Listing], Place]:
    """What opens another list; an empty one begins with its first."""
    return lambda listing: opened(Listing(listing.rooms, listing, chapter))


PENS = Chapter(
    "PENS, in the order they are walked",
    lambda register: [
        Entry(f"{row['name']}{_heads(register, row['pen_id'])}", opening(_pen(row))) for row in _pens(register)
    ],
    "A pen is where animals stand: a stall, a yard, a field. A begins the first.",
    asking(PenSheet),
)
ANIMALS = Chapter(
    "ANIMALS",
    lambda register: [Entry(_animal_words(register, row), opening(animal(row))) for row in kept(register)],
    "A begins the first one.",
    asking(AnimalSheet),
)
FEEDS = Chapter(
    "FEEDS",
    lambda register: [Entry(row["name"], opening(_feed(row))) for row in feeds_in_use(register)],
    "Nuts, barley, hay, pellets, mineral. A begins the first.",
    asking(FeedSheet),
)
PAILS = Chapter(
    "MILK PAILS",
    lambda register: [
        Entry(f"{row['name']}, empty {exact(row['empty_kg'], register.farm.units)}", asking(PailSheet, row["pail_id"]))
        for row in register.all("pail_as")
    ],
    "Weigh a pail empty once, and milk is told without it. A begins the first.",
    asking(PailSheet),
)
PEOPLE = Chapter(
    "PEOPLE who do rounds",
    lambda register: [
        Entry(f"{row['name']}{'' if row['adult'] else ', a child'}{'' if row['here'] else ', not here any more'}",
              asking(PersonSheet, row["person_id"]))
        for row in sorted(register.all("person_as"), key=lambda row: row["name"])
    ],
    "A begins the first.",
    asking(PersonSheet),
)  # fmt: skip
JOBS = Chapter(
    "STANDING JOBS of the rounds",
    lambda register: [
        Entry(f"{row['slot']}: {row['name']}, {register.name('pen_as', row['pen_id']) or 'bench'}",
              asking(TaskSheet, row["task_id"]))
        for row in sorted(register.all("task_as"), key=lambda row: (row["slot"], row["position"]))
        if row["in_use"]
    ],
    "Water runs, feed room shut, strings in the bin. A begins the first.",
    asking(TaskSheet),
)  # fmt: skip


def _first_feed(listing: Listing) -> Place:
    if not feeds_in_use(listing.register):
        raise LookupError("There is no feed yet. Esc, then FEEDS: set one up first.")
    return SheetForm(listing, MeasureSheet(listing.register))


MEASURES = Chapter(
    "SCOOPS AND MEASURES, each weighed with a feed",
    lambda register: [
        Entry(f"{name} of {feed}: {exact(row['holds_kg'], register.farm.units)}",
              asking(MeasureSheet, row["measure_id"], row["feed_id"]))
        for name, feed, row in _weighed(register)
    ],
    "The weight counts, and a scoop of nuts is none of barley. A weighs the first.",
    _first_feed,
)  # fmt: skip
PLANS = Chapter(
    "WHO GETS WHAT",
    lambda register: [Entry(f"{name}: {_gets(register, subject)}", opening(plan_of(subject, name)))
                      for subject, name in _fed(register)],
    "First set up a pen or an animal.",
    count=lambda register: sum(bool(_plans(register, subject)) for subject, _ in _fed(register)),
)  # fmt: skip


def animal(row: Row) -> Chapter:
    """One animal, and all that is asked about her."""
    id_, name = row["animal_id"], row["name"]
    return Chapter(
        f"{name}",
        lambda register: [
            Entry("name, class, pen, tag", asking(AnimalSheet, id_)),
            Entry(f"what she gets: {_gets(register, Subject(animal_id=id_))}",
                  opening(plan_of(Subject(animal_id=id_), name))),
            Entry("milking, and the calf that shares her milk", asking(MilkingSheet, id_)),
            Entry("moves to another pen, also for the vet or a visit", asking(MovingSheet, id_)),
            Entry("has calved", asking(BirthSheet, id_)),
            Entry("weight or heart girth", asking(BodySheet, id_)),
            Entry("birth, calving, breed, in calf", asking(DetailSheet, id_)),
            Entry("looks at her that come again and again", opening(_looks(row))),
            Entry("leaves: sold, died, gone home", asking(LeavingSheet, id_)),
        ],
    )  # fmt: skip


def plan_of(subject: Subject, name: str) -> Chapter:
    """What an animal or pen gets, feed by feed."""

    def entries(register: Register) -> Iterator[Entry]:
        for feed_id in dict.fromkeys(row["feed_id"] for row in _plans(register, subject)):
            words = f"{register.name('feed_as', feed_id)}: {_amounts(register, subject, feed_id)}"
            yield Entry(words, asking(PlanSheet, subject, name, feed_id))

    def new(listing: Listing) -> Place:
        if not feeds_in_use(listing.register):
            raise LookupError("There is no feed yet. Esc, then FEEDS: set one up first.")
        return SheetForm(listing, PlanSheet(listing.register, subject, name))

    each = ", for each head" if subject.pen_id else ""
    return Chapter(f"{name} GETS{each}", lambda register: list(entries(register)), "A adds a feed.", new)


def _pen(row: Row) -> Chapter:
    pen_id, name = row["pen_id"], row["name"]
    subject = Subject(pen_id=pen_id)
    return Chapter(
        f"{name}",
        lambda register: [
            Entry("name, and place in the walk", asking(PenSheet, pen_id)),
            Entry(f"what each head gets: {_gets(register, subject)}", opening(plan_of(subject, name))),
        ],
    )


def _feed(row: Row) -> Chapter:
    feed_id, name = row["feed_id"], row["name"]
    soaking = [Entry("how it soaks", asking(SoakingSheet, feed_id))] if row["soaked"] else []
    return Chapter(
        f"{name}",
        lambda _: [
            Entry("name, bales, soaking, whom it is never for", asking(FeedSheet, feed_id)),
            Entry("weigh a scoop, flake or bale of it", asking(MeasureSheet, None, feed_id)),
            Entry("what it is made of, from its tag or a test", asking(CompositionSheet, feed_id)),
            *soaking,
        ],
    )


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


def _pens(register: Register) -> list[Row]:
    return sorted((row for row in register.all("pen_as") if row["in_use"]), key=lambda row: row["position"])


def _heads(register: Register, pen_id: UUID) -> str:
    names = [row["name"] for row in kept(register) if _stands(register, row) == pen_id]
    return f": {', '.join(names)}" if names else ", empty"


def _stands(register: Register, row: Row) -> UUID | None:
    standing = register.get("standing", row["animal_id"])
    return standing["pen_id"] if standing else None


def _animal_words(register: Register, row: Row) -> str:
    pen = register.name("pen_as", _stands(register, row)) or "in no pen"
    return ", ".join(filter(None, (row["name"], row["stage"].value, pen, row["tag"])))


def _weighed(register: Register) -> list[tuple[str, str, Row]]:
    in_use = {row["feed_id"] for row in feeds_in_use(register)}
    rows = (row for row in register.all("weighing") if row["feed_id"] in in_use)
    named = (
        (register.name("measure_as", row["measure_id"]), register.name("feed_as", row["feed_id"]), row) for row in rows
    )
    return sorted(named, key=lambda each: each[:2])


def _fed(register: Register) -> Iterator[tuple[Subject, str]]:
    for row in _pens(register):
        yield Subject(pen_id=row["pen_id"]), row["name"]
    for row in kept(register):
        yield Subject(animal_id=row["animal_id"]), row["name"]


def _plans(register: Register, subject: Subject) -> list[Row]:
    rows = register.all("feed_plan")
    own = [row for row in rows if (row["animal_id"], row["pen_id"]) == (subject.animal_id, subject.pen_id)]
    return sorted((row for row in own if row["due_kg"] is not None), key=lambda row: row["position"])


def _gets(register: Register, subject: Subject) -> str:
    feeds = dict.fromkeys(register.name("feed_as", row["feed_id"]) for row in _plans(register, subject))
    return ", ".join(feeds) or "nothing yet"


def _amounts(register: Register, subject: Subject, feed_id: UUID) -> str:
    rows = [row for row in _plans(register, subject) if row["feed_id"] == feed_id]
    return ", ".join(f"{row['slot']} {exact(row['due_kg'], register.farm.units)}" for row in rows)
