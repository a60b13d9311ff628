"""Tonight's exception: a calf is left with its cow. Why, then what follows from it, and Enter writes it."""

from typing import ClassVar

from store.round.confirm import left_together
from store.round.quarters import open_marks
from store.round.steps import ApartStep
from tui.frame import framed
from tui.page import Line, Page, Role, Size, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, Over, Place, Rooms
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, go_back
from tui.walk.lamp import Lamp
from tui.walk.picking import Picking
from tui.walk.quarter_cards import was_words
from tui.yard.wording import Wording

NOBODY, UNWELL, STORM, TOO_YOUNG = "nobody here at milking", "calf unwell", "storm", "calf too young"
REASONS = (NOBODY, UNWELL, STORM, TOO_YOUNG, "another reason: type it")
LOOK_IN = "A calf that is dull, loose or does not suck is looked at again soon: V has the signs and the number."


class LeftWithHer(Picking):
    """Why a calf is not shut away tonight."""

    ENTER_WORDS = "what follows from it"

    def __init__(self, rooms: Rooms, lamp: Lamp, step: ApartStep) -> None:
        """Over a lamp at a calf."""
        super().__init__(rooms, lamp)
        self.lamp, self.step = lamp, step

    def heading(self) -> str:
        """Which calf, with which cow."""
        return f"LEFT WITH HER TONIGHT  {self.step.name} with {self.step.cow.name}: why?"

    def choices(self) -> list[str]:
        """The reasons."""
        return list(REASONS)

    def picked(self, row: int) -> Place:
        """What follows; the last of the list is typed in words first."""
        if row == len(REASONS) - 1:
            return OwnReason(self, self.lamp, self.step)
        return Follows(self, self.lamp, self.step, REASONS[row])


class OwnReason(Wording):
    """A reason in the keeper's own words."""

    MOST: ClassVar[int] = 80

    def __init__(self, back: Place, lamp: Lamp, step: ApartStep) -> None:
        """Over the list."""
        super().__init__(back.rooms, back)
        self.lamp, self.step = lamp, step

    def heading(self) -> str:
        """Which calf."""
        return f"LEFT WITH HER TONIGHT  {self.step.name}: the reason in your words"

    def enter(self) -> Place:
        """What follows from it."""
        if not self.text.strip():
            return self.say("Nothing is typed. Type the reason, or Esc goes back.")
        return Follows(self, self.lamp, self.step, self.text.strip())


class Follows(Over):
    """What it means for the morning, once; Enter writes it."""

    def __init__(self, back: Place, lamp: Lamp, step: ApartStep, why: str) -> None:
        """Over the list of reasons, or over the one that is typed: going back keeps it."""
        super().__init__(back.rooms, back)
        self.lamp, self.step, self.why = lamp, step, why

    def enter(self) -> Place:
        """Write it, and go on to the next open step."""
        return self.lamp.write(left_together(self.walker.hand(), self.step, self.why))

    def draw(self, size: Size) -> Page:
        """One sentence for each thing that follows."""
        heading = f"{self.step.name} stays with {self.step.cow.name} tonight: {self.why}"
        body: list[Line] = [(), *wrapped(heading, size.width, Role.NAME, "  "), ()]
        for head, words in self._what_follows():
            body += wrapped(f"{head:<8} {words}", size.width, Role.TEXT, "  ")
        if self.why == UNWELL:
            body += [(), *wrapped(LOOK_IN, size.width, Role.STRONG, "  ")]
        return framed(self, body, size)

    def _what_follows(self) -> list[tuple[str, str]]:
        calf, cow = self.step.name, self.step.cow.name
        return [
            ("MORNING", f"no milking is expected: {cow}'s udder is felt instead."),
            ("MILK", "Enter alone at it writes: the calf had it; a pail can be typed."),
            ("CLOCK", f"since when she fills is not known until {calf} is shut away again."),
            ("QUARTERS", self._marked()),
            ("FEED", f"{cow} is fed as usual."),
        ]

    def _marked(self) -> str:
        """Her quarters that are not right, which are looked at all the same."""
        words = "; ".join(was_words(mark, self.walker) for mark in open_marks(self.walker.snapshot, self.step.cow.id))
        return f"{words}: still looked at." if words else "none marked; still felt."

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", "leave it with her", "Writes it, with the reason.", enter),
        Key((*BACKSPACE, "left", "escape"), "Backspace", "back", "Goes back; nothing is written.", go_back),
        *SCROLL_KEYS,
        HELP_KEY,
        LEAVE_KEY,
    )
