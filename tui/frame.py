"""What every screen of the round shares: the header, the walk, what was last written, the sentence, the keys."""

from collections.abc import Iterable, Sequence
from functools import lru_cache

from store.book.turn import local
from store.book.words import State
from store.round.steps import Step
from tui.page import Line, Page, Role, Size, Span, apart, cut, fit, line, width_of, wrapped
from tui.place import Place
from tui.telling import entry_words
from tui.view import View
from tui.walker import Walker
from tui.words import clock, day, slot_name, span_words

SMALL = Size(60, 18)
"""Below this a screen keeps what matters: name, amount, Enter."""
WHOLE = Size(80, 24)
"""Below this blank rows are left out."""


def framed(place: Place, body: Sequence[Line], size: Size, here: Step | None = None) -> Page:
    """A page of exactly the screen's size. What does not fit is left off the body, never off header or keys.

    Where Up and Down move through a place, all of it can be seen.
    """
    walker = place.walker
    top = [header(walker, size.width), walk_line(walker, here, size.width)]
    return laid_out(place, top, body, [last_written(walker, size.width)], size)


def laid_out(view: View, top: Sequence[Line], body: Sequence[Line], below: Sequence[Line], size: Size) -> Page:
    """Any view as a page: the lines at its top, its body, what stands below, what is said, the keys."""
    bottom = [*below, *(wrapped(view.said, size.width, Role.WARNING) if view.said or below else [])]
    bottom += key_lines(view, size.width)[: _key_rows(size)]
    if size.height < WHOLE.height:
        body = [each for each in body if each]
    room = max(size.height - len(top) - len(bottom), 0)
    if view.scrolls:
        body = view.scroll.window(body, room)
    elif len(body) > room > 0:
        body = _cut_off(body, room)
    middle = [*body, *[()] * (room - len(body))]
    lines = [*top, *middle, *bottom][: size.height]
    return Page(tuple(fit(each, size.width, Role.HEADER if row == 0 else Role.TEXT) for row, each in enumerate(lines)))


def unread(before: Page, sentence: str, size: Size) -> Page:
    """The page that was drawn last, and at its foot why no other one can be drawn."""
    said = wrapped(sentence, size.width, Role.WARNING)
    room = max(size.height - len(said), 0)
    lines = [*before.lines[:room], *[()] * (room - len(before.lines)), *said][: size.height]
    return Page(tuple(fit(each, size.width) for each in lines))


def _key_rows(size: Size) -> int | None:
    """How many rows of keys there are at most; H lists them all."""
    if size.height < SMALL.height:
        return 1
    return 3 if size.height < WHOLE.height else None


def _cut_off(body: Sequence[Line], room: int) -> list[Line]:
    words = f"  ... {len(body) - room + 1} more lines; a larger window shows them"
    return [*body[: room - 1], line(Span(words, Role.WARNING))]


COUNTED = {
    State.DONE: "done",
    State.SKIPPED: "skipped",
    State.MOVED_ON: "moved",
    State.ON_PAPER: "on paper",
    State.OPEN: "to do",
}
COUNTED_ALWAYS = (State.DONE, State.SKIPPED, State.OPEN)
"""The others stand in the header where there are any."""


def header(walker: Walker, width: int) -> Line:
    """Which round, what time it is, who walks, and counts that add up."""
    farm, now = walker.farm, walker.book.clock.now()
    states = [step.state for step in walker.steps]
    shown = [state for state in COUNTED if state in states or state in COUNTED_ALWAYS]
    counts = "".join(f"{states.count(state)} {COUNTED[state]}  " for state in shown)[:-1]
    which = f"DEMO, PRETEND {slot_name(walker.snapshot)}" if walker.pretend else slot_name(walker.snapshot)
    which = which if walker.live else f"PAST {which}"
    time = clock(now, farm.zone) if walker.live else ""
    other_day = walker.set_at is not None and local(walker.set_at, farm.zone).date() != walker.turn.day
    if walker.set_at:
        time = f"SET {span_words(walker.set_from, walker.set_at, farm.zone, walker.turn.day)}"
    day_and_time = time if walker.set_from or other_day else f"{day(walker.turn.day)}  {time}"
    who = f" {which}  {day_and_time}  {walker.person.name}"
    to_do = f"{states.count(State.OPEN)} to do "
    if width < SMALL.width:
        who, counts = f" {which}", f"{time}  {to_do}"
    elif walker.set_at and len(who) + len(counts) >= width:
        counts = to_do
    return line(Span(apart(who, counts, width), Role.HEADER))


def walk_line(walker: Walker, here: Step | None, width: int) -> Line:
    """Every place of the walk with what is left there; the one we stand in is marked and always on the line."""
    stretches: list[list[Span]] = []
    marked = 0
    for place, steps in _places(walker.steps):
        left = sum(step.state is State.OPEN for step in steps)
        at_it = here is not None and any(step.step_id == here.step_id for step in steps)
        marked = len(stretches) if at_it else marked
        words = f"{'> ' if at_it else ''}{place} {left or 'done'}   "
        stretches.append([Span(words, Role.STRONG if at_it else Role.QUIET)])
    while marked > 0 and width_of(span for each in stretches[: marked + 2] for span in each) >= width:
        del stretches[0]
        marked -= 1
    return fit((Span(" "), *(span for each in stretches for span in each)), width)


def last_written(walker: Walker, width: int) -> Line:
    """What the last key that wrote has written: always on the screen."""
    entries = walker.snapshot.entries
    told = entry_words(walker, entries[-1]) if entries else "nothing yet in this round"
    return line(Span(cut(f" WRITTEN  {told}", width - 1), Role.QUIET))


def key_lines(place: View, width: int) -> list[Line]:
    """Every key of the view, in as many rows as they need."""
    typing = place.typing
    shown = ((key.sign, key.shown(place)) for key in place.KEYS if not (typing and key.is_letter))
    return list(_key_rows_of(tuple((sign, words) for sign, words in shown if words), width))


@lru_cache(64)
def _key_rows_of(keys: tuple[tuple[str, str], ...], width: int) -> tuple[Line, ...]:
    """Kept, as most keys change none of them."""
    rows: list[list[Span]] = [[]]
    for sign, told in keys:
        words = [Span(f"  {sign}" if rows[-1] else f" {sign}", Role.KEY), Span(f" {told}")]
        if width_of(rows[-1]) + width_of(words) >= width:
            rows.append([])
            words[0] = Span(f" {sign}", Role.KEY)
        rows[-1] += words
    return tuple(fit(tuple(row), width) for row in rows)


def _places(steps: Iterable[Step]) -> list[tuple[str, list[Step]]]:
    """The steps by the stretches of the walk: the bench comes twice."""
    stretches: list[tuple[str, list[Step]]] = []
    for step in steps:
        if not stretches or stretches[-1][0] != step.place:
            stretches.append((step.place, []))
        stretches[-1][1].append(step)
    return stretches
