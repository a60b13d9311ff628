"""The vet's page: the number first, then what was seen of her, filled in; what is seen now becomes a note."""

from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from msgspec.structs import replace
from syrupy.assertion import SnapshotAssertion

from store.book.clock import new_id
from store.book.figures import NotedFigure
from store.book.records.care import Treatment, TreatmentAs
from store.book.records.yard import Breeding
from store.book.words import Kind, Quarter, Sign
from store.round.quarters import Mark
from tests.farm import MORNING
from tests.store.book.seeing import put
from tests.store.round.made import animal_named, dawn
from tests.tui.keys import Sitting
from tui.page import Size
from tui.walk.lamp import Lamp
from tui.yard.vet import Vet, number_lines
from tui.yard.vet_signs import COW, DULL, ring_words
from tui.yard.whom import Whom

SCREENS: dict[str, Callable[[Sitting], Sitting]] = {
    "about a cow": lambda s: s.to_step("Hazel", "milk").press("v"),
    "what is seen now": lambda s: s.to_step("Hazel", "milk").press("v", "1", "5"),
    "about a calf": lambda s: s.to_step("Rook", "feed").press("v"),
    "about whom": lambda s: s.to_step("Stall", "count").press("v", "a"),
}


def words(sitting: Sitting) -> str:
    """All of the page, in one line of words."""
    return " ".join(sitting.text(100, 90).split())


def at_hazel(sitting: Sitting) -> Sitting:
    """The page about Hazel."""
    return sitting.to_step("Hazel", "milk").press("v")


@pytest.mark.parametrize("name", SCREENS)
def test_the_screen_of_the_vet_is_as_kept(sitting: Sitting, screen: SnapshotAssertion, name: str) -> None:
    assert SCREENS[name](sitting).text() == screen


@pytest.mark.parametrize("name", SCREENS)
@pytest.mark.parametrize("size", [(120, 36), (60, 18), (40, 12), (1, 1), (0, 0)])
def test_the_page_fills_every_size(sitting: Sitting, name: str, size: tuple[int, int]) -> None:
    place = SCREENS[name](sitting).place
    assert place is not None
    assert len(place.draw(Size(*size)).lines) == size[1]


def test_the_number_is_large_and_what_is_written_with_it_stands_below(sitting: Sitting) -> None:
    walker = sitting.walker
    for vet, rows, below in (("555 0147", 3, ""), ("the practice, 555 0147, day and night", 4, "the practice, 555")):
        walker.farm = replace(walker.farm, vet=vet)
        lines = number_lines(walker, Size(80, 24))
        assert len(lines) == rows
        assert "█" in lines[0][1].text
        assert below in "".join(span.text for span in lines[-1])
    walker.farm = replace(walker.farm, vet="")
    assert "no number is set: F" in number_lines(walker, Size(80, 24))[0][0].text


def test_it_is_filled_in_with_what_was_seen_of_her(sitting: Sitting) -> None:
    """The pail of this round too, and her quarters."""
    sitting.to_step("Hazel", "milk").press("m", "2", "enter", "3", "2", "1", "enter", "9.4", "enter")
    sitting.to_step("Hazel", "feed").press("enter")
    found = words(at_hazel(sitting))
    assert "HAZEL tag WHITE 7 in milk" in found
    assert "calved" in found
    assert "MILK 8.0 kg in 23 h 46; 8.6 kg in 12 h 45;" in found
    assert "FED now" in found
    assert "QUARTERS Wed morning left hind: clots, hard" in found
    assert "TAKEN no temperature, no condition on record" in found
    assert "TREATED nothing in the last 60 days" in found


def test_a_treatment_that_is_over_is_told_for_sixty_days(sitting: Sitting) -> None:
    hazel, desk = animal_named(dawn(), "Hazel").id, sitting.walker.book.desk
    for days, product in ((59, "udder tube"), (61, "drench")):
        treatment, at = new_id(MORNING), MORNING - timedelta(days=days)
        put(desk, Treatment, id=treatment)
        put(
            desk, TreatmentAs, treatment_id=treatment, animal_id=hazel, product=product, why="hard quarter", doses=1,
            every_h=12, first_at=at, begins_at=at, in_use=False,
        )  # fmt: skip
    sitting.walker.look()
    found = words(at_hazel(sitting))
    assert "udder tube, for hard quarter: 0 of 1 given, ended (none given yet)" in found
    assert "drench" not in found.split("TREATED")[1].split("TODAY")[0]


