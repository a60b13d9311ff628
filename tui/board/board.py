"""A board: several steps on one screen, each written by its own key, or all of them as shown.

What may stand here is decided by `store.round.together`: nothing that is measured, nothing that has to be looked at.
"""

from datetime import datetime
from typing import ClassVar
from uuid import UUID

from store.book.words import State
from store.husbandry.why import Value
from store.round.amount import Unreadable
from store.round.confirm import Doubtful
from store.round.measured import SURE
from store.round.steps import Step
from store.round.together import alone_why, with_window
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, cut, line
from tui.place import WHY_KEY, YARD_KEYS, Over, Place, Rooms
from tui.telling import step_words
from tui.typed import Typed
from tui.view import BACKSPACE, ENTER, Key, View, go_back
from tui.walk.feed_card import told_in_short
from tui.walk.jobs import job_for
from tui.walk.shown import Shown

ROWS_OF_THE_FRAME = 10


class Board(Over):
    """Lines of steps; Enter writes the marked one, A then Enter writes all that are open, as shown."""

    def __init__(self, rooms: Rooms, back: Place, title: str, step_ids: tuple[UUID, ...]) -> None:
        """For some steps of the walk."""
        super().__init__(rooms, back)
        self.title = title
        self.step_ids = step_ids
        self.typed = Typed()
        self.armed = False
        self.row = next((at for at, step in enumerate(self.steps) if step.state is State.OPEN), 0)

    @property
    def steps(self) -> list[Step]:
        """The lines, as the plan stands."""
        return [step for step in self.walker.steps if step.step_id in self.step_ids]

    @property
    def half_typed(self) -> str:
        """An amount not yet written; what is typed or marked in the place below stays there."""
        return self.typed.text or super().half_typed

    def leave(self) -> View | None:
        """Leave, unless an amount is half typed on this board, or something in the place below."""
        return Place.leave(self) if self.typing else super().leave()

    @property
    def typing(self) -> bool:
        """While an amount is half typed."""
        return bool(self.typed.text)

    def takes(self, character: str) -> bool:
        """An amount for the first feed of the marked line, or that what is shown is right."""
        job = job_for(self.steps[self.row])
        if not job.DIGITS or not self.typed.takes(character, asked=job.ASKS and character == SURE):
            return False
        self.armed = False
        return True

    def choose(self, by: int) -> View:
        """Another line; not while an amount is half typed."""
        self.armed = False
        if self.typing:
            return self.leave() or self
        self.row = (self.row + by) % len(self.steps)
        return self

    def back(self) -> Place:
        """A character back; from an empty entry, back to the walk."""
        self.armed = False
        return self if self.typed.backspace() else self.came_from

    def escape(self) -> Place:
        """The amount away; where none is typed, back to the walk."""
        self.armed = False
        if not self.typing:
            return self.came_from
        self.typed.clear()
        return self

    def arm(self) -> View:
        """The next Enter writes every open line as shown."""
        if self.typing:
            return self.leave() or self
        count = sum(step.state is State.OPEN and not self._alone(step) for step in self.steps)
        self.armed = count > 0
        words = f"Enter now writes the {count} marked lines as they stand here."
        return self.say(words if count else "What is open here has to be written line by line.")

    def enter(self) -> Place:
        """Write the marked line, or all."""
        if self.armed:
            return self._write_all()
        step = self.steps[self.row]
        if step.state is not State.OPEN and not self.typing:
            return self._on()
        try:
            draft = job_for(step).draft(self.walker.hand(), self._shown(step, self.row), step)
        except (Doubtful, Unreadable) as problem:
            return self.say(str(problem))
        problem_words = self.walker.write(draft)
        if problem_words:
            return self.say(problem_words)
        self.typed.clear()
        return self._on()

    def _write_all(self) -> Place:
        since = self._since()
        for step in self.steps:
            if step.state is State.OPEN and not self._alone(step):
                try:
                    draft = job_for(step).draft(self.walker.hand(), Shown(self.walker, step, {}, 0), step)
                except (Unreadable, Doubtful) as problem:
                    self.armed = False
                    return self.say(str(problem))
                problem_words = self.walker.write(with_window(draft, since))
                if problem_words:
                    return self.say(problem_words)
        return self._on()

    def _alone(self, step: Step) -> str:
        """Why a line has to be written by itself."""
        return alone_why(step, self.walker.moment())

    def _since(self) -> datetime | None:
        """All of it was done between the last confirm and now."""
        last = self.walker.last_confirmed()
        return last.happened_at if last else None

    def _shown(self, step: Step, at: int) -> Shown:
        """A line as it stands; what is typed belongs to the marked one."""
        if not self.typed.text or at != self.row:
            return Shown(self.walker, step, {}, 0)
        return Shown(self.walker, step, {0: self.typed.amount}, 0, sure=self.typed.sure)

    def _on(self) -> Place:
        """The next open line, or the walk where all are written."""
        open_rows = [at for at, step in enumerate(self.steps) if step.state is State.OPEN]
        self.armed = False
        if not open_rows:
            return self.rooms.first().say(f"{self.title}: all written.")
        self.row = next((at for at in open_rows if at > self.row), open_rows[0])
        return self

    def draw(self, size: Size) -> Page:
        """A line for each step; the written ones say so."""
        steps = self.steps
        done = sum(step.state is not State.OPEN for step in steps)
        head = f"  {self.title}   {done} of {len(steps)} written"
        lines: list[Line] = []
        here = 0
        for at, step in enumerate(steps):
            here = len(lines) if at == self.row else here
            lines += self._lines(at, step, size)
        room = max(size.height - ROWS_OF_THE_FRAME, 3)
        first = max(min(here - room // 2, len(lines) - room), 0)
        body: list[Line] = [(), line(Span(cut(head, size.width - 1), Role.STRONG)), (), *lines[first : first + room]]
        return framed(self, body, size, steps[self.row] if steps else None)

    def _lines(self, at: int, step: Step, size: Size) -> list[Line]:
        """Every amount of a step, and behind the last why it stands by itself, or what became of it."""
        state = self._alone(step).upper() if step.state is State.OPEN else step.state.value.upper()
        rows = told_in_short(self._shown(step, at), step, size.width - 8)
        if state and len(rows[-1]) + len(state) + 2 > size.width - 8:
            rows.append("")
        rows[-1] += f"  {state}" if state else ""
        marked = self._is_marked(at, step)
        role = Role.HERE if marked else Role.TEXT if step.state is State.OPEN else Role.QUIET
        return [line(" ", Span(f" {'>' if marked and not n else ' '} {row} ", role)) for n, row in enumerate(rows)]

    def _is_marked(self, at: int, step: Step) -> bool:
        """Whether the next Enter writes this line."""
        if not self.armed:
            return at == self.row
        return step.state is State.OPEN and not self._alone(step)

    def numbers(self) -> tuple[Value, ...]:
        """Those of the marked line."""
        from store.round.whys import step_numbers  # noqa: PLC0415 not on the way to the first frame

        return step_numbers(self.as_asked(), self.steps[self.row])

    def numbers_of(self) -> str:
        """The marked line."""
        return step_words(self.walker, self.steps[self.row])

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", "write this line", "Writes the marked line, or all after A.", enter),
        Key((), "0-9", "other amount", "Another amount for the first feed of the line."),
        Key(("up",), "Up Down", "line", "Another line.", lambda place: place.choose(-1)),
        Key(("down",), "Down", "", "", lambda place: place.choose(1)),
        Key(("a",), "A", "all as shown", "Then Enter writes every open line as it stands.", arm),
        Key(
            (*BACKSPACE, "left"),
            "Backspace",
            "back",
            "A character back, or back to the walk.",
            go_back,
        ),
        Key(("escape",), "Esc", "", "Takes the amount away, or goes back.", lambda place: place.escape()),
        WHY_KEY,
        *(key for key in YARD_KEYS if key.sign != "B"),
    )
