"""A feed: its name, what it resembles, whether it is soaked or baled, and whom it is not for."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any
from uuid import UUID

from store.book.drafts import RowDraft, Subject
from store.book.register import Register
from store.book.words import Origin, Species
from store.herd.answers import a_name, words
from store.herd.sheet import Answers, Ask, Choices, Question, yes_or_no
from store.herd.thing import ThingSheet
from store.husbandry.feeds.table import BY_NAME, FEEDS, PARTS
from store.round.amount import Unreadable

NOT_KNOWN = "none of these"
LIKE: Choices = ((NOT_KNOWN, None), *((feed.name, feed.name) for feed in FEEDS))


def feeds_in_use(register: Register) -> list[Mapping[str, Any]]:
    """The rows of the feeds in use, by name."""
    return sorted((row for row in register.all("feed_as") if row["in_use"]), key=lambda row: row["name"])


class FeedSheet(ThingSheet):
    """A new feed, or one that is there."""

    TABLE = "feed_as"

    @property
    def title(self) -> str:
        """Which feed."""
        return f"FEED  {self.row['name']}" if self.row else "A NEW FEED  nuts, barley, hay, pellets, mineral"

    def subject(self) -> Subject:
        """The feed."""
        return Subject(feed_id=self.id_)

    def questions(self) -> tuple[Question, ...]:
        """Name first; the rest may stay as it stands."""
        made = self.register.get("composition", self.id_) or {}
        asked = (
            Question("name", "name", a_name, "as you say it: dairy nuts", self.row.get("name", "")),
            Question("resembles", "is most like", _like, "letters find it, a digit picks; until you type its label",
                     made.get("resembles") or NOT_KNOWN, LIKE, ask=Ask.FIND),
            yes_or_no("baled", "comes in bales", first=self.row.get("baled", False), hint="strings or net come off"),
            yes_or_no("soaked", "is soaked before it is fed", first=self.row.get("soaked", False),
                      hint="its weights are then dry weights"),
            Question("bucket", "soaks in", lambda text: words(text, 40), "which bucket, as RED; may be left empty",
                     self.row.get("bucket", "")),
            Question("not_for", "never for", _species, "as sheep, horse; its label says it. Empty: for all",
                     ", ".join(sorted(self._barred()))),
        )  # fmt: skip
        in_use = yes_or_no(
            "in_use", "in use", first=self.row.get("in_use", True), hint="no: it is in no round any more"
        )
        return (*asked, in_use, self.question_from()) if self.row else asked

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The feed, what it is made of, and whom it is not for."""
        self.refuse_taken(answers["name"], (row["name"] for row in feeds_in_use(self.register)), "feed")
        return list(self._rows(answers, self.id_ or self.new_id()))

    def told(self, answers: Answers) -> str:
        """Which feed."""
        return "feed changed" if self.row else f"{answers['name']}, a new feed"

    def _rows(self, answers: Answers, feed_id: UUID) -> Iterator[RowDraft]:
        if not self.row:
            yield RowDraft("feed", {"id": feed_id})
        same = {"feed_id": feed_id}
        values = {each: answers[each] for each in ("name", "soaked", "bucket", "baled")}
        yield from self.dated("feed_as", answers, same, values | {"in_use": answers.get("in_use", True)})
        made = self.register.get("composition", feed_id)
        if answers["resembles"] and (made is None or made["resembles"] != answers["resembles"]):
            parts = {name: getattr(BY_NAME[answers["resembles"]], name) for name in PARTS}
            origin = {"origin": Origin.TABLE, "resembles": answers["resembles"]}
            yield from self.dated("composition", answers, same, parts | origin)
        for species in Species:
            if (species in answers["not_for"]) != (species in self._barred()):
                barred = {"barred": species in answers["not_for"]}
                yield from self.dated("not_for", answers, same | {"species": species}, barred)

    def _barred(self) -> set[Species]:
        rows = self.register.all("not_for")
        return {row["species"] for row in rows if row["feed_id"] == self.id_ and row["barred"]}


def _like(text: str) -> str | None:
    """The feed of the table whose name holds what was typed: the first one. Empty or not known: none."""
    typed = text.lower().split()
    if not typed or text == NOT_KNOWN:
        return None
    found = next((feed.name for feed in FEEDS if all(word in feed.name.lower() for word in typed)), None)
    if found is None:
        raise Unreadable(f"«{text}» is in no feed of the table. Other letters, or empty for none of these.")
    return found


def _species(text: str) -> frozenset[Species]:
    named = {"goats": Species.GOAT, "horses": Species.HORSE, "pony": Species.HORSE, "ponies": Species.HORSE,
             "hens": Species.POULTRY, "cows": Species.CATTLE}  # fmt: skip
    known = named | {species.value: species for species in Species}
    typed = [word for word in text.lower().replace(",", " ").split() if word not in ("and", "nobody", "none")]
    strange = next((word for word in typed if word not in known), None)
    if strange:
        raise Unreadable(f"«{strange}» is no kind of animal here. Type {', '.join(Species)}, or nothing.")
    return frozenset(known[word] for word in typed)
