"""Makes the pictures of the README from the running program: demo_farm/pictures/*.svg.

Run it after changing a screen: python -m demo_farm.make_pictures. Every figure on them is invented.
"""

import asyncio
import re
import tempfile
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

from store.book.clock import PretendClock
from store.book.folder.take_in import new_book_from
from store.book.opening import Book, open_book
from store.book.reading import read_facts
from tui.app import PenwalkApp
from tui.walker import Walker

HERE = Path(__file__).parent
MORNING = datetime(2026, 3, 11, 6, 31, tzinfo=UTC)
SIZE = (80, 24)
PICTURES = {
    "feed": ("enter", "g", *"fennel feed", "enter"),
    "milk": ("enter", "g", *"fennel milk", "enter", *"7.2"),
    "ration": ("enter", "g", *"fennel feed", "enter", "j"),
    "buckets": ("enter", "b"),
    "closing": (
        "enter", " ", "enter", " ", "enter", "g", *"fennel feed", "enter", "2", "enter", *"7.2", "enter", " ", "enter",
        "g", *"hazel milk", "enter", *"10.1", "enter", "g", *"sloe feed", "enter", "s", "4", "enter", "e",
    ),
}  # fmt: skip
NAMED = {" ": "space", ".": "full_stop"}
"""Space does nothing at a step; an Enter counts behind it."""


async def picture(book: Book, keys: tuple[str, ...]) -> str:
    """The screen after some keys, as SVG; without the fonts that a viewer would have to fetch."""
    app = PenwalkApp(Walker(book, read_facts(book.desk, book.clock.now()), pretend=True))
    async with app.run_test(size=SIZE) as pilot:
        await pilot.press(*(NAMED.get(key, key) for key in keys))
        await pilot.pause()
        svg = app.export_screenshot(title="Penwalk")
    return re.sub(r"@font-face\s*\{.*?\}", "", svg, flags=re.DOTALL)


def main() -> None:
    """Every picture from a fresh book."""
    (HERE / "pictures").mkdir(exist_ok=True)
    for name, keys in PICTURES.items():
        with tempfile.TemporaryDirectory() as folder:
            place = Path(folder) / "book"
            new_book_from(HERE, place)
            with closing(open_book(str(place), PretendClock(MORNING))) as book:
                svg = asyncio.run(picture(book, keys))
        (HERE / "pictures" / f"{name}.svg").write_text(svg, encoding="utf-8")


if __name__ == "__main__":
    main()
