"""The milk store: the jars of the last days, oldest first, and the litres by use."""

from datetime import timedelta
from uuid import UUID

from store.book.reading import read_snapshot
from store.book.reading.milk import MilkRound, read_milk, read_uses
from store.book.turn import local
from store.book.words import Fate
from store.husbandry.why import Value
from store.round.jars import Group, group_of, jars, pails_since, used_up
from store.round.pails import by_use
from store.round.whys.totals import jar_numbers, use_numbers
from store.round.withholding import withheld_of
from tui.changed import said
from tui.milk_store.words import GROUP_WORDS, jar_words, totals_words, warnings
from tui.page import Line, Role, Size, wrapped
from tui.place import Place, Rooms
from tui.view import View
from tui.walk.picking import Picking

WEEK = timedelta(days=7)


class MilkStore(Picking):
    """Enter writes a jar as used up; on one that is, it takes that back."""

    ENTER_WORDS = "used up, or take it back"

    def __init__(self, rooms: Rooms, back: Place) -> None:
        """Over the place that it goes back to; the oldest jar is picked already."""
        super().__init__(rooms, back)
        self.row = 0
        self.look()

    def look(self) -> None:
        """Read it anew, by a key; whose milk is withheld is judged by all that is known now."""
        walker = self.walker
        now, desk, limits = walker.book.clock.now(), walker.book.desk, walker.farm.milk_limits
        today = local(now, walker.zone).date()
        first, kept_from = min(today.replace(day=1), today - WEEK), today - timedelta(days=limits.jar_days)
        rounds = read_milk(desk, min(first, kept_from), today)
        snapshot = read_snapshot(desk, walker.this(), now)
        cows = _cows(rounds)
        withheld = {cow_id: withheld_of(snapshot, cow_id) for cow_id in cows}
        uses = read_uses(desk, cows, now - timedelta(days=limits.jar_days + 2))
        lately = [each for each in rounds if each.turn.day >= kept_from]
        found = jars(lately, withheld, limits.cold_within_min, uses)
        self.jars = tuple(sorted(found, key=group_of))
        since = (("7 days", today - WEEK + timedelta(days=1)), (f"{today:%B}", today.replace(day=1)))
        self.pails = tuple((words, pails_since(rounds, withheld, day)) for words, day in since)
        self.totals = tuple((words, by_use(pails)) for words, pails in self.pails)

    def heading(self) -> str:
        """How much of it is there, and is fit to be used."""
        if not self.jars:
            return f"MILK STORE  no milk was put to the {Fate.HOUSE.value} in the last days"
        left = [group_of(jar) for jar in self.jars].count(Group.TO_USE)
        return f"MILK STORE  {left} {'jar' if left == 1 else 'jars'}, oldest first: use that one first"

    def above(self, size: Size) -> list[Line]:
        """What must not be drunk, then where all of the milk went."""
        bad = [row for each in warnings(self.walker, self.jars) for row in wrapped(each, size.width, Role.WARNING, " ")]
        told = [totals_words(name, kg, self.walker.farm.units) for name, kg in self.totals]
        return [*bad, *(row for each in told for row in wrapped(each, size.width, Role.TEXT, "  ")), ()]

    def choices(self) -> list[str]:
        """A line for each jar: what must go, what is to be used, what is used up."""
        return [jar_words(self.walker, jar) for jar in self.jars]

    def group(self, row: int) -> str:
        """Which of the three."""
        return GROUP_WORDS[group_of(self.jars[row])]

    def enter(self) -> View:
        """Where there is no jar, say so."""
        return super().enter() if self.jars else self.say("There is no jar. A pail put to the house is one.")

    def numbers(self) -> tuple[Value, ...]:
        """The litres of each use, pail by pail; then of each jar."""
        uses = (value for words, pails in self.pails for value in use_numbers(words, pails))
        return (*uses, *jar_numbers(self.as_asked(), self.jars))

    def numbers_of(self) -> str:
        """The store."""
        return "milk store"

    def picked(self, row: int) -> Place:
        """Used up, or taken back; the mark stays on the jar, wherever it stands then."""
        jar = self.jars[row]
        at = self.walker.set_at or self.walker.book.clock.now()
        problem = self.walker.write(used_up(self.walker.person.id, at, jar))
        if problem:
            return self.say(problem)
        unread = said(self.look)
        self.mark(next((at for at, each in enumerate(self.jars) if each.step_id == jar.step_id), row))
        done = "Taken back: it is there again." if jar.used_up else "Used up. Enter on it takes that back."
        return self.say(f"{done} {unread or ''}".rstrip())


def _cows(rounds: tuple[MilkRound, ...]) -> tuple[UUID, ...]:
    ids = (entry.subject.animal_id for each in rounds for entry in each.entries)
    return tuple(dict.fromkeys(each for each in ids if each is not None))
