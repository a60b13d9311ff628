"""A change of a ration before it starts: every step day by day, from when on, what for; Enter writes it."""

from collections.abc import Sequence
from typing import ClassVar

from msgspec.structs import replace

from store.book.drafts import RowDraft
from store.book.register import read_register
from store.book.turn import Turn
from store.book.words import MORNING, State
from store.herd.taking_back import as_before
from store.husbandry.why import Value
from store.ration.balance import balance
from store.ration.change import DayPlan, preview
from store.ration.coming import coming
from store.ration.dated import as_planned, planned, rows
from store.ration.parts import Amounts, Case
from store.ration.runout import made_up, runs_out, runs_out_words
from store.ration.step_limits import changed, feed_of, rules_of
from store.round.measured import SURE
from tui.changed import Changed
from tui.frame import framed
from tui.page import Line, Page, Role, Size, Span, cut, line, wrapped
from tui.place import HELP_KEY, LEAVE_KEY, WHY_KEY, Over, Place
from tui.ration.day_lines import (
    change_said,
    coming_words,
    course_lines,
    length_words,
    limit_lines,
    started_words,
    turn_said,
)
from tui.view import BACKSPACE, ENTER, SCROLL_KEYS, Key, go_back
from tui.yard.wording import Wording

ROUNDS_MOST = 9
"""So many rounds ahead can be picked by a digit."""
NOTE_MOST = 500
ASKED = "In the end it breaks a limit, as LIMIT says above. If it is right, type ! and then Enter; Backspace goes back."
ANEW = "The round or the plan has moved on since this was shown. It is shown anew, and nothing is written yet."
STARTED = "change: "
"""How the note of a change begins."""
UNDER_WAY = "{}: another change beside it is not safe. End that first: M at the feed step, the change under way."
LATER = "LATER  It begins {}: begun in the evening, a day on the way would be above its limit."
TAKEN_BACK = "What is planned of these meals for later is taken back: this change takes its place."


