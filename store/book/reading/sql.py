"""The statements. Each runs unchanged on SQLite and PostgreSQL, finds its rows by index, and costs the same in the
tenth year as in the first: what is in force is one correlated look-up per thing, not a scan of its history. Only the
few rows of settings and of feeds that are barred are read through.
"""

from collections.abc import Sequence


def in_force(table: str, same: str, moment: str = "at") -> str:
    """The id of the dated row in force at a moment: the newest beginning, then the newest written."""
    return (
        f"(SELECT n.id FROM {table} n WHERE {same} AND n.begins_at <= :{moment}"
        " ORDER BY n.begins_at DESC, n.written_at DESC, n.id DESC LIMIT 1)"
    )


def _first_of_run(table: str, same: str, word: str) -> str:
    """When the unbroken run of rows that say a word, up to `d`, began: what else they change does not begin it anew."""
    order = "({0}.begins_at, {0}.written_at, {0}.id)".format
    return (
        f"SELECT min(n.begins_at) FROM {table} n WHERE n.{same} = d.{same} AND n.begins_at <= d.begins_at AND n.{word}"
        f" AND NOT EXISTS (SELECT 1 FROM {table} b WHERE b.{same} = d.{same} AND NOT b.{word}"
        f" AND {order('b')} > {order('n')} AND {order('b')} < {order('d')})"
    )


HOUR = 3_600_000_000
"""As the book counts. [microseconds]"""

NEWEST_OF_ITS_STEP = (
    "NOT EXISTS (SELECT 1 FROM entry n WHERE n.step_id = e.step_id AND (n.written_at, n.id) > (e.written_at, e.id))"
)

FARM = "SELECT id FROM farm"

SETTINGS = "SELECT name, value FROM setting WHERE begins_at <= :at ORDER BY begins_at, written_at, id"

SETTINGS_TO_COME = """
SELECT value, begins_at FROM setting WHERE name = :name AND begins_at > :at ORDER BY begins_at, written_at, id
"""

PEOPLE = f"""
SELECT i.id, a.name, a.adult, a.here FROM person i
JOIN person_as a ON a.id = {in_force("person_as", "n.person_id = i.id")}
"""

PENS = f"""
SELECT i.id, a.name, a.position FROM pen i JOIN pen_as a ON a.id = {in_force("pen_as", "n.pen_id = i.id")}
WHERE a.in_use
"""

ANIMALS = f"""
SELECT i.id, a.name, a.tag, a.species, a.stage, a.born_on, a.calved_on, s.pen_id, a.adult_only, a.two_people
FROM animal i
JOIN animal_as a ON a.id = {in_force("animal_as", "n.animal_id = i.id")}
LEFT JOIN standing s ON s.id = {in_force("standing", "n.animal_id = i.id")}
WHERE a.kept
"""

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

MILKINGS = f"""
SELECT i.id, m.pail_id, p.name, p.empty_kg, r.every FROM animal i
JOIN milk_plan m ON m.id = {in_force("milk_plan", "n.animal_id = i.id AND n.slot = :slot")}
LEFT JOIN milk_rhythm r ON r.id = {in_force("milk_rhythm", "n.animal_id = i.id")}
LEFT JOIN pail_as p ON p.id = {in_force("pail_as", "n.pail_id = m.pail_id")}
WHERE m.milked
"""

NAMES = f"""
SELECT i.id, a.name, NULL AS pen_id FROM animal i
JOIN animal_as a ON a.id = {in_force("animal_as", "n.animal_id = i.id")}
UNION ALL SELECT i.id, a.name, i.id FROM pen i JOIN pen_as a ON a.id = {in_force("pen_as", "n.pen_id = i.id")}
UNION ALL SELECT i.id, a.name, a.pen_id FROM task i JOIN task_as a ON a.id = {in_force("task_as", "n.task_id = i.id")}
UNION ALL SELECT i.id, a.name, NULL FROM feed i JOIN feed_as a ON a.id = {in_force("feed_as", "n.feed_id = i.id")}
UNION ALL SELECT i.id, a.name, NULL FROM look i JOIN look_as a ON a.id = {in_force("look_as", "n.look_id = i.id")}
UNION ALL SELECT i.id, a.product, NULL FROM treatment i
JOIN treatment_as a ON a.id = {in_force("treatment_as", "n.treatment_id = i.id")}
"""

