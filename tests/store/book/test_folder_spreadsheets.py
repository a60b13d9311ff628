"""A farm folder as spreadsheets save it: read where one thing can be meant, refused in words where two can."""

import csv
import io
from datetime import date
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from store.book.desk import Desk, FileDesk
from store.book.folder.cells import guarded, unguarded
from store.book.folder.habits import Habits, Unclear, habits_of
from store.book.folder.put_out import put_out
from store.book.folder.take_in import take_in
from tests.farm import FOLDER
from tests.store.book.folders import change, copy_farm, edit, lines_of, mistakes
from tests.store.book.test_folder_round_trip import add_animal
from tests.store.book.tools import all_rows
from tests.store.round.made import unhurried

NUMBER, DAY = "a number with a point, as 3.5 from 0.001 to 500", "a day as 2026-03-05"


def saved(path: Path, separator: str = ",", letters: str = "utf-8", line_end: str = "\r\n", edge: int = 0) -> None:
    """Save a file as a spreadsheet would. edge: so many empty columns and rows beside what is there."""
    with path.open(encoding="utf-8", newline="") as file:
        rows = [row + [""] * edge for row in csv.reader(file)]
    text = io.StringIO(newline="")
    csv.writer(text, delimiter=separator, lineterminator=line_end).writerows(rows + [[""] * len(rows[0])] * edge)
    path.write_bytes(text.getvalue().encode(letters))


@pytest.mark.parametrize("separator", [",", ";", "\t"])
@pytest.mark.parametrize("letters", ["utf-8", "utf-8-sig", "utf-16"])
@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("edge", [0, 2])
def test_a_whole_farm_saved_another_way_is_the_same_farm(
    file_desk: FileDesk, tmp_path: Path, separator: str, letters: str, line_end: str, edge: int
) -> None:
    """Every file of it; and what was understood is said of each that is not as we write it."""
    folder = copy_farm(tmp_path / "farm", past=True)
    for path in folder.glob("*.csv"):
        saved(path, separator, letters, line_end, edge)
    taken = take_in(folder, file_desk)
    assert taken.rows == 0
    said = dict(each.split(": read as ") for each in taken.understood)
    assert ("UTF-16 text" in said.get("pen_as.csv", "")) == (letters == "utf-16")
    assert ("semicolons" in said.get("pen_as.csv", "")) == (separator == ";")
    assert ("tabs" in said.get("pen_as.csv", "")) == (separator == "\t")
    assert bool(said) == (letters == "utf-16" or separator != ",")


def test_old_windows_letters_are_read_and_said(bare: Desk, tmp_path: Path) -> None:
    """An accent written by a spreadsheet that knows no UTF-8."""
    folder = copy_farm(tmp_path / "farm")
    edit(folder, "animal_as.csv", "Hazel", "Häsel – €")
    saved(folder / "animal_as.csv", letters="cp1252")
    taken = take_in(folder, bare)
    assert taken.understood == ("animal_as.csv: read as Windows text (cp1252): look at every name with an accent.",)
    assert "Häsel – €" in [row[4] for row in all_rows(bare)["animal_as"]]


def rewritten(path: Path, **changes: object) -> None:
    """Change cells of every line by the name of their column, with a function."""
    for at, line in enumerate(lines_of(path)):
        change(path.parent, path.name, at + 2, **{name: how(line[name]) for name, how in changes.items()})  # type: ignore[operator]


def test_decimal_commas_are_read_where_a_number_settles_it(file_desk: FileDesk, tmp_path: Path) -> None:
    """0,675 is no thousand, so that 1,200 in the same file is none either."""
    folder = copy_farm(tmp_path / "farm")
    rewritten(folder / "weighing.csv", holds_kg=lambda text: text.replace(".", ","))
    saved(folder / "weighing.csv", ";")
    taken = take_in(folder, file_desk)
    assert taken.rows == 0
    assert taken.understood == ("weighing.csv: read as semicolons between the cells, numbers with a decimal comma.",)


@pytest.mark.parametrize(("order", "words"), [("{2}/{1}/{0}", "day/month/year"), ("{1}/{2}/{0}", "month/day/year")])
def test_days_are_read_where_one_of_them_settles_their_order(
    file_desk: FileDesk, tmp_path: Path, order: str, words: str
) -> None:
    """20 May can only be written in one way; 2 April beside it is then clear too. Times have such days as well."""
    folder = copy_farm(tmp_path / "farm")

    def turned(text: str) -> str:
        return order.format(*text[:10].split("-")) + text[10:] if text else text

    rewritten(folder / "animal_as.csv", born_on=turned, calved_on=turned, begins_at=turned)
    taken = take_in(folder, file_desk)
    assert taken.rows == 0
    assert taken.understood == (f"animal_as.csv: read as days as {words}.",)


def test_a_day_that_two_orders_allow_is_refused(folder: Path, file_desk: FileDesk) -> None:
    """Everywhere in the file, all at once; the same day and month is no question."""
    rewritten(folder / "animal_as.csv", born_on=lambda _: "", calved_on=lambda _: "")
    change(folder, "animal_as.csv", 2, id="new-1", born_on="03/04/2020")
    change(folder, "animal_as.csv", 3, id="new-2", born_on="04/04/2020")
    change(folder, "animal_as.csv", 4, id="new-3", born_on="11-12-2020")
    said = [each for each in mistakes(folder, file_desk) if "settles" in each]
    assert said == [
        f"animal_as.csv line 2, born_on: found «03/04/2020»; expected {DAY}: 03/04/2020 can be in month 3 or in month"
        " 4, and nothing in the file settles it.",
        f"animal_as.csv line 4, born_on: found «11-12-2020»; expected {DAY}: 11-12-2020 can be in month 11 or in month"
        " 12, and nothing in the file settles it.",
    ]


