"""A place: a view of the round. It knows the walker, and by the rooms how one place leads to another."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, ClassVar, Protocol
from uuid import UUID

from store.book.drafts import Subject
from store.husbandry.why import Value
from tui.view import Key, View, go_out
from tui.walker import Walker

if TYPE_CHECKING:
    from store.round.whys import Asked


class Rooms(Protocol):
    """How one place leads to another, so that no place imports the next."""

    walker: Walker

    def enter(self) -> "Place":
        """Where a sitting, or the next round of one, begins."""

    def first(self, after: int = -1) -> "Place":
        """The first step behind a place in the walk that is not recorded, or the closing."""

    def this_round(self) -> "Place":
        """The round of this moment, where it stands."""

    def lamp(self, index: int, *, taken_up: bool = True) -> "Place":
        """A step of the walk."""

    def closing(self) -> "Place":
        """The end of the walk."""

    def skipping(self, index: int, back: "Place") -> "Place":
        """The reasons for skipping a step."""

    def later(self, index: int, back: "Place") -> "Place":
        """When a step is to be done instead."""

    def more(self, back: Any) -> "Place":
        """What else can be done at a step."""

    def quarters(self, back: Any) -> "Place":
        """What is wrong with a quarter."""

    def pouring(self, back: Any) -> "Place":
        """With which other pail a pail was poured together."""

    def left_with_her(self, back: Any, step: Any) -> "Place":
        """Why a calf is left with its cow tonight."""

    def why(self, back: "Place") -> "Place":
        """What the numbers of a place are made of."""

    def dropped(self, there: "Place", step: Any, judged: Any) -> "Place":
        """The usual questions, where a pail is far under her usual."""

    def reason(self, index: int, back: "Place") -> "Place":
        """A reason in the keeper's own words."""

    def left_over(self, back: Any, step: Any) -> "Place":
        """How much of a feed was left."""

    def new_scoop(self, back: Any, step: Any) -> "Place":
        """A measure weighed here and now."""

    def thrown_out(self, back: Any, step: Any) -> "Place":
        """Why a soaked batch is thrown out."""

    def following(self, back: Any, step: Any) -> "Place":
        """A change under way: held, stepped back, ended."""
        ...

    def also_given(self, back: Any, step: Any) -> "Place":
        """Something else that was given."""

    def returned(self, back: "Place") -> "Place":
        """What the time away has changed."""

    def past_rounds(self, back: "Place") -> "Place":
        """Earlier rounds."""

    def on_paper(self, back: "Place") -> "Place":
        """The few times of a round that was done on paper."""

    def undoing(self, back: "Place") -> "Place":
        """What can be undone."""

    def going(self, back: "Place") -> "Place":
        """To a step by a few letters."""

    def noting(self, back: "Place") -> "Place":
        """A note."""

    def persons(self, back: "Place") -> "Place":
        """Who does the round."""

    def timing(self, back: "Place") -> "Place":
        """When it happened."""

    def keeping(self, back: "Place") -> "Place":
        """A copy of the book on a stick."""

    def looking_again(self, back: "Place", watch_id: UUID | None = None) -> "Place":
        """What is to be looked at again, and when; watch_id: the step_id of the one that is marked."""

    def vet(self, back: "Place") -> "Place":
        """Signs that mean call, the number, her facts."""

    def left_for_you(self, back: "Place") -> "Place":
        """What the last round left for this one, over a place."""

    def bench(self, back: "Place | None" = None) -> "Place":
        """What comes next by the clock, between rounds; over a step it goes back there."""

    def looking_back(self, back: "Place", animal_id: UUID | None = None) -> "Place":
        """A cow's last milkings."""

    def whom(self, back: "Place") -> "Place":
        """The vet's page about an animal that is picked."""

    def locked(self, back: "Place") -> "Place":
        """Keys that do nothing, for wiping the keyboard."""

    def buckets(self, back: "Place") -> "Place":
        """All buckets on one screen."""

    def treatments(self, back: Any, animal_id: UUID) -> "Place":
        """What an animal is treated with."""
        ...

    def whole_pen(self, back: Any) -> "Place":
        """All plain steps of a pen on one screen."""

    def printing(self, back: "Place") -> "Place":
        """The closing as a file, or on paper."""

    def ending(self, back: "Place") -> "Place":
        """Asks before the round is ended."""

    def my_farm(self, back: "Place") -> "Place":
        """What is set up, and the sheets that change it."""

    def taking_back(self, back: Any) -> "Place":
        """What was changed of the farm."""

    def feed_room(self, back: "Place") -> "Place":
        """What is there of each feed."""

    def milk_store(self, back: "Place") -> "Place":
        """The house milk that is there, and where all of it went."""

    def ration(self, back: "Place", subject: Subject | None = None) -> "Place":
        """What an animal, or a pen fed as one, needs and gets; without one, of what we stand at."""

    def mixing(self, ration: Any) -> "Place":
        """A mix of feeds that fits a ration, or the nearest."""

    def weather(self, back: "Place") -> "Place":
        """Tonight's forecast, and what it asks for."""

    def at_step(self, step_id: UUID | None) -> "Place":
        """A step by its name, where it is still planned; else the first that is not recorded."""

    def step_or(self, step_id: UUID | None, otherwise: "Place") -> "Place":
        """A step by its name, wherever it stands in the walk now; another place where there is none such."""

    def help(self, back: "Place") -> "Place":
        """The keys of a place."""


