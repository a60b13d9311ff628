"""A line is typed about a step: another reason, how much was left, a scoop weighed here and now."""

from store.book.facts.feed import Told
from store.round.amount import Unreadable
from store.round.confirm import Doubtful, Hand, skipped
from store.round.extra import extra_fed
from store.round.measured import IF_RIGHT, SURE, left_over
from store.round.saying import exact
from store.round.steps import FeedStep
from tui.page import Line, Role, Size, wrapped
from tui.place import Place, Rooms
from tui.walk.lamp import Lamp
from tui.yard.wording import Wording


class Reason(Wording):
    """A reason in the keeper's own words."""

    MOST = 80

    def __init__(self, rooms: Rooms, back: Place, index: int) -> None:
        """For skipping a step."""
        super().__init__(rooms, back)
        self.index = index

    def heading(self) -> str:
        """Whose step."""
        step = self.walker.steps[self.index]
        return f"SKIP  {step.name} ({step.kind}): the reason in your words"

    def enter(self) -> Place:
        """Write it."""
        if not self.text.strip():
            return self.say("Nothing is typed. Type the reason, or Esc goes back.")
        problem = self.walker.write(skipped(self.walker.hand(), self.walker.steps[self.index], self.text.strip()))
        if problem:
            return self.say(problem)
        return self.rooms.first(self.index)


class FeedAsking(Wording):
    """Something about the first feed of a feed step."""

    MOST = 20

    def __init__(self, rooms: Rooms, lamp: Lamp, step: FeedStep) -> None:
        """Over a lamp."""
        super().__init__(rooms, lamp)
        self.lamp = lamp
        self.step = step
        self.due = step.due[min(lamp.row, len(step.due) - 1)]

    @property
    def hand(self) -> Hand:
        """Who presses the key now."""
        return self.walker.hand()


class LeftOver(FeedAsking):
    """How much of it was left."""

    def heading(self) -> str:
        """Of which feed."""
        half = f", or 1/2 for half a {self.due.told.name}" if self.due.told and self.due.measures is not None else ""
        return f"LEFT  how much {self.due.feed.name} did {self.step.name} leave? As 0.6 kg{half}"

    def enter(self) -> Place:
        """Write it with the feed."""
        try:
            return self.lamp.write(left_over(self.hand, self.step, self.due, self.text))
        except Unreadable as problem:
            return self.say(str(problem))


class ExtraFed(FeedAsking):
    """Something else that was given, beside what is planned."""

    MOST = 60

    def heading(self) -> str:
        """To whom."""
        return f"ALSO GIVEN  to {self.step.name}: a weight and a feed, as 2 kg apples"

    def enter(self) -> Place:
        """Write it; the step itself stays as it is."""
        feeds = self.walker.snapshot.feeds.values()
        try:
            problem = self.walker.write(extra_fed(self.hand, self.step, feeds, self.text))
        except Unreadable as found:
            return self.say(str(found))
        return (
            self.say(problem) if problem else self.rooms.at_step(self.step.step_id).say("It counts in this round too.")
        )


class NewScoop(FeedAsking):
    """One level measure, weighed here and now."""

    def heading(self) -> str:
        """Of which feed."""
        name, many = (self.due.told.name, self.due.told.plural) if self.due.told else ("measure", "measures")
        return f"WEIGH  what does one level {name} of {self.due.feed.name} weigh now? As 0.7 kg, or 3 {many} 2.1 kg"

    def below(self, size: Size) -> list[Line]:
        """By how much it changed, and what every line of a plan is in the new measure, as a proposal."""
        from store.feedroom.scoop import Held, level_weight  # noqa: PLC0415 not on the way to the first frame
        from tui.walk.retelling import retold_words  # noqa: PLC0415

        told = self.due.told
        if told is None or not told.holds_kg or not self.text.strip():
            return []
        try:
            holds_kg = level_weight(f"{self.text.rstrip(SURE)} {SURE}", self.due.feed, told, self.walker.farm.units)
        except Unreadable:
            return []
        said = retold_words(self.walker, self.due.feed, told, Held(told.holds_kg, holds_kg))
        return [row for words in said for row in wrapped(words, size.width, Role.TEXT, "  ")]

    def enter(self) -> Place:
        """Keep it from now on; the plan stays in kilograms and is told anew."""
        from store.feedroom.scoop import level_weight  # noqa: PLC0415

        told = self.due.told
        if told is None:
            return self.lamp.say(f"{self.due.feed.name} goes by weight here; there is no measure to weigh.")
        try:
            holds_kg = level_weight(self.text, self.due.feed, told, self.walker.farm.units)
        except (Doubtful, Unreadable) as problem:
            return self.say(str(problem))
        by_volume = "" if told.holds_kg or self.text.endswith(SURE) else self._far_off(told, holds_kg)
        if by_volume:
            return self.say(f"That is {exact(holds_kg, self.walker.farm.units)} a {told.name}{by_volume}. {IF_RIGHT}")
        refused = self.walker.weigh(told, self.due.feed, holds_kg)
        return (
            self.say(refused)
            if refused
            else self.rooms.lamp(self.lamp.index).say("The new weight counts. F, U takes it back.")
        )

    def _far_off(self, told: Told, holds_kg: float) -> str:
        """Where it is far from what so many litres of such a feed usually weigh."""
        from store.book.register import read_register  # noqa: PLC0415
        from store.herd.measure import by_litres, far_off  # noqa: PLC0415

        register = read_register(self.walker.book.desk, self.walker.book.clock.now())
        return far_off(holds_kg, by_litres(register, told.id, self.due.feed.id), self.walker.farm.units)
