"""The bench between rounds: what comes next, large; the list by the clock; the bell, once; the first key only wakes."""

from datetime import timedelta

import pytest
from syrupy.assertion import SnapshotAssertion

from store.book.drafts import Subject
from store.book.opening import Book
from store.book.records.care import Look, LookAs
from store.book.words import MIDDAY, Asks, Kind, SettingName, Units
from store.round.item import Item
from store.round.watch import watched
from tests.farm import MORNING as SIX_31
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn, some_id
from tests.tui.benched import at, bench_of, clock_of, ended, set_to
from tests.tui.keys import Sitting
from tui.app import PenwalkApp
from tui.bench import coming
from tui.bench.bench import Bench
from tui.bench.left import left_words
from tui.page import Size
from tui.stage import Stage
from tui.walk.lamp import Lamp


@pytest.mark.parametrize("size", [(80, 24), (120, 36), (60, 18), (40, 12)])
@pytest.mark.parametrize("hour", [(11, 52), (12, 30)])
def test_the_bench_is_as_kept(
    timed: Sitting, screen: SnapshotAssertion, size: tuple[int, int], hour: tuple[int, int]
) -> None:
    """Before the soak has to be started, and after it should have been."""
    place = bench_of(at(ended(timed), *hour))
    place.minute()
    assert timed.text(*size) == screen


def test_what_is_late_is_on_top_and_large(timed: Sitting) -> None:
    at(ended(timed), 11, 52)
    assert "18 minutes left" in timed.text().splitlines()[3]
    at(timed, 12, 30)
    bench_of(timed).minute()
    assert "20 minutes LATE" in timed.text().splitlines()[3]
    assert next(row for row in timed.text().splitlines() if row.startswith(" > ")).split()[1] == "12:10"


def test_before_a_round_with_nothing_due_that_is_said(timed: Sitting) -> None:
    ended(timed)
    timed.to_step("lucerne pellets", "soak", 1).press("enter", "i")
    at(timed, 11, 40)
    assert "EVENING ROUND" in timed.text()
    assert "nothing is due before it" in timed.text()


def test_a_farm_without_hours_is_told_where_they_are_set(sitting: Sitting) -> None:
    assert "When your rounds begin stands under F, settings" in " ".join(ended(sitting).text().split())
    assert sitting.press("enter").said == "Nothing is due. R lists the rounds."


def test_enter_goes_to_the_marked_thing(timed: Sitting) -> None:
    at(ended(timed), 11, 52).press("enter")
    assert "START SOAK for the evening" in timed.text()
    timed.press("i", "down", "enter")
    assert timed.said == "That round begins at 17:10; what is to be done before it stands above."


def test_a_late_calf_is_in_warning_words_and_enter_goes_to_letting_it_in(timed: Sitting) -> None:
    at(timed, 7, 30).press("i", "down")
    text = timed.text()
    assert "let Rook in to Fennel at the latest" in text
    assert "28 minutes LATE" in text
    timed.press("enter", "enter")
    assert timed.newest().kind is Kind.APART


def test_behind_noon_enter_at_a_calf_that_was_never_let_in_shuts_nothing_away(timed: Sitting) -> None:
    """The evening round's own step of it is another one; what is asked there too has to be said to be right."""
    at(timed, 12, 31).begin()
    timed.place = timed.house.bench()
    timed.press("enter")
    assert "let Rook in to Fennel at the latest" in timed.text()
    while not next(row for row in timed.text().splitlines() if row.startswith(" > ")).count("let Rook in"):
        timed.press("down")
    timed.press("enter")
    assert timed.said == "The Wed 11 Mar morning asks for it, and nothing is written there: R opens that round."
    timed.to_step("Rook", "apart").press("enter")
    assert (timed.written(), timed.said[:34]) == (0, "Rook is written as shut away since")
    timed.press("!", "enter")
    assert timed.newest().kind is Kind.APART


def test_what_comes_is_read_and_reckoned_once_for_each_look(timed: Sitting, monkeypatch: pytest.MonkeyPatch) -> None:
    """Painted again, at another line or at another minute, it is the same list."""
    place, looks = bench_of(ended(timed)), []

    def counted(*of: object) -> tuple[Item, ...]:
        looks.append(of)
        return ()

    monkeypatch.setattr(coming, "all_coming", counted)
    at(timed, 11, 52).walker.look()
    for key in ("down", "up"):
        timed.press(key).text(120, 40)
    at(timed, 11, 54).text()
    place.minute()
    assert len(looks) == 1
    at(timed, 12).walker.look()
    timed.text()
    assert len(looks) == 2


async def test_the_bell_of_the_terminal_rings_at_the_minute(timed: Sitting, monkeypatch: pytest.MonkeyPatch) -> None:
    bells: list[str] = []
    monkeypatch.setattr("tui.app.PenwalkApp.bell", lambda _: bells.append("bell"))
    app = PenwalkApp(at(ended(timed), 11, 52).walker)
    async with app.run_test(size=(80, 24)) as pilot:
        stage = app.query_one(Stage)
        assert "18 minutes left" in stage.page.text()
        for minute in (9, 10, 11, 12):
            at(timed, 12, minute)
            stage.minute()
        await pilot.pause()
        assert bells == ["bell"]
        assert "2 minutes LATE" in stage.page.text()
        clock_of(timed).move(hours=1)
        await pilot.press("x")
        assert "LEFT FOR YOU" in stage.page.text()
        await pilot.press("enter")
        assert isinstance(stage.view, Bench)


