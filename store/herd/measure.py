"""A scoop, jug, flake or bale, weighed with a feed: three level ones together, so that no heaped one counts."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any
from uuid import UUID

from store.book.drafts import RowDraft, Subject
from store.book.register import Register
from store.book.words import Units
from store.herd.answers import a_count, a_name, a_weight, maybe
from store.herd.feed import feeds_in_use
from store.herd.sheet import Answers, Question, Wrong, YardSheet, pick
from store.husbandry.bounds import DENSEST_KG_PER_L
from store.husbandry.feeds.density import Likely, likely
from store.husbandry.units import spoken
from store.husbandry.why import given
from store.round.amount import Unreadable, number_and_unit
from store.round.measured import BALE_ASKED_KG, BALE_MOST_KG, IF_RIGHT, SCOOP_ASKED_KG, SURE
from store.round.saying import exact, weight

LEVEL_ONES = 3
"""So many are weighed together unless it is said otherwise. Common practice."""


class MeasureSheet(YardSheet):
    """One measure of one feed."""

    def __init__(self, register: Register, measure_id: UUID | None = None, feed_id: UUID | None = None) -> None:
        """Of a measure and feed that are there, or new ones."""
        super().__init__(register)
        self.measure_id, self.feed_id = measure_id, feed_id
        self.weighed: Mapping[str, Any] = register.get("weighing", measure_id, feed_id) or {}

    @property
    def title(self) -> str:
        """Which measure."""
        if self.measure_id:
            return (
                f"{self.register.name('measure_as', self.measure_id)} of {self.register.name('feed_as', self.feed_id)}"
            )
        return "WEIGH A SCOOP  bucket on the scale, scale at zero, then three level scoops into it"

    def subject(self) -> Subject:
        """The feed."""
        return Subject(feed_id=self.feed_id)

    def questions(self) -> tuple[Question, ...]:
        """What is weighed, how many, and what they weigh together."""
        feeds = tuple((row["name"], row["feed_id"]) for row in feeds_in_use(self.register))
        volume = self.register.get("volume", self.measure_id) or {}
        return (
            pick("feed_id", "weighed with", feeds, self.feed_id),
            Question("name", "measure", a_name, "scoop, jug, cup; flake or bale of hay",
                     self.register.name("measure_as", self.measure_id) or "scoop"),
            Question("count", "how many, level", a_count(1, 99, "measures"), "three are surer than one",
                     str(LEVEL_ONES)),
            Question("together_kg", "they weigh together", self._together,
                     "what the scale shows, without the bucket"),
            Question("holds_l", "one holds, level full", maybe(self._volume), "litres, if you know; may be left empty",
                     f"{volume['holds_l']:g}" if volume else "", was=volume.get("holds_l")),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The measure, its volume, and what one of it holds of this feed."""
        (together_kg, sure), holds_l = answers["together_kg"], answers["holds_l"]
        holds_kg = together_kg / answers["count"]
        if holds_l and holds_kg > holds_l * DENSEST_KG_PER_L:
            most = weight(holds_l * DENSEST_KG_PER_L, self.units)
            raise Wrong(
                "together_kg",
                f"One would weigh {exact(holds_kg, self.units)}, but {holds_l:g} L of no feed weigh more than {most}. "
                "Look at the scale, the count and the litres again.",
            )
        before = self._before(answers)
        self._ask(holds_kg, before, sure=sure)
        if not sure and not before:
            self._ask_of_first(holds_kg, answers)
        return list(self._rows(answers, holds_kg))

    def told(self, answers: Answers) -> str:
        """What one weighs now, and how much that differs."""
        holds_kg = answers["together_kg"][0] / answers["count"]
        words = f"one {answers['name']} of {self.register.name('feed_as', answers['feed_id'])} weighs"
        before = self._before(answers)
        if before:
            change = f"before {exact(before, self.units)} ({holds_kg / before - 1:+.1%})"
            return f"{words} {exact(holds_kg, self.units)}, {change}"
        likely = self._likely(answers)
        by_volume = f"; by its litres {_range(likely, self.units)} is likely" if likely else ""
        return f"{words} {exact(holds_kg, self.units)}{by_volume}"

    def _together(self, text: str) -> tuple[float, bool]:
        """What they weigh together, and whether it was said to be right. [kg]"""
        return a_weight(text.rstrip(f"{SURE} "), self.units, 0.001, 5000), text.rstrip().endswith(SURE)

    def _ask(self, holds_kg: float, before_kg: float | None, *, sure: bool) -> None:
        """Grams typed for kilograms, one counted for three: far off what it held before, or more than anybody lifts."""
        one = exact(holds_kg, self.units)
        if holds_kg > BALE_MOST_KG:
            raise Wrong(
                "together_kg",
                f"One would weigh {one}; no measure holds more than {BALE_MOST_KG:.0f} kg. Type it again.",
            )
        if not sure and before_kg and not before_kg / 2 <= holds_kg <= before_kg * 2:
            raise Wrong("together_kg", f"One would weigh {one}, before {exact(before_kg, self.units)}. {IF_RIGHT}")

    def _ask_of_first(self, holds_kg: float, answers: Answers) -> None:
        """Weighed for the first time: much, or far from what such a feed usually weighs in so many litres."""
        one, by_volume = exact(holds_kg, self.units), far_off(holds_kg, self._likely(answers), self.units)
        baled = (self.register.get("feed_as", answers["feed_id"]) or {}).get("baled")
        if by_volume or holds_kg > (BALE_ASKED_KG if baled else SCOOP_ASKED_KG):
            raise Wrong("together_kg", f"One would weigh {one}{by_volume}. {IF_RIGHT}")

    def _likely(self, answers: Answers) -> Likely | None:
        return by_litres(self.register, self._measure(answers["name"]), answers["feed_id"], answers["holds_l"])

    def _before(self, answers: Answers) -> float | None:
        weighed = self.register.get("weighing", self._measure(answers["name"]), answers["feed_id"])
        return weighed["holds_kg"] if weighed else None

    def _rows(self, answers: Answers, holds_kg: float) -> Iterator[RowDraft]:
        measure_id = self.measure_id or self._measure(answers["name"])
        if measure_id is None:
            measure_id = self.new_id()
            yield RowDraft("measure", {"id": measure_id})
        same = {"measure_id": measure_id}
        names = {"name": answers["name"], "plural": self._plural(measure_id, answers["name"])}
        yield from self.dated("measure_as", answers, same, names)
        if answers["holds_l"]:
            yield from self.dated("volume", answers, same, {"holds_l": answers["holds_l"]})
        yield from self.dated("weighing", answers, same | {"feed_id": answers["feed_id"]}, {"holds_kg": holds_kg})

    def _measure(self, name: str) -> UUID | None:
        """A measure that is called so: one scoop serves several feeds."""
        found = (row["measure_id"] for row in self.register.all("measure_as") if row["name"].lower() == name.lower())
        return next(found, None)

    def _plural(self, measure_id: UUID, name: str) -> str:
        """That of a measure which is called so already; whoever weighs a scoop anew renames nothing."""
        before = self.register.get("measure_as", measure_id)
        return str(before["plural"]) if before and before["name"].lower() == name.lower() else many(name)

    def _volume(self, text: str) -> float:
        number, word = number_and_unit(text)
        unit = spoken(word or "l", american=self.units == "us")
        if unit is None or unit.dimension != "volume" or not 0.01 <= number * unit.size <= 2000:
            raise Unreadable(f"«{text.strip()}» is no volume. Type litres, as 1.5, or 2 qt.")
        return number * unit.size


def by_litres(
    register: Register, measure_id: UUID | None, feed_id: UUID, holds_l: float | None = None
) -> Likely | None:
    """What one would weigh by its litres; None: they are not known, or of such a feed it is not. holds_l: as typed."""
    litres = holds_l or (register.get("volume", measure_id) or {}).get("holds_l")
    made = register.get("composition", feed_id) or {}
    return likely(made.get("resembles", ""), given(litres, "measure", "L", "your measure")) if litres else None


def far_off(holds_kg: float, likely: Likely | None, units: Units) -> str:
    """That a weight is far from what is likely, as it goes on behind it; empty: it is not."""
    if likely is None or likely.least_kg.amount / 2 <= holds_kg <= likely.most_kg.amount * 2:
        return ""
    return f"; by its litres of such a feed {_range(likely, units)} is likely"


def _range(likely: Likely, units: Units) -> str:
    """`1.2 kg to 1.4 kg`."""
    return f"{weight(likely.least_kg.amount, units)} to {weight(likely.most_kg.amount, units)}"


def many(name: str) -> str:
    """More than one of it: `scoops`, `boxes`."""
    return name + ("es" if name.endswith(("s", "x", "ch", "sh")) else "s")
