"""Laws of the closing, over any history of a round."""

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from store.book.drafts import Draft
from store.book.figures import FedFigure, MilkedFigure
from store.book.snapshot import Snapshot
from store.book.words import Fate, Kind, State
from store.round.confirm import Hand, counted, left_open, moved_on, skipped, undone
from store.round.plan import plan
from store.round.steps import CountStep, FeedStep, SoakStartStep, Step
from store.round.summary import Summary, summarise
from tests.farm import hand as hand_at
from tests.farm import morning, small_book
from tests.store.keys import pressed
from tests.store.round.made import dawn, hand, unhurried, wrote

Press = tuple[int, str, str, Fate]
"""Which step, which key, what is typed, where milk goes."""

PRESSES = st.lists(
    st.tuples(
        st.integers(0, 99),
        st.sampled_from(("enter", "enter", "enter", "skip", "undo", "move on", "paper", "short")),
        st.sampled_from(("2.5 kg", "11 lb", "1,4 kg", "12")),
        st.sampled_from(Fate),
    ),
    max_size=40,
)


def drafted(at: Hand, step: Step, press: Press) -> Draft | None:
    """What a key press at a step would write."""
    _, key, typed, fate = press
    if key == "undo":
        return undone(at, step.entry) if step.entry and step.state is not State.OPEN else None
    if key == "short":
        return counted(at, step, 0) if isinstance(step, CountStep) else None
    if key == "skip":
        return skipped(at, step, "ran out")
    if key == "move on":
        return moved_on(at, step)
    if key == "paper":
        return left_open(at, step, State.ON_PAPER)
    bare = typed == "12" and isinstance(step, FeedStep | SoakStartStep)
    return pressed(at, step, "12 kg" if bare else typed, fate)


def walked(presses: list[Press]) -> Snapshot:
    """The small farm's morning after those keys."""
    found = dawn()
    for press in presses:
        steps = plan(found)
        draft = drafted(hand(found), steps[press[0] % len(steps)], press)
        found = wrote(found, draft) if draft else found
    return found


def lists_of(summary: Summary) -> tuple[tuple[Step, ...], ...]:
    """Every list that a step may be in."""
    return summary.done, summary.skipped, summary.moved_on, summary.on_paper, summary.not_recorded


@unhurried
@given(PRESSES)
def test_every_step_is_in_one_list_and_all_lists_are_all_steps(presses: list[Press]) -> None:
    """No step in two lists, none in no list."""
    found = walked(presses)
    summary = summarise(found, plan(found))
    listed = [step.step_id for each in lists_of(summary) for step in each]
    assert len(listed) == len(set(listed)) == len(summary.steps)
    assert set(listed) == {step.step_id for step in summary.steps}
    assert {step.step_id for step in plan(dawn()) if step.kind is not Kind.COOL} <= set(listed)


@unhurried
@given(PRESSES)
def test_the_totals_are_the_entries_that_count_and_no_others(presses: list[Press]) -> None:
    """Added up here from the bare history: the last entry of each step, if it is done."""
    found = walked(presses)
    summary = summarise(found, plan(found))
    last = {entry.step_id: entry for entry in found.entries}
    counting = [entry for entry in last.values() if entry.state is State.DONE]
    fed_kg = sum(figure.given_kg or 0 for entry in counting for figure in entry.of(FedFigure))
    milk_kg = sum(figure.milk_kg or 0 for entry in counting for figure in entry.of(MilkedFigure))
    assert sum(total.given_kg for total in summary.fed) == pytest.approx(fed_kg)
    assert sum(total.milk_kg for total in summary.milk) == pytest.approx(milk_kg)
    assert len(summary.done) == len(counting)


@unhurried
@given(PRESSES)
def test_every_difference_is_of_a_step_that_is_done_and_not_as_planned(presses: list[Press]) -> None:
    """And the plan beside it is the plan as it stands."""
    found = walked(presses)
    summary = summarise(found, plan(found))
    for one in summary.differences:
        assert one.step in summary.done
        assert isinstance(one.step, FeedStep)
        assert one.by_kg == one.given_kg - one.due_kg != 0
        assert one.due_kg in {due.due_kg for due in one.step.due if due.feed == one.feed}


@unhurried
@given(PRESSES)
def test_the_changes_are_the_steps_written_more_than_once(presses: list[Press]) -> None:
    """Each with its first entry that said something and its very last; an undo or a short count is no first value."""
    found = walked(presses)
    by_step = {step.step_id: [e for e in found.entries if e.step_id == step.step_id] for step in plan(found)}
    said = {step_id: [e for e in entries if e.state is not State.OPEN] for step_id, entries in by_step.items()}
    often = {
        step_id: (said[step_id][0], entries[-1])
        for step_id, entries in by_step.items()
        if said[step_id] and said[step_id][0] != entries[-1]
    }
    changes = summarise(found, plan(found)).changes
    assert {change.step.step_id: (change.first, change.now) for change in changes} == often


@settings(deadline=None, max_examples=10)
@given(PRESSES.map(lambda presses: presses[:12]))
@example(
    [(22, "enter", "2.5 kg", Fate.HOUSE), (76, "short", "2.5 kg", Fate.HOUSE)]
)  # the calf is let in, its pen counted
def test_the_book_on_disk_closes_as_the_round_in_hand(presses: list[Press]) -> None:
    """The same keys into a real book: the same lists, totals and changes."""
    with TemporaryDirectory() as folder:
        book = small_book(Path(folder))
        for press in presses:
            before = morning(book)
            steps = plan(before)
            draft = drafted(hand_at(book, before), steps[press[0] % len(steps)], press)
            if draft:
                book.append(draft)
        kept = morning(book)
        book.close()
    held = walked(presses)
    in_book, in_hand = summarise(kept, plan(kept)), summarise(held, plan(held))
    for mine, theirs in zip(lists_of(in_book), lists_of(in_hand), strict=True):
        assert [step.step_id for step in mine] == [step.step_id for step in theirs]
    assert (in_book.fed, in_book.milk) == (in_hand.fed, in_hand.milk)
    assert [one.step.step_id for one in in_book.changes] == [one.step.step_id for one in in_hand.changes]
