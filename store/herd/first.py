"""The first sheet of all: a farm that has no book yet."""

from collections.abc import Mapping, Sequence

import pendulum

from store.book.drafts import RowDraft
from store.book.words import SettingName, Units
from store.herd.answers import a_count, a_name
from store.herd.sheet import Answers, Ask, Choices, Question, Sheet, pick
from store.round.amount import Unreadable

ZONES: Choices = tuple((zone, zone) for zone in pendulum.timezones())
UNITS: Choices = (("kilograms and litres", Units.METRIC), ("pounds and US gallons", Units.US))
NOON = 12


class FirstSheet(Sheet):
    """The farm, who does the round, and how they count."""

    def __init__(self, zone: str) -> None:
        """zone: of this laptop."""
        self.zone = zone

    @property
    def title(self) -> str:
        """That it is the beginning."""
        return "A NEW FARM BOOK  what stands there may stay; all of it can be changed later"

    def questions(self) -> tuple[Question, ...]:
        """Five."""
        return (
            Question(SettingName.NAME, "the farm is called", a_name),
            Question("person", "your name", a_name, "whoever does the round; more people later"),
            pick(SettingName.UNITS, "you count in", UNITS),
            Question(
                SettingName.ZONE,
                "clock of",
                _zone,
                "a few letters of the nearest large town",
                self.zone,
                ZONES,
                Ask.FIND,
            ),
            Question(
                SettingName.EVENING_FROM, "evening round from", a_count(4, 23, "hours"), "the hour, as 12", str(NOON)
            ),
        )

    def settings(self, answers: Answers) -> Mapping[SettingName, str]:
        """The farm's first settings."""
        names = (SettingName.NAME, SettingName.ZONE, SettingName.UNITS, SettingName.EVENING_FROM)
        return {name: str(answers[name]) for name in names}

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """The farm; its settings and the person are written with the new book (store.book.beginning)."""
        return [RowDraft("farm", {str(name): value for name, value in self.settings(answers).items()})]

    def told(self, answers: Answers) -> str:
        """Whose farm."""
        return f"the book of {answers[SettingName.NAME]}"


def _zone(text: str) -> str:
    """The zone whose name holds what was typed: the first one."""
    typed = text.lower().replace(" ", "_")
    zones = [zone for zone, _ in ZONES]
    found = next((zone for zone in zones if zone.lower() == typed), None)
    found = found or next((zone for zone in zones if typed and typed in zone.lower()), None)
    if found is None:
        raise Unreadable(f"«{text}» is in no clock's name. Type a large town near you, as Dublin or Chicago.")
    return found
