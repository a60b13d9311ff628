"""Tonight's weather over the small farm: a proposal, what of it is taken, and what goes back by itself."""

import pytest

from store.book.drafts import RowDraft, Subject
from store.book.figures import ForecastFigure
from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.reading.weather import last_forecast
from store.book.snapshot import Snapshot
from store.book.words import Air, Coat, SettingName
from store.herd.body import BodySheet
from store.herd.plan import PlanSheet
from store.herd.sheet import Answers
from store.herd.weather import WeatherSheet, weather_sheet
from store.round.change import change_of
from store.round.confirm import done
from store.round.plan import plan
from store.round.steps import FeedStep
from tests.farm import HandClock, hand, morning
from tests.store.herd.filled import filled, id_of, register, write

COLD = {"low_c": "-12"}
"""Dry winter coat, no wind: 10.4 F are 21.6 degrees below 32."""
MORE = 1.216
ORCHARD_KG = 5.125
"""Of hay, a head and round: Sloe and Tansy stand there."""


def sheet(book: Book) -> WeatherSheet:
    """Tonight's, as the book stands."""
    return weather_sheet(book.desk, register(book))


def answers(found: WeatherSheet, **typed: str) -> Answers:
    """What was typed, read."""
    return filled(found, **typed).answers()


def lines(book: Book, **typed: str) -> str:
    """The proposal."""
    found = sheet(book)
    return "\n".join(found.tonight(answers(found, **typed)).lines()).replace("\u00a0", " ")


def take(book: Book, **typed: str) -> None:
    """Write what of the proposal is taken."""
    found = sheet(book)
    book.change(found.rows(answers(found, **typed)))


def hay_kg(snapshot: Snapshot, name: str = "Orchard") -> float:
    """What a pen is to get of hay in a round, over its heads."""
    step = next(step for step in plan(snapshot) if step.name == name and step.kind == "hay")
    assert isinstance(step, FeedStep)
    return sum(due.due_kg for due in step.due)


def the_rounds(book: Book, count: int) -> list[float]:
    """The orchard's hay in so many rounds from this one on, as each would be walked."""
    turn, found = morning(book).turn, []
    for _ in range(count):
        at = max(book.clock.now(), turn.begins("Europe/Dublin"))
        found.append(hay_kg(read_snapshot(book.desk, turn, at)))
        turn = turn.after()
    return found


def test_a_cold_night_says_how_cold_it_feels_and_how_much_more_hay_that_is(book: Book) -> None:
    found = lines(book, **COLD, wind_kmh="0")
    assert "feels like about -12 C; with a dry winter coat they need more below 0 C: +22 % energy" in found
    assert "HAY  Orchard, morning and evening: grass hay 10.2 kg -> 12.5 kg, +22 %" in found
    assert "for beef cattle outside, forage only: none is published for milking cows" in found


def test_no_feed_but_hay_is_proposed(book: Book) -> None:
    found = sheet(book)
    typed = answers(found, **COLD, change="yes", **everybody_out(found))
    hay = id_of(register(book), "feed_as", "grass hay")
    assert {row.values["feed_id"] for row in found.rows(typed) if row.table == "feed_plan"} == {hay}


def everybody_out(found: WeatherSheet) -> dict[str, str]:
    """Every pen picked."""
    return {f"out {pen.pen.id}": "yes" for pen in found.pens}


def test_a_pen_with_a_cow_in_milk_is_outside_only_where_the_keeper_says_so(book: Book) -> None:
    found = sheet(book)
    first = {question.words: question.first for question in found.questions()}
    assert (first["outside: Stall"], first["outside: Orchard"]) == ("no", "yes")
    assert "Stall" not in lines(book, **COLD)
    assert "HAY  Stall" in lines(book, **COLD, **everybody_out(found))


def test_a_wet_night_is_capped_at_what_the_keeper_allows(book: Book) -> None:
    found = lines(book, low_c="-5", wet="yes")
    assert "+72 % energy" in found
    assert "10.2 kg -> 13.3 kg, +30 %, the most you allow" in found
    assert "give this much now, the rest over the days after" in found
    assert "+20 %" in lines(book, low_c="-5", wet="yes", most="20")


def test_it_is_capped_by_appetite_where_the_pen_is_weighed(book: Book, clock: HandClock) -> None:
    """Hay of 85 % dry matter and 54 % TDN: 612 kg of heifer eat 18.36 kg of it, 380 kg of dry cow 8.36 kg; they get
    17.425 kg of hay and 0.89 kg of nuts as dry matter a day."""
    write(book, BodySheet(register(book), id_of(register(book), "animal_as", "Tansy")), weight_kg="380")
    clock.move(seconds=1)
    room = (18.36 + 8.36 - 17.425 - 1.0125 * 0.88) / 17.425 * 100
    assert sheet(book).pens[1].spare_percent == pytest.approx(room)
    assert "+48 %, all that they can eat" in lines(book, low_c="-20", wet="yes", most="100")
    assert "+30 %, the most you allow" in lines(book, low_c="-20", wet="yes")


