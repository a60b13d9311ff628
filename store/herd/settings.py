"""What the farm decides: units, words, times, limits, the vet's number."""

from collections.abc import Callable, Iterator, Sequence
from enum import StrEnum
from typing import Any

from store.book.drafts import RowDraft
from store.book.facts.farm import MilkLimits
from store.book.words import Air, Coat, Dialect, SettingName, Units
from store.herd.answers import a_count, a_number, maybe, maybe_weight, words
from store.herd.days import a_day_of_year, an_hour, day_of_year_words
from store.herd.ration_settings import RATION, WEAN_STARTER_KG
from store.herd.sheet import Answers, Choices, Question, YardSheet, pick
from store.husbandry.hay import least_and_most_lost
from store.husbandry.starting import WEAN_STARTER_KG as WEAN
from store.round.saying import exact

USUAL = MilkLimits()
"""What counts until the farm has set its own."""
FEEDERS = ("cone feeder", "ring feeder", "no feeder")
"""Those of which the loss is told, of all that were tried."""


class SettingsSheet(YardSheet):
    """Every setting that is not the farm's name or zone."""

    @property
    def title(self) -> str:
        """Of which farm."""
        return f"SETTINGS  {self.register.farm.name}. What may stay empty is asked for nowhere"

    def questions(self) -> tuple[Question, ...]:
        """In the order of need."""
        return (
            self._picked(SettingName.UNITS, "units", Units),
            self._picked(SettingName.DIALECT, "words", Dialect, "nuts or pellets"),
            self._typed(SettingName.EVENING_FROM, "evening round from", a_count(4, 23, "hours"), "the hour, as 12"),
            self._typed(SettingName.MORNING_AT, "morning round at", an_hour, "as 6:30; may be left empty"),
            self._typed(SettingName.EVENING_AT, "evening round at", an_hour, "as 17:30; may be left empty"),
            self._typed(SettingName.VET, "the vet", lambda text: words(text, 200), "name and number, for V"),
            self._weight(SettingName.MEAL_LIMIT_KG, "most of a meal", "more is asked about"),
            self._weight(SettingName.CHANGE_STEP_KG, "most more in one step", "of a feed change"),
            self._picked(SettingName.AIR, "the soak stands in", Air, "air, as it is now"),
            self._picked(SettingName.COAT, "coats outside", Coat),
            self._typed(SettingName.LEAD_DAYS, "order feed ahead", maybe(a_count(0, 60, "days")), "days"),
            Question(SettingName.TURNOUT_ON, "turnout", a_day_of_year, "about when, as 1 May",
                     day_of_year_words(self._now(SettingName.TURNOUT_ON)), was=self._now(SettingName.TURNOUT_ON)),
            self._typed(SettingName.HAY_LOSS_PERCENT, "hay that is lost", maybe(a_number(0, 60, "%")),
                        f"% of it; in trials: {', '.join(_lost(feeder) for feeder in FEEDERS)}"),
            self._typed(SettingName.COLD_WITHIN_MIN, "milk cold within", maybe(a_count(5, 600, "minutes")),
                        f"minutes; {USUAL.cold_within_min:g} if left empty"),
            self._typed(SettingName.JAR_DAYS, "jars listed for", maybe(a_count(1, 30, "days")),
                        f"days; {USUAL.jar_days} if left empty"),
            self._typed(SettingName.DROP_PERCENT, "a drop in milk asks at", maybe(a_number(5, 80, "%")),
                        f"% under her usual; {USUAL.drop_percent:g} if left empty"),
            self._typed(SettingName.COLOSTRUM_MILKINGS, "after calving, none to the house for",
                        maybe(a_count(0, 40, "milkings")),
                        f"milkings; {USUAL.colostrum_milkings} if left empty; local rules decide"),
            self._typed(SettingName.SUCKED_WITHIN_H, "a calf has sucked within", maybe(a_number(0.5, 24, "hours")),
                        f"hours; {USUAL.sucked_within_h:g} if left empty"),
            self._typed(SettingName.CLEANSING_WITHIN_H, "cleansing passed within", maybe(a_number(1, 72, "hours")),
                        f"hours; {USUAL.cleansing_within_h:g} if left empty"),
            *(self._typed(each.name, each.asked, each.read, each.hint) for each in RATION),
            self._weight(SettingName.WEAN_STARTER_KG, "weaned once it eats", "dry feed a day for 3 days; "
                         f"{exact(WEAN.amount, self.units)} if left empty, only a starting value", WEAN_STARTER_KG),
            self._typed(SettingName.CHECKED_BY, "who looks over rations", lambda text: words(text, 60),
                        "vet or adviser, by name; it starts with nobody"),
            self._typed(SettingName.CURRENCY, "money", lambda text: words(text, 8), "as EUR"),
            self.question_from(),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """A row for each setting that changes. An emptied one keeps its last value: there is no row for none."""
        return list(self._rows(answers))

    def told(self, answers: Answers) -> str:  # noqa: ARG002
        """That they were changed."""
        return "settings of the farm changed"

    def _rows(self, answers: Answers) -> Iterator[RowDraft]:
        for question in self.questions():
            value = answers[question.name]
            if question.name != self.FROM and value not in (None, ""):
                text = f"{value:.9g}" if isinstance(value, float) else str(value)
                yield from self.dated("setting", answers, {"name": SettingName(question.name)}, {"value": text})

    def _now(self, name: SettingName) -> str | None:
        row = self.register.get("setting", name)
        return str(row["value"]) if row else None

    def _picked(self, name: SettingName, asked: str, of: type[StrEnum], hint: str = "") -> Question:
        now = self._now(name)
        choices: Choices = tuple((str(each), str(each)) for each in of)
        return pick(name, asked, choices if now else (("not said", None), *choices), now, hint)

    def _weight(
        self, name: SettingName, asked: str, hint: str, bounds: tuple[float, float] = (0.01, 500.0)
    ) -> Question:
        now = self._now(name)
        read = maybe_weight(self.units, *bounds)
        return Question(name, asked, read, f"kg or lb; {hint}", exact(float(now), self.units) if now else "", was=now)

    def _typed(self, name: SettingName, asked: str, read: Callable[[str], Any], hint: str) -> Question:
        now = self._now(name)
        return Question(name, asked, read, hint, now or "", was=now)


def _lost(feeder: str) -> str:
    """`cone feeder 3.5 to 5.3`."""
    least, most = least_and_most_lost(feeder)
    return f"{feeder} {least:g}" if least == most else f"{feeder} {least:g} to {most:g}"
