"""The feed room of the invented farm: what came, was weighed, was lost. Every figure, lot and price is invented."""

from collections.abc import Iterator
from typing import Any

Row = dict[str, Any]

DELIVERED = (
    ("hay", "2026-02-09 15:30", 3690, 180, 936, ""),
    ("straw", "2026-02-09 15:40", 560, 40, 120, ""),
    ("dairy-nuts", "2026-02-11 10:20", 500, 20, 190, "N-118"),
    ("barley", "2026-02-11 10:25", 150, 6, 51, "B-40"),
    ("lucerne", "2026-02-11 10:30", 200, 8, 92, "L-7"),
    ("beet", "2026-02-11 10:35", 80, 4, 34, ""),
    ("sheep-nuts", "2026-02-11 10:40", 75, 3, 31.5, ""),
    ("cattle-mineral", "2026-02-11 10:45", 25, 1, 29, ""),
    ("linseed-oil", "2026-02-11 10:50", 20, 1, 44, ""),
    ("dairy-nuts", "2026-03-10 11:05", 250, 10, 98, "N-131"),
)
"""Feed, when, kilograms, bags or bales, price of all of it, lot."""
WEIGHED = (
    ("dairy-nuts", "2026-03-08 15:10", 186.5), ("lucerne", "2026-03-08 15:20", 139), ("hay", "2026-03-08 15:40", 1510),
)  # fmt: skip
LOST = (("barley", "2026-02-24 16:20", 2.5, "a torn bag, the hens had it"),)


def room_rows() -> Iterator[tuple[str, Row, Row]]:
    """By its table: each figure, and the entry it belongs to."""
    for at, (feed, when, kg, bags, price, lot) in enumerate(DELIVERED):
        more = {"kg": float(kg), "bags": bags, "price": float(price), "lot": lot, "typed": ""}
        yield "delivered", *_rows(f"{feed}-came-{at}", "delivery", feed, when, more)
    for feed, when, kg in WEIGHED:
        yield "stocked", *_rows(f"{feed}-weighed", "stock", feed, when, {"kg": float(kg), "typed": ""})
    for feed, when, kg, why in LOST:
        yield "lost", *_rows(f"{feed}-lost", "loss", feed, when, {"kg": kg, "why": why, "typed": ""})


def _rows(word: str, kind: str, feed: str, when: str, figure: Row) -> tuple[Row, Row]:
    entry = {"id": word, "kind": kind, "feed_id": feed, "state": "done", "happened_at": f"{when}:00+00:00",
             "person_id": "ann", "bench": "feed room"}  # fmt: skip
    return {"id": f"{word}-0", "entry_id": word, "position": 0} | figure, entry
