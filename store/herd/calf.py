"""A calf that sucks: its cows, how long it may be apart, and the rule by which it is shut away; and how that ends."""

from collections.abc import Iterator, Sequence
from datetime import date, datetime, timedelta
from uuid import UUID

from store.book.drafts import RowDraft
from store.book.turn import from_wall, local
from store.book.words import EVERY_NIGHT, MORNING, Asks, Species, Stage
from store.herd.animal import OneAnimal, kept, stages
from store.herd.answers import a_count, a_number, maybe, words
from store.herd.milking import LONGEST_H
from store.herd.nights import some_nights
from store.herd.sheet import Answers, Choices, Question, Wrong, pick, pick_one
from store.round.tonight import nights_words

COWS = (Stage.IN_MILK, Stage.SUCKLER, Stage.DRY, Stage.CLOSE_UP)
FLAP, FLAP_ASKED = "nose flap: part it, or take it out", timedelta(days=7)
"""It is asked about for a week, unless the look is ended before."""
WEANED, FOSTERED, OTHER = "weaned", "fostered", "another reason"


class SuckingCalf(OneAnimal):
    """A sheet about a calf and the cows that it sucks."""

    def shared(self) -> dict[str, object]:
        """The row of the cow that it shares now; empty where it shares none."""
        row = self.register.get("sharing", self.animal_id) or {}
        return dict(row) if row.get("shares") else {}

    def second_id(self) -> UUID | None:
        """The other cow that it sucks."""
        return (self.register.get("second_cow", self.animal_id) or {}).get("cow_id")

    def cows(self, none: str) -> Choices:
        """The cows that a calf can suck; none: in words."""
        found = (row for row in kept(self.register) if row["species"] is Species.CATTLE and row["stage"] in COWS)
        return ((none, None), *((row["name"], row["animal_id"]) for row in found))

    def parted(self, answers: Answers) -> Iterator[RowDraft]:
        """It shares no cow's milk any more."""
        same = {"calf_id": self.animal_id}
        if self.shared():
            yield from self.dated("sharing", answers, same, {"shares": False})
        yield from self.second(answers, None)

    def second(self, answers: Answers, cow_id: UUID | None) -> list[RowDraft]:
        """The other cow that it sucks, or none."""
        if cow_id == self.second_id():
            return []
        return self.dated("second_cow", answers, {"calf_id": self.animal_id}, {"cow_id": cow_id})