def test_a_hundred_things_are_gone_through_and_the_next_one_stays_in_sight(timed: Sitting, book: Book) -> None:
    tansy = animal_named(dawn(), "Tansy").id
    for number in range(100):
        put(book.desk, Look, id=some_id(f"look {number}"))
        put(book.desk, LookAs, look_id=some_id(f"look {number}"), animal_id=tansy, asks=Asks.HOW, slot=MIDDAY,
            name=f"something with a long name that goes on and on, number {number:02}")  # fmt: skip
    timed.walker.look()
    ended(timed).press(*["down"] * 101)
    text = timed.text()
    assert "> 12:10" in text or "> 17:10" in text
    assert "lines " in text
    assert "LOOK AT TANSY" in text
    assert all(len(row) <= 80 for row in text.splitlines())
    timed.press("pageup")
    assert "number 9" in timed.text(200)


def test_a_long_word_leaves_room_for_the_list(timed: Sitting) -> None:
    ended(timed)
    words = "the third stall from the door, where the drain was open and smelt of something " * 2
    timed.walker.write(watched(timed.walker.hand(), Subject(), words.strip(), SIX_31 + timedelta(hours=1)))
    assert "17:10  evening round" in timed.text()


def test_it_speaks_in_pounds_where_the_farm_does(timed: Sitting, book: Book) -> None:
    set_to(book, SettingName.UNITS, Units.US)
    timed.walker.look()
    at(ended(timed), 11, 52)
    assert "2.0 lb dry + 4.0 lb COLD water" in timed.text()


@pytest.mark.parametrize("size", [(width, height) for width in (1, 20, 40, 80) for height in (1, 3, 6, 9, 24)])
def test_no_window_is_too_small_to_be_drawn(timed: Sitting, size: tuple[int, int]) -> None:
    lines = bench_of(ended(timed)).draw(Size(*size)).lines
    assert len(lines) == size[1]


@pytest.mark.parametrize(
    ("minutes", "words"),
    [(0, "NOW"), (1, "1 minute left"), (59, "59 minutes left"), (60, "1 h 00 left"), (47 * 60 + 59, "47 h 59 left"),
     (48 * 60, "2 days left"), (-20, "20 minutes LATE"), (-125, "2 h 05 LATE")],
)  # fmt: skip
def test_how_long_is_left_is_said_in_words(minutes: int, words: str) -> None:
    assert left_words(Item(SIX_31 + timedelta(minutes=minutes), ""), SIX_31) == words


@pytest.mark.parametrize(("minutes", "words"), [(5, "5 minutes left"), (-10, "NOW, 20 minutes left"),
                                               (-30, "NOW"), (-40, "10 minutes LATE")])  # fmt: skip
def test_what_has_some_time_for_it_is_late_when_that_is_over(minutes: int, words: str) -> None:
    begins = SIX_31 + timedelta(minutes=minutes)
    assert left_words(Item(begins, "", until=begins + timedelta(minutes=30)), SIX_31) == words


def test_a_look_again_stands_at_the_bench_and_enter_leads_to_the_list(timed: Sitting) -> None:
    ended(timed)
    sloe = Subject(animal_id=animal_named(dawn(), "Sloe").id)
    timed.walker.write(watched(timed.walker.hand(), sloe, "left hind foot", SIX_31 + timedelta(hours=2)))
    at(timed, 8, 20)
    assert "11 minutes left" in timed.text()
    assert "LOOK AGAIN AT SLOE" in timed.text()
    assert "LOOK AGAIN  1 in the list" in timed.press("enter").text()
    bench_of(timed.press("escape"))


def test_what_only_comes_is_not_left_but_comes() -> None:
    item = Item(SIX_31 + timedelta(minutes=5), "", asks=False)
    assert left_words(item, SIX_31) == "in 5 minutes"
    assert left_words(item, item.at) == "now"


@pytest.mark.parametrize("key", ["escape", "backspace"])
def test_opened_in_mid_round_it_goes_back_to_the_step(timed: Sitting, key: str) -> None:
    timed.to_step("Hazel", "feed").press("i")
    assert "Esc back" in timed.text()
    assert _lamp(timed.press(key)).step.name == "Hazel"
    assert "CLOSING" in timed.press("e", "i", key).text()


def test_opened_in_a_past_round_it_goes_back_there(timed: Sitting) -> None:
    at(timed, 8)
    past = timed.walker.this().before()
    timed.walker.open_turn(past, live=False)
    timed.place = timed.house.lamp(2)
    step_id = timed.walker.steps[2].step_id
    bench_of(timed.press("i", "enter"))  # what was left for this round is read first
    assert _lamp(timed.press("escape")).step.step_id == step_id
    assert (timed.walker.turn, timed.walker.live) == (past, False)


def test_a_round_that_is_over_by_now_is_not_gone_back_to(timed: Sitting) -> None:
    bench = bench_of(timed.to_step("Hazel", "feed").press("i"))
    at(timed, 18)
    bench.minute()
    timed.press("up", "enter")
    assert timed.place is bench
    assert "CLOSING" in timed.press("escape").text()
    assert timed.walker.turn.slot == "evening"


def test_enter_on_a_look_again_marks_the_one_that_was_chosen(timed: Sitting) -> None:
    bench = bench_of(ended(timed))
    for hours, name in ((2, "Sloe"), (3, "Hazel")):
        subject = Subject(animal_id=animal_named(dawn(), name).id)
        timed.walker.write(watched(timed.walker.hand(), subject, "left hind foot", SIX_31 + timedelta(hours=hours)))
    bench.row = next(at for at, item in enumerate(bench.items) if item.watch and "Hazel" in item.words)
    marked = next(row for row in timed.press("enter").text().splitlines() if row.startswith("  >"))
    assert "Hazel" in marked


def _lamp(sitting: Sitting) -> Lamp:
    """The place, which is a step."""
    assert isinstance(sitting.place, Lamp)
    return sitting.place
