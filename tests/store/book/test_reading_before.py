"""What a snapshot knows of what came before its round: pails, feeds, latches, soak buckets; never what came after."""

from datetime import date, timedelta
from uuid import UUID

import pytest
from msgspec.structs import replace

from store.book.desk import Desk
from store.book.facts.feed import Batch
from store.book.folder.cells import id_of
from store.book.opening import Book
from store.book.reading import read_snapshot
from store.book.records.feeding import FeedPlan
from store.book.snapshot import Snapshot
from store.book.turn import Turn
from store.book.words import EVENING, Apart, Fate, Soak, State
from store.husbandry.milk.pail import milk_in_pail
from store.round.confirm import left_open, moved_on, skipped, undone
from store.round.measured import milked, soak_checked, soak_started
from store.round.steps import SoakCheckStep, SoakStartStep
from tests.farm import FOLDER, MORNING, hand, morning
from tests.store.book.folders import lines_of
from tests.store.book.seeing import NOW, TODAY, animal, put, seen
from tests.store.round.named import milk_of, soak_check_of, soak_start_of

LUCERNE = "lucerne pellets"
TOMORROW, THEN = Turn(TODAY + timedelta(days=1), "morning"), NOW + timedelta(days=1)


def tomorrow(book: Book) -> Snapshot:
    """The morning after the pretend one."""
    return read_snapshot(book.desk, TOMORROW, THEN)


def evening(book: Book) -> Snapshot:
    """The evening of the pretend day."""
    return read_snapshot(book.desk, Turn(TODAY, EVENING), NOW + timedelta(hours=12))


def pails_kg(snapshot: Snapshot, name: str) -> list[float | None]:
    """What a cow gave before, newest first."""
    return [pail.milk_kg for pail in snapshot.milkings[animal(snapshot, name).id].pails_before]


def in_the_folder(name: str) -> list[float]:
    """What a cow gave, oldest first, as the folder has it."""
    lines = [line for line in lines_of(FOLDER / "milked.csv") if f"-{name.lower()}-milk" in line["id"]]
    return [float(line["milk_kg"]) for line in lines if line["milk_kg"]]


def test_the_pails_before_are_of_every_slot_newest_first(still_desk: Desk) -> None:
    """A skipped one is none."""
    assert pails_kg(seen(still_desk), "Hazel") == in_the_folder("Hazel")[::-1]
    assert pails_kg(seen(still_desk), "Fennel") == in_the_folder("Fennel")[::-1]
    assert len(pails_kg(seen(still_desk), "Hazel")) == 13


def test_a_pail_of_this_round_is_not_before_it_and_one_corrected_counts_once(desk_book: Book) -> None:
    """In the next round it is there, as corrected."""
    for typed in ("9.4", "9.0"):
        found = morning(desk_book)
        desk_book.append(milked(hand(desk_book, found), milk_of(found, "Hazel"), typed, Fate.HOUSE))
    assert pails_kg(morning(desk_book), "Hazel") == in_the_folder("Hazel")[::-1]
    assert pails_kg(tomorrow(desk_book), "Hazel") == pytest.approx([7.6, *in_the_folder("Hazel")[::-1]])


def test_a_pail_undone_skipped_or_moved_on_is_none(desk_book: Book) -> None:
    """She was not emptied, as far as the book knows."""
    found = morning(desk_book)
    desk_book.append(milked(hand(desk_book, found), milk_of(found, "Hazel"), "9.4", Fate.HOUSE))
    for write in (lambda at, step: skipped(at, step, "no time"), moved_on, lambda at, step: undone(at, step.entry)):
        found = morning(desk_book)
        desk_book.append(write(hand(desk_book, found), milk_of(found, "Hazel")))
        assert pails_kg(tomorrow(desk_book), "Hazel") == in_the_folder("Hazel")[::-1]