JOBS = f"""
SELECT i.id, a.name, a.pen_id, a.closing, a.adult_only, a.two_people, a.position, a.slot,
  CASE WHEN d.once THEN ({_first_of_run("task_due", "task_id", "once")}) ELSE d.begins_at END,
  d.every_days, d.once, d.until_on, d.season_first, d.season_last, d.stage
FROM task i
JOIN task_as a ON a.id = {in_force("task_as", "n.task_id = i.id")}
LEFT JOIN task_due d ON d.id = {in_force("task_due", "n.task_id = i.id")}
WHERE a.in_use
"""

STEPS_AT_ONCE = 8
STEPS = f"""
SELECT e.step_id, e.state FROM entry e
WHERE e.step_id IN ({", ".join(f":step_{at}" for at in range(STEPS_AT_ONCE))}) AND e.written_at <= :known
ORDER BY e.written_at, e.id
"""
"""What was written for some steps, what counts last. Entries have no index by task: the steps of a job are named."""

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

ANY_ENTRY = "SELECT 1 FROM entry WHERE day = :day AND slot = :slot AND written_at <= :known LIMIT 1"

LAST_WRITTEN = "SELECT written_at FROM entry ORDER BY written_at DESC LIMIT 1"
"""Reads the whole table: for the demo's small book only."""

JARS = f"""
SELECT e.id, e.step_id, e.state FROM entry e
WHERE e.animal_id = :subject AND e.kind = 'jar' AND e.happened_at > :since AND {NEWEST_OF_ITS_STEP}
"""

ENTRIES = """
SELECT id, step_id, kind, animal_id, pen_id, task_id, feed_id, state, reason, happened_at, happened_from, written_at,
  person_id, replaces_id
FROM entry WHERE day = :day AND slot = :slot ORDER BY written_at, id
"""


def figures(table: str, columns: Sequence[str]) -> str:
    """The lines of one table for a round, in the order of the screen."""
    listed = ", ".join(f"l.{column}" for column in columns)
    return f"""
SELECT l.entry_id, {listed} FROM entry e JOIN {table} l ON l.entry_id = e.id
WHERE e.day = :day AND e.slot = :slot ORDER BY l.position, l.id
"""


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

MILKED_LATELY = """
SELECT DISTINCT e.animal_id FROM entry e WHERE e.day >= :since_day AND e.day <= :day AND e.kind = 'milk'
"""
"""Whatever was milked in the last days: a goat, a suckler, a cow that is gone since."""

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

NEWEST_OF_STEP = "SELECT id FROM entry WHERE step_id = :step ORDER BY written_at DESC, id DESC LIMIT 1"

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

LAST_FORECAST = f"""
SELECT w.happened_at, f.low_c, f.wind_kmh, f.wet FROM entry w JOIN forecast f ON f.entry_id = w.id
WHERE w.id = (
  SELECT e.id FROM entry e
  WHERE e.animal_id IS NULL AND e.kind = 'weather' AND e.state = 'done' AND e.happened_at <= :at
  AND {NEWEST_OF_ITS_STEP} ORDER BY e.happened_at DESC, e.id DESC LIMIT 1
)
"""

WITHHELD = f"""
SELECT i.id, w.begins_at, w.ends_at, w.why FROM animal i CROSS JOIN withheld w
WHERE w.animal_id = i.id AND w.begins_at <= :at AND (w.ends_at IS NULL OR w.ends_at > :at - {40 * 24 * HOUR} OR EXISTS (
  SELECT 1 FROM withheld o WHERE o.animal_id = w.animal_id AND o.ends_at IS NULL AND o.why = w.why
)) ORDER BY w.begins_at, w.written_at, w.id
"""
"""What was typed by hand and runs, or ended in the last weeks: a milking is judged by its own minute, and the milk
store looks back a month. Also what may have ended one without an end, however long ago."""

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
