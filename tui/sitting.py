"""One sitting: a book opened, its round walked, the terminal left as it was found."""

import os
from contextlib import closing
from pathlib import Path

from platformdirs import user_state_path

from store.book.clock import Clock, new_id
from store.book.errors import NoBook
from store.book.opening import open_book
from store.book.reading import read_facts
from tui.terminal import keys_kept, refuse_dumb, signals_held
from tui.walker import Walker


def sit_down(place: str, look: str) -> int:
    """Open the keeper's own book and walk the round of this hour; the exit status."""
    refuse_dumb()
    with keys_kept():
        try:
            book = open_book(place, Clock(), bench_name())
        except NoBook:
            return _come_in(Path(place), look)
        with closing(book):
            return walk(Walker(book, read_facts(book.desk, book.clock.now())), look)


def _come_in(place: Path, look: str) -> int:
    """Where there is no book: ask what to do, and do it; the exit status."""
    with signals_held():
        from tui.app import StageApp  # noqa: PLC0415 textual: only when there is something to show
        from tui.doorway.doorway import DEMO, Doorway  # noqa: PLC0415

        door = Doorway(place, Clock())
        app = StageApp(door, door.clock, look)
        app.run(mouse=False)
    if app.broken:
        raise app.broken
    if door.chosen is None:
        return app.return_code or 0
    if door.chosen == DEMO:
        from tui.demo import show_demo  # noqa: PLC0415

        return show_demo(None, None, look, afresh=False)
    return sit_down(door.chosen, look)


def walk(walker: Walker, look: str, said: str = "") -> int:
    """Show the round at hand until the keeper leaves; the exit status. said: a first sentence.

    Raises what broke meanwhile, once the screen is gone.
    """
    if not os.environ.get("NO_COLOR", "x"):
        del os.environ["NO_COLOR"]  # no-color.org: it counts only when it is not empty
    with signals_held():
        from tui.app import PenwalkApp  # noqa: PLC0415 textual: only when there is a round to show

        app = PenwalkApp(walker, look, said)
        app.run(mouse=False)
    if app.broken:
        raise app.broken
    if app.return_code == 0 and not walker.ended():
        print(f"The round stays open. `penwalk{' demo' if walker.pretend else ''}` goes on where it stands.")  # noqa: T201
    return app.return_code or 0


def bench_name() -> str:
    """The word for this laptop, kept in its state folder: made up at first, the same ever after."""
    path = user_state_path("penwalk", appauthor=False) / "bench"
    try:
        if path.is_file():
            return path.read_text(encoding="utf-8").strip()[:60] or "bench"
        name = f"bench-{new_id(Clock().now()).hex[-6:]}"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(name + "\n", encoding="utf-8")
    except OSError:
        return "bench"
    return name