def test_whether_she_is_in_calf_is_read_when_the_page_opens(sitting: Sitting) -> None:
    tansy = animal_named(dawn(), "Tansy").id
    days = {"served_on": date(2025, 6, 10), "due_on": date(2026, 3, 20)}
    put(sitting.walker.book.desk, Breeding, animal_id=tansy, begins_at=MORNING - timedelta(days=1), **days)
    assert "in calf, due Fri 20 Mar, served Tue 10 Jun" in words(sitting.to_step("Tansy", "udder").press("v"))


def test_a_temperature_of_this_round_comes_first(cared: Sitting) -> None:
    cared.to_step("Sloe", "look", 1).press("38.6", "enter")
    assert "TAKEN fever 38.6 C now" in words(cared.to_step("Sloe", "look").press("v"))


def test_what_is_seen_now_is_written_as_a_note_and_told(sitting: Sitting) -> None:
    at_hazel(sitting).press("5", "1", "9", "9")
    assert "RING NOW down, cannot rise." in words(sitting)
    assert "RING TODAY off feed." in words(sitting)
    sitting.press("enter")
    assert sitting.newest().kind is Kind.NOTE
    assert sitting.newest().subject.animal_id == animal_named(dawn(), "Hazel").id
    assert sitting.newest().the(NotedFigure) == NotedFigure(
        "for the vet, seen now: down, cannot rise; off feed", tell=True
    )
    assert "NOTE Wed 11 Mar 06:31 Ann: for the vet, seen now" in words(sitting)
    assert isinstance(sitting.press("enter").place, Lamp)
    assert sitting.written() == 1


def test_nothing_picked_writes_nothing(sitting: Sitting) -> None:
    assert isinstance(at_hazel(sitting).press("enter").place, Lamp)
    assert sitting.written() == 0


def test_a_dull_cow_with_a_hard_or_hot_quarter_is_rung_about_now() -> None:
    """Dull alone today; so says the list of what cannot wait."""
    turn = dawn().turn
    assert [ring for ring, _ in ring_words([DULL], ())] == ["RING TODAY"]
    hot = Mark(Quarter.LEFT_HIND, (Sign.HOT,), turn, turn)
    assert list(ring_words([DULL], (hot,))) == [("RING NOW", "dull, by herself, with a quarter hot")]
    assert [ring for ring, _ in ring_words([COW[6]], (hot,))] == ["RING TODAY"]
    assert list(ring_words([COW[7]], (hot,))) == []


def test_where_no_animal_stands_one_is_picked_by_a_few_letters(sitting: Sitting) -> None:
    sitting.to_step("Stall", "count").press("v")
    assert isinstance(sitting.place, Whom)
    assert "is in no name or tag" in sitting.press("zz", "enter").said
    sitting.press("backspace", "backspace", "white", "enter")
    assert isinstance(sitting.place, Vet)
    assert sitting.place.animal.name == "Hazel"
    assert isinstance(sitting.press("enter").place, Lamp)


def test_the_marked_animal_is_the_one_that_is_opened(sitting: Sitting) -> None:
    second = sitting.walker.snapshot.animals[1]
    place = sitting.to_step("Stall", "count").press("v", "down", "enter").place
    assert isinstance(place, Vet)
    assert place.animal.name == second.name


def test_a_farm_without_animals_says_so(sitting: Sitting) -> None:
    sitting.walker.snapshot = replace(sitting.walker.snapshot, animals=())
    sitting.place = sitting.house.whom(sitting.house.closing())
    assert "No animal is kept" in sitting.text()
    assert "No animal is kept" in sitting.press("enter").said


def test_the_page_goes_to_a_file_of_its_own(sitting: Sitting, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    at_hazel(sitting).press("4", "m", "1", "enter")
    page = Path(sitting.walker.book.desk.place).with_name("bench-2026-03-11-morning-vet-hazel.txt")
    assert f"Written: {page}" in sitting.said
    text = page.read_text(encoding="utf-8")
    assert "[x] 4 dull, by herself" in text
    assert "CALL TODAY" in text
    assert max(map(len, text.splitlines())) <= 78
    assert isinstance(sitting.place, Vet)


@pytest.mark.parametrize("size", [(60, 18), (80, 24)])
def test_what_cannot_wait_is_reached_below_the_animals_in_a_small_window(
    sitting: Sitting, size: tuple[int, int]
) -> None:
    sitting.to_step("Stall", "count").press("v", "e")
    first = sitting.text(*size)
    assert "  e_" in first
    assert "Page Down for more" in first
    pages = [first, *(sitting.press("pagedown").text(*size) for _ in range(4))]
    last = sitting.text(60, 1000).split(" WRITTEN")[0].split()[-3:]
    assert " ".join(last) in " ".join(" ".join(pages).split())
    assert "> Fennel" in sitting.press("up", "down").text(*size)
