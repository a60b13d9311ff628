"""A rule of the keeper's own for what an animal gets a day: what it would give, beside what is planned."""

from collections.abc import Iterator
from datetime import timedelta
from uuid import UUID

from store.book.reading.needs import read_needs
from store.book.register import Register
from store.book.turn import local
from store.book.words import FEEDING
from store.feedroom.milk_a_day import MEAN_DAYS, milk_a_day
from store.herd.animal import kept
from store.round.amount import Unreadable
from store.round.rule import HOW, Rule, rule
from store.round.saying import exact
from tui.page import Line, Role, Size, wrapped
from tui.place import Place, Rooms
from tui.yard.wording import Wording

NOT_KNOWN = "her milk or weight, which the rule needs, is not known"


class Ruling(Wording):
    """The rule is typed; what it gives each animal stands below. Nothing is written here."""

    def __init__(self, rooms: Rooms, back: Place, register: Register) -> None:
        """Over the list of who gets what."""
        super().__init__(rooms, back)
        self.register = register
        desk, now = self.walker.book.desk, self.walker.book.clock.now()
        self.needs = read_needs(desk, now)
        self.milk = milk_a_day(desk, local(now, self.walker.zone).date() - timedelta(days=1))

    def heading(self) -> str:
        """How a rule is typed."""
        return f"A RULE OF YOURS  for concentrate a day. {HOW}"

    def enter(self) -> Place:
        """There is nothing to write: plans are changed one by one."""
        return self.say(
            "That is a proposal; nothing is changed. Esc, then the animal's own plan changes what she gets."
        )

    def below(self, size: Size) -> list[Line]:
        """What it gives whom."""
        if not self.text.strip():
            return []
        try:
            found = rule(self.text, self.walker.farm.units)
        except Unreadable as problem:
            return wrapped(str(problem), size.width, Role.WARNING, "  ")
        return [row for words in self._said(found) for row in wrapped(words, size.width, Role.TEXT, "  ")]

    def _said(self, found: Rule) -> Iterator[str]:
        units = self.walker.farm.units
        for row in kept(self.register):
            id_ = row["animal_id"]
            weight = (self.register.get("body", id_) or {}).get("weight_kg")
            if found.per_kg_milk and id_ not in self.milk:
                continue
            kg = found.a_day_kg(self.milk.get(id_), weight)
            milk = f", {exact(self.milk[id_], units)} milk a day in {MEAN_DAYS} days" if found.per_kg_milk else ""
            gives = NOT_KNOWN if kg is None else f"{exact(kg, units)} a day"
            yield f"{row['name']}: {gives}, planned {exact(self._planned_kg(id_), units)}{milk}"

    def _planned_kg(self, animal_id: UUID) -> float:
        """What of loose feeds is planned for her a day, both rounds together. [kg]"""
        loose = {row["feed_id"] for row in self.register.all("feed_as") if not row["baled"]}
        own = (need for need in self.needs.needs if need.subject.animal_id == animal_id and need.feed_id in loose)
        return sum(need.due_kg(self.needs.now) for need in own if need.slot in FEEDING)
