"""When it happened: a time, or two that it was between, for the next entry, on the farm's wall clock; never to come."""

from store.herd.moments import Happened, happened
from store.round.amount import Unreadable
from store.round.long_ago import done_before, is_long_ago
from store.round.measured import IF_RIGHT, SURE
from tui.place import Place
from tui.words import clock, near, when
from tui.yard.wording import Wording


class Timing(Wording):
    """Hours and minutes, or between when and when; an empty line takes it away again."""

    MOST = 40

    def heading(self) -> str:
        """What is asked."""
        return (
            "TIME  when did it happen? As 6:10 or 0610, or between two times, as 02:30-05:50; "
            f"Enter alone means {self._unset()}"
        )

    def _unset(self) -> str:
        """What is written without a time of its own happens when."""
        walker, zone = self.walker, self.walker.zone
        if walker.live:
            return f"now ({clock(walker.book.clock.now(), zone)})"
        return f"behind the last step of that round, at {clock(walker.unset_moment(), zone)}"

    def enter(self) -> Place:
        """Set the time of the next entry."""
        walker = self.walker
        text = self.text.strip()
        if text.lower() in ("", "now"):
            walker.set_time(None)
            return self.came_from.say(f"The next entry happens {self._unset()}.")
        try:
            found = happened(text.rstrip(f"{SURE} "), walker.latest(), walker.zone, whole_days=False)
        except Unreadable as problem:
            return self.say(str(problem))
        doubt = "" if text.endswith(SURE) else self._doubt(found)
        if doubt:
            return self.say(f"{doubt} {IF_RIGHT}")
        walker.set_time(found.at, found.since)
        return self.came_from.say(f"The next entry happened {self._words(found)}.")

    def _doubt(self, found: Happened) -> str:
        """What is asked about a time that belongs to a round before, or to none."""
        snapshot, zone = self.walker.snapshot, self.walker.zone
        done = done_before(snapshot)
        if done and found.at < done:
            return f"{when(found.at, zone)} is before the round before was done ({when(done, zone)})."
        return f"{when(found.at, zone)} is long before this round." if is_long_ago(snapshot, found.at) else ""

    def _words(self, found: Happened) -> str:
        now, zone = self.walker.book.clock.now(), self.walker.zone
        at = near(found.at, now, zone)
        return f"between {near(found.since, now, zone)} and {at}" if found.since else f"at {at}"
