"""When it happened: a time for the next entry, on the farm's wall clock; never in the future."""

import re
from datetime import datetime, timedelta

from store.book.turn import from_wall, local
from tui.place import Place
from tui.words import clock
from tui.yard.wording import Wording

_TIME = re.compile(r"^\s*(\d{1,2})[:., h]?(\d{2})\s*$")


class Timing(Wording):
    """Hours and minutes; an empty line is now again."""

    MOST = 8

    def heading(self) -> str:
        """What is asked."""
        now = clock(self.walker.book.clock.now(), self.walker.farm.zone)
        return f"TIME  when did it happen? As 6:10 or 0610; Enter alone means now ({now})"

    def enter(self) -> Place:
        """Set the time of the next entry."""
        if not self.text.strip():
            self.walker.set_at = None
            return self.came_from.say("The next entry happens now.")
        at = read_time(self.text, self.walker.latest(), self.walker.farm.zone)
        if at is None:
            return self.say(f"«{self.text}» is no time. Type hours and minutes, as 6:10.")
        self.walker.set_at = at
        return self.came_from.say(f"The next entry happened at {clock(at, self.walker.farm.zone)}.")


def read_time(text: str, now: datetime, zone: str) -> datetime | None:
    """The latest moment, not after now, at which the farm's clock showed this time; None if it is no time."""
    found = _TIME.match(text)
    if found is None or int(found[1]) > 23 or int(found[2]) > 59:
        return None
    wall = local(now, zone).replace(tzinfo=None, hour=int(found[1]), minute=int(found[2]), second=0, microsecond=0)
    at = from_wall(wall, zone)
    return at if at <= now else from_wall(wall - timedelta(days=1), zone)
