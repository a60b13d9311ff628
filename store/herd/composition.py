"""What a feed is made of, from its tag or a test."""

from collections.abc import Mapping, Sequence
from typing import Any

from store.book.drafts import RowDraft
from store.book.words import Origin
from store.herd.answers import a_number, maybe
from store.herd.feed import FeedSheet
from store.herd.sheet import Answers, Question, Wrong, pick
from store.husbandry.feeds.table import PARTS

WORDS = {
    "dm_percent": "dry matter", "cp_percent": "protein", "tdn_percent": "TDN", "ndf_percent": "fibre (NDF)",
    "fat_percent": "fat", "ca_percent": "calcium", "p_percent": "phosphorus", "nel_mcal": "energy (NEL)",
}  # fmt: skip
"""How a tag or a laboratory calls the parts."""
MOST = {"nel_mcal": 10.0, "tdn_percent": 200.0}
"""The others are parts of a hundred; a pure fat has a TDN of 184."""
HINTS = {"nel_mcal": ("Mcal", "Mcal a kg of dry matter"), "dm_percent": ("%", "% of the feed as it lies")}


class CompositionSheet(FeedSheet):
    """The parts of a feed; all but the dry matter as part of the dry matter."""

    @property
    def title(self) -> str:
        """Which feed."""
        return f"{self.row['name']}  from its label or a test. What the label does not say stays empty"

    def questions(self) -> tuple[Question, ...]:
        """Where it is from, whether the figures are of the feed as it lies, and the parts."""
        made = self._made
        basis = (("as it lies, as on most labels", False), ("of the dry matter, as from a laboratory", True))
        origin = (("its label", Origin.TAG), ("a test", Origin.TEST))
        return (
            pick("origin", "from", origin, made.get("origin", Origin.TAG)),
            pick(
                "of_dry", "figures are", basis, bool(made), "a label counts the water in, a laboratory mostly does not"
            ),
            *(self._part(name, made.get(name)) for name in PARTS),
            self.question_from(),
        )

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """All parts, told of the dry matter."""
        parts = self._parts(answers)
        beyond = next((name for name, value in parts.items() if value and value > MOST.get(name, 100)), None)
        if beyond:
            raise Wrong(
                beyond, f"{WORDS[beyond]} would be {parts[beyond]:.0f} % of the dry matter. Look at the figures again."
            )
        values = parts | {"origin": answers["origin"], "resembles": self._made.get("resembles", "")}
        return self.dated("composition", answers, {"feed_id": self.id_}, values)

    def told(self, answers: Answers) -> str:
        """Which parts are others now."""
        parts = self._parts(answers)
        other = "; ".join(self._change(name, parts[name]) for name in PARTS if parts[name] != self._made.get(name))
        return f"what it is made of, from the {answers['origin'].value}{f': {other}' if other else ''}"

    @property
    def _made(self) -> Mapping[str, Any]:
        return self.register.get("composition", self.id_) or {}

    def _parts(self, answers: Answers) -> dict[str, float | None]:
        """Those typed anew, told of the dry matter; the others are so already."""
        dry = 1.0 if answers["of_dry"] or not answers["dm_percent"] else answers["dm_percent"] / 100
        return {name: self._of_dry(name, answers[name], dry) for name in PARTS}

    def _of_dry(self, name: str, found: float | None, dry: float) -> float | None:
        as_typed = name in ("dm_percent", "nel_mcal") or found == self._made.get(name)
        return found if found is None or as_typed else round(found / dry, 4)

    def _change(self, name: str, now: float | None) -> str:
        """`protein 10.34 %, before 14 %`."""
        unit, _ = HINTS.get(name, ("%", "%"))
        said, before = ("none" if value is None else f"{value:g} {unit}" for value in (now, self._made.get(name)))
        return f"{WORDS[name]} {said}{'' if self._made.get(name) is None else f', before {before}'}"

    def _part(self, name: str, found: float | None) -> Question:
        unit, hint = HINTS.get(name, ("%", "%"))
        read = maybe(a_number(0, MOST.get(name, 100), unit))
        return Question(name, WORDS[name], read, hint, "" if found is None else f"{found:g}", was=found)
