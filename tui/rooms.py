"""Which place leads to which: the one module that knows them all."""

from typing import Any
from uuid import UUID

from store.book.drafts import Subject
from store.book.facts.farm import Animal
from store.round.judging import Judged
from store.round.steps import ApartStep, FeedStep, MilkStep, SoakCheckStep, Step
from store.round.together import buckets, plain_steps
from tui.bench.bench import Bench
from tui.board.board import Board
from tui.closing.closing import Closing
from tui.closing.ending import Ending
from tui.closing.printing import Printing
from tui.help import Help
from tui.place import Place
from tui.walk.asking import ExtraFed, LeftOver, NewScoop, Reason
from tui.walk.dropped import Dropped
from tui.walk.lamp import Lamp
from tui.walk.later import Later
from tui.walk.left_with_her import LeftWithHer
from tui.walk.more import MoreList
from tui.walk.pouring import Pouring
from tui.walk.quarters import QuarterPage
from tui.walk.skipping import Skipping
from tui.walk.thrown_out import ThrownOut
from tui.walk.undoing import Undoing
from tui.walker import Walker
from tui.yard.again import LookAgain
from tui.yard.going import Going
from tui.yard.keeping import Keeping
from tui.yard.locked import Locked
from tui.yard.noting import Noting
from tui.yard.on_paper import OnPaper
from tui.yard.persons import Persons
from tui.yard.returned import Returned, is_long_ago
from tui.yard.rounds import Rounds
from tui.yard.timing import Timing
from tui.yard.told import Told, to_tell
from tui.yard.unfinished import Unfinished
from tui.yard.vet import Vet
from tui.yard.whom import Whom


