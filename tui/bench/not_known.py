"""What of the round at hand, or of the last one, nobody has written: read once for each look at the book."""

from store.book.errors import BookError
from store.book.snapshot import Snapshot, Written
from store.book.words import Kind, State
from store.round.steps import Step
from tui.telling import name, step_words, turn_words
from tui.walker import Walker


class NotKnown:
    """Kept until the walker looks at the book again."""

    def __init__(self) -> None:
        """Nothing is read yet."""
        self.of: Snapshot | None = None
        self.words = ""

    def told(self, walker: Walker) -> str:
        """In one sentence; empty where everything is written, or still to do."""
        if self.of is not walker.snapshot:
            self.of, self.words = walker.snapshot, _told(walker)
        return self.words


def _told(walker: Walker) -> str:
    try:
        return "; ".join(_not_known(walker))
    except BookError as problem:
        return str(problem)


def _not_known(walker: Walker) -> list[str]:
    """Of this round once it is ended; before it is begun, of the one before."""
    if walker.snapshot.entries:
        return [_step(walker, step) for step in walker.steps if step.state is State.OPEN] if walker.ended() else []
    unfinished = walker.left_unfinished(walker.turn)
    if unfinished:
        return [f"{turn_words(unfinished)} was not ended; R opens it"]
    left = ((entry.kind is not Kind.TASK, _entry(walker, entry)) for entry in walker.snapshot.last.left(State.OPEN))
    return [words for _, words in sorted(left)]


def _step(walker: Walker, step: Step) -> str:
    """A job with where it is; the name of anything else says that."""
    return f"{step.place}: {step_words(walker, step)}" if step.kind is Kind.TASK else step_words(walker, step)


def _entry(walker: Walker, entry: Written) -> str:
    return name(walker, entry) if entry.kind is Kind.TASK else f"{name(walker, entry)} ({entry.kind.value})"
