"""U in my farm: what was changed last in this sitting is shown, and Enter makes it as it was."""

from store.book.errors import BookError
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

    def choices(self) -> list[str]:
        """In words."""
        return [change.words for change in reversed(self.walker.changes)]

    def picked(self, row: int) -> Place:
        """Only the newest: an older one may be what a newer one stands on."""
        if row:
            return self.say("The newest first: an older one may be what it stands on. 1, then Enter.")
        change = self.walker.changes[-1]
        try:
            unread = self.walker.change(change.as_before, change.subject, f"taken back: {change.words}")
        except BookError as problem:
            return self.say(str(problem))
        self.walker.changes.pop()
        return self.came_from.say(unread or f"Taken back: {change.words}.")


def taking_back(listing: Listing) -> Place:
    """What can be taken back; where nothing can, that is said."""
    return (
        TakingBack(listing)
        if listing.walker.changes
        else listing.say("Nothing of my farm was changed in this sitting.")
    )
