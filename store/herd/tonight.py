"""One forecast over the yard as it stands: what it asks for in hay, soak and water, and the rows of the hay."""

from collections.abc import Iterator, Sequence
from uuid import UUID

from msgspec import Struct

from store.book.drafts import RowDraft
from store.book.register import Register
from store.book.snapshot import Snapshot
from store.herd.forecast import Weather
from store.herd.more_hay import Limits, More, is_left_alone, more_hay, plan_rows
from store.herd.outside import OutsidePen
from store.herd.proposal import cold_lines, heat_lines, soak_lines, water_lines
from store.herd.stretch import Stretch


class Tonight(Struct, frozen=True):
    """The weather, the pens outside, and for which rounds. rounds: one of each slot, as the book has them."""

    register: Register
    rounds: Sequence[Snapshot]
    weather: Weather
    pens: Sequence[OutsidePen]
    stretch: Stretch
    limits: Limits

    def more(self) -> list[More]:
        """Every hay of these pens in the slots of these rounds."""
        found = (more for pen in self.pens for more in more_hay(pen, self.weather.more_percent, self.limits))
        return [more for more in found if more.hay.slot in self.stretch.slots]

    def lines(self) -> Iterator[str]:
        """The proposal."""
        units, farm = self.register.farm.units, self.register.farm
        yield from cold_lines(self.weather, self.pens, self.more(), units)
        for more in self.more():
            if is_left_alone(more, self.stretch):
                feed = more.hay.portion.feed.name
                yield f"{more.hay.name}, {more.hay.slot}: {feed} is being changed by its plan, and is left to that"
        yield from soak_lines(self.weather, self.register, self._soaked(), farm.air)
        yield from water_lines(self.weather, self.pens, units)
        yield from heat_lines(self.weather, units)

    def hay_rows(self) -> Iterator[RowDraft]:
        """Of every hay that changes: for these rounds, then as before."""
        for more in self.more():
            yield from plan_rows(more, self.stretch)

    def _soaked(self) -> dict[UUID, str]:
        portions = (each for seen in self.rounds for given in seen.portions.values() for each in given)
        return {each.feed.id: each.feed.name for each in portions if each.feed.soaked}
