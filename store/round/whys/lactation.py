"""What is told of a cow's milk beyond the pail: her day, her coming month, her lactation, and what her calf took."""

from collections.abc import Iterator, Mapping
from datetime import date, datetime

from msgspec import Struct

from store.book.facts.farm import Animal
from store.book.reading.lactation import Lactation, MilkTest
from store.book.turn import from_wall, local
from store.book.words import Stage
from store.husbandry.milk.corrected import energy_corrected_kg, fat_corrected_kg
from store.husbandry.milk.curve import FIRST_DAY, peak_day, peak_kg
from store.husbandry.milk.own_curve import (
    FORECAST_DAYS,
    RANGE_PERCENT,
    Beforehand,
    Weighed,
    coming_kg,
    forecast_least_kg,
    forecast_most_kg,
    own_curve,
)
from store.husbandry.milk.shapes import shape_of
from store.husbandry.milk.udder import day_kg
from store.husbandry.why import MEAN, Value, given, of_all
from store.round.looking_back import LookBack
from store.round.timed import TimedPail
from store.round.whys.asked import Asked
from store.round.whys.calf_share import CalfShare, calf_share
from store.round.whys.in_pails import SoFar, so_far
from store.round.whys.milk import elapsed_value


class Coming(Struct, frozen=True):
    """A day of the coming month, in the mean, with its range [kg]. peak: its day in milk and its kilograms, to come."""

    least: Value
    middle: Value
    most: Value
    peak: tuple[Value, Value] | None = None

    def values(self) -> tuple[Value, ...]:
        """All of it."""
        return (self.least, self.middle, self.most, *(self.peak or ()))


class MilkTold(Struct, frozen=True):
    """Of one cow; None: not known. a_day, corrected: of 24 hours. coming: of a day of the coming month. [kg]"""

    a_day: Value | None = None
    corrected: tuple[Value, ...] = ()
    coming: Coming | None = None
    so_far: SoFar | None = None
    share: CalfShare = CalfShare()

    def values(self) -> tuple[Value, ...]:
        """Every number of it, in the order of the screen."""
        together = self.so_far.together if self.so_far else None
        found = (
            self.a_day,
            *self.corrected,
            *(self.coming.values() if self.coming else ()),
            together,
            *self.share.values(),
        )
        return tuple(each for each in found if each is not None)


def milk_values(asked: Asked, cow: Animal, back: LookBack, known: Lactation) -> MilkTold:
    """Each number with its why. back: her pails. known: the rest of her lactation. Of a dry cow only what she gave."""
    together = so_far(known.in_pails, cow.calved_on, shared=bool(known.calves))
    a_day = _a_day(asked, back)
    if cow.stage is not Stage.IN_MILK:
        return MilkTold(a_day, so_far=together)
    test = known.test if known.test and cow.is_of_now(local(known.test.at, asked.zone).date()) else None
    return MilkTold(
        a_day,
        tuple(_corrected(asked, a_day, test)) if a_day and test else (),
        _coming(asked, cow, back, known.breed) if cow.calved_on else None,
        together,
        calf_share(asked, back.compared, known.in_pails, known.calves) if known.calves else CalfShare(),
    )


def _a_day(asked: Asked, back: LookBack) -> Value | None:
    """The mean of her last pails that compare, each brought to 24 hours."""
    days = [_in_a_day(asked, each) for each in back.compared]
    return of_all(MEAN, "milk of 24 hours", "kg", days) if days else None


def _in_a_day(asked: Asked, each: TimedPail) -> Value:
    name = f"pail of {asked.when(each.pail.at)}"
    milk = given(each.pail.milk_kg or 0.0, "milk", "kg", "weighed")
    return day_kg.of(name, milk_kg=milk, elapsed_h=elapsed_value(each.emptied_at or each.pail.at, each.pail.at))


def _corrected(asked: Asked, a_day: Value, test: MilkTest) -> Iterator[Value]:
    """By her milk test; one of pails alone says too little where a calf sucks: the fattest milk is the calf's."""
    if test.fat_percent is None:
        return
    came = f"milk test {asked.day(test.at)}"
    fat = given(test.fat_percent, "fat", "%", came)
    yield fat_corrected_kg.of("4 % milk of 24 hours", milk_kg=a_day, fat_percent=fat)
    if test.protein_percent is not None:
        protein = given(test.protein_percent, "protein", "%", came)
        yield energy_corrected_kg.of(milk_kg=a_day, fat_percent=fat, protein_percent=protein)


def _coming(asked: Asked, cow: Animal, back: LookBack, breed: str) -> Coming | None:
    """The mean of her coming month, by her own curve."""
    calved = from_wall(datetime.combine(cow.calved_on or date.min, datetime.min.time()), asked.zone)
    rows = [
        Weighed((each.pail.at - calved).total_seconds() / 86400, day_kg(each.pail.milk_kg or 0.0, each.elapsed_h or 24))
        for each in back.pails if not each.why_not
    ]  # fmt: skip
    rows = [each for each in rows if each.day >= FIRST_DAY]
    curve = own_curve(rows, Beforehand(shape_of(breed)))
    if curve is None:
        return None
    came = f"her last {len(rows)} pails, from the shape of {breed or 'a middling breed'}"
    abc = {each: given(getattr(curve, each), f"{each} of her curve", "", came, curve.source) for each in "abc"}
    from_day = given((local(asked.now, asked.zone).date() - calved.date()).days + 1, "day in milk", "d", "counted")
    days = given(FORECAST_DAYS, "days", "d", "the coming month")
    middle = coming_kg.of(f"the coming {FORECAST_DAYS} days", from_day=from_day, days=days, **abc)
    percent = given(RANGE_PERCENT, "range", "%", "nine of ten lie closer, of cows without calves", curve.source)
    least = forecast_least_kg.of(forecast_kg=middle, percent=percent)
    return Coming(least, middle, forecast_most_kg.of(forecast_kg=middle, percent=percent), _peak(abc, from_day.amount))


def _peak(abc: Mapping[str, Value], from_day: float) -> tuple[Value, Value] | None:
    """The day of her peak and what she will give on it; None: it is over, or her curve has none."""
    if abc["b"].amount <= 0:
        return None
    day = peak_day.of(b=abc["b"], c=abc["c"])
    return (day, peak_kg.of(**abc)) if day.amount > from_day else None
