"""What will not last: read from the feed room once for each look at the book, not at every painting."""

from store.book.errors import BookError
from store.book.snapshot import Snapshot
from tui.bench.coming import Coming, next_lines
from tui.closing.soaks import soak_lines
from tui.treated import gap_words
from tui.walker import Walker


def besides(short: list[str], walker: Walker, coming: Coming) -> list[tuple[str, list[str]]]:
    """What the closing says besides its own round, each under its heading."""
    return [
        ("NOT TYPED", list(gap_words(walker))),
        ("SHORT", short),
        ("SOAK", list(soak_lines(walker))),
        ("NEXT", next_lines(walker, coming)),
    ]


def short(walker: Walker) -> list[str]:
    """Feeds that will not last, and by when to order; of a round that is walked now. What cannot be read is said."""
    from tui.feed_room.told import shortages  # noqa: PLC0415 not on the way to the first frame

    try:
        return shortages(walker) if walker.live else []
    except BookError as problem:
        return [str(problem)]


class Short:
    """The same, kept until the walker looks at the book again."""

    def __init__(self) -> None:
        """Nothing is read yet."""
        self.of: Snapshot | None = None
        self.lines: list[str] = []

    def told(self, walker: Walker) -> list[str]:
        """As the book stood at the walker's last look."""
        if self.of is not walker.snapshot:
            self.of, self.lines = walker.snapshot, short(walker)
        return self.lines
