"""What the page of a ration is drawn from: the case, what is tried, how it balances, and what is marked."""

from collections.abc import Mapping

from msgspec import Struct

from store.book.words import Dialect, Species, Units
from store.ration.calf import CalfDay
from store.ration.parts import Amounts, Balance, Case, RationFeed
from tui.ration.trial import Cell

NO_MARK = -1
"""No line, or no meal of it, is marked."""


class Farm(Struct, frozen=True):
    """What the page is said in and with. checked_by: who checked the figures of this farm's feeding.

    trends: how their condition has gone, a sentence each. beside: kinds of animal that stand with them.
    calf: of one that lives on milk. coming: what is still to come of a change, and the limits that its end breaks.
    """

    units: Units
    dialect: Dialect
    currency: str = ""
    checked_by: str = ""
    trends: tuple[str, ...] = ()
    beside: frozenset[Species] = frozenset()
    calf: CalfDay | None = None
    coming: tuple[str, ...] = ()


class Reading(Struct, frozen=True):
    """What a typed text is read as, or why it is not. amounts: by meal and feed; empty where it cannot be read."""

    amounts: Mapping[Cell, float] = {}
    problem: str = ""


class Seen(Struct, frozen=True):
    """A ration as it stands on the screen. row, meal: which feed and which of its meals is marked.

    rows: the feeds with a line. before, after: how what is given now balances, and how it would with what is tried.
    doubts: what makes the needs unsure.
    """

    case: Case
    farm: Farm
    rows: tuple[RationFeed, ...]
    before: Balance
    after: Balance
    doubts: tuple[str, ...] = ()
    tried: Mapping[Cell, float] = {}
    row: int = 0
    meal: int = 0
    typed: str = ""
    reading: Reading = Reading()

    @property
    def new(self) -> Amounts:
        """What a head would get."""
        return {**self.case.now, **self.tried, **self.reading.amounts}

    @property
    def beside(self) -> tuple[RationFeed, ...]:
        """The feeds that they get by another plan."""
        named = {feed_id for _, feed_id in self.case.besides}
        return tuple(feed for feed in self.case.feeds if feed.feed.id in named)

    @property
    def marked(self) -> int:
        """Which row is marked: the last one where there are fewer."""
        return min(self.row, len(self.rows) - 1)

    @property
    def feed(self) -> RationFeed | None:
        """The marked one."""
        return self.rows[self.marked] if self.rows else None

    @property
    def slot(self) -> str:
        """The marked meal."""
        return self.case.slots[self.meal]
