"""Weeks of milkings worked by hand on paper: hours by the farm's wall clock, kilograms an hour, and what compares.

The clock of the farm is Dublin's: back an hour in the night before Sunday 25 October 2026, on an hour in the night
before Sunday 29 March 2026; 2028 has a 29 February.
"""

from datetime import datetime

import pytest

from store.book.facts.calves import Parting, Share
from store.book.facts.milk import PastPail
from store.book.turn import from_wall
from store.book.words import Apart
from store.husbandry.milk.usual import usual_pail
from store.round.emptied import CALF_HAD_IT
from store.round.looking_back import LookBack
from store.round.timed import TimedPail, rates_kg_h, timed_pails
from tests.store.round.made import some_id

COW, CALF = some_id("cow"), some_id("calf")

SHARED = """
shut away    | milked       |   kg | mark      | hours | kg/h  | says
19 Oct 19:10 | 20 Oct 07:10 | 6.00 |           | 12:00 | 0.500 | compares
20 Oct 18:40 | 21 Oct 07:10 | 6.25 |           | 12:30 | 0.500 | compares
21 Oct 19:10 | 22 Oct 07:10 | 4.10 | held back | 12:00 | 0.342 | held back
22 Oct 19:10 | 23 Oct 07:10 | 3.00 | part      | 12:00 | 0.250 | not milked out
23 Oct 19:10 | 24 Oct 07:10 |    - | calf      |     - |     - | not milked
24 Oct 19:40 | 25 Oct 07:10 | 6.20 |           | 12:30 | 0.496 | compares
25 Oct 22:15 | 26 Oct 07:10 | 1.20 | out 07:05 |     - |     - | calf had got out
26 Oct 19:10 | 27 Oct 07:10 | 6.00 |           | 12:00 | 0.500 | compares
"""
"""2026. A cow whose calf is let in behind each milking and shut away in the evening. The night to 25 October has an
hour more: from 19:40 to 07:10 are 11 h 30 on the wall, and 12 h 30 that passed; 6.2 kg / 12.5 h = 0.496 kg/h. In the
night before the 26th the calf was last seen apart at 22:15 and found with her at 07:05."""

ALONE = """
milked            |   kg | mark      | hours | kg/h  | says
2026-03-27 19:10  | 5.50 |           |     - |     - | hours not known
2026-03-28 07:10  | 6.00 |           | 12:00 | 0.500 | compares
2026-03-28 19:10  | 6.00 |           | 12:00 | 0.500 | compares
2026-03-29 07:10  | 5.50 |           | 11:00 | 0.500 | compares
2026-03-29 19:10  | 2.40 | part      | 12:00 | 0.200 | not milked out
2026-03-30 07:10  | 9.60 |           | 12:00 | 0.800 | some was in her before
2026-03-30 19:10  |    - | left      |     - |     - | not milked
2026-03-31 07:10  | 9.60 |           | 24:00 | 0.400 | compares
2026-03-31 19:10  | 6.00 |           | 12:00 | 0.500 | compares
2026-04-01 19:40  | 9.80 |           | 24:30 | 0.400 | over 24 h
"""
"""A cow without a calf, milked twice a day. The night before 29 March has an hour less. On the 29th she was not milked
out: the hours of the next pail run from there, and what was left is in it. On the 30th in the evening she was left for
the next round: no zero, her hours run on."""

LEAP = """
milked            |   kg | mark      | hours | kg/h  | says
2028-02-28 19:10  | 6.00 |           |     - |     - | hours not known
2028-02-29 07:10  | 6.00 |           | 12:00 | 0.500 | compares
2028-02-29 19:10  | 6.00 |           | 12:00 | 0.500 | compares
2028-03-01 07:10  | 6.00 |           | 12:00 | 0.500 | compares
"""


def rows(table: str) -> list[list[str]]:
    """The rows below the heading, cell by cell."""
    return [[cell.strip() for cell in row.split("|")] for row in table.strip().splitlines()[1:]]


