"""Count steps: heads and a look open each pen; a short count stays open, with what was seen."""

from datetime import timedelta

import pytest
from msgspec.structs import replace

from store.book.drafts import Draft
from store.book.facts.calves import Parting
from store.book.figures import CountedFigure
from store.book.opening import Book
from store.book.snapshot import Snapshot
from store.book.words import Apart, Kind, State
from store.round.confirm import counted, got_out, left_open, parted, skipped
from store.round.plan import plan
from store.round.steps import CountStep
from store.round.summary import summarise
from tests.farm import MORNING, morning
from tests.farm import hand as hand_at
from tests.store.round.made import dawn, dusk, hand, moved, walk, without_animal, wrote
from tests.store.round.named import apart_of, count_of, steps_of

HOUR = timedelta(hours=1)


def test_every_pen_that_anybody_stands_in_is_counted_first() -> None:
    """Before its forage and its animals."""
    assert [(step.name, len(step.heads)) for step in steps_of(dawn(), CountStep)] == [
        ("Stall", 2),
        ("Calf pen", 1),
        ("Orchard", 2),
    ]
    for place in ("Stall", "Calf pen", "Orchard"):
        assert next(step for step in plan(dawn()) if step.place == place).kind is Kind.COUNT


def test_an_empty_pen_is_not_counted() -> None:
    """There is nobody to see."""
    assert ("Calf pen", "Calf pen", "count") not in walk(without_animal(dawn(), "Rook"))


def test_the_heads_follow_an_animal_that_moves() -> None:
    """One less here, one more there; and the counts stay the same steps."""
    after = moved(dawn(), "Hazel", "Orchard")
    assert [animal.name for animal in count_of(after, "Orchard").heads] == ["Hazel", "Sloe", "Tansy"]
    assert [animal.name for animal in count_of(after, "Stall").heads] == ["Fennel"]
    assert count_of(after, "Stall").step_id == count_of(dawn(), "Stall").step_id


def test_a_calf_that_was_let_in_is_expected_with_its_cow() -> None:
    """In the evening Rook has been with Fennel since the morning: three heads there, and nobody in the calf pen."""
    assert [animal.name for animal in count_of(dusk(), "Stall").heads] == ["Fennel", "Hazel", "Rook"]
    assert "Calf pen" not in {step.name for step in steps_of(dusk(), CountStep)}
    assert [animal.name for animal in count_of(moved(dusk(), "Fennel", "Orchard"), "Orchard").heads] == [
        "Fennel", "Rook", "Sloe", "Tansy"
    ]  # fmt: skip


@pytest.mark.parametrize("state", Apart)
def test_where_a_calf_is_expected_is_what_was_known_before_the_round(state: Apart) -> None:
    """Shut away: in its own pen; let in, or found out: with its cow."""
    there = "Calf pen" if state is Apart.SHUT_AWAY else "Stall"
    assert "Rook" in names_in(parted_before(state), there)


def test_an_open_count_goes_by_where_the_calf_was_let_to_in_this_round() -> None:
    """Let in before its pen was counted: nobody is due there any more, and one more with the cow."""
    for draft in latch_drafts(before := parted_before(Apart.SHUT_AWAY)):
        after = let_in(before, draft)
        assert names_in(after, "Calf pen") == []
        assert names_in(after, "Stall") == ["Fennel", "Hazel", "Rook"]


def test_a_count_that_was_written_keeps_the_heads_it_was_counted_against() -> None:
    """Counted first, let in afterwards: the calf was there when its pen was counted."""
    for draft in latch_drafts(before := parted_before(Apart.SHUT_AWAY)):
        seen = wrote(before, counted(hand(before), count_of(before, "Calf pen"), 1))
        seen = wrote(seen, counted(hand(seen), count_of(seen, "Stall"), 2))
        after = let_in(seen, draft)
        assert names_in(after, "Calf pen") == ["Rook"]
        assert names_in(after, "Stall") == ["Fennel", "Hazel"]


def parted_before(state: Apart) -> Snapshot:
    """The morning, with the calf in this state since an hour before it."""
    (share,) = dawn().shares
    return replace(dawn(), shares=(replace(share, partings=(Parting(state, MORNING - HOUR, None),)),))


def latch_drafts(before: Snapshot) -> tuple[Draft, Draft]:
    """The two ways a calf comes to its cow in a round: let in at its step, or found out."""
    (share,) = before.shares
    return parted(hand(before), apart_of(before, "Rook")), got_out(hand(before), share.cow_id, share.calf_id, None)


def let_in(before: Snapshot, draft: Draft) -> Snapshot:
    """Written, and the calf with its cow since."""
    (share,) = before.shares
    now = Parting(Apart.LET_IN, draft.happened_at, None)
    return wrote(replace(before, shares=(replace(share, partings=(now, *share.partings)),)), draft)


def names_in(snapshot: Snapshot, place: str) -> list[str]:
    """Who is expected at the count of a pen."""
    return [animal.name for animal in count_of(snapshot, place).heads]


@pytest.mark.parametrize(("seen", "state"), [(2, State.DONE), (3, State.DONE), (1, State.OPEN), (0, State.OPEN)])
def test_a_count_is_done_when_all_are_seen_and_open_while_one_is_missing(seen: int, state: State) -> None:
    """What was seen is kept beside what was expected, either way."""
    draft = counted(hand(dawn()), count_of(dawn(), "Orchard"), seen)
    assert draft.state is state
    assert draft.figures == (CountedFigure(2, seen),)


def test_a_short_count_stays_open_with_the_count_kept() -> None:
    """Found an hour later: the first count is history, the second one counts."""
    after = wrote(dawn(), counted(hand(dawn()), count_of(dawn(), "Orchard"), 1))
    step = count_of(after, "Orchard")
    assert step.state is State.OPEN
    assert step.entry is not None
    assert step.entry.the(CountedFigure) == CountedFigure(2, 1)
    assert step in summarise(after, plan(after)).not_recorded
    after = wrote(after, counted(hand(after), step, 2))
    assert count_of(after, "Orchard").state is State.DONE
    assert [entry.the(CountedFigure) for entry in after.entries] == [CountedFigure(2, 1), CountedFigure(2, 2)]


def test_a_count_skipped_or_left_open_keeps_how_many_were_due() -> None:
    """And saw nobody, which is not zero."""
    step = count_of(dawn(), "Stall")
    for draft in (skipped(hand(dawn()), step, "no time"), left_open(hand(dawn()), step)):
        assert draft.figures == (CountedFigure(2, None),)


def test_a_short_count_comes_back_from_the_book_open_and_short(book: Book) -> None:
    """Through the file."""
    found = morning(book)
    book.append(counted(hand_at(book, found), count_of(found, "Stall"), 1))
    step = count_of(morning(book), "Stall")
    assert step.state is State.OPEN
    assert step.entry is not None
    assert step.entry.figures == (CountedFigure(2, 1),)
