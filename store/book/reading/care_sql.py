"""The statements about care: looks, treatments and their doses, calvings, what is looked at again."""

from store.book.reading.sql import HOUR, NEWEST_OF_ITS_STEP, in_force

LOOKS = f"""
SELECT i.id, a.animal_id, a.name, a.asks, a.slot, a.every_days, a.until_on FROM look i
JOIN look_as a ON a.id = {in_force("look_as", "n.look_id = i.id")}
WHERE a.in_use AND (a.until_on IS NULL OR a.until_on >= :day)
"""

LAST_LOOK = f"""
SELECT e.day, l.look_id, l.looks, l.condition_points, l.girth_cm, l.temperature_c
FROM entry e JOIN looked l ON l.entry_id = e.id
WHERE e.animal_id = :subject AND e.kind = 'look' AND e.state = 'done' AND l.look_id = :look
AND e.happened_at > :year_ago AND e.happened_at <= :at AND e.written_at <= :known
AND NOT (e.day = :day AND e.slot = :slot)
AND {NEWEST_OF_ITS_STEP} ORDER BY e.happened_at DESC, e.id DESC LIMIT 1
"""
"""No look falls due less than once a year, so that an older finding says nothing."""

MEASURED = f"""
SELECT e.happened_at, l.condition_points, l.girth_cm FROM entry e JOIN looked l ON l.entry_id = e.id
WHERE e.animal_id = :subject AND e.kind = 'look' AND e.state = 'done' AND e.happened_at > :long_ago
AND e.happened_at <= :at AND (l.condition_points IS NOT NULL OR l.girth_cm IS NOT NULL) AND {NEWEST_OF_ITS_STEP}
ORDER BY e.happened_at, e.id
"""
"""Every score and girth of an animal since a moment, oldest first."""

TREATMENTS = f"""
SELECT i.id, a.animal_id, a.product, a.amount, a.route, a.why, a.batch, a.doses, a.every_h, a.first_at, a.in_use,
  w.id, w.milk_h, w.milkings, w.meat_days, w.dry_days, w.calved_h, w.calved_milkings, w.said_by
FROM treatment i
JOIN treatment_as a ON a.id = {in_force("treatment_as", "n.treatment_id = i.id")}
LEFT JOIN withdrawal w ON w.id = {in_force("withdrawal", "n.treatment_id = i.id")}
WHERE a.first_at + a.doses * a.every_h * {2 * HOUR} + {1400 * 24 * HOUR} >= :at
OR w.meat_days IS NULL OR COALESCE(w.milk_h, w.milkings, w.calved_h, w.calved_milkings) IS NULL
"""
"""How long meat is withheld is at most 999 days: one that should have ended longer ago holds back nothing, and is read
no more, unless how long was never typed."""

DOSES_BEFORE = f"""
SELECT e.happened_at, e.happened_from FROM entry e
WHERE e.animal_id = :subject AND e.kind = 'dose' AND e.state = 'done'
AND EXISTS (SELECT 1 FROM dosed d WHERE d.entry_id = e.id AND d.treatment_id = :treatment AND d.given)
AND e.happened_at <= :at AND e.happened_at > :since AND NOT (e.day = :day AND e.slot = :slot)
AND {NEWEST_OF_ITS_STEP} ORDER BY e.happened_at DESC, e.id DESC LIMIT 99
"""
"""Whenever they were typed, for a past round too: that its summary stays as it was comes second to withheld milk."""

DOSES_NOT_GIVEN = f"""
SELECT e.day, e.slot, e.state, d.number FROM entry e JOIN dosed d ON d.id = (
  SELECT x.id FROM entry o JOIN dosed x ON x.entry_id = o.id
  WHERE o.step_id = e.step_id AND x.treatment_id = :treatment ORDER BY o.written_at DESC, o.id DESC LIMIT 1
)
WHERE e.animal_id = :subject AND e.kind = 'dose' AND e.state <> 'done' AND e.happened_at > :since
AND e.day IS NOT NULL AND NOT (e.day = :day AND e.slot = :slot) AND {NEWEST_OF_ITS_STEP}
ORDER BY e.happened_at DESC, e.id DESC LIMIT 99
"""
"""Doses that were asked for; one that was taken back names its treatment only in the entries of its step before."""

LAST_BIRTH = f"""
SELECT e.happened_from, e.happened_at, b.calf_id, b.alive, e.id, e.step_id FROM entry e JOIN born b ON b.entry_id = e.id
WHERE e.id = (
  SELECT e.id FROM entry e
  WHERE e.animal_id = :subject AND e.kind = 'birth' AND e.state = 'done' AND e.happened_at <= :at
  AND {NEWEST_OF_ITS_STEP} ORDER BY e.happened_at DESC, e.id DESC LIMIT 1
) ORDER BY b.position
"""

OPEN_WATCHES = f"""
SELECT e.id, e.step_id, e.animal_id, e.pen_id, e.task_id, e.feed_id, e.happened_at,
  w.words, w.due_at, w.due_until, w.looks
FROM watched w JOIN entry e ON e.id = w.entry_id
WHERE w.due_at > :long_ago AND e.state = 'done' AND {NEWEST_OF_ITS_STEP} AND (
  e.animal_id IS NULL
  OR EXISTS (SELECT 1 FROM animal_as a WHERE a.id = {in_force("animal_as", "n.animal_id = e.animal_id")} AND a.kept)
) ORDER BY w.due_at, e.id
"""
"""What is still to be looked at again; of an animal that is gone, nothing."""

LOOKED_LATELY = f"""
SELECT e.id, e.step_id, e.animal_id, e.pen_id, e.task_id, e.feed_id, e.happened_at,
  w.words, w.due_at, w.due_until, w.looks, p.words, p.due_at, p.due_until, p.looks
FROM entry e JOIN watched w ON w.entry_id = e.id LEFT JOIN watched p ON p.entry_id = e.replaces_id
WHERE e.id > :first_id AND e.kind = 'watch' AND e.state = 'done' AND {NEWEST_OF_ITS_STEP}
ORDER BY e.written_at DESC, e.id DESC LIMIT 9
"""
"""What was written of watches since an id was made, and what each entry took the place of. Ids sort by time."""

CARRIES = """
SELECT served_on, due_on FROM breeding WHERE animal_id = :subject AND begins_at <= :at
ORDER BY begins_at DESC, written_at DESC, id DESC LIMIT 1
"""
