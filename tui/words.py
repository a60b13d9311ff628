"""How the screen says numbers, times and ages. Numbers come in kg and L; what is shown is what the farm set."""

from datetime import date, datetime, timedelta

from store.book.facts.feed import Told
from store.book.figures import LookedFigure
from store.book.snapshot import Snapshot
from store.book.turn import local
from store.book.words import Asks, Units
from store.husbandry.milk.pail import litres
from store.husbandry.units import CM_PER_INCH, L_PER_US_GAL, fahrenheit
from store.round.saying import bare, moment_words

_SMALL = """none one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen
sixteen seventeen eighteen nineteen twenty""".split()
_PARTS = {0.25: ("1/4", "a quarter"), 0.5: ("1/2", "a half"), 0.75: ("3/4", "three quarters")}


def volume(milk_kg: float, units: Units) -> str:
    """The volume of a weight of milk: `5.6 L`, `1.5 US gal`."""
    milk_l = litres(milk_kg)
    return f"{milk_l / L_PER_US_GAL:.1f} US gal" if units is Units.US else f"{milk_l:.1f} L"


def look_figure(asks: Asks, found: float, units: Units) -> str:
    """A finding as the farm shows it: `2.5 points`, `142 cm`, `101.5 F`. found: points, cm or degrees C."""
    if asks is Asks.CONDITION:
        return f"{found:g} points"
    if units is Units.US:
        return f"{found / CM_PER_INCH:.1f} in" if asks is Asks.GIRTH else f"{fahrenheit(found):.1f} F"
    return f"{found:g} cm" if asks is Asks.GIRTH else f"{found:.1f} C"


def look_words(found: LookedFigure, units: Units) -> str:
    """What a look found: `better`, `2.5 points`."""
    figures = {
        Asks.CONDITION: found.condition_points,
        Asks.GIRTH: found.girth_cm,
        Asks.TEMPERATURE: found.temperature_c,
    }
    told = (look_figure(asks, figure, units) for asks, figure in figures.items() if figure is not None)
    return next(told, found.looks.value if found.looks else "not looked")


def in_quarters(number: float) -> str | None:
    """`3 1/2`; None if it is no whole number of quarters."""
    whole, part = divmod(number, 1)
    if part == 0:
        return f"{whole:.0f}"
    if part not in _PARTS:
        return None
    return f"{whole:.0f} {_PARTS[part][0]}" if whole else _PARTS[part][0]


def spelled(number: float) -> str:
    """`three and a half`; the figure itself above twenty. It keeps 1 1/2 and 11/2 apart."""
    whole, part = divmod(number, 1)
    if whole > 20 or (part and part not in _PARTS):
        return in_quarters(number) or bare(number)
    if not part:
        return _SMALL[int(whole)]
    return f"{_SMALL[int(whole)]} and {_PARTS[part][1]}" if whole else _PARTS[part][1]


def measured(number: float, told: Told) -> str:
    """`1 scoop`, `3 1/2 scoops`."""
    return f"{in_quarters(number) or bare(number)} {measure_word(number, told)}"


def measure_word(number: float, told: Told) -> str:
    """`scoop` or `scoops`."""
    return told.name if number <= 1 else told.plural


def clock(moment: datetime, zone: str) -> str:
    """`06:42`, on the farm's wall clock."""
    return local(moment, zone).strftime("%H:%M")


def ends_of(since: datetime | None, at: datetime, zone: str, of: date) -> tuple[str, ...]:
    """`06:42`, or the two moments between which it was; with the day where one is not meant of itself.

    of: the day of the round, which is not said: `Tue 10 Mar 00:00` and `23:59`; `Tue 10 Mar 02:30` and `Wed 05:50`.
    """
    on = local(at, zone).date()
    if since is None:
        return (clock(at, zone) if on == of else when(at, zone),)
    if on == of and at - since < timedelta(days=1):
        return clock(since, zone), clock(at, zone)
    same = local(since, zone).date() == on
    return when(since, zone), clock(at, zone) if same else f"{on:%a} {clock(at, zone)}"


def span_words(since: datetime | None, at: datetime, zone: str, of: date) -> str:
    """`06:42`; `02:30-05:50` where it was somewhen between two moments; with its day as `ends_of`."""
    return "-".join(ends_of(since, at, zone, of))


def near(moment: datetime, now: datetime, zone: str) -> str:
    """`06:42`; with its day where that is another one: `Tue 10 Mar 18:20`."""
    today = local(moment, zone).date() == local(now, zone).date()
    return clock(moment, zone) if today else when(moment, zone)


def when(moment: datetime, zone: str) -> str:
    """`Tue 10 Mar 18:20`, on the farm's wall clock."""
    return moment_words(moment, zone)


def at_hour(moment: datetime, now: datetime, zone: str) -> str:
    """`12:10`; with the day where that is not today: `Thu 18:20`, `Wed 25 Mar 18:20`."""
    days = (local(moment, zone).date() - local(now, zone).date()).days
    if days == 0:
        return clock(moment, zone)
    return f"{local(moment, zone):%a} {clock(moment, zone)}" if 0 < days < 7 else when(moment, zone)


def day(of: date) -> str:
    """`Wed 11 Mar`."""
    return f"{of.strftime('%a')} {of.day} {of.strftime('%b')}"


def age(since: date, today: date) -> str:
    """`5 days`, `8 weeks`, `14 months`, `3 years`."""
    days = (today - since).days
    for least, size, word in ((730, 365.25, "years"), (120, 30.44, "months"), (21, 7, "weeks")):
        if days >= least:
            return f"{days / size:.0f} {word}"
    return "1 day" if days == 1 else f"{days} days"


def hours(elapsed_h: float) -> str:
    """`11 h 52`."""
    minutes = round(elapsed_h * 60)
    return f"{minutes // 60} h {minutes % 60:02d}"


def elapsed(time: timedelta) -> str:
    """`42 min`, `1 h 30`."""
    return hours(time.total_seconds() / 3600) if time >= timedelta(hours=1) else f"{time.total_seconds() // 60:.0f} min"


def slot_name(snapshot: Snapshot) -> str:
    """`MORNING`."""
    return snapshot.turn.slot.upper()