def test_a_pail_on_paper_was_milked_but_how_much_is_not_known(desk_book: Book) -> None:
    """So since when she fills is not known either, until it is typed in."""
    found = morning(desk_book)
    desk_book.append(left_open(hand(desk_book, found), milk_of(found, "Hazel"), State.ON_PAPER))
    assert pails_kg(tomorrow(desk_book), "Hazel")[0] is None
    assert milk_of(evening(desk_book), "Hazel").emptied_at is None
    found = morning(desk_book)
    desk_book.append(milked(hand(desk_book, found), milk_of(found, "Hazel"), "9.4", Fate.HOUSE))
    assert milk_of(evening(desk_book), "Hazel").emptied_at == morning(desk_book).entries[-1].happened_at


def test_a_pail_says_whether_she_held_back(desk_book: Book) -> None:
    """From either kind of desk."""
    found = morning(desk_book)
    draft = milked(hand(desk_book, found), milk_of(found, "Hazel"), "5.4", Fate.HOUSE, held_back=True)
    desk_book.append(draft)
    newest = tomorrow(desk_book).milkings[animal(found, "Hazel").id].pails_before[0]
    assert (newest.at, newest.milk_kg) == (draft.happened_at, milk_in_pail(5.4, 1.4))
    assert newest.held_back
    assert (newest.turn, newest.fate, newest.typed) == (found.turn, Fate.HOUSE, "5.4")
    assert (newest.step_id, newest.whole) == (draft.step_id, True)


def test_what_came_after_a_past_round_is_not_before_it(still_desk: Desk) -> None:
    """A round of last week, read as it was then."""
    turn = Turn(date(2026, 3, 6), "morning")
    snapshot = read_snapshot(still_desk, turn, MORNING - timedelta(days=5))
    assert pails_kg(snapshot, "Hazel") == in_the_folder("Hazel")[3::-1]
    assert all(each.at < turn.ends("Europe/Dublin", 12) for share in snapshot.shares for each in share.partings)
    assert {given.day for given in snapshot.given_before.values()} == {date(2026, 3, 5)}


def test_what_was_given_before_is_what_was_given_last_in_this_slot(still_desk: Desk) -> None:
    """As the folder has it: the morning of the day before; hay for the pens."""
    snapshot = seen(still_desk)
    lines = [
        line for line in lines_of(FOLDER / "entry.csv") if (line["day"], line["slot"]) == ("2026-03-10", "morning")
    ]
    fed = lines_of(FOLDER / "fed.csv")
    for line in (each for each in lines if each["kind"] in ("feed", "hay")):
        subject = id_of(line["animal_id"] or line["pen_id"], "animal" if line["animal_id"] else "pen", snapshot.farm.id)
        given = snapshot.given_before[subject]
        assert given.day == date(2026, 3, 10)
        assert given.given_kg == {
            id_of(each["feed_id"], "feed", snapshot.farm.id): float(each["given_kg"])
            for each in fed
            if each["entry_id"] == line["id"]
        }
    assert len(snapshot.given_before) == 6


def test_the_latches_of_a_calf_are_known_newest_first(still_desk: Desk) -> None:
    """Shut away and let in, day by day."""
    (share,) = seen(still_desk).shares
    assert [each.state for each in share.partings] == [Apart.SHUT_AWAY, Apart.LET_IN] * 7
    assert [each.at for each in share.partings] == sorted((each.at for each in share.partings), reverse=True)
    assert {each.since for each in share.partings} == {None}


def batch(snapshot: Snapshot) -> Batch | None:
    """What stands in the bucket."""
    return snapshot.batches.get(lucerne(snapshot))


def lucerne(snapshot: Snapshot) -> UUID:
    """The soaked feed."""
    return next(feed.id for feed in snapshot.feeds.values() if feed.name == LUCERNE)


def test_a_batch_put_to_soak_stands_there_until_it_is_looked_into(desk_book: Book) -> None:
    """From the start in one round, through the check in the next."""
    assert batch(morning(desk_book)) == Batch(MORNING.replace(day=10, hour=18, minute=10, second=50), 0.9, 1.8)
    found = morning(desk_book)
    desk_book.append(soak_checked(hand(desk_book, found), the_check(found), Soak.FIT))
    assert batch(morning(desk_book)) == batch(found)
    assert batch(evening(desk_book)) is None
    draft = soak_started(hand(desk_book, found), the_start(found), "1.2")
    desk_book.append(draft)
    assert batch(evening(desk_book)) == Batch(draft.happened_at, 1.2, 2.4)


