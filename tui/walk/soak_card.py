"""The soak bucket: how long it stood, and what goes into it for the next round. Every weight is dry."""

from collections.abc import Iterator

from store.husbandry.measures import SAME_KG
from store.husbandry.soak import Ripeness
from store.round.amount import Unreadable, feed_amount
from store.round.bucket import Soaking, soaking_at
from store.round.saying import weight
from store.round.starting import begun_at
from store.round.steps import SoakCheckStep, SoakStartStep
from tui.page import Line, Role, Size, Span, beside, cut, large_lines, line, width_of, wrapped
from tui.walk.shown import Shown
from tui.walk.soak_words import late_words, window_words
from tui.walk.title import scale_for, title
from tui.words import clock, hours, measured, when

CAUTION = "Sour, slimy, warm, mouldy, hard inside: never fed, M. Frozen: thaw first, L."
A_DAY_H = 24.0
"""From then on an hour of the clock alone could be that of another day."""


def soak_check_lines(shown: Shown, step: SoakCheckStep, size: Size) -> list[Line]:
    """The body of a soak check."""
    lines = title(step.name, ["SOAK", _bucket(step.feed.bucket)], size)
    lines += [*_large_hours(shown, step, size), ()]
    lines += [line(Span("  Soft right through?   Smells sweet?", Role.STRONG)), ()]
    lines += [line(Span(cut(f"  {words}", size.width - 1), role)) for words, role in _told(shown, step)]
    return [*lines, *wrapped(CAUTION, size.width, Role.WARNING, "  ")]


def _large_hours(shown: Shown, step: SoakCheckStep, size: Size) -> list[Line]:
    """How long it has soaked, large; beside it the state in a word, what is in it, and its hours."""
    soaking = soaking_at(step.batch, step.limit, shown.now)
    if step.batch is None or soaking.stood_h is None:
        words = f"{soaking.word}: when it was put to soak is not written, nor how much. Look well, or throw it out: M."
        return wrapped(words, size.width, Role.WARNING, "  ")
    figure = [(Span("  "), *row) for row in large_lines(hours(soaking.stood_h), Role.AMOUNT, 50, scale_for(size))]
    state = Span(soaking.word, Role.STRONG if soaking.ripe is Ripeness.READY else Role.WARNING)
    said = when if soaking.stood_h > A_DAY_H else clock
    since = f"since {said(step.batch.started_at, shown.walker.zone)}"
    told = [line(state), line(since), line(_from_to(shown, soaking))]
    return beside(figure, told, max(map(width_of, figure)) + 3)


def _from_to(shown: Shown, soaking: Soaking) -> str:
    """From when to when it may be fed."""
    if soaking.ready_at is None or soaking.past_at is None:
        return "F sets how long it soaks"
    if soaking.ripe is Ripeness.PAST:
        return f"limit was {when(soaking.past_at, shown.walker.zone)}"
    ready, past = (clock(at, shown.walker.zone) for at in (soaking.ready_at, soaking.past_at))
    return f"ready from {ready}, limit {past}"


def _told(shown: Shown, step: SoakCheckStep) -> Iterator[tuple[str, Role]]:
    """What is in the bucket, the farm's rule, what this round gives of it, and whether that is too little."""
    units, batch, limit = shown.units, step.batch, step.limit
    needed = f"{weight(step.due_kg, units)} dry in this round"
    if batch:
        water = f" in {weight(batch.water_kg, units)} water" if batch.water_kg is not None else ""
        yield f"BATCH   {weight(batch.dry_kg, units)} dry{water};  NEEDED {needed}", Role.TEXT
    else:
        yield f"NEEDED  {needed}", Role.TEXT
    if limit:
        yield f"RULE    ready after {limit.least_h:g} h, your limit {limit.most_h:g} h, {limit.water} water", Role.TEXT
    if batch and batch.dry_kg < step.due_kg - SAME_KG:
        yield "TOO LITTLE was put to soak: it is shared out in proportion", Role.WARNING


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
    """The farm's limits; when it is ready, begun now; from when to when it can be put to soak for the next round."""
    if step.limit is None:
        return []
    zone = shown.walker.zone
    begun = begun_at(step, shown.walker.next_begins(), shown.now)
    told = [(f"LIMITS  ready after {step.limit.least_h:g} h, to be fed within {step.limit.most_h:g} h", Role.TEXT)]
    if begun.ready_at:
        late = late_words(begun)
        told.append((f"NOW     ready {clock(begun.ready_at, zone)}{late}", Role.WARNING if late else Role.TEXT))
    told.append((f"FOR     {window_words(begun, zone)}", Role.TEXT))
    return [row for words, role in told for row in wrapped(words, size.width, role, "  ")]


def _bucket(bucket: str) -> str:
    return f"{bucket} bucket" if bucket else "no bucket named"