class House:
    """The places of one sitting."""

    def __init__(self, walker: Walker) -> None:
        """At the round at hand."""
        self.walker = walker

    def enter(self) -> Place:
        """Where a sitting begins: a round left open, or never opened, is asked about first; then this one."""
        this = self.walker.this()
        left = self.walker.left_unfinished(this)
        if left:
            self.walker.open_turn(left)
            asked = Unfinished(self, Closing(self))
            told = to_tell(self.walker)
            return Told(self, asked, told) if told else asked
        return self._begin() if self.walker.turn == this else self.this_round()

    def this_round(self) -> Place:
        """The round of this moment, where it stands."""
        self.walker.open_turn(self.walker.this())
        return self._begin()

    def _begin(self) -> Place:
        """What the last person left is read first; back after a while, what the time has changed."""
        told = to_tell(self.walker)
        if told:
            return Told(self, self.first(), told)
        if self.walker.ended():
            return self.bench()
        if not self.walker.steps:
            return self.my_farm(self.closing())
        return Returned(self, self.first()) if is_long_ago(self.walker) else self.first()

    def first(self, after: int = -1) -> Place:
        """The first step behind a place in the walk that is not recorded, or the closing if there is none."""
        index = self.walker.first_open(after)
        return self.closing() if index is None else self.lamp(index)

    def lamp(self, index: int, *, taken_up: bool = True) -> Place:
        """A step of the walk."""
        return Lamp(self, index, taken_up=taken_up)

    def closing(self) -> Place:
        """The end of the walk."""
        return Closing(self)

    def skipping(self, index: int, back: Place) -> Place:
        """The reasons for skipping a step."""
        return Skipping(self, index, back)

    def later(self, index: int, back: Place) -> Place:
        """When a step is to be done instead."""
        return Later(self, index, back)

    def more(self, back: Lamp) -> Place:
        """What else can be done at a step."""
        return MoreList(self, back)

    def quarters(self, back: Lamp) -> Place:
        """What is wrong with a quarter."""
        return QuarterPage(self, back)

    def pouring(self, back: Lamp) -> Place:
        """With which other pail a pail was poured together."""
        return Pouring(self, back)

    def left_with_her(self, back: Lamp, step: ApartStep) -> Place:
        """Why a calf is left with its cow tonight."""
        return LeftWithHer(self, back, step)

    def why(self, back: Place) -> Place:
        """What the numbers of a place are made of; where none is reckoned, that is said there."""
        from tui.why.why import Why  # noqa: PLC0415 not on the way to the first frame

        numbers = back.numbers()
        return Why(self, back, back.numbers_of(), numbers) if numbers else back.say("Nothing here is reckoned.")

    def dropped(self, there: Place, step: MilkStep, judged: Judged) -> Place:
        """The usual questions, where a pail is far under her usual."""
        return Dropped(self, there, step, judged)

    def reason(self, index: int, back: Place) -> Place:
        """A reason in the keeper's own words."""
        return Reason(self, back, index)

    def left_over(self, back: Lamp, step: FeedStep) -> Place:
        """How much of a feed was left."""
        return LeftOver(self, back, step)

    def new_scoop(self, back: Lamp, step: FeedStep) -> Place:
        """A measure weighed here and now."""
        return NewScoop(self, back, step)

    def thrown_out(self, back: Lamp, step: SoakCheckStep) -> Place:
        """Why a soaked batch is thrown out, in words."""
        return ThrownOut(self, back, step)

    def following(self, back: Lamp, step: FeedStep) -> Place:
        """A change under way: held, stepped back, ended."""
        from tui.ration.following import Following  # noqa: PLC0415 heavy: it reads with the records

        return Following(self, back, step)

    def also_given(self, back: Lamp, step: FeedStep) -> Place:
        """Something else that was given."""
        return ExtraFed(self, back, step)

    def returned(self, back: Place) -> Place:
        """What the time away has changed."""
        return Returned(self, back)

    def past_rounds(self, back: Place) -> Place:
        """Earlier rounds."""
        return Rounds(self, back)

    def on_paper(self, back: Place) -> Place:
        """The few times of a round that was done on paper."""
        return OnPaper(self, back)

    def undoing(self, back: Place) -> Place:
        """What can be undone; over a step it comes back there where that has no step of its own."""
        step = _step_of(back)
        return Undoing(self, back, step.step_id if step else None)

    def going(self, back: Place) -> Place:
        """To a step by a few letters."""
        return Going(self, back)

    def noting(self, back: Place) -> Place:
        """A note about what we stand at, or the whole yard."""
        step = _step_of(back)
        if step:
            return Noting(self, back, step.subject, step.name)
        name = self._name_of(back.concerns())
        return Noting(self, back, back.concerns() if name else Subject(), name)

    def _name_of(self, subject: Subject) -> str:
        """Of an animal or a pen; empty where it is about neither."""
        names = {each.id: each.name for each in self.walker.snapshot.animals}
        names |= {each.id: each.name for each in self.walker.snapshot.pens}
        return names.get(subject.id, "")

    def persons(self, back: Place) -> Place:
        """Who does the round."""
        return Persons(self, back)

    def timing(self, back: Place) -> Place:
        """When it happened."""
        return Timing(self, back)

    def keeping(self, back: Place) -> Place:
        """A copy of the book on a stick."""
        return Keeping(self, back)

    def vet(self, back: Place) -> Place:
        """The vet's page about the animal that we stand at; where there is none it is picked first."""
        step = _step_of(back)
        animal = self._animal((step.subject if step else back.concerns()).animal_id)
        return Vet(self, back, animal) if animal else self.whom(back)

    def whom(self, back: Place) -> Place:
        """The vet's page about an animal that is picked."""
        return Whom(self, back)

    def looking_again(self, back: Place, watch_id: UUID | None = None) -> Place:
        """What is to be looked at again, and when; watch_id: the step_id of the one that is marked."""
        step = _step_of(back)
        return LookAgain(self, back, step.subject if step else Subject(), watch_id)

    def bench(self, back: Place | None = None) -> Place:
        """What comes next by the clock, between rounds; over a step it goes back there."""
        step = _step_of(back)
        return Bench(self, step.step_id if step else None).told_first()

    def left_for_you(self, back: Place) -> Place:
        """What the last round left for this one, over a place; the place itself where there is nothing to tell."""
        told = to_tell(self.walker)
        return Told(self, back, told) if told else back

    def looking_back(self, back: Place, animal_id: UUID | None = None) -> Place:
        """A cow's last milkings: of the one named, else of the one we stand at, at her calf's step too."""
        from tui.yard.looking_back import LookingBack  # noqa: PLC0415 not on the way to the first frame

        cow = self._animal(animal_id or _cow_id(_step_of(back)))
        return LookingBack(self, back, cow) if cow else back.say("Y looks back at a cow: G goes to one of her steps.")

    def locked(self, back: Place) -> Place:
        """Keys that do nothing."""
        return Locked(self, back)

    def buckets(self, back: Place) -> Place:
        """All buckets on one screen."""
        found = tuple(step.step_id for step in buckets(self.walker.steps))
        return Board(self, back, "BUCKETS", found) if found else back.say("No animal gets a bucket in this round.")

    def whole_pen(self, back: Lamp) -> Place:
        """All plain steps of the pen we stand in."""
        place = back.step.place
        found = tuple(step.step_id for step in plain_steps(self.walker.steps, place, self.walker.moment()))
        words = f"Nothing in {place} can be written together: counts, milk, calves and udders go one by one."
        return Board(self, back, f"{place.upper()} AS ONE PEN", found) if found else back.say(words)

    def printing(self, back: Place) -> Place:
        """The closing as a file, or on paper."""
        return Printing(self, back)

    def ending(self, back: Place) -> Place:
        """Asks before the round is ended."""
        return Ending(self, back)

    def my_farm(self, back: Place) -> Place:
        """What is set up; at a step, what the step is about comes first."""
        from tui.farm.my_farm import MyFarm  # noqa: PLC0415 heavy: it reads with the records

        step = _step_of(back)
        return MyFarm(self, back, step.step_id if step else None).about(step.subject if step else back.concerns())

    def treatments(self, back: Lamp, animal_id: UUID) -> Place:
        """What an animal is treated with, and how long that withholds."""
        from tui.farm.my_farm import MyFarm  # noqa: PLC0415 heavy: it reads with the records

        return MyFarm(self, back, back.step.step_id).treatments(animal_id)

    def weather(self, back: Place) -> Place:
        """Tonight's forecast, and what it asks for."""
        from tui.yard.weather import WeatherForm  # noqa: PLC0415 heavy: it reads with the records

        step = _step_of(back)
        return WeatherForm(back, step.step_id if step else None)

    def taking_back(self, back: Any) -> Place:
        """What was changed of the farm."""
        from tui.farm.taking_back import taking_back  # noqa: PLC0415

        return taking_back(back)

    def feed_room(self, back: Place) -> Place:
        """What is there of each feed."""
        from tui.feed_room.room import FeedRoom  # noqa: PLC0415 not on the way to the first frame

        return FeedRoom(self, back)

    def milk_store(self, back: Place) -> Place:
        """The house milk that is there, and where all of it went."""
        from tui.milk_store.store import MilkStore  # noqa: PLC0415 not on the way to the first frame

        return MilkStore(self, back)

    def ration(self, back: Place, subject: Subject | None = None) -> Place:
        """What an animal, or a pen fed as one, needs and gets; without one, of what we stand at."""
        from tui.ration.opening import ration  # noqa: PLC0415 heavy: it reads with the records

        step = _step_of(back)
        return ration(self, back, subject or (step.subject if step else back.concerns()))

    def mixing(self, ration: Any) -> Place:
        """A mix of feeds that fits a ration, or the nearest."""
        from tui.ration.mixing import Mixing  # noqa: PLC0415 heavy: it loads the solver

        return Mixing(ration)

    def at_step(self, step_id: UUID | None) -> Place:
        """A step of the walk by its name, where it is still planned; else the first that is not recorded.

        The very first round begins at its beginning: what was just set up may stand before that step.
        """
        if not self.walker.snapshot.last.entries and all(step.entry is None for step in self.walker.steps):
            return self.first()
        return self.step_or(step_id, self.first())

    def step_or(self, step_id: UUID | None, otherwise: Place) -> Place:
        """A step by its name, wherever it stands in the walk now; another place where there is none such."""
        index = next((at for at, each in enumerate(self.walker.steps) if each.step_id == step_id), None)
        return otherwise if index is None else self.lamp(index)

    def help(self, back: Place) -> Place:
        """The keys of a place."""
        return Help(self, back)

    def _animal(self, animal_id: UUID | None) -> Animal | None:
        return next((each for each in self.walker.snapshot.animals if each.id == animal_id), None)


def _step_of(place: Place | None) -> Step | None:
    return place.step if isinstance(place, Lamp | Dropped) else None


def _cow_id(step: Step | None) -> UUID | None:
    """The animal of a step; of a calf that is parted from its cow or let in, the cow."""
    if isinstance(step, ApartStep):
        return step.cow.id
    return step.subject.animal_id if step else None