def test_a_batch_that_was_thrown_out_stands_there_no_more(desk_book: Book) -> None:
    """Nor does one that was never begun."""
    found = morning(desk_book)
    desk_book.append(soak_checked(hand(desk_book, found), the_check(found), Soak.THROWN_OUT))
    desk_book.append(skipped(hand(desk_book, found), the_start(found), "ran out"))
    assert batch(evening(desk_book)) is None
    assert soak_check_of(evening(desk_book), LUCERNE).batch is None


def test_what_later_rounds_did_takes_no_batch_from_a_round_that_is_typed_in_later(desk_book: Book) -> None:
    """The evening's look is written, and then the morning's is: it still finds what was put to soak for it."""
    found, late = morning(desk_book), evening(desk_book)
    desk_book.append(soak_checked(replace(hand(desk_book, late), turn=late.turn), the_check(late), Soak.FIT))
    assert (
        batch(morning(desk_book))
        == batch(found)
        == Batch(MORNING.replace(day=10, hour=18, minute=10, second=50), 0.9, 1.8)
    )
    assert batch(tomorrow(desk_book)) is None


def test_the_next_batch_stands_there_though_it_was_begun_before_the_last_one_was_looked_into(desk_book: Book) -> None:
    """Two buckets at the bench: the order of the morning's two entries does not matter."""
    found = morning(desk_book)
    draft = soak_started(hand(desk_book, found), the_start(found), "1.2")
    desk_book.append(draft)
    desk_book.append(soak_checked(hand(desk_book, found), the_check(found), Soak.FIT))
    assert batch(evening(desk_book)) == Batch(draft.happened_at, 1.2, 2.4)


def test_a_batch_whose_look_was_undone_stands_there_still(desk_book: Book) -> None:
    """Until somebody looks again."""
    found = morning(desk_book)
    desk_book.append(soak_checked(hand(desk_book, found), the_check(found), Soak.THROWN_OUT, "sour"))
    assert batch(evening(desk_book)) is None
    desk_book.append(undone(hand(desk_book, found), morning(desk_book).entries[-1]))
    assert batch(evening(desk_book)) == batch(found)


def test_a_batch_whose_start_was_undone_was_never_begun(desk_book: Book) -> None:
    """The one before it was looked into and fed."""
    found = morning(desk_book)
    desk_book.append(soak_checked(hand(desk_book, found), the_check(found), Soak.FIT))
    desk_book.append(soak_started(hand(desk_book, found), the_start(found), ""))
    desk_book.append(undone(hand(desk_book, found), morning(desk_book).entries[-1]))
    assert batch(evening(desk_book)) is None


def the_check(snapshot: Snapshot) -> SoakCheckStep:
    """The look into the bucket."""
    return soak_check_of(snapshot, LUCERNE)


def the_start(snapshot: Snapshot) -> SoakStartStep:
    """The soak for the next round."""
    return soak_start_of(snapshot, LUCERNE)


def test_what_is_soaked_in_the_evening_is_by_the_plan_of_the_morning_after(desk_book: Book) -> None:
    """A plan that begins at midnight: the evening gives by the old one, and soaks for the new one."""
    fennel, midnight = animal(morning(desk_book), "Fennel").id, MORNING.replace(day=12, hour=0, minute=0)
    values = {"animal_id": fennel, "feed_id": lucerne(morning(desk_book)), "due_kg": 1.5, "begins_at": midnight}
    put(desk_book.desk, FeedPlan, slot="morning", **values)
    assert the_start(evening(desk_book)).due_kg == 1.5
    assert the_check(evening(desk_book)).due_kg == the_start(morning(desk_book)).due_kg == 0.9
    assert the_check(tomorrow(desk_book)).due_kg == 1.5
