"""When it happened: a time, or two that it was between, for the next entry, on the farm's wall clock; never to come."""

from store.herd.moments import Happened, happened
from store.round.amount import Unreadable
from tui.place import Place
from tui.words import clock, near
from tui.yard.wording import Wording


class Timing(Wording):
    """Hours and minutes, or between when and when; an empty line is now again."""

    MOST = 40

    def heading(self) -> str:
        """What is asked."""
        now = clock(self.walker.book.clock.now(), self.walker.farm.zone)
        return (
            "TIME  when did it happen? As 6:10 or 0610, or between two times, as 02:30-05:50; "
            f"Enter alone means now ({now})"
        )

    def enter(self) -> Place:
        """Set the time of the next entry."""
        walker = self.walker
        if not self.text.strip():
            walker.set_time(None)
            return self.came_from.say("The next entry happens now.")
        try:
            found = happened(self.text, walker.latest(), walker.farm.zone)
        except Unreadable as problem:
            return self.say(str(problem))
        walker.set_time(found.at, found.since)
        return self.came_from.say(f"The next entry happened {self._words(found)}.")

    def _words(self, found: Happened) -> str:
        now, zone = self.walker.book.clock.now(), self.walker.zone
        at = near(found.at, now, zone)
        return f"between {near(found.since, now, zone)} and {at}" if found.since else f"at {at}"
