"""The soak bucket: how long it stood, and what goes into it for the next round. Every weight is dry."""

from datetime import timedelta

from store.round.amount import Unreadable, feed_amount
from store.round.saying import weight
from store.round.steps import SoakCheckStep, SoakStartStep
from store.round.summary import SAME_KG
from tui.page import Line, Role, Size, Span, beside, cut, large_lines, line, width_of, wrapped
from tui.walk.shown import Shown
from tui.walk.title import scale_for, title
from tui.words import clock, hours, measured

CAUTION = "Sour, slimy, warm, mouldy, frozen or hard inside is thrown out, never fed: M."


def soak_check_lines(shown: Shown, step: SoakCheckStep, size: Size) -> list[Line]:
    """The body of a soak check."""
    lines = title(step.name, ["SOAK", _bucket(step.feed.bucket)], size)
    lines += [*_large_hours(shown, step, size), ()]
    lines += [line(Span("  Soft right through?   Smells sweet?", Role.STRONG)), ()]
    lines.append(line(f"  NEEDED  {weight(step.due_kg, shown.units)} dry in this round"))
    return [*lines, *wrapped(CAUTION, size.width, Role.WARNING, "  ")]


def _large_hours(shown: Shown, step: SoakCheckStep, size: Size) -> list[Line]:
    if step.batch is None:
        words = "When it was put to soak is not known: nothing was written. Look well, or throw it out with M."
        return wrapped(words, size.width, Role.WARNING, "  ")
    elapsed_h = (shown.now - step.batch.started_at).total_seconds() / 3600
    figure = [(Span("  "), *row) for row in large_lines(hours(elapsed_h), Role.AMOUNT, 50, scale_for(size))]
    since = (
        f"since {clock(step.batch.started_at, shown.walker.farm.zone)}, {weight(step.batch.dry_kg, shown.units)} dry"
    )
    told = [line(Span("soaked", Role.STRONG)), line(since), *_limit(step, elapsed_h)]
    return beside(figure, told, max(map(width_of, figure)) + 3)


def _limit(step: SoakCheckStep, elapsed_h: float) -> list[Line]:
    if step.limit is None:
        return [line("no limit is set on this farm")]
    least, most = step.limit.least_h, step.limit.most_h
    words = f"your limits {least:g} to {most:g} h, {step.limit.water.value} water"
    if elapsed_h < least:
        return [line(Span(f"TOO SHORT: {words}", Role.WARNING))]
    if elapsed_h > most:
        return [line(Span(f"TOO LONG: {words}", Role.WARNING))]
    return [line(words)]


def soak_start_lines(shown: Shown, step: SoakStartStep, size: Size) -> list[Line]:
    """The body of a soak start."""
    text = shown.typed.get(0, "")
    number, unit = weight(step.due_kg, shown.units).split()
    lines = title(step.name, [f"START SOAK for the {step.for_slot}", _bucket(step.feed.bucket)], size)
    drawn = large_lines(text or number, Role.TYPED if text else Role.AMOUNT, 40, scale_for(size))
    figure = [(Span("  "), *row) for row in drawn]
    told = [line(Span(f"{unit} DRY", Role.STRONG)), *_water(shown, step, text)]
    return [*lines, *beside(figure, told, max(14, max(map(width_of, figure)) + 3)), (), *_when(shown, step, size)]


def _water(shown: Shown, step: SoakStartStep, text: str) -> list[Line]:
    dry_kg = step.due_kg
    if text:
        try:
            dry_kg = feed_amount(text, step.feed, step.told, shown.units, by_weight=True).kg
        except Unreadable as problem:
            return [line(Span(str(problem), Role.WARNING))]
    told = [line(Span(f"= {weight(dry_kg, shown.units)} dry", Role.TYPED))] if text else []
    told += _measures(step, dry_kg)
    if step.limit is None:
        return [*told, line("no water rule is set for it")]
    water = weight(dry_kg * step.limit.water_per_kg, shown.units)
    return [*told, line(f"+ {water} {step.limit.water.value.upper()} water")]


def _measures(step: SoakStartStep, dry_kg: float) -> list[Line]:
    """The same in the nearest quarter of the measure."""
    if step.told is None or not step.told.holds_kg:
        return []
    measures = round(4 * dry_kg / step.told.holds_kg) / 4
    exactly = abs(measures * step.told.holds_kg - dry_kg) < SAME_KG
    return [line(f"{'=' if exactly else 'about'} {measured(measures, step.told)} DRY")] if measures else []


def _when(shown: Shown, step: SoakStartStep, size: Size) -> list[Line]:
    """The farm's limits; and from when to when it can be put to soak for the next round, where its time is set."""
    if step.limit is None:
        return []
    told = [f"  LIMITS  ready after {step.limit.least_h:g} h, to be fed within {step.limit.most_h:g} h"]
    begins = shown.walker.next_begins()
    if begins:
        zone = shown.walker.zone
        first, last = (begins - timedelta(hours=h) for h in (step.limit.most_h, step.limit.least_h))
        span = f"between {clock(first, zone)} and {clock(last, zone)}"
        told.append(f"  FOR     the {step.for_slot} round at {clock(begins, zone)}: put to soak {span}")
    return [line(cut(words, size.width - 1)) for words in told]


def _bucket(bucket: str) -> str:
    return f"{bucket} bucket" if bucket else "no bucket named"
