"""The jobs that are a look, a count or a latch: heads, udder, calf, standing tasks."""

from collections.abc import Iterator
from functools import partial
from typing import TYPE_CHECKING, ClassVar
from uuid import UUID

from store.book.drafts import Draft
from store.book.facts.farm import Animal
from store.book.figures import CountedFigure, FeltFigure, PartedFigure
from store.book.words import Apart, Fill, State
from store.round.amount import Unreadable, whole_number
from store.round.apart import apart_question
from store.round.confirm import Doubtful, Hand, counted, done, felt, got_out, let_in_to, parted
from store.round.measured import IF_RIGHT
from store.round.steps import ApartStep, CountStep, SharedCalf, Step, UdderStep
from tui.page import Line, Size
from tui.walk.apart_card import apart_lines
from tui.walk.job import Job, More
from tui.walk.look_cards import count_lines, udder_lines
from tui.walk.shown import Shown
from tui.walk.task_card import task_lines
from tui.words import clock

if TYPE_CHECKING:
    from tui.place import Place
    from tui.walk.lamp import Lamp

HEADS_MOST = 999


class CountJob(Job[CountStep]):
    """Heads: a count is never as shown."""

    DIGITS: ClassVar[str] = "heads you see"

    def is_half_done(self, step: CountStep) -> bool:
        """A short count: looked for, and not found yet."""
        found = step.entry.the(CountedFigure) if step.entry else None
        return found is not None and found.missing > 0

    def draft(self, hand: Hand, shown: Shown, step: CountStep) -> Draft:
        """The heads typed; a short count stays open."""
        if not shown.typed.get(0):
            if not step.heads:
                return counted(hand, step, 0)
            raise Unreadable("A head count is never as shown. Type how many you see, or S to skip.")
        heads = whole_number(shown.typed[0], HEADS_MOST, "heads")
        if heads > len(step.heads) and not shown.sure:
            raise Doubtful(f"{heads} heads, and {len(step.heads)} are expected: who is the other? {IF_RIGHT}")
        return counted(hand, step, heads)

    def lines(self, shown: Shown, step: CountStep, size: Size) -> list[Line]:
        """Heads expected, large."""
        return count_lines(shown, step, size)

    def enter_words(self, shown: Shown, step: CountStep) -> str:
        """The count, once there is one."""
        if not step.heads and not shown.typed.get(0):
            return "nobody in this pen"
        return "write the count, all well" if shown.typed.get(0) else "once the heads are typed"


class UdderJob(Job[UdderStep]):
    """An udder is felt: a line for each finding, none chosen at first."""

    DIGITS: ClassVar[str] = "how it feels"
    PICKS: ClassVar[bool] = True
    ROW_COUNTS: ClassVar[bool] = True

    def first_row(self, step: UdderStep) -> int:
        """The finding that the book holds already; none: it has to be picked."""
        written = step.entry.the(FeltFigure) if step.entry and step.entry.state is State.DONE else None
        return tuple(Fill).index(written.fill) if written else -1

    def rows(self, shown: Shown, step: UdderStep) -> int:  # noqa: ARG002
        """The findings."""
        return len(Fill)

    def draft(self, hand: Hand, shown: Shown, step: UdderStep) -> Draft:
        """The finding."""
        if shown.row < 0:
            raise Unreadable("How does it feel? 1 slack, 2 comfortable, 3 full, 4 tight; then Enter.")
        return felt(hand, step, tuple(Fill)[shown.row])

    def lines(self, shown: Shown, step: UdderStep, size: Size) -> list[Line]:
        """The findings to pick from."""
        return udder_lines(shown, step, size)

    def enter_words(self, shown: Shown, step: UdderStep) -> str:  # noqa: ARG002
        """The finding, once there is one."""
        return "write it" if shown.row >= 0 else "once it is picked"

    def more(self, shown: Shown, step: UdderStep) -> tuple[More, ...]:  # noqa: ARG002
        """One quarter is not as the others."""
        return (QUARTER,)


class ApartJob(Job[ApartStep]):
    """A calf is shut away, or let in."""

    ASKS: ClassVar[bool] = True

    def draft(self, hand: Hand, shown: Shown, step: ApartStep) -> Draft:
        """It is where this round wants it; asked about where the book has it shut away already."""
        question = apart_question(step, shown.walker.zone)
        if question and not shown.sure:
            raise Doubtful(question)
        return parted(hand, step)

    def lines(self, shown: Shown, step: ApartStep, size: Size) -> list[Line]:
        """What to do with the calf, and how long it has been."""
        return apart_lines(shown, step, size)

    def enter_words(self, shown: Shown, step: ApartStep) -> str:
        """The clock turns with this key, unless it has to be asked about first."""
        asks = apart_question(step, shown.walker.zone) and not shown.sure
        return "asks first: shut away already" if asks else f"{step.want.value} now"

    def more(self, shown: Shown, step: ApartStep) -> tuple[More, ...]:
        """It was not where it should have been."""
        return (got_out_more(shown, step.cow, step.calf), *_otherwise(step))


class TaskJob(Job[Step]):
    """A standing job."""

    def draft(self, hand: Hand, shown: Shown, step: Step) -> Draft:  # noqa: ARG002
        """Done."""
        return done(hand, step)

    def lines(self, shown: Shown, step: Step, size: Size) -> list[Line]:
        """What to do, large."""
        return task_lines(step, shown.today, size)


QUARTER = More("A quarter: clots, hard, hot, tight, little milk", lambda lamp: lamp.rooms.quarters(lamp))


def _otherwise(step: ApartStep) -> Iterator[More]:
    """Not as this round wants it: left with her, shut away after all, let in to the other cow."""
    written = step.entry.the(PartedFigure) if step.entry and step.entry.state is State.DONE else None
    if step.want is Apart.SHUT_AWAY:
        if written and written.state is Apart.TOGETHER:
            yield More("Shut away after all, now", lambda lamp: lamp.write(parted(lamp.walker.hand(), step)))
        yield More("Left with her tonight: why", lambda lamp: lamp.rooms.left_with_her(lamp, step))
    if step.other_cow:
        other = step.other_cow
        words = f"Let in to {other.name} instead"
        yield More(words, lambda lamp: lamp.write(let_in_to(lamp.walker.hand(), step, other.id)))


def got_out_more(shown: Shown, cow: Animal, calf: SharedCalf) -> More:
    """It had got out: found with her now, or when T says; some time since it was last seen apart."""
    apart_at = shown.walker.last_seen_apart(calf.calf.id)
    since = f", some time since {clock(apart_at, shown.walker.zone)}" if apart_at else f": found with {cow.name}"
    act = partial(_calf_got_out, cow.id, calf.calf.id)
    return More(f"{calf.calf.name} had got out{since} (T first: other times)", act)


def _calf_got_out(cow_id: UUID, calf_id: UUID, lamp: "Lamp") -> "Place":
    """Write it, and stay: the step is now drawn from what is known."""
    since = lamp.walker.last_seen_apart(calf_id)
    return lamp.write(got_out(lamp.walker.hand(), cow_id, calf_id, since), stay=True)
