"""M: what else can be done at a ration: a mix, a first step, weighing and scoring her."""

from collections.abc import Callable, Iterator, Mapping
from typing import TYPE_CHECKING
from uuid import UUID

from store.book.register import read_register
from store.book.words import Asks
from store.herd.body import BodySheet
from store.herd.look import LookSheet
from store.herd.sheet import YardSheet
from store.ration.forage_only import has_slipped
from store.ration.parts import Head
from store.round.saying import weight
from store.round.steps import LookStep
from tui.farm.sheet_form import SheetForm
from tui.place import Place, unless_half_typed
from tui.pronouns import NEVER_CALVES, pronouns
from tui.ration.first_step import first_feed, first_kg, first_step
from tui.ration.trial import Cell
from tui.view import View
from tui.walk.picking import Picking
from tui.words import day

if TYPE_CHECKING:
    from tui.ration.ration import Ration


class RationMore(Picking):
    """A numbered list; nothing in it writes before it has asked."""

    ENTER_WORDS = "take it"

    def __init__(self, ration: "Ration") -> None:
        """Over a ration."""
        super().__init__(ration.rooms, ration)
        self.ration = ration
        self.acts = list(self._acts())

    def heading(self) -> str:
        """Whose ration."""
        return f"MORE  {self.ration.case.name}"

    def choices(self) -> list[str]:
        """What is offered."""
        return [words for words, _ in self.acts]

    def picked(self, row: int) -> View:
        """Do it."""
        return self.acts[row][1]()

    def _acts(self) -> Iterator[tuple[str, Callable[[], View]]]:
        heads = self.ration.case.heads
        yield "find a mix of the feeds on hand that fits", lambda: self.rooms.mixing(self.ration)
        if any(head.forage_only and has_slipped(head) for head in heads):
            yield from self._first_step()
        for head in heads[:1] if len(heads) == 1 else ():
            yield from self._of_her(head)

    def _first_step(self) -> Iterator[tuple[str, Callable[[], View]]]:
        seen = self.ration.seen
        feed = first_feed(seen)
        if feed:
            words = f"first step: {weight(first_kg(feed), seen.farm.units)} more {feed.feed.name} a day"
            yield words, lambda: self._try(feed.feed.name, first_step(seen, feed))

    def _try(self, name: str, amounts: Mapping[Cell, float]) -> Place:
        self.ration.try_out(amounts)
        return self.ration.say(f"{name} is tried; nothing is written. Enter starts it on a day.")

    def _of_her(self, head: Head) -> Iterator[tuple[str, Callable[[], View]]]:
        name, animal_id, said_of = head.animal.name, head.animal.id, pronouns(head.animal.stage)
        yield f"weigh {name}, or tape {said_of.whose} heart girth", lambda: self._form(BodySheet, animal_id)
        yield f"score {name}'s condition", lambda: self._score(animal_id)
        hers = "" if head.animal.stage in NEVER_CALVES else ", milk tests, calving"
        yield f"all about {name}: what {said_of.who} is fed for{hers}", lambda: self.rooms.my_farm(self.ration)

    def _form(self, sheet: Callable[..., YardSheet], *of: object) -> Place:
        """A sheet over the ration, which comes back as the book stands then."""
        register = read_register(self.walker.book.desk, self.walker.book.clock.now())
        return SheetForm(self.ration, sheet(register, *of))

    def _score(self, animal_id: UUID) -> View:
        """Her look of this round; where none is due, when it is; where she has none, the sheet that begins one."""
        steps = enumerate(self.walker.steps)
        due = (at for at, step in steps if isinstance(step, LookStep) and step.look.asks is Asks.CONDITION
               and step.animal.id == animal_id)  # fmt: skip
        at = next(due, None)
        if at is not None:
            return unless_half_typed(self, lambda: self.rooms.lamp(at))
        looks = (each for each in self.walker.snapshot.looks if each.asks is Asks.CONDITION)
        look = next((each for each in looks if each.animal_id == animal_id), None)
        if look is None:
            return self._form(LookSheet, animal_id)
        last = f", last on {day(look.last.day)}" if look.last else ""
        return self.say(f"{look.name}: every {look.every_days} days in the {look.slot}{last}. That round asks for it.")
