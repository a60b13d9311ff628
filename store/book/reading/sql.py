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

ANY_ENTRY = "SELECT 1 FROM entry WHERE day = :day AND slot = :slot AND written_at <= :known LIMIT 1"

LAST_WRITTEN = "SELECT written_at FROM entry ORDER BY written_at DESC LIMIT 1"
"""Reads the whole table: for the demo's small book only."""

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


NEWEST_OF_STEP = "SELECT id FROM entry WHERE step_id = :step ORDER BY written_at DESC, id DESC LIMIT 1"

LAST_FORECAST = f"""
SELECT w.happened_at, f.low_c, f.wind_kmh, f.wet FROM entry w JOIN forecast f ON f.entry_id = w.id
WHERE w.id = (
  SELECT e.id FROM entry e
  WHERE e.animal_id IS NULL AND e.kind = 'weather' AND e.state = 'done' AND e.happened_at <= :at
  AND {NEWEST_OF_ITS_STEP} ORDER BY e.happened_at DESC, e.id DESC LIMIT 1
)
"""


def _plan_notes(subject: str) -> str:
    return f"""
SELECT e.happened_at, e.person_id, (SELECT l.words FROM noted l WHERE l.entry_id = e.id ORDER BY l.position LIMIT 1)
FROM entry e
WHERE e.{subject}_id = :subject AND e.kind = 'note' AND e.happened_at >= :since AND e.reason = 'plan changed'
ORDER BY e.happened_at DESC, e.id DESC LIMIT :most
"""


ANIMAL_PLAN_NOTES, PEN_PLAN_NOTES = _plan_notes("animal"), _plan_notes("pen")
