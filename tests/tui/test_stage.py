"""The one widget in the running program: key, disk, picture in one handler."""

from pathlib import Path
from typing import ClassVar

import pytest

from store.book.errors import DamagedBook
from store.book.opening import Book
from store.book.reading import read_facts
from tests.farm import HandClock
from tui.app import PenwalkApp
from tui.crash import report
from tui.page import Page, Size, Span, fit
from tui.stage import TOO_QUICK, Stage
from tui.view import Key, View
from tui.walker import Walker


@pytest.fixture
def app(book: Book) -> PenwalkApp:
    """The program on the pretend morning."""
    return PenwalkApp(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True))


async def test_enter_writes_and_shows_the_next_step(app: PenwalkApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("enter")
        stage = app.query_one(Stage)
        assert len(app.house.walker.snapshot.entries) == 1
        assert "Stall" in stage.page.text()
        assert "1 done" in stage.page.text()


async def test_an_enter_that_comes_too_soon_is_said_and_writes_nothing(app: PenwalkApp, clock: HandClock) -> None:
    clock.ticks = lambda: 5.0  # type: ignore[method-assign]
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("enter", "enter", "enter")
        stage = app.query_one(Stage)
        assert len(app.house.walker.snapshot.entries) == 1
        assert stage.view.said == TOO_QUICK


async def test_a_line_feed_is_an_enter_too(app: PenwalkApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("ctrl+j")
        assert len(app.house.walker.snapshot.entries) == 1


async def test_the_page_follows_the_size_of_the_window(app: PenwalkApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        for size in ((120, 36), (40, 12), (20, 5), (80, 24)):
            await pilot.resize_terminal(*size)
            await pilot.pause()
            assert len(app.query_one(Stage).page.lines) == size[1]


async def test_the_clock_in_the_header_goes_on(app: PenwalkApp, clock: HandClock) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        assert "06:31" in app.query_one(Stage).page.text()
        clock.move(minutes=5)
        app.query_one(Stage).paint()
        await pilot.pause()
        assert "06:36" in app.query_one(Stage).page.text()


class Slow(View):
    """Something that takes long."""

    KEYS: ClassVar[tuple[Key, ...]] = ()
    done = False

    def draw(self, size: Size) -> Page:
        """What it does."""
        return Page((fit((Span("done" if self.done else "looking"),), size.width),) * size.height)

    @property
    def waits(self) -> bool:
        """Until it is done."""
        return not self.done

    def finish(self) -> None:
        """Done."""
        self.done = True


async def test_what_takes_long_is_drawn_before_it_is_done(app: PenwalkApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        stage = app.query_one(Stage)
        stage.go(Slow())
        assert "looking" in stage.page.text()
        await pilot.pause()
        assert "done" in stage.page.text()


async def test_ctrl_q_does_not_lose_what_is_half_typed(app: PenwalkApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("enter", "2", "ctrl+q", "ctrl+c")
        assert app.is_running
        assert "«2» is typed and not written" in app.query_one(Stage).page.text()


async def test_q_leaves_with_status_0(app: PenwalkApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("q")
    assert app.return_code == 0


def broken(_: object, __: Size) -> Page:
    """Draws nothing."""
    raise ZeroDivisionError("broken on purpose")


async def test_a_mistake_at_a_key_ends_the_program_and_is_kept_for_the_one_who_tells_it(
    app: PenwalkApp, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        monkeypatch.setattr("tui.walk.lamp.Lamp.draw", broken)
        await pilot.press("right")
    assert app.return_code != 0
    assert isinstance(app.broken, ZeroDivisionError)


async def test_a_mistake_at_a_change_of_size_does_the_same(app: PenwalkApp, monkeypatch: pytest.MonkeyPatch) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        monkeypatch.setattr("tui.walk.lamp.Lamp.draw", broken)
        await pilot.resize_terminal(60, 18)
        await pilot.pause()
    assert app.return_code != 0
    assert isinstance(app.broken, ZeroDivisionError)


def unreadable(*_: object) -> Page:
    """Of a book that is gone for a while."""
    raise DamagedBook("The book cannot be read: the cable is out.")


async def test_while_the_book_cannot_be_read_the_last_page_stays_and_why_is_said(
    app: PenwalkApp, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also where the window changes its size; once it is back the page is drawn."""
    async with app.run_test(size=(80, 24)) as pilot:
        stage = app.query_one(Stage)
        header = stage.page.text().splitlines()[0]
        with monkeypatch.context() as away:
            away.setattr("tui.walk.lamp.Lamp.draw", unreadable)
            stage.paint()
            assert stage.page.text().splitlines()[0] == header
            assert "the cable is out" in stage.page.text()
            await pilot.resize_terminal(60, 18)
            await pilot.pause()
            assert len(stage.page.lines) == 18
        stage.paint()
        assert "the cable is out" not in stage.page.text()
        assert app.is_running


async def test_what_the_book_refuses_at_a_key_is_said_and_what_is_typed_stays(
    app: PenwalkApp, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also at the first key after a long time away."""
    async with app.run_test(size=(80, 24)) as pilot:
        stage = app.query_one(Stage)
        monkeypatch.setattr("tui.rooms.House.my_farm", unreadable)
        monkeypatch.setattr("tui.rooms.House.enter", unreadable)
        await pilot.press("f")
        assert stage.view.said == "The book cannot be read: the cable is out."
        await pilot.press("left")
        stage.clock.move(hours=9)  # type: ignore[attr-defined]
        await pilot.press("right")
        assert stage.view.said == "The book cannot be read: the cable is out."
        assert app.is_running


def test_the_details_of_a_crash_are_kept_in_a_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tui.crash.user_log_path", lambda *_, **__: tmp_path)
    assert report(ZeroDivisionError("broken on purpose")).startswith("Penwalk stopped because of a mistake in it.")
    assert "broken on purpose" in (tmp_path / "penwalk-crash.txt").read_text()


def test_a_crash_is_reported_even_where_no_file_can_be_written(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tui.crash.user_log_path", lambda *_, **__: Path("/dev/null/nowhere"))
    monkeypatch.setattr("tui.crash.gettempdir", lambda: "/dev/null/nowhere")
    assert report(ValueError("x")).endswith("Everything you confirmed is in the book.")
