"""What a kind of step asks for: its lines, what digits mean there, what Enter writes, and what M offers."""

from abc import ABC, abstractmethod
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, ClassVar, Generic, TypeAlias, TypeVar

from msgspec import Struct

from store.book.drafts import Draft
from store.round.confirm import Hand, again
from store.round.steps import Step
from tui.page import Line, Size
from tui.walk.shown import Shown

if TYPE_CHECKING:
    from tui.place import Place
    from tui.walk.lamp import Lamp

S = TypeVar("S", bound=Step)
AnyJob: TypeAlias = "Job[Any]"


class More(Struct, frozen=True):
    """One line of the list behind M."""

    words: str
    act: "Callable[[Lamp], Place | None]"


class Job(ABC, Generic[S]):
    """How the lamp treats one kind of step. Holds no state: everything is in what is shown."""

    ENTER: ClassVar[str] = "done"  # what Enter writes, where that is always the same
    DIGITS: ClassVar[str] = ""  # what digits are, for the key line; empty: none
    ASKS: ClassVar[bool] = False  # it may ask about what is shown as it stands, and takes the word that it is right
    ROW_COUNTS: ClassVar[bool] = False  # another line chosen is already another answer
    PICKS: ClassVar[bool] = False  # digits pick a line instead of starting an amount
    TOGGLES: ClassVar[bool] = False  # digits mark something, or take the mark away: several can be picked

    def rows(self, shown: Shown, step: S) -> int:  # noqa: ARG002
        """How many lines Up and Down choose from."""
        return 1

    def first_row(self, step: S) -> int:  # noqa: ARG002
        """The line that is chosen at first; -1: it has to be picked."""
        return -1 if self.PICKS else 0

    def is_half_done(self, step: S) -> bool:  # noqa: ARG002
        """Whether the book holds something of it that leaves it open: Enter alone then goes on."""
        return False

    def first_marks(self, step: S) -> frozenset[str]:  # noqa: ARG002
        """What the book holds as marked already."""
        return frozenset()

    def toggled(self, marks: frozenset[str], number: int) -> frozenset[str]:  # noqa: ARG002
        """What is marked after a digit."""
        return marks

    def typed_row(self, row: int) -> int:  # noqa: ARG002
        """Which entry digits belong to when a line is chosen."""
        return 0

    @abstractmethod
    def draft(self, hand: Hand, shown: Shown, step: S) -> Draft:
        """What Enter writes. Raises Unreadable with a sentence, or Doubtful where it asks once."""

    def again(self, hand: Hand, shown: Shown, step: S) -> Draft:  # noqa: ARG002
        """What Enter writes at a step that is written already, where only another time was set."""
        return again(hand, step)

    @abstractmethod
    def lines(self, shown: Shown, step: S, size: Size) -> list[Line]:
        """The body of the screen."""

    def enter_words(self, shown: Shown, step: S) -> str:  # noqa: ARG002
        """What Enter would write, in a word or two."""
        return self.ENTER

    def behind(self, shown: Shown, step: S, draft: Draft, there: "Place") -> "Place":  # noqa: ARG002
        """Where writing leads; there: where the walk goes on. shown, step: as they stood before it."""
        return there

    def more(self, shown: Shown, step: S) -> tuple[More, ...]:  # noqa: ARG002
        """What else can be done at such a step."""
        return ()
