"""How long soaked beet pulp keeps, as it is printed. No figure for cattle was found; the articles are for horses."""

from store.book.opening import Book
from store.book.words import Air
from store.herd.soaking import SoakingSheet
from tests.store.herd.filled import filled, id_of, register

AT_MOST_H = 12
"""Fed at once, and within 12 h at most. pressreader.com/usa/equus/20150201/281960311136811"""
IN_HOT_HUMID_WEATHER_H = 2
"""So soon it can ferment. The same page. ntro.it.com, how-long-is-beet-pulp-good-for-once-soaked, prints 12 h for it,
24 h below 21 degrees Celsius and up to 48 h in winter: the stricter one counts."""


def test_a_feed_that_has_no_rule_starts_with_the_strictest_that_is_printed(book: Book) -> None:
    """And what stands there can be written as it stands."""
    found = register(book)
    sheet = SoakingSheet(found, id_of(found, "feed_as", "grass hay"))
    rows = {row.values["air"]: row.values for row in sheet.rows(filled(sheet).answers())}
    assert set(rows) == set(Air)
    assert all(rows[air]["most_h"] <= AT_MOST_H for air in Air)
    assert rows[Air.HOT]["most_h"] <= IN_HOT_HUMID_WEATHER_H
