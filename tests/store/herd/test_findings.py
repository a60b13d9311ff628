"""What deserves a second look: said in a sentence, refused nowhere."""

from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest

from store.book.clock import Clock
from store.book.desk import FileDesk
from store.book.folder.take_in import new_book_from
from store.book.reading.yard import Weighed, read_yard
from store.herd.findings import findings, odd_deliveries, same_names, same_tags, too_heavy
from tests.farm import FOLDER, MORNING
from tests.store.book.folders import add, change, copy_farm, lines_of
from tui.moving import import_folder


def found(folder: Path, tmp_path: Path) -> tuple[str, ...]:
    """What is found in the book of a folder."""
    new_book_from(folder, tmp_path / "found.penwalk")
    with closing(FileDesk(tmp_path / "found.penwalk")) as desk:
        return findings(read_yard(desk, MORNING))


def test_nothing_is_found_in_the_small_farm(tmp_path: Path) -> None:
    """Else the sentences below would be its own."""
    assert found(FOLDER, tmp_path) == ()


def test_all_slips_are_found_and_none_is_refused(tmp_path: Path) -> None:
    """Two animals of one tag and name, two pens of one name, a feed gone, a scoop too heavy, a delivery in grams."""
    folder = copy_farm(tmp_path / "farm", past=True)
    at = {"begins_at": "2026-03-01"}
    add(folder, "animal.csv", id="moss")
    add(folder, "animal_as.csv", id="moss-1", animal_id="moss", name="fennel", tag="blue 12", stage="steer", **at)
    add(folder, "pen_as.csv", id="again", pen_id="orchard", name="Stall", position="30", **at)
    nuts = next(line for line in lines_of(folder / "feed_as.csv") if line["feed_id"] == "dairy-nuts")
    add(folder, "feed_as.csv", **(nuts | at | {"id": "gone", "in_use": "no"}))
    litres = next(line for line in lines_of(folder / "volume.csv"))
    add(folder, "weighing.csv", id="w", measure_id=litres["measure_id"], feed_id="hay", holds_kg="99", **at)
    change(folder, "delivered.csv", 2, kg="250")
    for at_once, kg in (("b", "250"), ("c", "250000")):
        entry = next(line for line in lines_of(folder / "entry.csv") if line["id"] == "nuts-in")
        add(folder, "entry.csv", **(entry | {"id": f"nuts-{at_once}", "step_id": f"nuts-{at_once}"}))
        add(folder, "delivered.csv", id=f"in-{at_once}", entry_id=f"nuts-{at_once}", position="0", kg=kg)
    said = found(folder, tmp_path)
    assert "Fennel and fennel have the same tag, BLUE 12." in said
    assert "2 animals in use are called Fennel." in said
    assert "2 pens in use are called Stall." in said
    assert "Fennel is planned to get dairy nuts, which is not in use any more." in said
    assert any(
        each.startswith(f"A {litres['measure_id']} of grass hay is weighed at 99 kg, and holds") for each in said
    )
    assert "250000 kg of dairy nuts came at once; 250 kg is usual." in said


def test_the_import_says_what_to_look_at_again(tmp_path: Path) -> None:
    """After what it did."""
    folder = copy_farm(tmp_path / "farm")
    add(folder, "pen_as.csv", id="again", pen_id="orchard", name="Stall", position="30", begins_at="2026-03-01")
    said = import_folder(folder, str(tmp_path / "made.penwalk")).splitlines()
    assert said[1:] == ["Look again: 2 pens in use are called Stall."]
    assert Clock().now() > datetime(2026, 3, 1, tzinfo=UTC)


@pytest.mark.parametrize(("holds_kg", "heavy"), [(1.5, False), (1.44, False), (1.51, True)])
def test_a_litre_of_the_heaviest_feed_is_no_slip(holds_kg: float, heavy: bool) -> None:
    """Molasses at 1.44 kg is the heaviest there is."""
    assert bool(too_heavy(Weighed("jug", "molasses", holds_kg, 1))) == heavy


def test_animals_without_a_tag_share_none() -> None:
    """An empty one, or blanks."""
    assert list(same_tags([("Rook", ""), ("Sloe", " "), ("Tansy", "")])) == []


def test_names_that_differ_by_more_than_their_case_do_not_collide() -> None:
    """Oats and rolled oats."""
    assert list(same_names("feeds", ["oats", "rolled oats"])) == []
    assert list(same_names("feeds", ["Oats", "oats"])) == ["2 feeds in use are called Oats."]


@pytest.mark.parametrize(
    ("kgs", "odd"), [((250,), 0), ((250, 25), 0), ((250, 250_000), 2), ((0.25, 250, 300), 1), ((0, 250), 0)]
)
def test_a_delivery_is_odd_from_a_thousand_times_the_usual(kgs: tuple[float, ...], odd: int) -> None:
    """Both of two are, as nobody knows which one is the slip."""
    assert len(list(odd_deliveries([("nuts", kgs)]))) == odd
