"""Calf sharing: shut away in the evening, let in in the morning, and what is known of where the calf is."""

from datetime import timedelta

from msgspec.structs import replace

from store.book.facts.calves import Parting
from store.book.figures import PartedFigure
from store.book.opening import Book
from store.book.turn import Turn
from store.book.words import EVENING, Apart, Kind, State
from store.round.apart import apart_question
from store.round.confirm import got_out, parted, skipped
from store.round.plan import plan
from store.round.steps import ApartStep
from tests.farm import MORNING, morning
from tests.farm import hand as hand_at
from tests.store.round.made import animal_named, dawn, dusk, hand, moved, walk, without_animal, wrote
from tests.store.round.named import apart_of, milk_of, steps_of


def test_in_the_morning_the_calf_is_let_in_behind_the_milking() -> None:
    """Where the cow stands."""
    assert apart_of(dawn(), "Rook").want is Apart.LET_IN
    found = walk(dawn())
    assert found.index(("Stall", "Rook", "apart")) == found.index(("Stall", "Fennel", "milk")) + 1


def test_in_the_evening_the_calf_is_shut_away_in_its_own_pen() -> None:
    """Where the calf stands."""
    step = apart_of(dusk(), "Rook")
    assert (step.want, step.place) == (Apart.SHUT_AWAY, "Calf pen")
    assert step.cow.name == "Fennel"


def test_the_calf_goes_to_its_cow_wherever_she_stands() -> None:
    """She moved; her calf is let in there."""
    assert apart_of(moved(dawn(), "Fennel", "Orchard"), "Rook").place == "Orchard"


def test_nobody_is_parted_whose_cow_or_calf_is_gone() -> None:
    """Only animals that are kept are in the yard."""
    for snapshot in (dawn(), dusk()):
        for name in ("Rook", "Fennel"):
            assert steps_of(without_animal(snapshot, name), ApartStep) == []


def test_a_calf_that_shares_no_more_is_left_where_it_is() -> None:
    """Weaned."""
    for snapshot in (dawn(), dusk()):
        assert steps_of(replace(snapshot, shares=()), ApartStep) == []


def test_two_calves_of_one_cow_are_two_steps() -> None:
    """Sloe drinks too: one latch does not write the other."""
    (share,) = dawn().shares
    second = replace(share, calf_id=animal_named(dawn(), "Sloe").id, partings=())
    found = replace(dawn(), shares=(share, second))
    assert sorted(step.name for step in steps_of(found, ApartStep)) == ["Rook", "Sloe"]
    assert len({step.step_id for step in steps_of(found, ApartStep)}) == 2
    assert [calf.calf.name for calf in milk_of(found, "Fennel").calves] == ["Rook", "Sloe"]


def test_the_newest_that_is_known_of_the_calf_is_shown() -> None:
    """Shut away the evening before, as the book has it."""
    last = apart_of(dawn(), "Rook").calf.last
    assert last is not None
    assert (last.state, last.since) == (Apart.SHUT_AWAY, None)
    assert timedelta(hours=12) < MORNING - last.at < timedelta(hours=13)
    assert apart_of(dawn(), "Rook").calf.longest_h == 13


def test_of_a_calf_that_was_never_parted_nothing_is_known() -> None:
    """And nothing is made up."""
    (share,) = dawn().shares
    assert apart_of(replace(dawn(), shares=(replace(share, partings=()),)), "Rook").calf.last is None


def test_the_latch_is_written_with_the_cow_and_where_the_calf_is_now() -> None:
    """Done, for the calf."""
    for snapshot, state in ((dawn(), Apart.LET_IN), (dusk(), Apart.SHUT_AWAY)):
        step = apart_of(snapshot, "Rook")
        draft = parted(hand(snapshot), step)
        assert (draft.state, draft.subject.animal_id) == (State.DONE, step.calf.calf.id)
        assert draft.figures == (PartedFigure(step.cow.id, state),)


