"""What is typed about something that is looked at again: what it is, and when."""

from abc import abstractmethod
from typing import TYPE_CHECKING, ClassVar

from store.book.drafts import Draft, Subject
from store.book.reading.watches import Watch
from store.book.words import Looks
from store.herd.moments import HOW_TO_COME, to_come
from store.round.amount import Unreadable
from store.round.watch import looked_again, watched
from tui.page import Line, Role, Size, wrapped
from tui.place import Place
from tui.words import near
from tui.yard.again_words import whose
from tui.yard.wording import Wording

if TYPE_CHECKING:
    from tui.yard.again import LookAgain


class NewWatch(Wording):
    """What is to be looked at again."""

    MOST: ClassVar[int] = 120

    def __init__(self, again: "LookAgain", subject: Subject) -> None:
        """Of an animal, a pen, or the whole yard."""
        super().__init__(again.rooms, again)
        self.again, self.subject = again, subject

    def heading(self) -> str:
        """Of whom."""
        return f"LOOK AGAIN at {whose(self.walker, self.subject)}: at what? As: left hind foot, or: is she up"

    def enter(self) -> Place:
        """And when."""
        if not self.text.strip():
            return self.say("Nothing is typed. Type what is to be looked at, or Esc goes back.")
        return FirstTime(self, " ".join(self.text.split()))


class When(Wording):
    """When it is looked at; how it is read stands below."""

    MOST: ClassVar[int] = 40

    def __init__(self, back: Place, again: "LookAgain") -> None:
        """Over what was typed or picked before."""
        super().__init__(again.rooms, back)
        self.again = again

    @abstractmethod
    def draft(self) -> Draft:
        """What Enter writes. Raises Unreadable."""

    def enter(self) -> Place:
        """Write it."""
        try:
            draft = self.draft()
        except Unreadable as problem:
            return self.say(str(problem))
        return self.again.write(draft) or self.say(self.again.said)

    def below(self, size: Size) -> list[Line]:
        """The reading."""
        if not self.text.strip():
            return []
        now, zone = self.walker.book.clock.now(), self.walker.zone
        try:
            words, role = f"again at {near(to_come(self.text, now, zone), now, zone)}", Role.STRONG
        except Unreadable as problem:
            words, role = str(problem), Role.WARNING
        return wrapped(words, size.width, role, "  ")


class FirstTime(When):
    """When it is looked at for the first time."""

    def __init__(self, what: NewWatch, words: str) -> None:
        """Over what it is."""
        super().__init__(what, what.again)
        self.subject, self.words = what.subject, words

    def heading(self) -> str:
        """What is asked."""
        return f"LOOK AGAIN at {whose(self.walker, self.subject)}, {self.words}: when? As {HOW_TO_COME}"

    def draft(self) -> Draft:
        """The first entry of its step."""
        due_at = to_come(self.text, self.walker.book.clock.now(), self.walker.zone)
        return watched(self.walker.hand_now(), self.subject, self.words, due_at)


class NextTime(When):
    """When it is looked at again; nothing typed: no more."""

    def __init__(self, back: Place, again: "LookAgain", watch: Watch, looks: Looks) -> None:
        """Over how it was."""
        super().__init__(back, again)
        self.watch, self.looks = watch, looks

    def heading(self) -> str:
        """What is asked."""
        what = f"{whose(self.walker, self.watch.subject)}, {self.watch.words}: {self.looks.value}"
        return f"{what}. Look again when? As {HOW_TO_COME}; Enter alone: no more"

    def draft(self) -> Draft:
        """One more entry of its step."""
        now, zone = self.walker.book.clock.now(), self.walker.zone
        due_at = to_come(self.text, now, zone) if self.text.strip() else None
        return looked_again(self.walker.hand_now(), self.watch, self.looks, due_at)
