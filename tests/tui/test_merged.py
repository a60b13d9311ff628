"""The merge command, in words: who wrote what came in, and what two benches wrote differently."""

from contextlib import closing
from datetime import timedelta
from pathlib import Path

import pytest

from store.book.drafts import Subject
from store.book.opening import Book
from store.herd.animal import AnimalSheet
from store.herd.moving import MovingSheet
from store.herd.pen import PenSheet
from store.round.confirm import noted, skipped
from tests.farm import HandClock, hand, morning, small_book, step_of
from tests.store.herd.filled import animal, register, write
from tests.store.keys import pressed
from tui.cli import OK, main

PAIL = "pail steel pail, empty 1.4 kg, fate calves"


def test_what_came_in_is_told_by_bench_and_person_and_differences_side_by_side(
    book: Book, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """One milking was weighed at both benches; the newer weight counts."""
    found = morning(book)
    book.append(pressed(hand(book, found), step_of(found, "Fennel", "milk"), "7.4"))
    book.close()
    clock = HandClock()
    clock.at += timedelta(minutes=20)
    with closing(small_book(tmp_path, clock, "kitchen")) as other:
        found = morning(other)
        other.append(pressed(hand(other, found), step_of(found, "Fennel", "milk"), "6.4"))
        other.append(skipped(hand(other, found), step_of(found, "Hazel", "feed"), "no time"))
        other.append(noted(hand(other, found), Subject(), "Gate is off its hinge", tell=True))
    assert main(["--book", book.desk.place, "merge", str(tmp_path / "kitchen.penwalk")]) == OK
    said = capsys.readouterr().out.splitlines()
    assert said == [
        f"6 new rows came in from {tmp_path / 'kitchen.penwalk'}.",
        "  Ann at kitchen: 1 round, 2 steps, 1 note",
        "1 step written differently on two benches. The newest counts; G and a few letters, to correct.",
        "  Wed 11 Mar morning, Fennel milk:",
        f"           Ann at bench, Wed 11 Mar 06:31: done: milk 6 kg, gross 7.4 kg, {PAIL}",
        f"    counts Ann at kitchen, Wed 11 Mar 06:51: done: milk 5 kg, gross 6.4 kg, {PAIL}",
    ]


def test_what_was_set_up_twice_and_what_was_changed_apart_is_said(
    book: Book, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A pen and an animal set up at both benches, an animal moved at both; the same tag is no difference."""
    later = HandClock()
    later.move(minutes=20)
    with closing(small_book(tmp_path, later, "kitchen")) as other:
        for each, pen in ((book, "Stall"), (other, "Calf pen")):
            write(each, PenSheet(register(each)), name="Paddock")
            write(each, AnimalSheet(register(each)), name="Bramble", pen_id="Paddock")
            write(each, MovingSheet(register(each), animal(each, "Sloe")), pen_id=pen)
            write(each, AnimalSheet(register(each), animal(each, "Tansy")), tag="RED 9")
    book.close()
    assert main(["--book", book.desk.place, "merge", str(tmp_path / "kitchen.penwalk")]) == OK
    said = capsys.readouterr().out.splitlines()
    assert said[-6:] == [
        "1 thing changed differently on two benches. The later counts; F, to change it again.",
        "  Sloe, standing:",
        "           here, Wed 11 Mar 06:31: pen Stall",
        "    counts there, Wed 11 Mar 06:51: pen Calf pen",
        "Look again: 2 animals in use are called Bramble.",
        "Look again: 2 pens in use are called Paddock.",
    ]


def test_a_second_time_it_says_that_nothing_is_new(
    book: Book, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """And names the book that was looked into."""
    small_book(tmp_path, bench="kitchen").close()
    book.close()
    other = tmp_path / "kitchen.penwalk"
    assert main(["--book", book.desk.place, "merge", str(other)]) == OK
    assert capsys.readouterr().out == f"Nothing new came in from {other}: this book holds all of it.\n"