def wall(text: str) -> datetime:
    """A time on the farm's wall: `19 Oct 19:10` of 2026, or `2028-02-29 07:10`."""
    told = datetime.fromisoformat(text) if "-" in text else datetime.strptime(f"2026 {text}", "%Y %d %b %H:%M")  # noqa: DTZ007
    return from_wall(told, "Europe/Dublin")


def pail(milked: str, kg: str, mark: str) -> PastPail:
    """A milking as it was written."""
    why = {"calf": CALF_HAD_IT, "left": "left for the next round"}.get(mark, "")
    milk_kg = None if kg == "-" else float(kg)
    return PastPail(wall(milked), milk_kg, mark == "held back", whole=mark != "part", typed=why)


def partings() -> list[Parting]:
    """What was written of the calf, newest first: shut away, perhaps found out, let in five minutes behind the pail."""
    found: list[Parting] = []
    for shut, milked, _, mark, *_ in rows(SHARED):
        found.append(Parting(Apart.SHUT_AWAY, wall(shut), None))
        if mark.startswith("out"):
            found.append(Parting(Apart.GOT_OUT, wall(f"{milked[:6]} {mark[-5:]}"), wall(shut)))
        found.append(Parting(Apart.LET_IN, wall(f"{milked[:6]} 07:15"), None))
    return found[::-1]


def said(found: TimedPail) -> list[str]:
    """Hours, kilograms an hour, and whether it compares, as on the paper."""
    if found.elapsed_h is None or found.kg_h is None:
        return ["-", "-", found.why_not]
    minutes = round(found.elapsed_h * 60)
    return [f"{minutes // 60}:{minutes % 60:02d}", f"{found.kg_h:.3f}", found.why_not or "compares"]


def test_a_week_of_a_cow_that_shares_her_milk_is_what_the_paper_says() -> None:
    """The night of the clock, a calf that got out, held back, part, and a calf that had it all."""
    shared = Share(COW, CALF, 13, tuple(partings()))
    pails = [pail(milked, kg, mark) for _, milked, kg, mark, *_ in rows(SHARED)][::-1]
    found = [said(each) for each in timed_pails(COW, (shared,), pails)][::-1]
    assert found == [row[-3:] for row in rows(SHARED)]


@pytest.mark.parametrize("table", [ALONE, LEAP])
def test_a_week_of_a_cow_without_a_calf_is_what_the_paper_says(table: str) -> None:
    """A clock put on, a part milking and what follows it, a milking left out, a day too long, a leap day."""
    pails = [pail(milked, kg, mark) for milked, kg, mark, *_ in rows(table)][::-1]
    found = [said(each) for each in timed_pails(COW, (), pails)][::-1]
    assert found == [row[-3:] for row in rows(table)]


def test_what_does_not_compare_is_not_in_her_usual() -> None:
    """Of ten pails five compare: four of half a kilogram an hour, and the one of 24 hours."""
    pails = [pail(milked, kg, mark) for milked, kg, mark, *_ in rows(ALONE)][::-1]
    found = tuple(timed_pails(COW, (), pails))
    assert len(list(rates_kg_h(iter(found)))) == 5
    usual = usual_pail(tuple(rates_kg_h(iter(found))), 12)
    assert usual is not None
    assert [round(kg, 2) for kg in usual] == [5.48, 6.0, 6.57]
    assert LookBack(found).day_kg == pytest.approx(24 * (4 * 0.5 + 0.4) / 5)


def test_a_drop_is_against_what_she_gives_in_as_many_hours() -> None:
    """11.9 kg in every 12 h, then 10.5: 10.5 / 11.9 = 0.882, 11.8 % under."""
    days = [f"2028-02-{day} {time}" for day in (26, 27, 28) for time in ("07:10", "19:10")]
    pails = [pail(milked, "11.9", "") for milked in days] + [pail("2028-02-29 07:10", "10.5", "")]
    found = LookBack(tuple(timed_pails(COW, (), pails[::-1])))
    assert round((found.percent(found.pails[0]) or 0) - 100, 1) == -11.8
