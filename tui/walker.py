"""The round at hand: the book, who walks, and the plan as it stands. Places draw from it and write through it."""

from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from uuid import UUID

from msgspec.structs import replace

from store.book.drafts import Draft, RowDraft, Subject, weighing
from store.book.errors import BookError
from store.book.facts.farm import FarmFacts, Person
from store.book.facts.feed import Feed, Told
from store.book.opening import Book
from store.book.reading import read_again, read_facts, read_snapshot
from store.book.snapshot import Snapshot, Written, counting
from store.book.turn import Turn, turn_at
from store.book.words import Kind, State
from store.round.change import PLAN_CHANGED
from store.round.confirm import Hand, noted
from store.round.plan import plan
from store.round.saying import exact
from store.round.starting import next_begins
from store.round.steps import Step
from store.round.where import last_seen_apart
from tui.changed import Changed, said

A_DAY = timedelta(days=1)
A_STEP = timedelta(minutes=1)
"""Between two steps that are typed in later without a time."""


class Walker:
    """One sitting of one person with one book."""

    def __init__(self, book: Book, farm: FarmFacts, *, pretend: bool = False, turn: Turn | None = None) -> None:
        """Open a round: the one that this moment belongs to, or another. pretend: the demo farm, said in the header."""
        self.book = book
        self.pretend = pretend
        self.zone, self.evening_from_h = farm.zone, farm.evening_from_h
        self.turn = turn or self.this()
        self.live = True
        self.set_at: datetime | None = None
        self.set_from: datetime | None = None  # what is written next happened somewhen between then and set_at
        self.changes: list[Changed] = []
        self.look()
        self.person = self._first_person()

    def this(self) -> Turn:
        """The feeding round of this moment."""
        return turn_at(self.book.clock.now(), self.zone, self.evening_from_h)

    def is_now(self, turn: Turn) -> bool:
        """Whether a round is walked at this moment: a midday or night round, until it is too late for it."""
        if turn.feeds:
            return turn == self.this()
        return turn.day_begins(self.zone) <= self.book.clock.now() < turn.ends(self.zone, self.evening_from_h)

    def look(self) -> None:
        """Read the book and draw the plan again; a past round by what was in force then."""
        self.looked_at = self.book.clock.now()
        farm = read_facts(self.book.desk, self.looked_at)
        self.zone, self.evening_from_h = farm.zone, farm.evening_from_h  # of now, also while a past round is open
        self._drawn(read_snapshot(self.book.desk, self.turn, self._as_of()))

    def look_again(self) -> None:
        """After an own entry: only what it can have changed is read, unless the last whole reading is a minute old."""
        now = self.book.clock.now()
        if self.book.desk.shared or not timedelta(0) <= now - self.looked_at < A_STEP:
            self.look()
        else:
            self._drawn(read_again(self.book.desk, self.snapshot, self._as_of()))

    def _drawn(self, snapshot: Snapshot) -> None:
        self.snapshot = snapshot
        self.farm = snapshot.farm
        self.steps: tuple[Step, ...] = plan(snapshot)

    def _as_of(self) -> datetime:
        """Now; for a past round the last moment of its own day."""
        now = self.book.clock.now()
        return now if self.is_now(self.turn) else min(now, self.turn.facts_at(self.zone, self.evening_from_h))

    def left_unfinished(self, this: Turn) -> Turn | None:
        """What has to be asked about before a round: the last one begun and not ended, or the one before, never opened.

        None where nothing was ever written.
        """
        last = (self.snapshot if self.turn == this else self._read(this)).last
        asked = dict.fromkeys((last.turn, this.before()) if last.entries else ())
        if _is_ended(last.entries):
            del asked[last.turn]
        return next((turn for turn in asked if self._open_steps(turn)), None)

    def between(self, this: Turn) -> tuple[Turn, ...]:
        """The midday and night rounds on either side of a feeding round, the later first, where the farm has any."""
        slots = {job.slot for job in self.snapshot.jobs} | {look.slot for look in self.snapshot.looks}
        return tuple(turn for turn in (this.between(), this.before().between()) if turn.slot in slots)

    def left_between(self) -> tuple[tuple[Turn, tuple[Step, ...]], ...]:
        """What is not recorded of the midday and night rounds since the last round; of an ended one the book says it.

        Of those that nobody opened, the one just before this round.
        """
        last = self.snapshot.last
        ended = {each.turn for each in last.between if _is_ended(each.entries)}
        begun = [each.turn for each in last.between]
        before = [turn for turn in self.between(self.turn) if turn.is_before(self.turn) and turn not in begun]
        found = ((turn, self._open_steps(turn)) for turn in (*begun, *before) if turn not in ended)
        return tuple((turn, steps) for turn, steps in found if steps)

    def open_between(self) -> tuple[tuple[Turn, tuple[Step, ...]], ...]:
        """What is open of the midday and night rounds around this one that are not over."""
        now = self.book.clock.now()
        turns = (
            turn for turn in dict.fromkeys(self.between(self.turn)) if now < turn.ends(self.zone, self.evening_from_h)
        )
        return tuple((turn, self._open_steps(turn)) for turn in turns)

    def _open_steps(self, turn: Turn) -> tuple[Step, ...]:
        return tuple(step for step in plan(self._read(turn)) if step.state is State.OPEN)

    def _read(self, turn: Turn) -> Snapshot:
        now = self.book.clock.now()
        return read_snapshot(self.book.desk, turn, min(now, turn.facts_at(self.zone, self.evening_from_h)))

    def open_turn(self, turn: Turn, *, live: bool = True) -> None:
        """Another round, in the same sitting. live: it is walked now; else it is typed in later."""
        self.turn, self.live = turn, live
        self.set_time(None)
        self.look()

    def set_time(self, at: datetime | None, since: datetime | None = None) -> None:
        """When what is written next happened: at a moment, or between two; None: when it is written."""
        self.set_at, self.set_from = at, since

    def moment(self) -> datetime:
        """When what is written next happened: the time set, else now; in a past round, after its last entry."""
        return self.set_at or self.unset_moment()

    def unset_moment(self) -> datetime:
        """The same without a time set."""
        if self.live:
            return self.book.clock.now()
        begins = self.turn.begins(self.zone)
        done = (entry.happened_at for entry in self.snapshot.entries if entry.state is State.DONE)
        return max((at for at in done if begins - A_DAY < at < self.latest()), default=begins - A_STEP) + A_STEP

    def latest(self) -> datetime:
        """The latest moment that can be typed for this round: now, or the end of a past one."""
        return min(self.book.clock.now(), self.turn.ends(self.zone, self.evening_from_h))

    def next_begins(self) -> datetime | None:
        """When the feeding round after this one usually begins; None where the farm has not said it."""
        return next_begins(self.snapshot)

    def is_over(self) -> bool:
        """Whether the time of this round has gone by since it was opened to be walked."""
        return self.live and not self.is_now(self.turn)

    def hand(self) -> Hand:
        """Who presses a key now."""
        time_set = self.set_at is not None
        farm, since = self.farm, self.set_from
        return Hand(self.turn, self.person.id, self.moment(), farm.units, farm.meal_limit_kg, time_set, since)

    def hand_now(self) -> Hand:
        """The same for what belongs to no round: now, or the time set, never the time of a past round that is open."""
        return replace(self.hand(), now=self.set_at or self.book.clock.now())

    def write(self, *drafts: Draft) -> str | None:
        """Append, durably, then look again. Returns what went wrong in words; then that draft was not written."""
        return self._written(lambda: [self.book.append(draft) for draft in drafts], self.look_again)

    def weigh(self, told: Told, feed: Feed, holds_kg: float) -> str | None:
        """What one level measure of a feed holds from now on, and a note of it. Returns what went wrong in words."""
        before = f", before {exact(told.holds_kg, self.farm.units)}" if told.holds_kg else ""
        words = f"one {told.name} of {feed.name} weighs {exact(holds_kg, self.farm.units)} now{before}"
        row, subject = weighing(told.id, feed.id, holds_kg), Subject(feed_id=feed.id)
        note = self._note_of_change(subject, words, tell=False)
        as_before = (weighing(told.id, feed.id, told.holds_kg),) if told.holds_kg else ()
        problem = self._written(lambda: self.book.change([row], note), self.look)
        if problem is None:
            self.changes.append(Changed(words, subject, as_before))
        return problem

    def change(
        self, rows: Sequence[RowDraft], subject: Subject, words: str, *entries: Draft, tell: bool = False
    ) -> str | None:
        """Rows of what changes slowly, a note of them, kept with who did it, and other entries. Raises BookError.

        tell: the next person is told. Returns in words that they are written and could not be read again.
        """
        notes = [self._note_of_change(subject, words, tell=tell)] if rows else []
        self.book.change(rows, *notes, *entries)
        self.set_time(None)
        return self._looked(self.look)

    def _note_of_change(self, subject: Subject, words: str, *, tell: bool) -> Draft:
        """In the round of this moment, also where a past one is open: the change was made now."""
        hand = self.hand()
        if not self.is_now(self.turn):
            hand = replace(hand, turn=self.this(), now=self.book.clock.now(), happened_from=None)
        return replace(noted(hand, subject, words, tell=tell), reason=PLAN_CHANGED)

    def _written(self, write: Callable[[], object], look: Callable[[], None]) -> str | None:
        """Write, then look, also where it was refused. Returns what went wrong in words."""
        problem = said(write)
        if problem is None:
            self.set_time(None)
        return self._looked(look, problem)

    def _looked(self, look: Callable[[], None], problem: str | None = None) -> str | None:
        unread = said(look)
        return f"{problem or 'It is written.'} {unread} Q leaves; coming back goes on." if unread else problem

    def first_open(self, after: int = -1) -> int | None:
        """The first step not recorded, or still on paper, behind a place in the walk; None if there is none."""
        for index in range(after + 1, len(self.steps)):
            if self.steps[index].state in (State.OPEN, State.ON_PAPER):
                return index
        return None

    def last_confirmed(self) -> Written | None:
        """The entry of this round that was written last."""
        return max(self.snapshot.entries, key=lambda entry: entry.written_at, default=None)

    def ended(self) -> bool:
        """Whether this round was ended."""
        return _is_ended(self.snapshot.entries)

    def last_seen_apart(self, calf_id: UUID) -> datetime | None:
        """When a calf was last seen apart, before what is written next happened."""
        own = (share for share in self.snapshot.shares if share.calf_id == calf_id)
        return next((last_seen_apart(share, self.moment()) for share in own), None)

    def name_of(self, person_id: UUID) -> str:
        """The name of who wrote an entry."""
        return next((person.name for person in self.snapshot.people if person.id == person_id), "somebody")

    def _first_person(self) -> Person:
        here = [person for person in self.snapshot.people if person.here]
        if not here:
            raise BookError("The book knows nobody who does rounds. Add a line to person.csv and person_as.csv.")
        last = self.last_confirmed()
        return next((person for person in here if last and person.id == last.person_id), here[0])


def _is_ended(entries: tuple[Written, ...]) -> bool:
    return any(entry.kind is Kind.ROUND and entry.state is State.DONE for entry in counting(entries).values())
