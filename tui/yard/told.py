"""What the last round left for this one: it has to be paged past before the round begins."""

from collections.abc import Iterator, Sequence
from typing import ClassVar

from store.book.drafts import Subject
from store.book.figures import CountedFigure, LookedFigure, NotedFigure, PartedFigure
from store.book.reading.watches import open_watches
from store.book.snapshot import LastRound, Written, found_of, notes_of
from store.book.words import NOT_NEEDED, Apart, Kind, State
from store.round.steps import DoseStep
from tui.frame import framed
from tui.page import Line, Page, Role, Size, wrapped
from tui.place import HELP_KEY, Over, Place, Rooms
from tui.telling import figure, step_words, turn_words, who
from tui.treated import gap_words, unsafe_before_words
from tui.view import ENTER, SCROLL_KEYS, Key, go_back, go_out
from tui.walker import Walker
from tui.words import clock
from tui.yard.again_words import watch_words
from tui.yard.returned import late_calves
from tui.yard.rounds import way_to

STATE_WORDS = {State.MOVED_ON: "stands in this round", State.OPEN: "nobody wrote it"}
LISTED_MOST = 5
"""More of one kind than this is a round that was hardly walked: its own closing lists it."""


class Told(Over):
    """Notes marked for the next person, doses due now, what was skipped, not recorded or moved on."""

    def __init__(self, rooms: Rooms, back: Place, told: Sequence[tuple[str, Role]]) -> None:
        """Over the place that comes after it; told: what there is to tell."""
        super().__init__(rooms, back)
        self.told = told

    def draw(self, size: Size) -> Page:
        """Each thing with who wrote it and when."""
        rounds = ", ".join(turn_words(each.turn) for each in self.walker.snapshot.last.with_between)
        body: list[Line] = [(), *wrapped(f"LEFT FOR YOU by {rounds}", size.width, Role.NAME, "  "), ()]
        for words, role in self.told:
            body += wrapped(words, size.width, role, "  ")
        return framed(self, body, size)

    KEYS: ClassVar[tuple[Key, ...]] = (
        Key(ENTER, "Enter", "read, go on", "Goes on to the round.", go_back),
        HELP_KEY,
        Key(("q", "ctrl+c", "ctrl+q"), "Q", "leave", "Leaves.", go_out),
        *SCROLL_KEYS,
    )


def to_tell(walker: Walker) -> list[tuple[str, Role]]:
    """Sentences for the next person; none once this round has begun, and none in a midday or night round.

    Milk that was let through is told whenever somebody comes, until it is written as thrown away.
    """
    unsafe = [(f"THROW AWAY  {words}", Role.WARNING) for words in unsafe_before_words(walker)]
    return [*unsafe, *([] if walker.snapshot.entries or not walker.turn.feeds else _left(walker))]


def _left(walker: Walker) -> Iterator[tuple[str, Role]]:
    yield from ((words, Role.WARNING) for words in late_calves(walker))
    entries = walker.snapshot.last.all_entries
    notes = [each for each in notes_of(entries) if any(note.tell for note in each.of(NotedFigure))]
    yield from ((f"{_whose(walker, entry)}: {_signed(walker, entry)}", Role.STRONG) for entry in notes)
    yield from ((_found(walker, each), Role.STRONG) for each in found_of(entries))
    yield from ((words, Role.STRONG) for words in _due(walker))
    yield from ((words, Role.STRONG) for words in _watched(walker))
    yield from ((f"NOT TYPED  {words}", Role.TEXT) for words in gap_words(walker))
    for state, heading in ((State.MOVED_ON, "MOVED ON"), (State.SKIPPED, "SKIPPED"), (State.OPEN, "NOT RECORDED")):
        for last in walker.snapshot.last.with_between:
            yield from ((words, Role.TEXT) for words in _not_done(walker, last, state, heading))
    yield from ((words, Role.TEXT) for words in _between(walker))


def _found(walker: Walker, entry: Written) -> str:
    """What was found; of a calf that was left with its cow, where it is."""
    parted = entry.the(PartedFigure)
    if parted is None or parted.state is not Apart.TOGETHER:
        return f"FOUND  {_whose(walker, entry)}: {_signed(walker, entry)}"
    cow = walker.snapshot.name_of(Subject(animal_id=parted.cow_id))
    return f"TOGETHER  {_whose(walker, entry)} is with {cow}: {entry.reason}  ({_by(walker, entry)})"


def _due(walker: Walker) -> Iterator[str]:
    for step in walker.steps:
        if isinstance(step, DoseStep):
            at = clock(step.due_at, walker.farm.zone)
            words = f"{step.treatment.product}, dose {step.number} of {step.treatment.doses}, at {at}"
            yield f"DUE  {step.name}: {words}"


def _watched(walker: Walker) -> Iterator[str]:
    """What has to be looked at again before this round is over."""
    now, ends = walker.book.clock.now(), walker.turn.ends(walker.zone, walker.evening_from_h)
    due = [watch for watch in open_watches(walker.book.desk, now) if watch.due_at < ends]
    yield from (f"LOOK AGAIN  {watch_words(walker, watch)}" for watch in due[:LISTED_MOST])
    more = f"{len(due) - LISTED_MOST} more; " if len(due) > LISTED_MOST else ""
    yield from ([f"{more}O opens what is to be looked at again"] if due else [])


def _between(walker: Walker) -> Iterator[str]:
    """What is open of a midday or night round: still to be walked, or too late for it."""
    for turn, steps in walker.left_between():
        heading = "STILL TO DO" if walker.is_now(turn) else "NOT RECORDED"
        words = ", ".join(step_words(walker, step) for step in steps)
        yield f"{heading}  {turn_words(turn)}: {words}. {way_to(walker, turn)}"


def _not_done(walker: Walker, last: LastRound, state: State, heading: str) -> Iterator[str]:
    news = sorted((each for each in last.left(state) if _is_news(each)), key=_is_plain)
    for entry in news[:LISTED_MOST]:
        yield f"{heading}  {_whose(walker, entry)} ({_what(walker, entry)}): {_signed(walker, entry)}"
    if len(news) > LISTED_MOST:
        yield f"{heading}  {len(news) - LISTED_MOST} more: {way_to(walker, last.turn)}"


def _is_news(entry: Written) -> bool:
    """What nobody planned and was taken back, and what was not needed, is nothing to tell."""
    taken_back = entry.replaces_id == entry.step_id
    return entry.kind not in (Kind.NOTE, Kind.ROUND) and entry.reason != NOT_NEEDED and not taken_back


def _is_plain(entry: Written) -> bool:
    """Heads that were counted and are missing come first."""
    counted = entry.the(CountedFigure)
    return counted is None or not counted.missing


def _whose(walker: Walker, entry: Written) -> str:
    return walker.snapshot.name_of(entry.subject) or "the whole yard"


def _what(walker: Walker, entry: Written) -> str:
    """What it asked for: a look by its name, all else by its kind."""
    look = entry.the(LookedFigure)
    return walker.snapshot.names.get(look.look_id, entry.kind) if look else entry.kind


def _signed(walker: Walker, entry: Written) -> str:
    plain = STATE_WORDS.get(entry.state) if _is_plain(entry) else None
    words = plain or figure(walker, entry)
    return f"{words}  ({_by(walker, entry)})"


def _by(walker: Walker, entry: Written) -> str:
    """When, and who."""
    return f"{clock(entry.happened_at, walker.farm.zone)} {who(walker, entry)}"