class StartChange(Over):
    """From now to new, over the ration that it comes from. Nothing is written before Enter."""

    def __init__(
        self, back: Place, case: Case, new: Amounts, after: Place | None = None, cares: Sequence[str] = ()
    ) -> None:
        """Of whom, and what a head is to get in the end; from tomorrow morning on. Raises BookError.

        after: where it goes on once it is written; None: back. cares: what is usually said of what it comes to.
        """
        super().__init__(back.rooms, back)
        self.after = after or back
        self.case, self.new, self.cares = case, new, cares
        self.broken = balance(case, new).broken
        self.meals = changed(case, new)
        self.reason, self.sure = "", False
        self._look()

    def _starts(self) -> tuple[Turn, ...]:
        """The round of this moment, unless it is fed already, and those behind it."""
        this = self.walker.this()
        own = (step for step in self.walker.steps if step.subject == self.case.subject)
        is_fed = self.walker.turn != this or any(step.state is State.DONE for step in own)
        turns = [this.after() if is_fed else this]
        while len(turns) < ROUNDS_MOST:
            turns.append(turns[-1].after())
        return tuple(turns)

    def _look(self, wanted: Turn | None = None) -> None:
        """Reckon the steps from a round on, and what runs out on the way: all of it, or all stays. Raises BookError.

        wanted: the first round; None, or gone by: the first morning to come.
        """
        starts, book = self._starts(), self.walker.book
        mornings = (turn for turn in starts if turn.slot == MORNING and turn != self.walker.this())
        start = wanted if wanted in starts else next(mornings)
        register = read_register(book.desk, book.clock.now())
        now, planned_rows = as_planned(register, self.case, self.meals)
        case = replace(self.case, now={**self.case.now, **now})
        change = preview(case, self.new, rules_of(register), start)
        first = rows(register, case, change.days)
        short = book.trial(first, lambda desk: runs_out(desk, register, case, change.days))
        self.days: tuple[DayPlan, ...] = made_up(case, change.days, short)
        self.starts, self.start, self.register, self.case = starts, start, register, case
        self.change, self.short, self.planned_rows = change, short, planned_rows

    def _moved_on(self) -> bool:
        """Whether it would be another change now than it was shown; then it is shown as it is now."""
        shown = self.starts, self.days, self.planned_rows
        self._look(self.start)
        return shown != (self.starts, self.days, self.planned_rows)

    def numbers(self) -> tuple[Value, ...]:
        """The most of one step of each meal, how long it takes, the biggest meal."""
        return (*self.change.limits, *([self.change.lasts] if self.change.lasts else []), self.change.biggest)

    def numbers_of(self) -> str:
        """Whose."""
        return f"the change of {self.case.name}"

    def takes(self, character: str) -> bool:
        """A digit picks the first round."""
        if character == SURE and self.broken:
            self.sure = True
            return True
        if not character.isdigit() or not 0 < int(character) <= len(self.starts):
            return False
        self.trying(lambda: self.pick(int(character) - 1))
        return True

    def pick(self, at: int) -> Place:
        """From another round on."""
        self._look(self.starts[at % len(self.starts)])
        return self

    def turn(self, by: int) -> Place:
        """A round earlier or later."""
        return self.pick(self.starts.index(self.start) + by)

    def what_for(self) -> Place:
        """Ask for the reason."""
        return WhatFor(self)

    def draw(self, size: Size) -> Page:
        """From when on, day by day, and what is to be said of it."""
        heads = len(self.case.heads)
        whose = f"{self.case.name}, for each of {heads} heads" if heads > 1 else self.case.name
        body: list[Line] = [(), *wrapped(f"CHANGE  {whose}: {length_words(self.change)}", size.width, Role.NAME, "  ")]
        number = self.starts.index(self.start) + 1
        body += [
            (),
            line(
                "  FROM  ",
                Span(f" {turn_said(self.start)} ", Role.HERE),
                Span(f"  (key {number}; 1 is the next round)", Role.QUIET),
            ),
        ]
        body += [*wrapped(f"FOR   {self.reason or 'N says what it is for'}", size.width, Role.TEXT, "  "), ()]
        body += [row for words, role in self._said() for row in wrapped(words, size.width, role, "  ")]
        return framed(self, body, size)

    def _said(self) -> list[tuple[str, Role]]:
        units, today = self.walker.farm.units, self.walker.this().day
        short = [(f"RUNS OUT  {runs_out_words(self.case, each, today, units)}", Role.WARNING) for each in self.short]
        limits = [(f"LIMIT  in the end, {each.says}", Role.WARNING) for each in self.broken]
        later = planned(self.register, self.case, changed(self.case, self.new))
        back = [(TAKEN_BACK, Role.WARNING)] if later else []
        if self.change.start != self.start:
            back.append((LATER.format(turn_said(self.change.start)), Role.WARNING))
        course = [(each, Role.STRONG) for each in course_lines(self.case, self.days, units)]
        held = [(each, Role.TEXT) for each in limit_lines(self.change, units)]
        cares = [(each, Role.TEXT) for each in self.cares]
        return [*limits, *short, *back, *course, ("", Role.TEXT), *cares, *held]

    def enter(self) -> Place:
        """Write all of it with its note, or say why not."""
        refused = ANEW if self._moved_on() else self._refused()
        if refused:
            return self.say(refused)
        drafts = rows(self.register, self.case, self.days)
        words = change_said(self.case, self.new, self.change, self.walker.farm.units)
        return self._written(drafts, cut(f"{STARTED}{words}{self._for()}", NOTE_MOST))

    def _for(self) -> str:
        return f"; for {self.reason}" if self.reason else ""

    def _refused(self) -> str:
        """Why it cannot start."""
        meals = changed(self.case, self.new)
        barred = (feed_of(self.case, id_).barred for _, id_ in meals if self.new.get((_, id_), 0.0) > 0)
        if not meals:
            return "Nothing differs from what they get now. Backspace goes back to the amounts."
        running = coming(self.register, self.case)
        if running and not running.ends.keys() <= set(meals):
            return UNDER_WAY.format(coming_words(self.case, running, self.walker.farm.units))
        asked = ASKED if self.broken and not self.sure else ""
        return next((f"{words} Backspace goes back to the amounts." for words in barred if words), asked)

    def enter_words(self) -> str:
        """What Enter does now."""
        return "start it, it is right" if self.sure else "start it"

    def _written(self, drafts: Sequence[RowDraft], words: str) -> Place:
        """In one transaction, told to the next person, and kept to be taken back."""
        before = tuple(as_before(self.register, drafts))
        unread = self.walker.change(drafts, self.case.subject, words, tell=True)
        self.walker.changes.append(Changed(words, self.case.subject, before))
        return self.after.say(unread or f"{self.case.name}: {started_words(self.change)}. F, then U takes it back.")

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", enter_words, "Writes all steps and what they are for; `!` first where a limit is broken.",
            enter),
        Key((), "digits", "from which round", "Pick the first round: 1 the next one, 2 the one behind it, and so on."),
        Key(("left",), "Left Right", "earlier, later", "A round earlier or later.", lambda place: place.turn(-1)),
        Key(("right",), "Right", "", "", lambda place: place.turn(1)),
        Key(("n",), "N", "what for", "What the change is for, in your words; it is kept with it.",
            lambda place: place.what_for()),
        WHY_KEY,
        Key((*BACKSPACE, "escape"), "Backspace", "back", "Goes back; nothing is written.", go_back),
        *SCROLL_KEYS,
        HELP_KEY,
        LEAVE_KEY,
    )  # fmt: skip


class WhatFor(Wording):
    """What a change is for, in words."""

    MOST = 80

    def __init__(self, starting: StartChange) -> None:
        """Over a change that is not started yet."""
        super().__init__(starting.rooms, starting)
        self.starting, self.text = starting, starting.reason

    def heading(self) -> str:
        """Whose change."""
        return f"CHANGE of {self.starting.case.name}: what it is for, as less milk, dry in three weeks"

    def enter(self) -> Place:
        """Keep it with the change."""
        self.starting.reason = self.text.strip()
        return self.starting
