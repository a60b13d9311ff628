"""Opens the line of a list that begins so."""

from tests.tui.keys import Sitting
from tui.farm.listing import Listing


def line(at: Sitting, words: str) -> Sitting:
    """The line of the list we stand at."""
    listing = at.place
    assert isinstance(listing, Listing)
    row = next(row for row, entry in enumerate(listing.entries) if entry.words.startswith(words))
    return at.press(*["down"] * row, "enter")