def test_who_is_full_gets_no_more(book: Book, clock: HandClock) -> None:
    for name, kg in (("Tansy", "250 !"), ("Sloe", "250 !")):
        write(book, BodySheet(register(book), id_of(register(book), "animal_as", name)), weight_kg=kg)
        clock.move(seconds=1)
    assert "grass hay stays 10.2 kg, all that they can eat" in lines(book, **COLD)
    found = sheet(book)
    assert not [row for row in found.rows(answers(found, **COLD, change="yes")) if row.table == "feed_plan"]


def test_the_farms_own_limit_for_one_step_holds_here_too(book: Book, clock: HandClock) -> None:
    book.change([RowDraft("setting", {"name": SettingName.CHANGE_STEP_KG, "value": "0.5"})])
    clock.move(seconds=1)
    assert "10.2 kg -> 11.2 kg, +10 %, your limit for one step" in lines(book, **COLD)


def test_nothing_is_applied_by_itself(book: Book) -> None:
    """The coat is kept as the keeper said it; nothing else."""
    found = sheet(book)
    rows = found.rows(answers(found, **COLD))
    assert [(row.table, row.values["value"]) for row in rows] == [("setting", Coat.WINTER.value)]


@pytest.mark.parametrize(("rounds", "more"), [("1", [1, 0, 0]), ("2", [1, 1, 0, 0]), ("3", [1, 1, 1, 0, 0, 0])])
def test_hay_is_changed_for_so_many_rounds_and_then_as_before(book: Book, rounds: str, more: list[int]) -> None:
    take(book, **COLD, change="yes", rounds=rounds)
    assert the_rounds(book, len(more)) == pytest.approx([2 * ORCHARD_KG * (MORE if each else 1) for each in more], 1e-3)


def test_a_round_whose_hay_is_given_stays_as_it_was(book: Book) -> None:
    """The addition begins with the next one, and the round at hand shows what it showed."""
    snapshot = morning(book)
    for step in plan(snapshot):
        if isinstance(step, FeedStep) and step.kind == "hay":
            book.append(done(hand(book, snapshot), step))
    take(book, **COLD, change="yes", rounds="2")
    assert the_rounds(book, 4) == pytest.approx([2 * ORCHARD_KG * each for each in (1, MORE, MORE, 1)], 1e-3)


def test_a_second_forecast_counts_from_the_lasting_amount_and_not_on_top(book: Book, clock: HandClock) -> None:
    take(book, **COLD, change="yes", rounds="2")
    clock.move(hours=1)
    assert "10.2 kg -> 13.2 kg, +29 % (now 12.5 kg)" in lines(book, low_c="-16")
    take(book, low_c="-16", change="yes", rounds="4")
    assert the_rounds(book, 6) == pytest.approx([2 * ORCHARD_KG * each for each in (1.288,) * 4 + (1, 1)], 1e-3)


def test_a_milder_forecast_takes_the_addition_back(book: Book, clock: HandClock) -> None:
    take(book, **COLD, change="yes", rounds="4")
    clock.move(hours=1)
    assert "grass hay goes back to 10.2 kg (now 12.5 kg)" in lines(book, low_c="5")
    take(book, low_c="5", change="yes", rounds="4")
    assert the_rounds(book, 5) == pytest.approx([2 * ORCHARD_KG] * 5)


def test_a_planned_change_of_the_same_days_is_left_alone_and_said(book: Book, clock: HandClock) -> None:
    found = register(book)
    orchard = PlanSheet(
        found, Subject(pen_id=id_of(found, "pen_as", "Orchard")), "Orchard", id_of(found, "feed_as", "grass hay")
    )
    write(book, orchard, morning="7 kg", evening="5.125 kg", days="3")
    clock.move(seconds=1)
    before = the_rounds(book, 6)
    assert "Orchard, morning: grass hay is being changed by its plan" in lines(book, **COLD, rounds="4")
    take(book, **COLD, change="yes", rounds="4")
    mornings = the_rounds(book, 6)[::2]
    assert mornings == pytest.approx(before[::2])


def test_a_change_planned_for_later_still_comes(book: Book, clock: HandClock) -> None:
    found = register(book)
    hay = id_of(found, "feed_as", "grass hay")
    orchard = PlanSheet(found, Subject(pen_id=id_of(found, "pen_as", "Orchard")), "Orchard", hay)
    write(book, orchard, morning="7 kg", evening="7 kg", from_at="13 Mar 2026")
    clock.move(seconds=1)
    take(book, **COLD, change="yes", rounds="2")
    assert the_rounds(book, 6) == pytest.approx(
        [2 * kg for kg in (*(ORCHARD_KG * MORE,) * 2, 5.125, 5.125, 7, 7)], 1e-3
    )


