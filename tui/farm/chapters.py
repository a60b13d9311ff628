"""The chapters of my farm: which lists there are, and what opens behind each line."""

from store.herd.animal import AnimalSheet, kept
from store.herd.class_rule import ClassRuleSheet, rule_of, rules
from store.herd.feed import FeedSheet, feeds_in_use
from store.herd.measure import MeasureSheet
from store.herd.pail import PailSheet
from store.herd.pen import PenSheet
from store.herd.person import PersonSheet
from store.herd.task import TaskSheet
from store.round.dialect import said
from store.round.rule import rule_words
from store.round.saying import exact
from tui.farm.listing import Chapter, Entry, Listing
from tui.farm.register_words import animal_words, fed, gets, heads_words, job_words, pens_in_use, plans, weighed
from tui.farm.ruling import Ruling
from tui.farm.sheet_form import SheetForm
from tui.farm.things import animal, asking, feed, opening, pen, plan_of
from tui.place import Place

PENS = Chapter(
    "PENS, in the order they are walked",
    lambda register: [
        Entry(f"{row['name']}{heads_words(register, row['pen_id'])}", opening(pen(row)))
        for row in pens_in_use(register)
    ],
    "A pen is where animals stand: a stall, a yard, a field. A begins the first.",
    asking(PenSheet),
)
ANIMALS = Chapter(
    "ANIMALS",
    lambda register: [Entry(animal_words(register, row), opening(animal(row))) for row in kept(register)],
    "A begins the first one.",
    asking(AnimalSheet),
)
FEEDS = Chapter(
    "FEEDS",
    lambda register: [Entry(row["name"], opening(feed(row))) for row in feeds_in_use(register)],
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
        Entry(job_words(register, row), asking(TaskSheet, row["task_id"]))
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


def _new_rule(listing: Listing) -> Place:
    if not feeds_in_use(listing.register):
        raise LookupError("There is no feed yet. Esc, then FEEDS: set one up first.")
    return SheetForm(listing, ClassRuleSheet(listing.register))


def _rule(listing: Listing) -> Place:
    return Ruling(listing.rooms, listing, listing.register)


MEASURES = Chapter(
    "SCOOPS AND MEASURES, each weighed with a feed",
    lambda register: [
        Entry(f"{name} of {feed}: {exact(row['holds_kg'], register.farm.units)}",
              asking(MeasureSheet, row["measure_id"], row["feed_id"]))
        for name, feed, row in weighed(register)
    ],
    "The weight counts, and a scoop of nuts is none of barley. A weighs the first.",
    _first_feed,
)  # fmt: skip
RULES = Chapter(
    "RULES BY CLASS, so much of a feed a day; they are proposed, and change no plan",
    lambda register: [
        Entry(f"{said(row['stage'].value, register.farm.dialect)}, {register.name('feed_as', row['feed_id'])}: "
              f"{rule_words(rule_of(row), register.farm.units)}",
              asking(ClassRuleSheet, row["stage"], row["feed_id"]))
        for row in rules(register)
    ],
    "A begins the first.",
    _new_rule,
)  # fmt: skip
PLANS = Chapter(
    "WHO GETS WHAT",
    lambda register: [
        *(Entry(f"{name}: {gets(register, subject)}", opening(plan_of(subject, name)))
          for subject, name in fed(register)),
        *([Entry("rules by class: by milk, by weight, or fixed", opening(RULES))] if kept(register) else []),
        *([Entry("try a rule of your own: so much a kg of milk, % of weight", _rule)] if kept(register) else []),
    ],
    "First set up a pen or an animal.",
    count=lambda register: sum(bool(plans(register, subject)) for subject, _ in fed(register)),
)  # fmt: skip
