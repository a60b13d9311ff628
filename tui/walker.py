"""The round at hand: the book, who walks, and the plan as it stands. Places draw from it and write through it."""

from uuid import UUID

from store.book.drafts import Draft
from store.book.errors import BookError
from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.snapshot import FarmFacts, Person
from store.book.turn import turn_at
from store.book.words import State
from store.round.confirm import Hand
from store.round.plan import plan
from store.round.steps import Step


class Walker:
    """One sitting of one person with one book."""

    def __init__(self, book: Book, farm: FarmFacts, *, pretend: bool = False) -> None:
        """Open the round that this moment belongs to. pretend: the demo farm, said in the header."""
        self.book = book
        self.pretend = pretend
        self.turn = turn_at(book.clock.now(), farm.zone, farm.evening_from_h)
        self.look()
        self.person = self._first_person()

    def look(self) -> None:
        """Read the book and draw the plan again."""
        self.snapshot = read_snapshot(self.book.desk, self.turn, self.book.clock.now())
        self.farm = self.snapshot.farm
        self.steps: tuple[Step, ...] = plan(self.snapshot)

    def hand(self) -> Hand:
        """Who presses a key now."""
        return Hand(self.turn, self.person.id, self.book.clock.now(), self.farm.units)

    def write(self, draft: Draft) -> str | None:
        """Append, durably, then look again. Returns what went wrong in words; then nothing was written."""
        try:
            self.book.append(draft)
        except BookError as error:
            self.look()
            return str(error)
        self.look()
        return None

    def first_open(self, after: int = -1) -> int | None:
        """The first step not recorded behind a place in the walk; None if there is none."""
        for index in range(after + 1, len(self.steps)):
            if self.steps[index].state is State.OPEN:
                return index
        return None

    def name_of(self, person_id: UUID) -> str:
        """The name of who wrote an entry."""
        return next((person.name for person in self.snapshot.people if person.id == person_id), "somebody")

    def _first_person(self) -> Person:
        here = [person for person in self.snapshot.people if person.here]
        if not here:
            raise BookError("The book knows nobody who does rounds. Add a line to person.csv and person_as.csv.")
        return here[0]
