"""The statements about milk: who is milked, what pails held, where calves were, what was found at a quarter."""

from store.book.reading.sql import HOUR, NEWEST_OF_ITS_STEP, in_force

SHARINGS = """
SELECT calf_id, cow_id, shares, longest_h, begins_at FROM sharing WHERE begins_at <= :at
ORDER BY begins_at, written_at, id
"""
"""Reads every row: a handful for each calf that ever shared."""

APART_RULES = f"""
SELECT i.id, r.apart_h, r.from_day, r.nights FROM animal i
JOIN apart_rule r ON r.id = {in_force("apart_rule", "n.calf_id = i.id")}
"""

SECOND_COWS = f"""
SELECT i.id, s.cow_id, s.begins_at FROM animal i
JOIN second_cow s ON s.id = {in_force("second_cow", "n.calf_id = i.id")}
WHERE s.cow_id IS NOT NULL
"""

MILKINGS = f"""
SELECT i.id, m.pail_id, p.name, p.empty_kg, r.every FROM animal i
JOIN milk_plan m ON m.id = {in_force("milk_plan", "n.animal_id = i.id AND n.slot = :slot")}
LEFT JOIN milk_rhythm r ON r.id = {in_force("milk_rhythm", "n.animal_id = i.id")}
LEFT JOIN pail_as p ON p.id = {in_force("pail_as", "n.pail_id = m.pail_id")}
WHERE m.milked
"""

JARS = f"""
SELECT e.id, e.step_id, e.state FROM entry e
WHERE e.animal_id = :subject AND e.kind = 'jar' AND e.happened_at > :since AND {NEWEST_OF_ITS_STEP}
"""

MILKED_LATELY = """
SELECT DISTINCT e.animal_id FROM entry e WHERE e.day >= :since_day AND e.day <= :day AND e.kind = 'milk'
"""
"""Whatever was milked in the last days: a goat, a suckler, a cow that is gone since."""

PAILS_BEFORE = f"""
SELECT e.happened_at, e.happened_from, m.milk_kg, m.held_back, e.state, COALESCE(d.whole, TRUE), e.day, e.slot, m.fate,
  m.typed, e.step_id
FROM entry e LEFT JOIN milked m ON m.entry_id = e.id LEFT JOIN drawn d ON d.entry_id = e.id
WHERE e.animal_id = :subject AND e.kind = 'milk' AND e.state IN ('done', 'on paper')
AND NOT (e.day = :day AND e.slot = :slot) AND e.happened_at < :at AND {NEWEST_OF_ITS_STEP}
ORDER BY e.happened_at DESC, e.id DESC LIMIT 60
"""
"""Also what is still on paper: she was emptied then, but when is not known. As many as a withholding by milkings needs,
with those left out between."""

PARTINGS = f"""
SELECT p.state, e.happened_at, e.happened_from, p.cow_id, e.reason FROM entry e LEFT JOIN parted p ON p.entry_id = e.id
WHERE e.animal_id = :subject AND e.kind = 'apart' AND e.state IN ('done', 'on paper') AND e.happened_at <= :at
AND {NEWEST_OF_ITS_STEP} ORDER BY e.happened_at DESC, e.id DESC LIMIT 90
"""
"""Also what is still on paper: then nobody knows where the calf was."""

QUARTERS = f"""
SELECT q.quarter, q.sign, e.happened_at, e.day, e.slot FROM entry e JOIN quarter q ON q.entry_id = e.id
WHERE e.animal_id = :subject AND e.kind = 'look' AND e.state = 'done' AND e.happened_at <= :at
AND e.happened_at > :weeks_ago AND e.day IS NOT NULL AND NOT (e.day = :day AND e.slot = :slot)
AND {NEWEST_OF_ITS_STEP} ORDER BY e.happened_at DESC, e.id DESC, q.position DESC LIMIT 120
"""

WITHHELD = f"""
SELECT i.id, w.begins_at, w.ends_at, w.why FROM animal i CROSS JOIN withheld w
WHERE w.animal_id = i.id AND w.begins_at <= :at AND (w.ends_at IS NULL OR w.ends_at > :at - {40 * 24 * HOUR} OR EXISTS (
  SELECT 1 FROM withheld o WHERE o.animal_id = w.animal_id AND o.ends_at IS NULL AND o.why = w.why
)) ORDER BY w.begins_at, w.written_at, w.id
"""
"""What was typed by hand and runs, or ended in the last weeks: a milking is judged by its own minute, and the milk
store looks back a month. Also what may have ended one without an end, however long ago."""

MILK_TEST = """
SELECT begins_at, fat_percent, protein_percent FROM milk_test WHERE animal_id = :subject AND begins_at <= :at
ORDER BY begins_at DESC, written_at DESC, id DESC LIMIT 1
"""

BREED = """
SELECT breed FROM breeding WHERE animal_id = :subject AND begins_at <= :at
ORDER BY begins_at DESC, written_at DESC, id DESC LIMIT 1
"""

WEIGHED = """
SELECT begins_at, weight_kg FROM body WHERE animal_id = :subject AND begins_at <= :at AND weight_kg IS NOT NULL
ORDER BY begins_at DESC, written_at DESC, id DESC LIMIT 20
"""

IN_PAILS = f"""
SELECT e.day, SUM(m.milk_kg), COUNT(m.milk_kg) FROM entry e JOIN milked m ON m.entry_id = e.id
WHERE e.animal_id = :subject AND e.kind = 'milk' AND e.state = 'done' AND e.day >= :since_day AND e.day <= :day
AND e.happened_at <= :at AND m.milk_kg IS NOT NULL AND {NEWEST_OF_ITS_STEP}
GROUP BY e.day ORDER BY e.day
"""
"""A lactation: of one cow, and no longer than since she calved."""
