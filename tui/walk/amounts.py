"""The jobs with an amount: feed and hay, and milk."""

from functools import partial
from typing import TYPE_CHECKING, ClassVar

from store.book.drafts import Draft
from store.book.figures import MilkedFigure
from store.book.words import Fate, State
from store.round.amount import Unreadable
from store.round.change import change_of
from store.round.confirm import Doubtful, Hand
from store.round.emptied import CALF_HAD_IT
from store.round.judging import judged_draft
from store.round.measured import ask_if_unusual, fates_of, fed, milked, not_milked
from store.round.pails import poured
from store.round.soaked import soak_question
from store.round.steps import FeedStep, MilkStep
from store.round.timed import HELD_BACK, PART
from tui.page import Line, Size
from tui.walk.care import treatments_of
from tui.walk.feed_card import feed_lines
from tui.walk.job import Job, More
from tui.walk.looks import QUARTER, got_out_more
from tui.walk.milk_card import milk_lines
from tui.walk.milk_marks import BY_HAND, LESS, drawn, mark_offer, marks_of
from tui.walk.poured import others, poured_into, poured_marks, use_shown
from tui.walk.shown import Shown

if TYPE_CHECKING:
    from tui.place import Place
    from tui.walk.lamp import Lamp

NOT_MILKED = (CALF_HAD_IT, "left for the next round", "she is being dried off")
"""The first only where a calf shares her milk."""


class FeedJob(Job[FeedStep]):
    """Feed or hay: a line for each feed, and one for strings where there are any."""

    DIGITS: ClassVar[str] = "other amount"
    ASKS: ClassVar[bool] = True

    def rows(self, shown: Shown, step: FeedStep) -> int:  # noqa: ARG002
        """The feeds, then the strings."""
        return len(step.due) + any(due.feed.baled for due in step.due)

    def typed_row(self, row: int) -> int:
        """Every line has an entry of its own."""
        return row

    def draft(self, hand: Hand, shown: Shown, step: FeedStep) -> Draft:
        """As shown, but for what is typed; one word that it is right answers everything that is asked at once."""
        asked = "" if shown.sure else soak_question(step)
        typed = {due.feed.id: shown.typed[row] for row, due in enumerate(step.due) if shown.typed.get(row)}
        try:
            found = fed(hand, step, typed, shown.typed.get(len(step.due), ""), sure=shown.sure)
        except Doubtful as also:
            raise Doubtful(f"{asked} {also}".strip()) from None
        if asked:
            raise Doubtful(asked)
        return found

    def lines(self, shown: Shown, step: FeedStep, size: Size) -> list[Line]:
        """Each feed, large."""
        return feed_lines(shown, step, size)

    def more(self, shown: Shown, step: FeedStep) -> tuple[More, ...]:
        """What was left, a measure weighed anew, a change under way."""
        changes = shown.walker.live and any(change_of(due.rows, shown.now, shown.walker.zone) for due in step.due)
        return (
            More("Some of it was left: how much", lambda lamp: lamp.rooms.left_over(lamp, step)),
            More("The measure weighed here and now", lambda lamp: lamp.rooms.new_scoop(lamp, step)),
            *(
                (More("The change under way: hold it, step back, end it here, what for", partial(_change, step)),)
                if changes
                else ()
            ),
            More("Something else was given too, as 2 kg apples", lambda lamp: lamp.rooms.also_given(lamp, step)),
        )

    def enter_words(self, shown: Shown, step: FeedStep) -> str:
        """As shown, or as typed, once the soak was looked at."""
        if not shown.sure and soak_question(step):
            return "asks: soak?"
        return "write it" if any(shown.typed.values()) else "given as shown"


