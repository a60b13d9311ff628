"""A round that was done on paper: the few times that the next round needs; the rest stays to be typed in."""

from collections.abc import Sequence

from msgspec.structs import replace

from store.book.drafts import Draft, Subject
from store.book.words import State
from store.herd.moments import happened
from store.round.amount import Unreadable
from store.round.care import dosed
from store.round.confirm import noted, parted, skipped
from store.round.measured import soak_started
from store.round.steps import ApartStep, DoseStep, SoakStartStep
from tui.closing.ending import end_round, open_steps
from tui.place import Place, Rooms
from tui.telling import turn_words
from tui.yard.wording import Wording

NOT_GIVEN = ("no", "n", "not given")
Asked = ApartStep | SoakStartStep | DoseStep


class OnPaper(Wording):
    """One question after another; an empty line says not known."""

    MOST = 200

    def __init__(self, rooms: Rooms, back: Place, asked: Sequence[Asked] | None = None) -> None:
        """About the round that the walker has open."""
        super().__init__(rooms, back)
        found = [step for step in open_steps(self.walker) if isinstance(step, Asked)]
        self.asked = list(found if asked is None else asked)

    def heading(self) -> str:
        """The next question."""
        if not self.asked:
            return "ON PAPER  what was left undone, or must be told? Enter alone: nothing"
        step = self.asked[0]
        no = "; no: it was not" if isinstance(step, DoseStep) else ""
        return f"ON PAPER  when was {_asked(step)}? As 18:50{no}; Enter alone: not known"

    def enter(self) -> Place:
        """Write the answer, then the next question, then the end of that round."""
        if not self.asked:
            return self._end()
        if self.text.strip():
            problem = self._write(self.asked[0])
            if problem:
                return self.say(problem)
        return OnPaper(self.rooms, self.came_from, self.asked[1:])

    def _write(self, step: Asked) -> str | None:
        walker = self.walker
        if isinstance(step, DoseStep) and self.text.strip().lower() in NOT_GIVEN:
            return walker.write(skipped(walker.hand(), step, "not given"))
        try:
            found = happened(self.text, walker.latest(), walker.zone, whole_days=False)
        except Unreadable:
            return f"«{self.text}» is no time. Type hours and minutes, as 18:50, or Enter alone."
        if found.earliest < walker.turn.day_begins(walker.zone):
            return f"«{self.text}» is not in that round. Type a time of {turn_words(walker.turn)}, or Enter alone."
        return walker.write(replace(self._draft(step), happened_at=found.at, happened_from=found.since))

    def _draft(self, step: Asked) -> Draft:
        hand = self.walker.hand()
        if isinstance(step, DoseStep):
            return dosed(hand, step)
        return parted(hand, step) if isinstance(step, ApartStep) else soak_started(hand, step, "")

    def _end(self) -> Place:
        problem = self._tell() or end_round(self.walker, State.ON_PAPER)
        return self.say(problem) if problem else self.rooms.enter()

    def _tell(self) -> str | None:
        """Write what must be told, once; what went wrong in words."""
        words, self.text = self.text.strip(), ""
        problem = self.walker.write(noted(self.walker.hand(), Subject(), words, tell=True)) if words else None
        self.text = words if problem else ""
        return problem


def _asked(step: Asked) -> str:
    """What happened at a time that the next round has to know."""
    if isinstance(step, DoseStep):
        return f"dose {step.number} of {step.treatment.product} given to {step.name}"
    return f"{step.name} {step.want.value if isinstance(step, ApartStep) else 'put to soak'}"
