"""Look again: what is to be looked at at a time, soonest first; how it was then, and when again."""

from typing import ClassVar
from uuid import UUID

from store.book.drafts import Draft, Subject
from store.book.figures import WatchedFigure
from store.book.reading.watches import Watch, looked_lately, open_watches
from store.book.words import Looks
from store.round.watch import taken_back
from tui.changed import said
from tui.page import Line, Role, Size, Span, cut, large_lines, line
from tui.place import TIME_KEY, VET_KEY, Place, Rooms
from tui.view import Key
from tui.walk.picking import Picking
from tui.yard.again_typed import NewWatch, NextTime
from tui.yard.again_words import due_words, figure_words, looked_words, watch_words, whose

LOOKS = tuple(Looks)


class LookAgain(Picking):
    """The list: one of it is looked at, or something new is offered."""

    ENTER_WORDS = "open"

    def __init__(self, rooms: Rooms, back: Place, subject: Subject, watch_id: UUID | None = None) -> None:
        """Over the place that it goes back to; subject: what we stand at there; watch_id: the one that is marked."""
        super().__init__(rooms, back)
        self.subjects = tuple(dict.fromkeys((subject, Subject())))
        self.look()
        self.row = next((row for row, watch in enumerate(self.watches) if watch.step_id == watch_id), 0)

    def look(self) -> None:
        """Read what is still to be looked at; by a key, so that painting reads nothing."""
        self.watches = open_watches(self.walker.book.desk, self.walker.book.clock.now())

    def heading(self) -> str:
        """How many there are."""
        now = self.walker.book.clock.now()
        due = sum(watch.is_due(now) for watch in self.watches)
        return f"LOOK AGAIN  {f'{len(self.watches)} in the list, {due} now' if self.watches else 'nothing is waiting'}"

    def above(self, size: Size) -> list[Line]:
        """Whose is the soonest, large; when, and what."""
        if not self.watches:
            return []
        first, now, zone = self.watches[0], self.walker.book.clock.now(), self.walker.zone
        role = Role.WARNING if first.is_due(now) else Role.AMOUNT
        words = f"{due_words(first, now, zone)}  {first.words}"
        large = large_lines(whose(self.walker, first.subject), role, size.width - 4)
        return [*((Span("  "), *row) for row in large), line(Span(cut(f"  {words}", size.width), Role.STRONG)), ()]

    def choices(self) -> list[str]:
        """Each with its time; then what can be offered new."""
        new = (f"something new: {whose(self.walker, subject)}" for subject in self.subjects)
        return [*(watch_words(self.walker, watch) for watch in self.watches), *new]

    def picked(self, row: int) -> Place:
        """How it was; or what is to be looked at."""
        if row < len(self.watches):
            return HowItWas(self, self.watches[row])
        return NewWatch(self, self.subjects[row - len(self.watches)])

    def write(self, draft: Draft) -> Place | None:
        """Write it, and back to the list as it stands now; None where the book refused, which is said."""
        problem = self.walker.write(draft)
        if problem:
            self.say(problem)
            return None
        words = f"Written: {whose(self.walker, draft.subject)}, {self._told(draft)}."
        self.row = 0
        return self.say(f"{words} {said(self.look) or ''}".strip())

    def _told(self, draft: Draft) -> str:
        figure = next((each for each in draft.figures if isinstance(each, WatchedFigure)), None)
        if figure is None:
            return "not to be looked at again"
        vet = ". V has the signs that mean call the vet" if figure.looks is Looks.WORSE else ""
        return f"{figure.words}: {figure_words(self.walker, figure)}{vet}"

    def undo(self) -> Place:
        """What was written here lately."""
        return TakingBack(self)

    KEYS: ClassVar[tuple[Key, ...]] = (
        *Picking.KEYS,
        Key(("u",), "U", "undo", "Takes back what was written here lately; shows it first.", undo),
        TIME_KEY,
        VET_KEY,
    )


class HowItWas(Picking):
    """How it is now."""

    ENTER_WORDS = "next: when again"

    def __init__(self, again: LookAgain, watch: Watch) -> None:
        """Over the list."""
        super().__init__(again.rooms, again)
        self.again, self.watch = again, watch

    def heading(self) -> str:
        """What, and how it was before."""
        return f"{watch_words(self.walker, self.watch)}. How is it now?"

    def choices(self) -> list[str]:
        """All right, better, the same, worse."""
        return [looks.value for looks in LOOKS]

    def picked(self, row: int) -> Place:
        """And when it is looked at again."""
        return NextTime(self, self.again, self.watch, LOOKS[row])


class TakingBack(Picking):
    """What was written of watches in the last day, the newest first."""

    ENTER_WORDS = "take it back"

    def __init__(self, again: LookAgain) -> None:
        """Over the list; the newest is picked already."""
        super().__init__(again.rooms, again)
        self.again = again
        self.found = looked_lately(self.walker.book.desk, self.walker.book.clock.now())
        self.row = 0 if self.found else None

    def heading(self) -> str:
        """What Enter does."""
        nothing = "TAKE BACK  nothing was written here in the last day. Backspace goes back."
        return "TAKE BACK  which? It stays in the book as history" if self.found else nothing

    def choices(self) -> list[str]:
        """Each as it was written."""
        return [looked_words(self.walker, looked) for looked in self.found]

    def picked(self, row: int) -> Place:
        """It stands as it was before."""
        return self.again.write(taken_back(self.walker.hand_now(), self.found[row])) or self.say(self.again.said)
