"""Weather: tonight's forecast is typed, what it asks for is seen, and what of it is taken is written."""

from collections.abc import Sequence
from typing import ClassVar
from uuid import UUID

from msgspec.structs import replace

from store.book.drafts import RowDraft
from store.book.register import read_register
from store.herd.sheet import Answers
from store.herd.weather import WeatherSheet, weather_sheet
from store.herd.weather_whys import tonight_numbers
from store.husbandry.why import Value
from tui.farm.sheet_form import SheetForm
from tui.place import WHY_KEY, Place
from tui.view import Key

NOT_CHANGED = "The hay is not changed. Up, then Y changes it for these rounds; Enter keeps the forecast."
GOES_BACK = "After these rounds the hay goes back, also where its plan is typed anew before they are over."


class WeatherForm(SheetForm):
    """The sheet of tonight, over a place of the round."""

    def __init__(self, back: Place, step_id: UUID | None) -> None:
        """step_id: the step that it goes back to, drawn anew; None: the place itself."""
        desk = back.walker.book.desk
        self.weather: WeatherSheet = weather_sheet(desk, read_register(desk, back.walker.book.clock.now()))
        super().__init__(back, self.weather)
        self.step_id = step_id

    def what_changes(self, rows: Sequence[RowDraft], answers: Answers) -> list[str]:
        """The proposal, then the steps of the next two rounds, before and after."""
        lines = [*self.weather.tonight(answers).lines()]
        if not answers["change"]:
            return [NOT_CHANGED, *lines]
        return [*lines, GOES_BACK, *super().what_changes(rows, answers)]

    def numbers(self) -> tuple[Value, ...]:
        """At the last line, those of the proposal: before it every letter belongs to an answer."""
        return tuple(tonight_numbers(self.weather.tonight(self.filling.answers())))

    def numbers_of(self) -> str:
        """Tonight's."""
        return "weather tonight"

    def write(self, rows: Sequence[RowDraft], answers: Answers) -> Place:
        """The forecast, and what of the proposal is taken."""
        walker = self.walker
        draft = self.weather.forecast(answers, walker.person.id, walker.book.clock.now())
        unread = walker.change(rows, self.weather.subject(), self.weather.told(answers), draft)
        back = self.rooms.at_step(self.step_id) if self.step_id else self.came_from
        return back.say(unread or "The forecast is kept.")

    KEYS: ClassVar[tuple[Key, ...]] = (
        *SheetForm.KEYS,
        replace(WHY_KEY, words=lambda form: "why" if form.question is None else ""),
    )
