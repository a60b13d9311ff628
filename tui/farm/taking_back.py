"""U in my farm: what was changed last in this sitting is shown, and Enter makes it as it was."""

from msgspec.structs import replace

from store.book.drafts import Draft, RowDraft
from store.book.errors import BookError
from store.book.reading.done import newest_of
from store.book.register import read_register
from store.herd.taking_back import still_in_force
from tui.changed import Changed
from tui.farm.listing import Listing
from tui.place import Place
from tui.walk.picking import Picking


class TakingBack(Picking):
    """The changes of this sitting, the newest first."""

    TITLE = "TAKE BACK  which change of my farm? It stays in the book as history"
    ENTER_WORDS = "take it back"

    def __init__(self, listing: Listing) -> None:
        """Over a list; the newest is picked already."""
        super().__init__(listing.rooms, listing)
        self.row = 0
        self.register = read_register(self.walker.book.desk, self.walker.book.clock.now())

    def choices(self) -> list[str]:
        """In words, each with whose it is."""
        return [self._told(change) for change in reversed(self.walker.changes)]

    def _told(self, change: Changed) -> str:
        tables = (("animal_id", "animal_as"), ("pen_id", "pen_as"), ("feed_id", "feed_as"))
        names = (self.register.name(table, getattr(change.subject, field)) for field, table in tables)
        name = next(filter(None, names), "")
        return change.words if name in change.words else f"{name}: {change.words}"

    def picked(self, row: int) -> Place:
        """Only the newest: an older one may be what a newer one stands on."""
        if row:
            return self.say("The newest first: an older one may be what it stands on. 1, then Enter.")
        change = self.walker.changes[-1]
        if not change.as_before and not change.entries:
            self.walker.changes.pop()
            return self.came_from.say(f"It stays: {change.words}. Type what is right now at its own sheet.")
        try:
            entries = self._as_they_stand(change.entries)
            unread = self.walker.change(self._rows(change), change.subject, f"taken back: {change.words}", *entries)
        except BookError as problem:
            return self.say(str(problem))
        self.walker.changes.pop()
        return self.came_from.say(unread or f"Taken back: {change.words}.")

    def _rows(self, change: Changed) -> list[RowDraft]:
        book = self.walker.book
        return list(still_in_force(read_register(book.desk, book.clock.now()), change.as_before))

    def _as_they_stand(self, entries: tuple[Draft, ...]) -> list[Draft]:
        """Each takes the place of whatever was written of its step since."""
        desk = self.walker.book.desk
        return [replace(each, shown=newest_of(desk, each.step_id)) for each in entries if each.step_id]


def taking_back(listing: Listing) -> Place:
    """What can be taken back; where nothing can, that is said."""
    return (
        TakingBack(listing)
        if listing.walker.changes
        else listing.say("Nothing of my farm was changed in this sitting.")
    )