class CalfSheet(SuckingCalf):
    """Which cows, how long apart, from which day, in which nights."""

    @property
    def title(self) -> str:
        """Which calf."""
        return f"{self.name}  its cow, and when it is shut away from her"

    def questions(self) -> tuple[Question, ...]:
        """The cows, then the rule."""
        shared, rule = self.shared(), self.register.get("apart_rule", self.animal_id)
        hours = "hours until the morning round; empty: no rule, every evening"
        return (
            pick("cow_id", "sucks", self.cows("no cow"), shared.get("cow_id")),
            pick("second_id", "and also", self.cows("no other"), self.second_id()),
            Question("longest_h", "apart at most", a_number(1, 48, "hours"), "hours, your own limit",
                     f"{shared.get('longest_h', LONGEST_H):g}"),
            Question("apart_h", "shut away for", maybe(a_number(1, 48, "hours")), hours,
                     f"{rule['apart_h']:g}" if rule else ""),
            Question("from_day", "from day of its life", a_count(0, 400, "days"),
                     "born is day 0; many wait 2 to 4 weeks", str(rule["from_day"]) if rule else "0"),
            Question("nights", "in which nights", some_nights, "every night, Mon to Sat, not Sun",
                     nights_words(rule["nights"] if rule else EVERY_NIGHT)),
            self.question_from(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The sharing, the second cow, the rule."""
        self._refuse(answers)
        return [*self._sharing(answers), *self._rule(answers)]

    def told(self, answers: Answers) -> str:
        """The rule in words."""
        cow = self.register.name("animal_as", answers["cow_id"])
        if not cow:
            return "shares no cow's milk"
        if answers["apart_h"] is None:
            return f"sucks {cow}"
        rule = f"{answers['apart_h']:g} h, from day {answers['from_day']}, {nights_words(answers['nights'])}"
        return f"sucks {cow}; shut away {rule}"

    def _refuse(self, answers: Answers) -> None:
        if answers["second_id"] and answers["second_id"] == answers["cow_id"]:
            raise Wrong("second_id", "That is the same cow twice. Pick another one, or no other.")
        if answers["second_id"] and not answers["cow_id"]:
            raise Wrong("cow_id", "With one cow only she stands in the first line. Pick her there.")
        if answers["apart_h"] and answers["apart_h"] > answers["longest_h"]:
            apart, longest = answers["apart_h"], answers["longest_h"]
            raise Wrong("apart_h", f"{apart:g} h is longer than your longest time apart, {longest:g} h.")
        if answers["apart_h"] is None and self.register.get("apart_rule", self.animal_id):
            raise Wrong("apart_h", "The rule needs its hours. Type them; for every evening from day 0, every night.")

    def _sharing(self, answers: Answers) -> Iterator[RowDraft]:
        if not answers["cow_id"]:
            yield from self.parted(answers)
            return
        values = {"cow_id": answers["cow_id"], "shares": True, "longest_h": answers["longest_h"]}
        yield from self.dated("sharing", answers, {"calf_id": self.animal_id}, values)
        yield from self.second(answers, answers["second_id"])

    def _rule(self, answers: Answers) -> Iterator[RowDraft]:
        if answers["apart_h"] is not None:
            values = {name: answers[name] for name in ("apart_h", "from_day", "nights")}
            yield from self.dated("apart_rule", answers, {"calf_id": self.animal_id}, values)


class WeaningSheet(SuckingCalf):
    """A calf shares its cow's milk no more: weaned, fostered by another cow, or else."""

    @property
    def title(self) -> str:
        """Which calf."""
        return f"{self.name}  WEANED, or with another cow from then on"

    def questions(self) -> tuple[Question, ...]:
        """Why, with which cow now, its class, the nose flap."""
        return (
            pick_one("why", "why", tuple((each, each) for each in (WEANED, FOSTERED, OTHER))),
            pick("cow_id", "fostered by", self.cows("no cow of this farm"), None, "only where it is fostered"),
            pick("stage", "its class now", stages(self.register), self.row["stage"]),
            Question("flap_days", "nose flap in, for", maybe(a_count(1, 30, "days")),
                     "days until the morning round asks for it; 4 to 14 are usual; empty: none"),
            Question("words", "a word on it", lambda text: words(text, 60), "may be left empty"),
            self.question_from(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The share ends, or goes on with another cow; its class; when the flap is looked after."""
        if answers["cow_id"] and answers["why"] != FOSTERED:
            raise Wrong("cow_id", "A cow is named here only where it is fostered. Pick no cow, or fostered.")
        return [*self._share(answers), *self._stage(answers), *self._flap(answers)]

    def told(self, answers: Answers) -> str:
        """Why it shares no more, and what is worth keeping."""
        cow = self.register.name("animal_as", answers["cow_id"])
        why = "with its cow no more" if answers["why"] == OTHER else answers["why"]
        flap = f"nose flap in for {answers['flap_days']} days" if answers["flap_days"] else ""
        return ", ".join(filter(None, (f"{why} by {cow}" if cow else why, flap, answers["words"])))

    def _share(self, answers: Answers) -> Iterator[RowDraft]:
        if not answers["cow_id"]:
            yield from self.parted(answers)
            return
        longest_h = self.shared().get("longest_h", LONGEST_H)
        values = {"cow_id": answers["cow_id"], "shares": True, "longest_h": longest_h}
        yield from self.dated("sharing", answers, {"calf_id": self.animal_id}, values)
        yield from self.second(answers, None)

    def _stage(self, answers: Answers) -> list[RowDraft]:
        return self.dated("animal_as", answers, {"animal_id": self.animal_id}, {"stage": answers["stage"]})

    def _flap(self, answers: Answers) -> Iterator[RowDraft]:
        """A look at the flap, every morning from the day on which it has been in for so long."""
        if answers["flap_days"]:
            since: date = local(answers.get(self.FROM) or self.register.at, self.zone).date()
            day = since + timedelta(days=answers["flap_days"])
            look_id, values = self.new_id(), {"asks": Asks.HOW, "slot": MORNING, "every_days": 1}
            yield RowDraft("look", {"id": look_id})
            yield RowDraft("look_as", {
                "look_id": look_id, "animal_id": self.animal_id, "name": FLAP, **values,
                "begins_at": from_wall(datetime(day.year, day.month, day.day), self.zone),  # noqa: DTZ001 wall time
                "until_on": day + FLAP_ASKED,
            })  # fmt: skip
