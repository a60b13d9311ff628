"""What became of a round: the lists and totals of its closing."""

import pytest
from msgspec.structs import replace

from store.book.opening import Book
from store.book.snapshot import Snapshot
from store.book.words import Fate, State
from store.round.confirm import done, left_open, moved_on, skipped, undone
from store.round.measured import fed, milked
from store.round.plan import plan
from store.round.summary import Summary, summarise
from tests.farm import hand as hand_at
from tests.farm import morning, step_of
from tests.store.round.made import (
    dawn,
    dusk,
    hand,
    wrote,
)
from tests.store.round.named import feed_of, milk_of, task_of

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


def fed_kg(summary: Summary) -> dict[str, float]:
    """The totals by feed, to the gram."""
    return {total.feed.name: round(total.given_kg, 3) for total in summary.fed}


def test_before_anything_is_written_all_is_not_recorded() -> None:
    """And there is nothing else to say."""
    found = closing(dawn())
    assert found.steps == plan(dawn())
    assert {step.step_id for step in found.not_recorded} == {step.step_id for step in found.steps}
    assert (found.moved_on, found.on_paper) == ((), ())
    assert (found.done, found.skipped, found.differences, found.changes, found.milk, found.fed) == ((),) * 6


def test_each_step_is_in_one_list_in_walking_order() -> None:
    """Done, skipped, moved on, on paper, open again, untouched."""
    after = gave(dawn(), "Sloe")
    after = gave(after, "Hazel")
    after = wrote(after, skipped(hand(after), feed_of(after, "Rook"), "ran out"))
    after = wrote(after, done(hand(after), task_of(after, "Water trough runs")))
    after = wrote(after, undone(hand(after), after.entries[-1]))
    after = wrote(after, moved_on(hand(after), milk_of(after, "Fennel")))
    after = wrote(after, left_open(hand(after), feed_of(after, "Stall"), State.ON_PAPER))
    found = closing(after)
    assert [step.name for step in found.done] == ["Hazel", "Sloe"]
    assert [step.name for step in found.skipped] == ["Rook"]
    assert "Water trough runs" in {step.name for step in found.not_recorded}
    assert [step.name for step in found.moved_on] == ["Fennel"]
    assert [step.name for step in found.on_paper] == ["Stall"]
    listed = (found.done, found.skipped, found.moved_on, found.on_paper, found.not_recorded)
    assert sum(map(len, listed)) == len(found.steps)


def test_what_is_open_at_the_bench_is_named_first_of_what_is_not_recorded() -> None:
    """A feed room left open is the worst; behind it, in walking order, all else."""
    found = closing(gave(dawn(), "Sloe")).not_recorded
    assert found[0].name == "Feed room shut and chained"
    rest = [step.step_id for step in found[1:]]
    assert rest == [step.step_id for step in plan(gave(dawn(), "Sloe")) if step.step_id in rest]


def test_what_was_fed_is_added_up_by_feed_and_named_in_order() -> None:
    """Nuts for two animals, lucerne for one, hay for the stall: as shown, and as typed."""
    after = gave(gave(gave(dawn(), "Fennel"), "Hazel", "1 kg"), "Stall")
    assert fed_kg(closing(after)) == {"dairy nuts": 3.7, "grass hay": 8.2, "lucerne pellets": 0.9}
    assert list(fed_kg(closing(after))) == ["dairy nuts", "grass hay", "lucerne pellets"]


def test_milk_is_added_up_by_where_it_went() -> None:
    """In the order of the uses, each with the cows it came from."""
    after = milk(milk(dawn(), "Fennel", "7.4", Fate.CALVES), "Hazel", "9.9", Fate.CALVES)
    (total,) = closing(after).milk
    assert (total.fate, total.cows) == (Fate.CALVES, ("Fennel", "Hazel"))
    assert total.milk_kg == pytest.approx(14.5)
    after = milk(after, "Hazel", "9.9", Fate.HOUSE)
    house, calves = closing(after).milk
    assert (house.fate, round(house.milk_kg, 3), house.cows) == (Fate.HOUSE, 8.5, ("Hazel",))
    assert (calves.fate, round(calves.milk_kg, 3), calves.cows) == (Fate.CALVES, 6.0, ("Fennel",))


def test_what_was_skipped_or_opened_again_is_in_no_total() -> None:
    """Neither as a weight nor as a zero."""
    after = gave(milk(dawn(), "Hazel", "9.9", Fate.HOUSE), "Hazel")
    after = wrote(after, undone(hand(after), after.entries[0]))
    after = wrote(after, skipped(hand(after), feed_of(after, "Hazel"), "ran out"))
    after = wrote(after, skipped(hand(after), milk_of(after, "Fennel"), "no time"))
    found = closing(after)
    assert found.milk == ()
    assert found.fed == ()
    assert found.differences == ()


def test_what_is_no_longer_planned_still_counts_in_the_totals() -> None:
    """Hazel's milk was written, then she was taken off the milking."""
    after = milk(dawn(), "Hazel", "9.9", Fate.HOUSE)
    fennel = milk_of(dawn(), "Fennel").milking
    after = replace(after, milkings={fennel.animal_id: fennel})
    found = closing(after)
    assert [(total.fate, round(total.milk_kg, 3), total.cows) for total in found.milk] == [
        (Fate.HOUSE, 8.5, ("Hazel",))
    ]
    assert [step.name for step in found.done] == ["Hazel"]


def test_the_evening_in_the_book_closes_as_it_was_written() -> None:
    """Hazel was not milked; everything else was done."""
    found = closing(dusk())
    assert [(step.name, step.kind.value) for step in found.skipped] == [("Hazel", "milk")]
    assert found.not_recorded == ()
    assert found.milk == ()
    assert fed_kg(found) == {"dairy nuts": 3.375, "grass hay": 18.45, "lucerne pellets": 0.9}


def test_a_round_written_into_the_book_closes_the_same(book: Book) -> None:
    """Through the file and back: one given, one typed, one milked, one skipped, one undone."""
    found = morning(book)
    book.append(fed(hand_at(book, found), feed_of(found, "Hazel"), {}))
    book.append(fed(hand_at(book, found), feed_of(found, "Rook"), {feed_of(found, "Rook").due[0].feed.id: "1"}))
    book.append(milked(hand_at(book, found), milk_of(found, "Hazel"), "9,9", Fate.HOUSE))
    book.append(skipped(hand_at(book, found), milk_of(found, "Fennel"), "not here"))
    book.append(done(hand_at(book, found), step_of(found, "Water trough runs", "task")))
    book.append(undone(hand_at(book, found), morning(book).entries[-1]))
    summary = closing(morning(book))
    assert (len(summary.done), len(summary.skipped), len(summary.not_recorded)) == (3, 1, 14)
    assert fed_kg(summary) == {"dairy nuts": 2.7}
    assert [(one.step.name, one.due_kg, one.given_kg) for one in summary.differences] == [("Rook", 0.34, 0.675)]
    assert [one.step.name for one in summary.changes] == ["Water trough runs"]
    assert [(one.fate, round(one.milk_kg, 3)) for one in summary.milk] == [(Fate.HOUSE, 8.5)]