def test_the_change_is_told_at_the_step_with_its_end(book: Book) -> None:
    take(book, **COLD, change="yes")
    step = next(step for step in plan(morning(book)) if step.name == "Orchard" and isinstance(step, FeedStep))
    change = change_of(step.due[0].rows, book.clock.now(), "Europe/Dublin")
    assert change is not None
    assert change.was_kg == ORCHARD_KG
    assert change.next is not None
    assert change.next.due_kg == ORCHARD_KG


def test_the_soak_is_told_by_the_farms_own_hours_in_the_air_of_the_night(book: Book) -> None:
    found = lines(book, low_c="15")
    assert "mild air tonight, unless it stands indoors; you have it set to cold" in found
    assert "lucerne pellets 12 h" in found
    assert "can freeze" not in found
    assert "SOAK  can freeze" in lines(book, low_c="-1")


def test_the_air_of_the_soak_is_set_for_these_rounds_and_goes_back(book: Book, clock: HandClock) -> None:
    take(book, low_c="22", air="hot", rounds="2")
    assert morning(book).farm.air is Air.HOT
    clock.move(hours=1)
    take(book, low_c="15", air="mild", rounds="2")
    assert morning(book).farm.air is Air.MILD
    clock.move(days=1)
    assert morning(book).farm.air is Air.COLD


def test_a_later_forecast_of_the_same_air_lasts_for_its_own_rounds(book: Book, clock: HandClock) -> None:
    """For one round at first; an hour later for six: until Saturday morning's round."""
    take(book, low_c="22", air="hot", rounds="1")
    clock.move(hours=1)
    found = sheet(book)
    assert found.told(answers(found, low_c="22", rounds="6")) == "soak in hot air, morning Wed to evening Fri"
    take(book, low_c="22", rounds="6")
    for _ in range(6):
        assert morning(book).farm.air is Air.HOT
        clock.move(hours=11)
    clock.move(hours=6)
    assert morning(book).farm.air is Air.COLD


def test_another_air_is_not_put_back_by_the_forecast_before(book: Book, clock: HandClock) -> None:
    take(book, low_c="22", air="hot", rounds="1")
    clock.move(hours=1)
    take(book, low_c="15", air="mild", rounds="4")
    clock.move(hours=24)
    assert morning(book).farm.air is Air.MILD


def test_a_shorter_forecast_of_another_air_ends_all_that_was_set_before(book: Book, clock: HandClock) -> None:
    """Hot was said three times, each time for longer."""
    for rounds in ("1", "2", "6"):
        take(book, low_c="22", air="hot", rounds=rounds)
        clock.move(minutes=1)
    take(book, low_c="15", air="mild", rounds="1")
    assert morning(book).farm.air is Air.MILD
    for _ in range(8):
        clock.move(hours=9)
        assert morning(book).farm.air is Air.COLD


@pytest.mark.parametrize("rounds", ["1", "2"])
def test_the_same_air_for_no_more_rounds_writes_nothing(book: Book, clock: HandClock, rounds: str) -> None:
    take(book, low_c="22", air="hot", rounds="2")
    clock.move(hours=1)
    found = sheet(book)
    typed = answers(found, low_c="22", rounds=rounds)
    assert list(found.rows(typed)) == []
    assert found.told(typed) == "the forecast is kept, nothing is changed"


def test_ice_and_heat_are_told_with_the_water(book: Book) -> None:
    assert "WATER  break the ice" in lines(book, low_c="-1")
    hot = lines(book, low_c="22")
    assert "HAY  no more: it feels like about 22 C, and a dry winter coat holds to 0 C" in hot
    assert "WATER  Orchard: about 76.1 l to 120 l a day (21 C to 32 C)" in hot
    assert (
        "HEAT  by day cows in milk feel it from about 20 C in damp air, 23 C in half damp air, 25 C in dry air" in hot
    )
    assert "it is hard on them from 27 C, 32 C, 37 C" in hot
    assert "break the ice" not in hot
    assert "HEAT" not in lines(book, low_c="9")


def test_the_coat_is_remembered(book: Book, clock: HandClock) -> None:
    take(book, **COLD, coat=Coat.HEAVY.value)
    clock.move(seconds=1)
    first = {question.name: question.first for question in sheet(book).questions()}
    assert first["coat"] == Coat.HEAVY


