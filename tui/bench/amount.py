"""How much of what the next thing at the bench takes: large, and in smaller letters the rest of it."""

from store.book.facts.feed import Told
from store.book.words import State
from store.round.item import Item
from store.round.saying import weight
from store.round.starting import begun_at
from store.round.steps import DoseStep, SoakCheckStep, SoakStartStep
from tui.walk.soak_words import late_words, window_words
from tui.walker import Walker
from tui.words import measured


def amount_of(walker: Walker, item: Item) -> tuple[str, str]:
    """`2 scoops dry` and `1.8 kg dry + 3.6 kg COLD water, RED bucket`; both empty where nothing is measured out."""
    step = item.step
    if isinstance(step, DoseStep):
        return step.treatment.amount, step.treatment.route
    if isinstance(step, SoakCheckStep | SoakStartStep) and not _soaks(step):
        dry = f"{weight(step.due_kg, walker.farm.units)} dry"
        told = step.told if isinstance(step, SoakStartStep) else None
        return _measures(told, step.due_kg) or dry, f"{dry}{_beside(walker, step)}{_when(walker, step)}"
    return "", ""


def _soaks(step: SoakCheckStep | SoakStartStep) -> bool:
    """Whether it stands in the bucket already."""
    return step.batch is not None if isinstance(step, SoakCheckStep) else step.state is State.DONE


def _measures(told: Told | None, dry_kg: float) -> str:
    """In the nearest quarter of its measure; empty where there is none."""
    if told is None or not told.holds_kg:
        return ""
    measures = round(4 * dry_kg / told.holds_kg) / 4
    return f"{measured(measures, told)} dry" if measures else ""


def _when(walker: Walker, step: SoakCheckStep | SoakStartStep) -> str:
    """From when to when it can be put to soak for the round after this one, and how late it will be, begun now."""
    if isinstance(step, SoakCheckStep) or step.limit is None:
        return ""
    begun = begun_at(step, walker.next_begins(), walker.book.clock.now())
    return f". For {window_words(begun, walker.zone)}{late_words(begun)}"


def _beside(walker: Walker, step: SoakCheckStep | SoakStartStep) -> str:
    """The water, where the farm has a rule for it, and the bucket."""
    bucket = f", {step.feed.bucket} bucket" if step.feed.bucket else ""
    if step.limit is None:
        return bucket
    water = weight(step.due_kg * step.limit.water_per_kg, walker.farm.units)
    return f" + {water} {step.limit.water.value.upper()} water{bucket}"
