"""The statements about feed: feeds and measures, plans, what was given before, what soaks."""

from store.book.reading.sql import HOUR, NEWEST_OF_ITS_STEP, in_force

MEASURES = f"""
SELECT i.id, a.name, a.plural, f.id, w.holds_kg, w.begins_at FROM measure i
JOIN measure_as a ON a.id = {in_force("measure_as", "n.measure_id = i.id")}
CROSS JOIN feed f
LEFT JOIN weighing w ON w.id = {in_force("weighing", "n.measure_id = i.id AND n.feed_id = f.id")}
"""

FEEDS = f"""
SELECT i.id, a.name, a.soaked, a.bucket, a.baled, a.in_use FROM feed i
JOIN feed_as a ON a.id = {in_force("feed_as", "n.feed_id = i.id")}
"""


def _plans(subject: str) -> str:
    same = f"n.{subject}_id = i.id AND n.slot = :slot AND n.feed_id = f.id AND n.written_at <= :known"
    return f"""
SELECT i.id, f.id, p.due_kg, p.measure_id, p.begins_at, p.position FROM {subject} i CROSS JOIN feed f
JOIN feed_plan p ON p.id = {in_force("feed_plan", same)}
WHERE p.due_kg IS NOT NULL ORDER BY p.position, f.id
"""


ANIMAL_PLANS, PEN_PLANS = _plans("animal"), _plans("pen")


def _plan_rows(subject: str) -> str:
    return f"""
SELECT n.begins_at, n.due_kg FROM feed_plan n
WHERE n.{subject}_id = :subject AND n.slot = :slot AND n.feed_id = :feed AND n.written_at <= :known
ORDER BY n.begins_at DESC, n.written_at DESC, n.id DESC LIMIT 120
"""


ANIMAL_PLAN_ROWS, PEN_PLAN_ROWS = _plan_rows("animal"), _plan_rows("pen")
"""The newest rows of one plan and those to come; of two that begin together, the one that counts first."""

SUBSTITUTES = f"""
SELECT f.id, s.by_id, s.ratio, s.most_kg FROM feed f
JOIN substitute s ON s.id = {in_force("substitute", "n.feed_id = f.id")}
WHERE s.by_id IS NOT NULL
"""


def _given_before(subject: str) -> str:
    return f"""
SELECT e.day, f.feed_id, f.given_kg FROM entry e JOIN fed f ON f.entry_id = e.id
WHERE e.id = (
  SELECT e.id FROM entry e
  WHERE e.{subject}_id = :subject AND e.kind = :kind AND e.slot = :slot AND e.day < :day AND e.state = 'done'
  AND e.step_id <> e.id
  AND {NEWEST_OF_ITS_STEP} ORDER BY e.happened_at DESC, e.id DESC LIMIT 1
) AND f.given_kg IS NOT NULL
"""


ANIMAL_GIVEN_BEFORE, PEN_GIVEN_BEFORE = _given_before("animal"), _given_before("pen")

BARRED = """
SELECT f.id, n.species FROM feed f JOIN not_for n ON n.feed_id = f.id
WHERE n.barred AND n.begins_at <= :at AND NOT EXISTS (
  SELECT 1 FROM not_for o WHERE o.feed_id = n.feed_id AND o.species = n.species AND o.begins_at <= :at
  AND (o.begins_at, o.written_at, o.id) > (n.begins_at, n.written_at, n.id)
)
"""

SOAK_RULES = f"""
SELECT f.id, r.water, r.least_h, r.most_h, r.water_per_kg FROM feed f
JOIN soak_rule r ON r.id = {in_force("soak_rule", "n.feed_id = f.id AND n.air = :air")}
"""


def _before(alias: str) -> str:
    """That an entry is of a round before this one, in the order of days and slots."""
    slot = f"({alias}.slot = 'morning' AND :slot <> 'morning' OR {alias}.slot = 'evening' AND :slot = 'night')"
    return f"({alias}.day < :day OR ({alias}.day = :day AND {slot}))"


BATCHES = f"""
SELECT e.happened_at, s.dry_kg, s.water_kg, EXISTS (
  SELECT 1 FROM entry c JOIN soaked k ON k.entry_id = c.id
  WHERE c.feed_id = e.feed_id AND c.kind = 'soak' AND c.state = 'done' AND c.happened_at > e.happened_at - {24 * HOUR}
  AND k.act <> 'started' AND (c.day > e.day OR (c.day = e.day AND c.slot = 'evening' AND e.slot = 'morning'))
  AND {_before("c")}
  AND NOT EXISTS (SELECT 1 FROM entry n WHERE n.step_id = c.step_id AND (n.written_at, n.id) > (c.written_at, c.id))
) FROM entry e JOIN soaked s ON s.entry_id = e.id
WHERE e.feed_id = :subject AND e.kind = 'soak' AND e.state = 'done' AND e.happened_at <= :at
AND s.act = 'started' AND {_before("e")} AND {NEWEST_OF_ITS_STEP}
ORDER BY e.happened_at DESC, e.id DESC LIMIT 1
"""
"""The batch put to soak last, before this round; and whether a round between has fed it or thrown it out already: one
that comes after the round of its start, whichever of the two was done first at the bench. What later rounds did says
nothing of a past one that is typed in."""
