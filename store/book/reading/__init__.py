"""Reading: plain SQL text in, a snapshot out. Imports no record class: it is on the way to the first frame."""

from store.book.reading.facts import last_written, read_facts
from store.book.reading.round import read_again, read_snapshot, was_written

__all__ = ["last_written", "read_again", "read_facts", "read_snapshot", "was_written"]