def test_the_forecast_of_today_stands_there_and_one_of_another_day_does_not(book: Book, clock: HandClock) -> None:
    """The small farm's last one is two days old."""
    found = sheet(book)
    assert last_forecast(book.desk, book.clock.now()) is not None
    assert {question.name: question.first for question in found.questions()}["low_c"] == ""
    typed = answers(found, low_c="-7.5", wind_kmh="20", wet="yes")
    person = morning(book).people[0].id
    book.change((), found.forecast(typed, person, book.clock.now()))
    last = last_forecast(book.desk, book.clock.now())
    assert last is not None
    assert last[1] == ForecastFigure(-7.5, 20, wet=True)
    again = sheet(book)
    first = {question.name: question.first for question in again.questions()}
    assert (first["low_c"], first["wind_kmh"], first["wet"]) == ("-7.5", "20", "yes")
    assert "typed last at 06:31" in again.title
    clock.move(days=1)
    assert {question.name: question.first for question in sheet(book).questions()}["low_c"] == ""


def test_a_forecast_belongs_to_no_round(book: Book) -> None:
    found = sheet(book)
    before = morning(book).entries
    book.change((), found.forecast(answers(found, **COLD), morning(book).people[0].id, book.clock.now()))
    assert morning(book).entries == before


def test_hay_that_stands_free_is_told_to_be_kept_full(book: Book, clock: HandClock) -> None:
    found = register(book)
    free = {"feed_id": id_of(found, "feed_as", "grass hay"), "pen_id": id_of(found, "pen_as", "Orchard")}
    book.change([RowDraft("free_feed", free | {"offered": True})])
    clock.move(seconds=1)
    assert "Orchard: grass hay stands free, keep it full" in lines(book, **COLD)
    assert sheet(book).pens[1].spare_percent is None


def test_a_sheet_left_open_past_the_end_of_its_only_round_leaves_nothing_behind(book: Book, clock: HandClock) -> None:
    found = sheet(book)
    typed = answers(found, **COLD, change="yes", rounds="1")
    clock.move(hours=8)
    book.change(found.rows(typed))
    assert the_rounds(book, 3) == pytest.approx([2 * ORCHARD_KG] * 3)


def test_hay_of_an_animals_own_is_hers_alone(book: Book, clock: HandClock) -> None:
    found = register(book)
    sloe = PlanSheet(found, Subject(animal_id=id_of(found, "animal_as", "Sloe")), "Sloe")
    write(book, sloe, feed_id="grass hay", morning="2 kg")
    clock.move(seconds=1)
    assert "HAY  Sloe, morning: grass hay 2.0 kg -> 2.4 kg, +22 %" in lines(book, **COLD)


def test_calves_alone_are_outside_only_where_the_keeper_says_so(book: Book, clock: HandClock) -> None:
    found = register(book)
    pen = PlanSheet(found, Subject(pen_id=id_of(found, "pen_as", "Calf pen")), "Calf pen")
    write(book, pen, feed_id="grass hay", morning="1 kg")
    clock.move(seconds=1)
    first = {question.words: question.first for question in sheet(book).questions()}
    assert first["outside: Calf pen"] == "no"


def test_a_us_farm_types_and_reads_its_own_units(book: Book, clock: HandClock) -> None:
    """10 F with 10 mph feels like 0 F: 32 more in a hundred."""
    book.change([RowDraft("setting", {"name": SettingName.UNITS, "value": "us"})])
    clock.move(seconds=1)
    found = lines(book, low_c="10", wind_kmh="10", most="50")
    assert "feels like about 0 F; with a dry winter coat they need more below 32 F: +32 % energy" in found
    assert "grass hay 22.6 lb -> 29.8 lb, +32 %" in found
    typed = sheet(book)
    book.change((), typed.forecast(answers(typed, low_c="10", wind_kmh="10"), morning(book).people[0].id, clock.now()))
    first = {question.name: question.first for question in sheet(book).questions()}
    assert (first["low_c"], first["wind_kmh"]) == ("10", "10")
    assert "about 20.1 gal to 31.6 gal a day (70 F to 90 F)" in lines(book, low_c="72")


def test_after_the_evenings_hay_a_milder_forecast_takes_back_both_rounds_of_tomorrow(
    book: Book, clock: HandClock
) -> None:
    """What was to begin with tomorrow is not given yet, and is gone."""
    clock.move(hours=12)
    snapshot = morning(book)
    for step in plan(snapshot):
        if isinstance(step, FeedStep) and step.kind == "hay":
            book.append(done(hand(book, snapshot), step))
    take(book, **COLD, change="yes", rounds="2")
    clock.move(minutes=10)
    assert the_rounds(book, 4) == pytest.approx([2 * ORCHARD_KG * each for each in (1, MORE, MORE, 1)], 1e-3)
    take(book, low_c="12", change="yes", rounds="2")
    clock.move(minutes=10)
    assert the_rounds(book, 4) == pytest.approx([2 * ORCHARD_KG] * 4)
