"""The jobs of the soak bucket: is it fit to feed, and what is put to soak for the next round."""

from functools import partial
from typing import TYPE_CHECKING, ClassVar

from store.book.drafts import Draft
from store.book.words import Soak
from store.husbandry.soak import Ripeness
from store.round.bucket import THROWN_OUT_WHY, Soaking, soaking_at
from store.round.confirm import Doubtful, Hand
from store.round.measured import SURE, soak_checked, soak_started
from store.round.steps import SoakCheckStep, SoakStartStep
from tui.page import Line, Size
from tui.walk.job import Job, More
from tui.walk.shown import Shown
from tui.walk.soak_card import soak_check_lines, soak_start_lines
from tui.words import hours

if TYPE_CHECKING:
    from tui.place import Place
    from tui.walk.lamp import Lamp


class SoakCheckJob(Job[SoakCheckStep]):
    """Is what soaked fit to feed?"""

    ENTER: ClassVar[str] = "yes, fit to feed"
    ASKS: ClassVar[bool] = True

    def draft(self, hand: Hand, shown: Shown, step: SoakCheckStep) -> Draft:
        """Fit; asked about where the clock says otherwise, or nothing."""
        question = _question(step, soaking_at(step.batch, step.limit, hand.now))
        if question and not shown.sure:
            raise Doubtful(f"{question} M throws it out.")
        return soak_checked(hand, step, Soak.FIT)

    def lines(self, shown: Shown, step: SoakCheckStep, size: Size) -> list[Line]:
        """How long it soaked, and the two questions."""
        return soak_check_lines(shown, step, size)

    def enter_words(self, shown: Shown, step: SoakCheckStep) -> str:
        """Fit, unless it has to be asked about first."""
        soaking = soaking_at(step.batch, step.limit, shown.now)
        asks = _question(step, soaking) and not shown.sure
        return f"asks first: {soaking.word}" if asks else self.ENTER

    def more(self, shown: Shown, step: SoakCheckStep) -> tuple[More, ...]:  # noqa: ARG002
        """Not fit, and why."""
        return (
            *(More(f"Thrown out: {why}", partial(_throw_out, step, why)) for why in THROWN_OUT_WHY),
            More("Thrown out: another reason, in your words", lambda lamp: lamp.rooms.thrown_out(lamp, step)),
        )


class SoakStartJob(Job[SoakStartStep]):
    """Put to soak for the next round."""

    ENTER: ClassVar[str] = "put to soak now"
    DIGITS: ClassVar[str] = "other weight"

    def draft(self, hand: Hand, shown: Shown, step: SoakStartStep) -> Draft:
        """The weight as shown, or as typed."""
        return soak_started(hand, step, shown.typed.get(0, ""))

    def lines(self, shown: Shown, step: SoakStartStep, size: Size) -> list[Line]:
        """Dry feed and water, large."""
        return soak_start_lines(shown, step, size)


def _question(step: SoakCheckStep, soaking: Soaking) -> str:
    """What has to be asked before it is fed; empty where there is nothing."""
    if soaking.stood_h is None:
        return f"When it was put to soak is not written. Soft and sweet all the same: {SURE} then Enter."
    if step.limit and soaking.ripe is Ripeness.TOO_EARLY:
        rule = f"your rule is {step.limit.least_h:g} h"
        return f"It has soaked {hours(soaking.stood_h)}, {rule}: {SURE} then Enter feeds it anyway, L waits."
    if step.limit and soaking.ripe is Ripeness.PAST:
        limit = f"your limit is {step.limit.most_h:g} h"
        return f"It has soaked {hours(soaking.stood_h)}, {limit}: {SURE} then Enter feeds it anyway."
    return ""


def _throw_out(step: SoakCheckStep, why: str, lamp: "Lamp") -> "Place":
    return lamp.write(soak_checked(lamp.walker.hand(), step, Soak.THROWN_OUT, why))
