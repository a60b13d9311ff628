"""Weather at the bench: the forecast as typed, a proposal for these days, and the rows where the keeper takes it."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime, timedelta
from uuid import UUID

from store.book.desk import ReadingDesk
from store.book.drafts import Draft, RowDraft, Subject
from store.book.figures import ForecastFigure
from store.book.reading import read_facts
from store.book.reading.weather import airs_to_come, last_forecast
from store.book.register import Register
from store.book.snapshot import Snapshot
from store.book.turn import local
from store.book.words import FEEDING, Air, Coat, Kind, SettingName, State, Units
from store.herd.answers import a_count, a_number
from store.herd.effects import read_rounds, rounds_from
from store.herd.forecast import Weather, a_low, maybe_wind
from store.herd.more_hay import Limits
from store.herd.outside import outside_pens
from store.herd.sheet import Answers, Choices, Question, YardSheet, pick, yes_or_no
from store.herd.stretch import Stretch, stretch_from
from store.herd.tonight import Tonight
from store.husbandry.starting import COLD_MOST_PERCENT
from store.husbandry.units import KM_PER_MILE, fahrenheit

ROUNDS_MOST, USUAL_ROUNDS = 6, 2
A_WEEK = timedelta(days=7)
"""By then every passing setting has gone back: more than the longest stretch of rounds."""
COATS: Choices = tuple((coat.value, coat) for coat in Coat)
AIRS: Choices = tuple((air.value, air) for air in Air)


class WeatherSheet(YardSheet):
    """Tonight."""

    KEPT = True

    def __init__(
        self,
        register: Register,
        rounds: Sequence[Snapshot],
        last: tuple[datetime, ForecastFigure] | None,
        lasting_air: Air,
        airs: Mapping[datetime, Air],
    ) -> None:
        """rounds: the next two whose hay is to be given. last: the forecast typed last, and when.

        lasting_air: as set in a week. airs: the air from later moments of that week on.
        """
        super().__init__(register)
        self.rounds, self.lasting_air, self.airs = rounds, lasting_air, airs
        self.pens = tuple(outside_pens(register, rounds))
        self.last = last if last and local(last[0], self.zone).date() == self.today else None

    @property
    def title(self) -> str:
        """And when it was typed last, today."""
        typed = f", typed last at {local(self.last[0], self.zone):%H:%M}" if self.last else ""
        return f"WEATHER  tonight, from the forecast{typed}. A proposal: nothing changes unless you say so"

    def questions(self) -> tuple[Question, ...]:
        """The weather, the coat, who is outside, and what of the proposal is taken."""
        return (
            *self._weather_questions(),
            *(yes_or_no(f"out {pen.pen.id}", f"outside: {pen.pen.name}", first=pen.by_the_rule) for pen in self.pens),
            Question("rounds", "for how many rounds", a_count(1, ROUNDS_MOST, "rounds"), f"1 to {ROUNDS_MOST}",
                     str(USUAL_ROUNDS)),
            Question("most", "no more hay than +", a_number(0, 200, "%"), "% of what they get now",
                     self._most()),
            pick("air", "the soak stands in", AIRS, self.register.farm.air, "for these rounds, then as before"),
            yes_or_no("change", "change the hay", first=False, hint="for these rounds, then as before"),
        )  # fmt: skip

    def _weather_questions(self) -> tuple[Question, ...]:
        us, last = self.units is Units.US, self.last[1] if self.last else None
        low_c, wind_kmh = (last.low_c, last.wind_kmh) if last else (None, None)
        low = "" if low_c is None else f"{fahrenheit(low_c):.0f}" if us else f"{low_c:g}"
        wind = "" if wind_kmh is None else f"{wind_kmh / KM_PER_MILE if us else wind_kmh:.0f}"
        felt = f"{'mph' if us else 'km/h'}, as they feel it; behind a wall there is none; may be left empty"
        coat = self.register.get("setting", SettingName.COAT) or {"value": Coat.WINTER}
        return (
            Question("low_c", "lowest tonight", a_low(self.units), f"degrees {'F, as 18' if us else 'C, as -8'}", low,
                     was=low_c),
            Question("wind_kmh", "wind", maybe_wind(self.units), felt, wind, was=wind_kmh),
            yes_or_no("wet", "coats will be wet", first=bool(last and last.wet), hint="rain, or snow that melts"),
            pick("coat", "coats outside", COATS, coat["value"]),
        )  # fmt: skip

    def rows(self, answers: Answers) -> Sequence[RowDraft]:
        """What of the proposal is taken: dated rows, and those that put back what was before."""
        hay = self.tonight(answers).hay_rows() if answers["change"] else ()
        return [*hay, *self._coat(answers), *self._air(answers)]

    def told(self, answers: Answers) -> str:
        """What was taken, and for which rounds."""
        hay = answers["change"] and any(self.tonight(answers).hay_rows())
        air = any(self._air(answers))
        parts = (
            f"hay by the weather, {self._stretch(answers).words()}" if hay else "",
            f"coats: {answers['coat']}" if self._coat(answers) else "",
            f"soak in {answers['air']} air, {self._stretch(answers).words()}" if air else "",
        )
        return "; ".join(filter(None, parts)) or "the forecast is kept, nothing is changed"

    def forecast(self, answers: Answers, person_id: UUID, now: datetime) -> Draft:
        """The weather to come, as an entry outside of any round."""
        figure = ForecastFigure(answers["low_c"], answers["wind_kmh"], answers["wet"])
        return Draft(None, Kind.WEATHER, Subject(), None, State.DONE, now, person_id, None, figures=(figure,))

    def tonight(self, answers: Answers) -> Tonight:
        """The forecast over the yard."""
        step = self.register.get("setting", SettingName.CHANGE_STEP_KG)
        return Tonight(
            self.register,
            self.rounds,
            Weather(answers["low_c"], answers["wind_kmh"], answers["wet"], answers["coat"]),
            [pen for pen in self.pens if answers[f"out {pen.pen.id}"]],
            self._stretch(answers),
            Limits(answers["most"], float(step["value"]) if step else None),
        )

    def _most(self) -> str:
        """The farm's own limit of more hay, or what it starts with."""
        row = self.register.get("setting", SettingName.COLD_MOST_PERCENT)
        return str(row["value"]) if row else f"{COLD_MOST_PERCENT.amount:g}"

    def _stretch(self, answers: Answers) -> Stretch:
        return stretch_from(self.rounds[0], self.register.at, answers["rounds"])

    def _coat(self, answers: Answers) -> Sequence[RowDraft]:
        return self.dated("setting", answers, {"name": SettingName.COAT}, {"value": answers["coat"].value})

    def _air(self, answers: Answers) -> Iterator[RowDraft]:
        """The air that the soak stands in, and the lasting one again after these rounds.

        What an earlier forecast has set for later is said anew: else it would come through.
        """
        wanted, over = answers["air"], self._stretch(answers).over
        other = [at for at, air in self.airs.items() if at < over and air is not wanted]
        if wanted is self.register.farm.air and not other:
            return
        after = [at for at, air in self.airs.items() if at > over and air is not self.lasting_air]
        rows = [
            *((wanted, at) for at in (self.register.at, *other)),
            *((self.lasting_air, at) for at in (over, *after)),
        ]
        for air, begins_at in rows:
            yield RowDraft("setting", {"name": SettingName.AIR, "value": air.value, "begins_at": begins_at})


def weather_sheet(desk: ReadingDesk, register: Register) -> WeatherSheet:
    """Tonight, as the book stands. Raises DamagedBook."""
    farm, at = register.farm, register.at
    (this,) = read_rounds(desk, rounds_from(None, at, farm.zone, farm.evening_from_h)[:1], at, farm.zone)
    to_feed = stretch_from(this, at, len(FEEDING)).turns  # where this round's hay is given, it is the next two
    rounds, week = read_rounds(desk, to_feed, at, farm.zone), at + A_WEEK
    return WeatherSheet(
        register, rounds, last_forecast(desk, at), read_facts(desk, week).air, airs_to_come(desk, at, week)
    )
