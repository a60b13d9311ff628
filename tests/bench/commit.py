"""The commit of one step in a book with very many entries, beside the demo's: python -m tests.bench.commit [entries]

Pair by pair in one run, each a correction of the same feed step, durably, with the plan drawn anew in between.
"""

import shutil
import sys
from contextlib import ExitStack, closing
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from store.book.opening import Book, open_book
from store.round.measured import fed
from store.round.steps import FeedStep
from tests.bench.million import ENTRIES, long_book
from tests.bench.proc import load
from tests.bench.telling import Figures, ratio, say, tell
from tests.farm import HandClock, hand, morning, step_of

PAIRS, WARM = 300, 20


def commit_s(book: Book) -> float:
    """One feed step written, durably; the plan before it is not counted. [s]"""
    snapshot = morning(book)
    step = step_of(snapshot, "Fennel", "feed")
    assert isinstance(step, FeedStep)
    draft = fed(hand(book, snapshot), step, {})
    began_s = perf_counter()
    book.append(draft)
    return perf_counter() - began_s


def main() -> None:
    """Measure and tell."""
    entries = int(sys.argv[1]) if len(sys.argv) > 1 else ENTRIES
    say(load())
    with TemporaryDirectory() as folder, ExitStack() as stack:
        books = []
        for name, size in (("long", entries), ("demo", 0)):
            place = Path(shutil.copy(long_book(size), Path(folder) / name))
            books.append(stack.enter_context(closing(open_book(str(place), HandClock()))))
        pairs = [tuple(commit_s(book) for book in books) for _ in range(WARM + PAIRS)][WARM:]
    names = (f"commit, {entries} entries", "commit, demo's book")
    long, demo = (Figures(name, [pair[at] for pair in pairs]) for at, name in enumerate(names))
    tell(long, demo)
    say(f"commit, long book / demo's book: {ratio(long, demo)}")


if __name__ == "__main__":
    main()