def test_two_orders_of_day_and_month_in_one_file_are_refused(folder: Path, file_desk: FileDesk) -> None:
    """Both of them are named."""
    change(folder, "animal_as.csv", 2, id="new-1", born_on="13/04/2020")
    change(folder, "animal_as.csv", 3, id="new-2", born_on="04/14/2020")
    said = [each for each in mistakes(folder, file_desk) if each.endswith("in the whole file, which has both.")]
    assert [each.split(":")[0] for each in said] == ["animal_as.csv line 2, born_on", "animal_as.csv line 3, born_on"]


def test_a_comma_that_could_be_a_thousand_is_refused(folder: Path, file_desk: FileDesk) -> None:
    """Nothing else in the file settles it."""
    rewritten(folder / "weighing.csv", holds_kg=lambda _: "2")
    change(folder, "weighing.csv", 3, id="w-1", holds_kg="1,200")
    assert (
        f"weighing.csv line 3, holds_kg: found «1,200»; expected {NUMBER}, not «1,200», which can be 1.200 or 1200."
        in mistakes(folder, file_desk)
    )


def test_a_comma_beside_a_point_is_refused(folder: Path, file_desk: FileDesk) -> None:
    """One file writes numbers in one way."""
    change(folder, "weighing.csv", 2, id="w-1", holds_kg="0.5")
    change(folder, "weighing.csv", 3, id="w-2", holds_kg="0,5")
    assert f"weighing.csv line 3, holds_kg: found «0,5»; expected {NUMBER}." in mistakes(folder, file_desk)


def test_a_column_that_stands_twice_is_refused(folder: Path, file_desk: FileDesk) -> None:
    """Which of the two counts nobody can tell."""
    edit(folder, "pen_as.csv", "position", "name")
    assert "pen_as.csv line 1: found the column «name» twice; expected it once." in mistakes(folder, file_desk)


def test_a_cell_without_the_name_of_a_column_is_refused(folder: Path, file_desk: FileDesk) -> None:
    """Behind the last column; empty ones are a spreadsheet's edge."""
    saved(folder / "pen.csv", edge=1)
    edit(folder, "pen.csv", "stall,", "stall,a remark")
    said = "pen.csv line 2: found another number of cells; expected one for each column of line 1."
    assert said in mistakes(folder, file_desk)


@pytest.mark.parametrize("text", ["=1+1", "+2 bags", "- wet", "@home", "'=1", "''-x", "'plain", "plain", ""])
def test_no_spreadsheet_runs_what_the_keeper_wrote(text: str) -> None:
    """What begins like a formula goes out with an apostrophe before it, and comes back as it was."""
    assert not guarded(text).startswith(("=", "+", "-", "@"))
    assert unguarded(guarded(text)) == text


@given(st.text(alphabet="'=+-@\t\ra1 ", max_size=8))
def test_every_text_comes_back_from_its_guard(text: str) -> None:
    """With apostrophes of its own too."""
    assert unguarded(guarded(text)) == text
    assert not guarded(text).startswith(("=", "+", "-", "@", "\t", "\r"))


def test_a_name_like_a_formula_goes_out_guarded_and_comes_back(file_desk: FileDesk, tmp_path: Path) -> None:
    """And the numbers of the same book stay numbers."""
    add_animal(file_desk, "=cmd()")
    put_out(file_desk, tmp_path / "out")
    assert b",'=cmd()," in (tmp_path / "out" / "animal_as.csv").read_bytes()
    assert b",-4.0," in (tmp_path / "out" / "forecast.csv").read_bytes()
    assert take_in(tmp_path / "out", file_desk).rows == 0


@given(st.lists(st.tuples(st.integers(1, 28), st.integers(1, 12), st.integers(1990, 2030)), min_size=1, max_size=9))
@example([(3, 4, 2026)])
@unhurried
def test_a_file_of_days_is_read_as_it_was_meant_or_not_at_all(days: list[tuple[int, int, int]]) -> None:
    """Written day first, no day is ever read as another one."""
    texts = [f"{day:02}/{month:02}/{year}" for day, month, year in days]

    habits = habits_of((date, text) for text in texts)
    for text, (day, month, year) in zip(texts, days, strict=True):
        try:
            assert habits.plain(text, date) == date(year, month, day).isoformat()
        except Unclear:
            assert not any(each > 12 for each, _, _ in days)
            assert day != month


@given(st.lists(st.decimals(0, 500, places=3), min_size=1, max_size=9), st.integers(0, 3))
@unhurried
def test_a_file_of_numbers_is_read_as_it_was_meant_or_not_at_all(numbers: list[object], places: int) -> None:
    """Written with a decimal comma, no number is ever read as a thousand times another."""
    texts = [f"{number:.{places}f}".replace(".", ",") for number in numbers]
    habits = habits_of((float, text) for text in texts)
    for text in texts:
        try:
            assert habits.plain(text, float) == text.replace(",", ".")
        except Unclear:
            assert places == 3
    assert Habits().plain("3.5", float) == "3.5"


def test_the_folder_of_the_small_farm_needs_no_understanding(file_desk: FileDesk) -> None:
    """Nothing is said of a file as we write it ourselves."""
    assert take_in(FOLDER, file_desk).understood == ()
