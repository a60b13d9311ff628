"""What a closing tells of: feeds given otherwise than planned, and steps written more than once."""

import pytest
from msgspec.structs import replace

from store.book.facts.feed import Portion
from store.book.figures import MilkedFigure
from store.book.snapshot import Snapshot
from store.book.words import Fate, State
from store.round.confirm import undone
from store.round.measured import fed, milked
from store.round.plan import plan
from store.round.summary import Summary, summarise
from tests.store.round.made import NUTS, SCOOP, dawn, hand, with_portions, wrote
from tests.store.round.named import feed_of, milk_of

KG_PER_LB = 0.45359237  # exact: NIST Handbook 44, Appendix C


def closing(snapshot: Snapshot) -> Summary:
    """The summary of a round as its snapshot stands."""
    return summarise(snapshot, plan(snapshot))


def gave(snapshot: Snapshot, name: str, *typed: str) -> Snapshot:
    """An animal or a pen was fed: as shown, or with something typed for its first feeds."""
    step = feed_of(snapshot, name)
    words = {due.feed.id: text for due, text in zip(step.due, typed, strict=False) if text}
    return wrote(snapshot, fed(hand(snapshot), step, words, sure=True))


def milk(snapshot: Snapshot, name: str, typed: str, fate: Fate) -> Snapshot:
    """A cow was milked."""
    return wrote(snapshot, milked(hand(snapshot), milk_of(snapshot, name), typed, fate))


def test_a_plan_of_one_and_a_half_with_one_given_differs_by_half_less() -> None:
    """What is due stays 1.5; what was given is 1.0; the difference is their own."""
    rook = feed_of(dawn(), "Rook").subject.id
    before = with_portions(dawn(), rook, Portion(NUTS, 1.5, None))
    after = gave(before, "Rook", "1.0")
    assert feed_of(after, "Rook").due[0].due_kg == 1.5
    (found,) = closing(after).differences
    assert (found.step.name, found.feed, found.due_kg, found.given_kg) == ("Rook", NUTS, 1.5, 1.0)
    assert found.given_kg - found.due_kg == -0.5


def test_a_feed_given_as_shown_is_no_difference_though_scoops_are_rounded() -> None:
    """6.0 lb are due and 1 1/2 scoops of 4.05 lb are shown: Enter gives 6.075 lb, as the keeper was told to."""
    told = replace(SCOOP, holds_kg=4.05 * KG_PER_LB)
    rook = feed_of(dawn(), "Rook").subject.id
    after = gave(with_portions(dawn(), rook, Portion(NUTS, 6.0 * KG_PER_LB, told)), "Rook")
    assert closing(after).differences == ()
    assert closing(after).fed[0].given_kg / KG_PER_LB == pytest.approx(6.075)


def test_what_was_typed_just_as_planned_is_no_difference() -> None:
    """Four scoops of 0.675 kg are the 2.7 kg that were due."""
    assert closing(gave(dawn(), "Fennel", "4", "0.9 kg")).differences == ()


def test_a_feed_not_given_at_all_is_a_difference() -> None:
    """A zero typed is a zero given: it counts, unlike a step that was skipped."""
    (found,) = closing(gave(dawn(), "Fennel", "0")).differences
    assert (found.feed.name, found.due_kg, found.given_kg) == ("dairy nuts", 2.7, 0)


def test_a_change_keeps_the_first_value_beside_the_one_that_counts() -> None:
    """Written three times: the first and the last are shown."""
    after = milk(dawn(), "Hazel", "9.9", Fate.HOUSE)
    after = milk(after, "Hazel", "8.9", Fate.HOUSE)
    after = milk(after, "Hazel", "9.4", Fate.CALVES)
    (change,) = closing(after).changes
    assert (change.step.name, change.first, change.now) == ("Hazel", after.entries[0], after.entries[2])
    assert [pail.typed for pail in change.first.of(MilkedFigure)] == ["9.9"]


def test_a_step_written_once_is_no_change() -> None:
    """Nor is one that nobody wrote."""
    assert closing(gave(dawn(), "Hazel")).changes == ()


def test_a_step_undone_is_a_change_that_keeps_what_was_written() -> None:
    """It is open again, and its first entry is told."""
    after = gave(dawn(), "Hazel", "2")
    after = wrote(after, undone(hand(after), after.entries[0]))
    (change,) = closing(after).changes
    assert (change.first, change.now.state) == (after.entries[0], State.OPEN)