class MilkJob(Job[MilkStep]):
    """Milk: the pail on the scale; lines are the uses of the milk."""

    DIGITS: ClassVar[str] = "the scale"
    ROW_COUNTS: ClassVar[bool] = True

    def rows(self, shown: Shown, step: MilkStep) -> int:
        """Where her milk may go."""
        return len(fates_of(step, shown.done(step)))

    def first_row(self, step: MilkStep) -> int:
        """The use that the book holds already; of a milking with a marked quarter: away, unless she picks another."""
        written = step.entry.the(MilkedFigure) if step.entry else None
        if written and written.fate and step.entry:
            fates = fates_of(step, step.entry.when)
            return fates.index(written.fate) if written.fate in fates else len(fates) - 1
        return tuple(Fate).index(Fate.THROWN_AWAY if step.marked else Fate.HOUSE)

    def first_marks(self, step: MilkStep) -> frozenset[str]:
        """What was marked stays so when the weight is corrected."""
        return marks_of(step) | poured_marks(step)

    def draft(self, hand: Hand, shown: Shown, step: MilkStep) -> Draft:
        """The milk, and where it goes."""
        typed = shown.typed.get(0) or typed_before(step)
        if not typed and step.left_in and not poured_into(shown.marks):
            return not_milked(hand, step, CALF_HAD_IT)
        if not typed:
            raise Unreadable("Milk is never as shown. Type what the scale says, or S to skip.")
        draft = milked(hand, step, typed, fate_shown(shown, step), held_back=HELD_BACK in shown.marks)
        if shown.typed.get(0) and not shown.sure and not LESS & shown.marks:
            ask_if_unusual(hand, step, draft)
        return poured(drawn(draft, shown.marks), poured_into(shown.marks))

    def again(self, hand: Hand, shown: Shown, step: MilkStep) -> Draft:
        """By the uses that her milk has at that time."""
        return self.draft(hand, shown, step) if typed_before(step) else super().again(hand, shown, step)

    def behind(self, shown: Shown, step: MilkStep, draft: Draft, there: "Place") -> "Place":
        """The usual questions first, where it is far under her usual."""
        found = judged_draft(step, draft)
        dropped = found is not None and found.is_drop(shown.walker.farm.milk_limits.drop_percent)
        return there.rooms.dropped(there, step, found) if dropped else there

    def lines(self, shown: Shown, step: MilkStep, size: Size) -> list[Line]:
        """The pail and the milk, large."""
        return milk_lines(shown, step, size, fate_shown(shown, step))

    def enter_words(self, shown: Shown, step: MilkStep) -> str:
        """Where the pail goes, once it is weighed."""
        if not shown.typed.get(0) and not typed_before(step):
            had_it = step.left_in and not poured_into(shown.marks)
            return f"not milked: {CALF_HAD_IT}" if had_it else "once the pail is typed"
        return f"write to {use_shown(shown, step, fate_shown(shown, step)).upper()}"

    def more(self, shown: Shown, step: MilkStep) -> tuple[More, ...]:
        """What happened before or at the milking."""
        out = tuple(got_out_more(shown, step.animal, calf) for calf in step.calves)
        return (
            *out,
            mark_offer(HELD_BACK),
            QUARTER,
            *(More(f"Not milked: {why}", partial(_not_milked, step, why)) for why in NOT_MILKED[not step.calves :]),
            *((More("Poured together with another pail", _poured),) if others(shown.walker.steps, step) else ()),
            mark_offer(PART),
            mark_offer(BY_HAND),
            treatments_of(step.animal),
        )


def _change(step: FeedStep, lamp: "Lamp") -> "Place":
    return lamp.rooms.following(lamp, step)


def _poured(lamp: "Lamp") -> "Place":
    return lamp.rooms.pouring(lamp)


def _not_milked(step: MilkStep, why: str, lamp: "Lamp") -> "Place":
    return lamp.write(not_milked(lamp.walker.hand(), step, why))


def typed_before(step: MilkStep) -> str:
    """The weight as it was typed, where only the use or a mark of a written milking is changed."""
    written = step.entry.the(MilkedFigure) if step.entry and step.entry.state is State.DONE else None
    return written.typed if written and written.milk_kg is not None else ""


def fate_shown(shown: Shown, step: MilkStep) -> Fate:
    """The use of the milk that is chosen."""
    fates = fates_of(step, shown.done(step))
    return fates[min(shown.row, len(fates) - 1)]
