"""The step that asks about a marked quarter: when it is asked, what answers it."""

import pytest
from msgspec.structs import replace

from store.book.facts.milk import QuarterFound
from store.book.snapshot import Snapshot
from store.book.words import MARKS, Kind, Sign, State
from store.round.amount import Unreadable
from store.round.care import quarter_looked, quarters_found
from store.round.confirm import skipped, undone
from store.round.plan import plan
from store.round.quarters import open_marks, running, toggled
from store.round.steps import QuarterStep
from store.round.summary import summarise
from tests.store.round.made import animal_named, dawn, dusk, hand, wrote
from tests.store.round.named import milk_of, step_of, steps_of
from tests.store.round.test_quarters_week import CLEAR, CLOTS, FULL, HARD, HOT, LF, LH, RF, SLACK, SORE, TIGHT, seen


def before(snapshot: Snapshot, name: str, *found: list[QuarterFound]) -> Snapshot:
    """The round with something found at a cow's quarters in earlier ones."""
    newest_first = tuple(reversed([each for look in found for each in look]))
    return replace(snapshot, quarters={**snapshot.quarters, animal_named(snapshot, name).id: newest_first})


HARD_MONDAY = seen("Mon evening", LH, HARD, CLOTS)


def test_it_is_asked_before_she_is_milked() -> None:
    """A step for each quarter, just before the pail, under its own name."""
    asked = before(dawn(), "Hazel", HARD_MONDAY, seen("Mon evening", RF, SORE))
    steps = [step for step in plan(asked) if step.name == "Hazel"]
    at = steps.index(milk_of(asked, "Hazel"))
    assert [step.mark.quarter for step in steps[at - 2 : at] if isinstance(step, QuarterStep)] == [RF, LH]
    assert len({step.step_id for step in steps}) == len(steps)


@pytest.mark.parametrize(("at", "name"), [(dawn, "Tansy"), (dusk, "Fennel")])
def test_it_is_asked_before_an_udder_is_felt(at: object, name: str) -> None:
    """A dry cow, and one in milk that is not milked now."""
    asked = before(at(), name, HARD_MONDAY) if callable(at) else dawn()
    kinds = [step.kind for step in plan(asked) if step.name == name]
    assert kinds[kinds.index(Kind.LOOK) + 1] is Kind.UDDER


def test_a_cow_whose_udder_nobody_handles_is_not_asked_about() -> None:
    """A heifer, a steer."""
    assert steps_of(before(dawn(), "Sloe", HARD_MONDAY), QuarterStep) == []


def test_several_signs_are_one_entry_and_the_step_is_done() -> None:
    """It stays a step of this round once it is answered, also where it is clear."""
    asked = before(dawn(), "Hazel", HARD_MONDAY)
    step = step_of(asked, QuarterStep, "Hazel")
    after = wrote(asked, quarter_looked(hand(asked), step, (HOT, HARD)))
    done = step_of(after, QuarterStep, "Hazel")
    assert done.state is State.DONE
    assert done.entry
    assert [figure.sign for figure in done.entry.figures if hasattr(figure, "sign")] == [HARD, HOT]
    assert [mark.signs for mark in milk_of(after, "Hazel").marked] == [(HARD, HOT)]


@pytest.mark.parametrize("signs", [(), (SLACK,)])
def test_nothing_picked_or_only_how_full_is_no_answer(signs: tuple[Sign, ...]) -> None:
    """It says which digits to press."""
    asked = before(dawn(), "Hazel", HARD_MONDAY)
    with pytest.raises(Unreadable, match="How is it now"):
        quarter_looked(hand(asked), step_of(asked, QuarterStep, "Hazel"), signs)


def test_it_stays_not_recorded_until_it_is_answered_or_skipped() -> None:
    """A skip is no look: the next round asks again."""
    asked = before(dawn(), "Hazel", HARD_MONDAY)
    step = step_of(asked, QuarterStep, "Hazel")
    assert step in summarise(asked, plan(asked)).not_recorded
    after = wrote(asked, skipped(hand(asked), step, "would not eat or let me"))
    assert len(open_marks(after, step.animal.id)) == 1


def test_a_mark_of_this_round_is_asked_about_from_the_next_on() -> None:
    """Marked at the pail: her milk knows it now; undone, nobody does."""
    hazel = animal_named(dawn(), "Hazel").id
    after = wrote(dawn(), quarters_found(hand(dawn()), hazel, {LH: (HARD, CLOTS)}))
    assert steps_of(after, QuarterStep) == []
    assert [mark.quarter for mark in milk_of(after, "Hazel").marked] == [LH]
    back = wrote(after, undone(hand(after), after.entries[-1]))
    assert milk_of(back, "Hazel").marked == ()


def test_the_same_quarter_three_rounds_running_is_said() -> None:
    """Marked each time; or slack each time she was milked, as a calf leaves it that favours it."""
    three = ("Mon evening", "Tue morning", "Tue evening")
    hazel = animal_named(dawn(), "Hazel").id
    marked = before(dawn(), "Hazel", *(seen(words, LH, HARD) for words in three))
    assert list(running(marked, hazel)) == [(LH, "marked", 3)]
    assert list(running(before(dawn(), "Hazel", *(seen(words, LH, HARD) for words in three[:2])), hazel)) == []
    slack = before(replace(dawn(), pails={}), "Hazel", *(seen(words, LF, SLACK) for words in three))
    assert list(running(slack, hazel)) == [(LF, "slack", 3)]
    milked_since = replace(slack, pails=dawn().pails)
    assert list(running(milked_since, hazel)) == []


def test_signs_that_cannot_be_at_once_give_way() -> None:
    """Picked last counts; a sign picked again is taken away."""
    picked: frozenset[Sign] = frozenset()
    for sign in (CLOTS, HARD, FULL):
        picked = toggled(picked, sign)
    assert picked == {CLOTS, HARD, FULL}
    assert toggled(picked, SLACK) == {CLOTS, HARD, SLACK}
    assert toggled(picked, TIGHT) == {CLOTS, HARD, TIGHT}
    assert toggled(picked, CLEAR) == {CLEAR, FULL}
    assert toggled(frozenset({CLEAR}), HOT) == {HOT}
    assert toggled(picked, HARD) == {CLOTS, FULL}
    assert MARKS & toggled(frozenset(MARKS), CLEAR) == frozenset()