def test_a_calf_that_is_shut_away_by_the_book_is_asked_about_before_it_is_shut_away_again() -> None:
    """Else its hours would begin anew. Let in, not known, or written in this round: not a word."""
    (share,) = dusk().shares
    evening = replace(dusk(), entries=(), shares=(replace(share, partings=dawn().shares[0].partings),))
    asked = apart_question(apart_of(evening, "Rook"), evening.farm.zone)
    assert asked.startswith("Rook is written as shut away since Tue 10 Mar 18:02.")
    again = wrote(evening, parted(hand(evening), apart_of(evening, "Rook")))
    for partings in ((), (Parting(Apart.LET_IN, MORNING, None),)):
        other = replace(evening, shares=(replace(share, partings=partings),))
        assert apart_question(apart_of(other, "Rook"), other.farm.zone) == ""
    for found in (again, dawn()):
        assert apart_question(apart_of(found, "Rook"), found.farm.zone) == ""


def test_a_calf_not_shut_away_leaves_no_parting() -> None:
    """Skipped: where it is, nobody wrote."""
    assert skipped(hand(dusk()), apart_of(dusk(), "Rook"), "no time").figures == ()


def test_a_calf_that_got_out_did_so_between_two_moments() -> None:
    """The last time it was seen apart, and now; nobody planned it, so it is no step of the round."""
    fennel, rook, since = animal_named(dawn(), "Fennel").id, animal_named(dawn(), "Rook").id, MORNING
    draft = got_out(hand(dawn()), fennel, rook, since)
    assert (draft.happened_from, draft.happened_at) == (since, hand(dawn()).now)
    assert (draft.step_id, draft.shown, draft.kind) == (None, None, Kind.APART)
    assert draft.figures == (PartedFigure(fennel, Apart.GOT_OUT),)


def test_a_calf_that_got_out_is_the_newest_that_the_book_knows(book: Book) -> None:
    """Between the evening and the morning; then it is let in; each time the newest stands first."""
    found = morning(book)
    step, shut = apart_of(found, "Rook"), apart_of(found, "Rook").calf.last
    assert shut is not None
    book.append(got_out(hand_at(book, found), step.cow.id, step.calf.calf.id, shut.at))
    out = apart_of(morning(book), "Rook").calf.last
    assert out is not None
    assert (out.state, out.since) == (Apart.GOT_OUT, shut.at)
    assert out.at > MORNING
    book.append(parted(hand_at(book, morning(book)), apart_of(morning(book), "Rook")))
    (share,) = morning(book).shares
    assert [each.state for each in share.partings[:3]] == [Apart.LET_IN, Apart.GOT_OUT, Apart.SHUT_AWAY]


def test_two_calves_that_got_out_in_one_round_are_two_entries(book: Book) -> None:
    """And twice the same calf, too: each has a name of its own."""
    found = morning(book)
    fennel, rook = animal_named(found, "Fennel").id, animal_named(found, "Rook").id
    for _ in range(2):
        book.append(got_out(hand_at(book, found), fennel, rook, None))
    entries = morning(book).entries
    assert len({entry.step_id for entry in entries}) == len(entries) == 2
    assert all(entry.step_id == entry.id for entry in entries)


def test_a_parting_written_by_hand_is_a_parting_like_any_other() -> None:
    """With no window it happened at its moment."""
    (share,) = dawn().shares
    found = replace(dawn(), shares=(replace(share, partings=(Parting(Apart.LET_IN, MORNING, None),)),))
    assert apart_of(found, "Rook").calf.last == Parting(Apart.LET_IN, MORNING, None)


def test_the_calf_is_let_in_in_the_morning_only() -> None:
    """The same yard in the evening: every step shuts away."""
    late = replace(dawn(), turn=Turn(dawn().turn.day, EVENING))
    assert {step.want for step in plan(late) if isinstance(step, ApartStep)} == {Apart.SHUT_AWAY}
