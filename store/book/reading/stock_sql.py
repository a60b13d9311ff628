"""The statements of the feed room. Each runs unchanged on SQLite and PostgreSQL, and finds its rows by index.

What the rounds fed is found by their days, as no index names the feed of a line: the cost grows with the rounds since
the feed was weighed last, never with the years. CROSS JOIN keeps SQLite to the order written: things first.
"""

from store.book.reading.sql import NEWEST_OF_ITS_STEP, in_force

OF_THE_FEED = (
    f"l.entry_id = e.id AND e.feed_id = :feed AND e.state = 'done' AND e.happened_at <= :at AND {NEWEST_OF_ITS_STEP}"
)

STOCKED = f"""
SELECT e.id, e.step_id, e.happened_at, l.kg, l.typed FROM entry e CROSS JOIN stocked l
WHERE {OF_THE_FEED} AND e.kind = 'stock'
ORDER BY e.happened_at DESC, e.id DESC LIMIT :most
"""

_DELIVERED = f"""
SELECT e.id, e.step_id, e.happened_at, l.kg, l.bags, l.price, l.lot FROM entry e CROSS JOIN delivered l
WHERE {OF_THE_FEED} AND e.kind = 'delivery'
"""
DELIVERED = f"{_DELIVERED} AND e.happened_at > :since ORDER BY e.happened_at, e.id"
LAST_DELIVERED = f"{_DELIVERED} ORDER BY e.happened_at DESC, e.id DESC LIMIT :most"
FIRST_DELIVERED = f"""
SELECT e.happened_at FROM entry e CROSS JOIN delivered l
WHERE {OF_THE_FEED} AND e.kind = 'delivery' ORDER BY e.happened_at, e.id LIMIT 1
"""

LOST = f"""
SELECT e.id, e.step_id, e.happened_at, l.kg, l.why FROM entry e CROSS JOIN lost l
WHERE {OF_THE_FEED} AND e.kind = 'loss' AND e.happened_at > :since
ORDER BY e.happened_at, e.id
"""

THROWN_OUT = f"""
SELECT e.id, e.step_id, e.happened_at, l.dry_kg, e.reason FROM entry e CROSS JOIN soaked l
WHERE {OF_THE_FEED} AND e.kind = 'soak' AND e.happened_at > :since AND l.act = 'thrown out'
AND l.dry_kg IS NOT NULL ORDER BY e.happened_at, e.id
"""

SOAKING = f"""
SELECT e.happened_at, l.act, l.dry_kg FROM entry e CROSS JOIN soaked l
WHERE {OF_THE_FEED} AND e.kind = 'soak' AND e.happened_at > :since AND l.act <> 'fit'
ORDER BY e.happened_at, e.id
"""
"""What went into the bucket, and what of it was thrown out; what is found fit is still there."""

_IN_ROUNDS = f"""
FROM entry e CROSS JOIN fed l
WHERE l.entry_id = e.id AND l.feed_id = :feed AND e.day >= :since_day AND e.kind IN ('feed', 'hay')
AND {NEWEST_OF_ITS_STEP}
"""
_DONE_SINCE = "AND e.state = 'done' AND e.happened_at > :since AND e.happened_at <= :at AND l.given_kg IS NOT NULL"
FED = f"SELECT e.day, sum(l.given_kg) {_IN_ROUNDS} {_DONE_SINCE} GROUP BY e.day ORDER BY e.day"
FED_AT = f"SELECT e.happened_at, l.given_kg {_IN_ROUNDS} {_DONE_SINCE} ORDER BY e.happened_at, e.id"
ROWS = f"""
SELECT e.day, e.slot, e.animal_id, e.pen_id, e.state, l.measure_id, l.due_kg, l.given_kg, l.left_kg, e.happened_at
{_IN_ROUNDS} AND e.day <= :until_day ORDER BY e.day, e.happened_at, e.id, l.position
"""

RECORDED = f"""
SELECT e.step_id, e.kind, e.day, e.slot, e.animal_id, e.pen_id, e.state FROM entry e
WHERE e.day >= :since_day AND e.kind IN ('feed', 'hay') AND {NEWEST_OF_ITS_STEP}
"""
"""The feed steps of some rounds that have an entry, whatever it says."""


def _to_come(subject: str) -> str:
    return f"""
SELECT i.id, n.feed_id, n.due_kg, n.measure_id, n.begins_at FROM {subject} i CROSS JOIN feed f
CROSS JOIN feed_plan n WHERE n.{subject}_id = i.id AND n.slot = :slot AND n.feed_id = f.id AND n.begins_at > :at
ORDER BY n.begins_at, n.written_at, n.id
"""


ANIMAL_PLANS_TO_COME, PEN_PLANS_TO_COME = _to_come("animal"), _to_come("pen")

WEIGHINGS = """
SELECT begins_at, holds_kg FROM weighing WHERE measure_id = :measure AND feed_id = :feed AND begins_at <= :at
ORDER BY begins_at DESC, written_at DESC, id DESC LIMIT :most
"""

FREE = """
SELECT pen_id, offered, begins_at FROM free_feed WHERE feed_id = :feed AND begins_at <= :at
ORDER BY begins_at, written_at, id
"""

STOOD_AT = f"""
SELECT i.id, s.pen_id, s.begins_at FROM animal i
JOIN standing s ON s.id = {in_force("standing", "n.animal_id = i.id", "since")}
"""
STOOD_SINCE = """
SELECT i.id, s.pen_id, s.begins_at FROM animal i
CROSS JOIN standing s WHERE s.animal_id = i.id AND s.begins_at > :since AND s.begins_at <= :at
ORDER BY s.begins_at, s.written_at, s.id
"""
KEPT_AT = f"""
SELECT i.id, a.kept, a.begins_at FROM animal i
JOIN animal_as a ON a.id = {in_force("animal_as", "n.animal_id = i.id", "since")}
"""
KEPT_SINCE = """
SELECT i.id, a.kept, a.begins_at FROM animal i
CROSS JOIN animal_as a WHERE a.animal_id = i.id AND a.begins_at > :since AND a.begins_at <= :at
ORDER BY a.begins_at, a.written_at, a.id
"""

MILKED = f"""
SELECT e.day, e.animal_id, sum(l.milk_kg) FROM entry e CROSS JOIN milked l
WHERE l.entry_id = e.id AND e.day >= :since_day AND e.day <= :until_day AND e.kind = 'milk' AND e.state = 'done'
AND l.milk_kg IS NOT NULL AND {NEWEST_OF_ITS_STEP} GROUP BY e.day, e.animal_id
"""
