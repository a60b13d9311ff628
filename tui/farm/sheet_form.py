"""A form over a place of the round: what it changes is read from the book as it would be."""

from collections.abc import Sequence

from store.book.drafts import RowDraft
from store.herd.effects import differences, read_rounds, rounds_from
from store.herd.milk_effects import milk_changes
from store.herd.sheet import Answers, YardSheet
from store.herd.taking_back import as_before
from store.round.measured import SURE
from tui.changed import Changed
from tui.farm.form import Form
from tui.frame import framed
from tui.page import Page, Size, cut
from tui.place import Place

SAID_MOST, NOTE_MOST = 12, 500
NOTHING_ELSE = "no step of the rounds to come is another than before"


class SheetForm(Place, Form):
    """Asks about one thing of the yard, and writes it."""

    def __init__(self, back: Place, sheet: YardSheet) -> None:
        """Over the list that it goes back to."""
        super().__init__(back.rooms)
        self.ask(sheet)
        self.came_from = back
        self.yard_sheet = sheet
        self.less_withheld: tuple[str, ...] = ()
        self.sure = False

    def draw(self, size: Size) -> Page:
        """The sheet."""
        return framed(self, self.lines(size), size)

    def out(self) -> Place:
        """Back to the list."""
        return self.came_from

    def takes(self, character: str) -> bool:
        """At the last line, that milk is really withheld for less long; else as every form."""
        if self.question is None and self.less_withheld and character == SURE:
            self.sure = True
            self.say("Enter writes it.")
            return True
        return super().takes(character)

    def told(self, answers: Answers) -> str:
        """What is changed, and from when on."""
        return self.sheet.told(answers) + self.yard_sheet.since(answers)

    def what_changes(self, rows: Sequence[RowDraft], answers: Answers) -> list[str]:
        """What withholds milk, then the steps of the next two rounds, before and after."""
        farm, book = self.walker.farm, self.walker.book
        asked, now = answers.get(self.yard_sheet.FROM), book.clock.now()
        turns, begins = rounds_from(asked, now, farm.zone, farm.evening_from_h), asked or now
        before = read_rounds(book.desk, turns, begins, farm.zone)
        after = book.trial(rows, lambda desk: read_rounds(desk, turns, begins, farm.zone))
        said = [f"{old.turn.slot}  {each}" for old, new in zip(before, after, strict=True)
                for each in differences(old, new)]  # fmt: skip
        more = [f"and {len(said) - SAID_MOST} more"] if len(said) > SAID_MOST else []
        milk = tuple(milk_changes(before[0], after[0], begins))
        self.less_withheld, self.sure = tuple(each.words for each in milk if each.less), False
        found = [*(each.words for each in milk), *said[:SAID_MOST], *more] or [NOTHING_ELSE]
        return [*self.yard_sheet.says(answers, self.walker.hand_now()), *found]

    def write(self, rows: Sequence[RowDraft], answers: Answers) -> Place:
        """All of it, with a note of who changed what; milk that is withheld for less long is asked about first."""
        if self.less_withheld and not self.sure:
            return self.say(f"{'. '.join(self.less_withheld)}. If that is right, type {SURE}, then Enter.")
        words, subject = self._note(answers), self.sheet.subject()
        before = tuple(as_before(self.yard_sheet.register, rows))
        hand = self.walker.hand_now()
        back = tuple(self.yard_sheet.entries_back(answers, hand))
        unread = self.walker.change(rows, subject, words, *self.yard_sheet.entries(answers, hand))
        self.walker.changes.append(Changed(words, subject, before, back))
        return self.came_from.say(unread or "")

    def _note(self, answers: Answers) -> str:
        """What was changed, and which milk is withheld for less long by it."""
        return cut("; ".join((self.told(answers), *self.less_withheld)), NOTE_MOST)