class Place(View):
    """Where the keeper is in the round.

    READS_ANEW: it reads the book by itself where it was changed, so that one comes back to it from my farm.
    """

    READS_ANEW: ClassVar[bool] = False

    def __init__(self, rooms: Rooms) -> None:
        """At the round at hand."""
        super().__init__()
        self.rooms = rooms
        self.walker = rooms.walker

    def concerns(self) -> Subject:
        """The animal, pen, feed or job that it is about."""
        return Subject()

    def numbers(self) -> tuple[Value, ...]:
        """The numbers that it shows, each with its why, in the order of the screen; only reckoned when W asks."""
        return ()

    def as_asked(self) -> "Asked":
        """What a why is answered from: the round as it stands, at the moment that a key would write."""
        from store.round.whys import Asked  # noqa: PLC0415 not on the way to the first frame

        return Asked(self.walker.snapshot, self.walker.steps, self.walker.moment())

    def numbers_of(self) -> str:
        """Whose numbers these are, in a few words."""
        return ""


class Over(Place):
    """A place over another one, which it goes back to."""

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it goes back to."""
        super().__init__(rooms)
        self.came_from = back

    @property
    def half_typed(self) -> str:
        """What is typed in the place below stays there."""
        return self.came_from.half_typed

    def back(self) -> Place:
        """Where we came from; nothing is written."""
        return self.came_from

    def leave(self) -> View | None:
        """Leave, unless something is half typed in the place below: then back to it, where the keys for it are."""
        return self.came_from.leave() if self.half_typed else None


def unless_half_typed(place: Place, go: Callable[[], View]) -> View:
    """To another place, unless that would lose what is typed, picked or marked here or below."""
    return (place.leave() or place) if place.half_typed else go()


def _eats(place: Place) -> bool:
    """Whether it is about an animal or a pen, whose ration the key line offers in the place of the lock."""
    subject = place.concerns()
    return bool(subject.animal_id or subject.pen_id)


WHY_KEY = Key(("w",), "W", lambda place: "why" if type(place).numbers is not Place.numbers else "",
              "Why: the numbers here, what each is made of, where from, how sure.",
              lambda place: place.rooms.why(place))  # fmt: skip
UNDO_KEY = Key(("u",), "U", "undo", "Undoes what was written last, or before: shows it first, Enter undoes.",
               lambda place: unless_half_typed(place, lambda: place.rooms.undoing(place)))  # fmt: skip
GO_KEY = Key(("g",), "G", "go to", "To a pen, animal or step by a few letters; typing over a done one corrects it.",
             lambda place: unless_half_typed(place, lambda: place.rooms.going(place)))  # fmt: skip
NOTE_KEY = Key(
    ("n",), "N", "note", "A note, for the book or for the next person.", lambda place: place.rooms.noting(place)
)
PERSON_KEY = Key(("p",), "P", "person", "Who does the round.", lambda place: place.rooms.persons(place))
TIME_KEY = Key(("t",), "T", "time", "When it happened, for the next entry.", lambda place: place.rooms.timing(place))
VET_KEY = Key(("v",), "V", "vet", "Signs that mean call the vet, the number, her facts.",
              lambda place: place.rooms.vet(place))  # fmt: skip
LOOK_BACK_KEY = Key(("y",), "Y", "", "Looks back at her last milkings, by their hours, against her usual.",
                    lambda place: place.rooms.looking_back(place))  # fmt: skip
LOCK_KEY = Key(("z",), "Z", lambda place: "" if _eats(place) else "lock",
               "Locks the keys for wiping; `open` and Enter unlock.",
               lambda place: place.rooms.locked(place))  # fmt: skip
BUCKETS_KEY = Key(("b",), "B", "buckets", "All buckets on one screen.", lambda place: place.rooms.buckets(place))
HELP_KEY = Key(("h", "question_mark"), "H", "help", "This list of keys.", lambda place: place.rooms.help(place))
LEAVE_KEY = Key(("q", "ctrl+c", "ctrl+q"), "Q", "leave", "Leaves. The round stays open; coming back goes on.",
                go_out)  # fmt: skip
ROUNDS_KEY = Key(("r",), "R", "rounds", "Earlier rounds: to look at, type in, correct.",
                 lambda place: unless_half_typed(place, lambda: place.rooms.past_rounds(place)))  # fmt: skip
KEEP_KEY = Key(("k",), "K", "", "Keeps a copy of the book on a stick, and reads it again.",
               lambda place: place.rooms.keeping(place))  # fmt: skip
FARM_KEY = Key(("f",), "F", "my farm", "My farm: pens, animals, feeds, scoops, plans, people, jobs, settings.",
               lambda place: unless_half_typed(place, lambda: place.rooms.my_farm(place)))  # fmt: skip
FEED_ROOM_KEY = Key(("d",), "D", "feed room", "The feed room: what is there, deliveries, what was weighed, costs.",
                    lambda place: place.rooms.feed_room(place))  # fmt: skip
WEATHER_KEY = Key(("c",), "C", "weather", "Cold, heat, wet tonight, and what hay, soak and water that asks for.",
                  lambda place: unless_half_typed(place, lambda: place.rooms.weather(place)))  # fmt: skip
AGAIN_KEY = Key(("o",), "O", "", "Look again: what has to be looked at at a time, and something new of this animal.",
                lambda place: place.rooms.looking_again(place))  # fmt: skip
BENCH_KEY = Key(("i",), "I", "", "The bench between rounds: what comes next, by the clock, and how long is left.",
                lambda place: unless_half_typed(place, lambda: place.rooms.bench(place)))  # fmt: skip
RATION_KEY = Key(("j",), "J", lambda place: "ration" if _eats(place) else "",
                 "The ration: what she needs and gets, and what another amount would do.",
                 lambda place: place.rooms.ration(place))  # fmt: skip
MILK_STORE_KEY = Key(("x",), "X", "", "The milk store: house milk by age, what is used up, litres by use.",
                     lambda place: place.rooms.milk_store(place))  # fmt: skip
YARD_KEYS = (
    BUCKETS_KEY, GO_KEY, NOTE_KEY, UNDO_KEY, PERSON_KEY, TIME_KEY, VET_KEY, ROUNDS_KEY, FARM_KEY, FEED_ROOM_KEY,
    WEATHER_KEY, AGAIN_KEY, BENCH_KEY, MILK_STORE_KEY, RATION_KEY, KEEP_KEY, HELP_KEY, LOOK_BACK_KEY, LOCK_KEY,
    LEAVE_KEY,
)  # fmt: skip
