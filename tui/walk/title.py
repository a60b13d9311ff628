"""The head of a card: the name as large as the amount, and the facts that tell one animal from another."""

from store.book.facts.farm import Animal
from store.book.facts.span import span
from store.book.words import Stage
from store.round.calving import JUST_CALVED
from store.round.dialect import said
from store.round.measured import holding
from store.round.withholding import withheld_of
from tui.frame import SMALL
from tui.page import Line, Role, Size, Span, beside, large_lines, line, width_of, wrapped
from tui.walk.shown import Shown
from tui.words import age

WITHHELD = "!! MILK WITHHELD"
"""Beside the name of a treated cow, at each of her steps."""
ROOMY = Size(100, 32)
"""From this size on, name and amount are drawn twice as large."""


def scale_for(size: Size) -> int:
    """How large the large letters are."""
    return 2 if size.width >= ROOMY.width and size.height >= ROOMY.height else 1


def title(name: str, facts: list[str], size: Size) -> list[Line]:
    """The name, large, with its facts beside it, the first one strong; or below it where a long name leaves no room."""
    large = [(Span("  "), *row) for row in large_lines(name, Role.NAME, size.width - 4, scale_for(size))]
    taken = max(map(width_of, large)) + 3
    if size.width - taken >= max(map(len, facts), default=0):
        told = [line(Span(fact, _role(at, fact))) for at, fact in enumerate(facts)]
        return [*beside(large, told, taken), ()]
    below = wrapped(",  ".join(each for each in facts if each), size.width, Role.TEXT, "  ")
    return [*large, *below, ()] if size.height >= SMALL.height else large


def animal_facts(what: str, animal: Animal, place: str, shown: Shown) -> list[str]:
    """What is to be done, where she stands, her tag, and where she is in life."""
    today, named = shown.today, said(animal.stage.value, shown.walker.farm.dialect)
    milking = animal.calved_on if animal.stage is Stage.IN_MILK else None
    days = (today - animal.calved_on).days if animal.calved_on else None
    stage = f"{named} {age(milking, today)}" if milking else named
    if days is not None and 0 <= days <= JUST_CALVED.days:
        stage = f"{named}, just calved, day {days}"
    born = f", {age(animal.born_on, today)} old" if animal.born_on and not animal.calved_on else ""
    marked = f"{WITHHELD}  {what}" if _is_withheld(animal, shown) else what
    return [marked, f"{place}   {tag_words(animal)}".rstrip(), stage + born]


def _is_withheld(animal: Animal, shown: Shown) -> bool:
    """Whether milk that she gives now is withheld."""
    snapshot = shown.walker.snapshot
    milks = animal.stage is Stage.IN_MILK or animal.id in snapshot.milkings
    return milks and holding(withheld_of(snapshot, animal.id), span(shown.now)) is not None


def _role(at: int, fact: str) -> Role:
    if WITHHELD in fact:
        return Role.WARNING
    return Role.STRONG if at == 0 else Role.TEXT


def tag_words(animal: Animal) -> str:
    """`tag BLUE 12`: a tag and a bucket may have the same colour."""
    return f"tag {animal.tag}" if animal.tag and "tag" not in animal.tag.lower() else animal.tag
