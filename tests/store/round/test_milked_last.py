"""Who is milked last: a cow with a marked quarter, or whose milk is withheld."""

from datetime import timedelta

from msgspec.structs import replace

from store.book.facts.milk import Withholding
from store.book.snapshot import Snapshot
from store.book.words import Quarter, Sign
from store.round.care import quarters_found
from store.round.confirm import undone
from store.round.plan import plan
from store.round.steps import ApartStep, MilkStep, QuarterStep
from tests.store.round.made import animal_named, dawn, hand, moved, wrote
from tests.store.round.test_quarter_step import HARD_MONDAY, before


def order(snapshot: Snapshot, *kinds: type) -> list[str]:
    """Whose steps of some kinds, in walking order."""
    return [step.name for step in plan(snapshot) if isinstance(step, kinds)]


def test_she_is_milked_last_with_her_quarter_before_and_her_calf_behind() -> None:
    """Fennel comes before Hazel by name; marked, she is milked behind her, and Rook is let in after that."""
    assert order(dawn(), MilkStep, ApartStep) == ["Fennel", "Rook", "Hazel"]
    asked = before(dawn(), "Fennel", HARD_MONDAY)
    assert order(asked, MilkStep, ApartStep, QuarterStep) == ["Hazel", "Fennel", "Fennel", "Rook"]
    assert {step.step_id for step in plan(asked)} > {step.step_id for step in plan(dawn())}


def test_she_is_milked_last_in_whatever_pen_the_others_are() -> None:
    """Hazel is milked in the Orchard, which comes later in the walk."""
    asked = before(moved(dawn(), "Hazel", "Orchard"), "Fennel", HARD_MONDAY)
    assert order(asked, MilkStep) == ["Hazel", "Fennel"]


def test_marked_in_this_round_she_is_last_from_then_on() -> None:
    """And back in her place once it is undone."""
    fennel = animal_named(dawn(), "Fennel").id
    after = wrote(dawn(), quarters_found(hand(dawn()), fennel, {Quarter.LEFT_HIND: (Sign.HARD,)}))
    assert order(after, MilkStep) == ["Hazel", "Fennel"]
    assert order(wrote(after, undone(hand(after), after.entries[-1])), MilkStep) == ["Fennel", "Hazel"]


def test_withheld_milk_is_milked_last_too() -> None:
    """Ended before this round, it is not."""
    fennel = animal_named(dawn(), "Fennel").id
    for hours, names in ((6, ["Hazel", "Fennel"]), (-6, ["Fennel", "Hazel"])):
        until = hand(dawn()).now + timedelta(hours=hours)
        held = Withholding(until - timedelta(days=3), until, "by the label")
        assert order(replace(dawn(), withheld={fennel: (held,)}), MilkStep) == names


def test_where_all_are_marked_the_order_stays() -> None:
    """Nobody is before the others."""
    asked = before(before(dawn(), "Fennel", HARD_MONDAY), "Hazel", HARD_MONDAY)
    assert order(asked, MilkStep) == ["Fennel", "Hazel"]
