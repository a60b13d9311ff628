"""The first form of the book: farm, people, pens, animals, feeds, plans, tasks, and entries with their lines."""

from collections.abc import Callable
from typing import Any

import sqlalchemy as sa
from alembic import op
from sqlalchemy.schema import SchemaItem

revision, down_revision = "0001", None

Part = Callable[[str], list[SchemaItem]]
"""A piece of a table, once it is told the table's name."""


SUBJECTS = " + ".join(f"(CASE WHEN {each}_id IS NULL THEN 0 ELSE 1 END)" for each in ("animal", "pen", "task", "feed"))


def upgrade() -> None:
    """Make every table and index."""
    _farm_and_yard()
    _feeding()
    _entries()


def _farm_and_yard() -> None:
    _table("farm")
    _table(
        "setting",
        _at("begins_at"),
        _at("written_at"),
        _word("name", "name", "zone", "units", "evening_from", "meal_limit_kg", "air", "vet"),
        _column("value", sa.String()),
        _check("ck_setting_value", "length(value) >= 1 AND length(value) <= 200"),
    )
    op.create_index("ix_setting_name_begins_at", "setting", ["name", "begins_at"])
    _table("person")
    _table(
        "person_as",
        _at("begins_at"),
        _at("written_at"),
        _id("person_id", to="person"),
        _column("name", sa.String()),
        _column("adult", sa.Boolean()),
        _column("here", sa.Boolean()),
        _check("ck_person_as_name", "length(name) >= 1 AND length(name) <= 60"),
    )
    op.create_index("ix_person_as_person_id_begins_at", "person_as", ["person_id", "begins_at"])
    _table("pen")
    _table(
        "pen_as",
        _at("begins_at"),
        _at("written_at"),
        _id("pen_id", to="pen"),
        _column("name", sa.String()),
        _column("position", sa.Integer()),
        _column("in_use", sa.Boolean()),
        _check("ck_pen_as_position", "position >= 0 AND position <= 999"),
        _check("ck_pen_as_name", "length(name) >= 1 AND length(name) <= 60"),
    )
    op.create_index("ix_pen_as_pen_id_begins_at", "pen_as", ["pen_id", "begins_at"])
    _table("animal")
    _table(
        "animal_as",
        _at("begins_at"),
        _at("written_at"),
        _id("animal_id", to="animal"),
        _column("name", sa.String()),
        _column("tag", sa.String()),
        _word("species", "cattle", "sheep", "goat", "horse", "poultry"),
        _word("stage", "in milk", "dry", "close to calving", "heifer", "suckler", "steer", "calf", "bull", "other"),
        _column("born_on", sa.String(10), nullable=True),
        _column("calved_on", sa.String(10), nullable=True),
        _column("adult_only", sa.Boolean()),
        _column("two_people", sa.Boolean()),
        _column("kept", sa.Boolean()),
        _check("ck_animal_as_tag", "length(tag) <= 40"),
        _check("ck_animal_as_name", "length(name) >= 1 AND length(name) <= 60"),
    )
    op.create_index("ix_animal_as_animal_id_begins_at", "animal_as", ["animal_id", "begins_at"])
    _table(
        "standing",
        _at("begins_at"),
        _at("written_at"),
        _id("animal_id", to="animal"),
        _id("pen_id", to="pen", nullable=True),
    )
    op.create_index("ix_standing_animal_id_begins_at", "standing", ["animal_id", "begins_at"])
    _table(
        "sharing",
        _at("begins_at"),
        _at("written_at"),
        _id("cow_id", to="animal"),
        _id("calf_id", to="animal"),
        _column("shares", sa.Boolean()),
        _column("longest_h", sa.Float()),
        _check("ck_sharing_longest_h", "longest_h >= 1 AND longest_h <= 48"),
    )
    op.create_index("ix_sharing_calf_id_begins_at", "sharing", ["calf_id", "begins_at"])
    _table(
        "withheld",
        _at("begins_at"),
        _at("written_at"),
        _id("animal_id", to="animal"),
        _at("ends_at", nullable=True),
        _column("why", sa.String()),
        _check("ck_withheld_why", "length(why) >= 1 AND length(why) <= 120"),
    )
    op.create_index("ix_withheld_animal_id_begins_at", "withheld", ["animal_id", "begins_at"])


def _feeding() -> None:
    _table("feed")
    _table(
        "feed_as",
        _at("begins_at"),
        _at("written_at"),
        _id("feed_id", to="feed"),
        _column("name", sa.String()),
        _column("soaked", sa.Boolean()),
        _column("bucket", sa.String()),
        _column("baled", sa.Boolean()),
        _column("in_use", sa.Boolean()),
        _check("ck_feed_as_name", "length(name) >= 1 AND length(name) <= 60"),
        _check("ck_feed_as_bucket", "length(bucket) <= 40"),
    )
    op.create_index("ix_feed_as_feed_id_begins_at", "feed_as", ["feed_id", "begins_at"])
    _table(
        "not_for",
        _at("begins_at"),
        _at("written_at"),
        _id("feed_id", to="feed"),
        _word("species", "cattle", "sheep", "goat", "horse", "poultry"),
        _column("barred", sa.Boolean()),
    )
    op.create_index("ix_not_for_feed_id_species_begins_at", "not_for", ["feed_id", "species", "begins_at"])
    _table(
        "soak_rule",
        _at("begins_at"),
        _at("written_at"),
        _id("feed_id", to="feed"),
        _word("air", "cold", "mild", "hot"),
        _word("water", "cold", "warm"),
        _column("least_h", sa.Float()),
        _column("most_h", sa.Float()),
        _column("water_per_kg", sa.Float()),
        _check("ck_soak_rule_most_h", "most_h >= 0 AND most_h <= 72"),
        _check("ck_soak_rule_least_h", "least_h >= 0 AND least_h <= 72"),
        _check("ck_soak_rule_water_per_kg", "water_per_kg >= 0 AND water_per_kg <= 20"),
    )
    op.create_index("ix_soak_rule_feed_id_air_begins_at", "soak_rule", ["feed_id", "air", "begins_at"])
    _table("measure")
    _table(
        "measure_as",
        _at("begins_at"),
        _at("written_at"),
        _id("measure_id", to="measure"),
        _column("name", sa.String()),
        _column("plural", sa.String()),
        _check("ck_measure_as_plural", "length(plural) >= 1 AND length(plural) <= 60"),
        _check("ck_measure_as_name", "length(name) >= 1 AND length(name) <= 60"),
    )
    op.create_index("ix_measure_as_measure_id_begins_at", "measure_as", ["measure_id", "begins_at"])
    _table(
        "weighing",
        _at("begins_at"),
        _at("written_at"),
        _id("measure_id", to="measure"),
        _id("feed_id", to="feed"),
        _column("holds_kg", sa.Float()),
        _check("ck_weighing_holds_kg", "holds_kg >= 0.001 AND holds_kg <= 500"),
    )
    op.create_index("ix_weighing_measure_id_feed_id_begins_at", "weighing", ["measure_id", "feed_id", "begins_at"])
    _table("pail")
    _table(
        "pail_as",
        _at("begins_at"),
        _at("written_at"),
        _id("pail_id", to="pail"),
        _column("name", sa.String()),
        _column("empty_kg", sa.Float()),
        _check("ck_pail_as_name", "length(name) >= 1 AND length(name) <= 60"),
        _check("ck_pail_as_empty_kg", "empty_kg >= 0 AND empty_kg <= 20"),
    )
    op.create_index("ix_pail_as_pail_id_begins_at", "pail_as", ["pail_id", "begins_at"])
    _table(
        "feed_plan",
        _at("begins_at"),
        _at("written_at"),
        _column("slot", sa.String()),
        _id("animal_id", to="animal", nullable=True),
        _id("pen_id", to="pen", nullable=True),
        _id("feed_id", to="feed"),
        _column("due_kg", sa.Float(), nullable=True),
        _id("measure_id", to="measure", nullable=True),
        _column("position", sa.Integer()),
        _check("ck_feed_plan_due_kg", "due_kg >= 0 AND due_kg <= 500.0"),
        _check("ck_feed_plan_slot", "length(slot) >= 1 AND length(slot) <= 20"),
        _check("ck_feed_plan_one_subject", "(animal_id IS NULL) <> (pen_id IS NULL)"),
        _check("ck_feed_plan_position", "position >= 0 AND position <= 99"),
    )
    op.create_index(
        "ix_feed_plan_animal_id_slot_feed_id_begins_at", "feed_plan", ["animal_id", "slot", "feed_id", "begins_at"]
    )
    op.create_index(
        "ix_feed_plan_pen_id_slot_feed_id_begins_at", "feed_plan", ["pen_id", "slot", "feed_id", "begins_at"]
    )
    _table(
        "milk_plan",
        _at("begins_at"),
        _at("written_at"),
        _column("slot", sa.String()),
        _id("animal_id", to="animal"),
        _column("milked", sa.Boolean()),
        _id("pail_id", to="pail", nullable=True),
        _check("ck_milk_plan_slot", "length(slot) >= 1 AND length(slot) <= 20"),
    )
    op.create_index("ix_milk_plan_animal_id_slot_begins_at", "milk_plan", ["animal_id", "slot", "begins_at"])
    _table("task")
    _table(
        "task_as",
        _at("begins_at"),
        _at("written_at"),
        _id("task_id", to="task"),
        _column("name", sa.String()),
        _column("slot", sa.String()),
        _id("pen_id", to="pen", nullable=True),
        _column("closing", sa.Boolean()),
        _column("position", sa.Integer()),
        _column("adult_only", sa.Boolean()),
        _column("two_people", sa.Boolean()),
        _column("in_use", sa.Boolean()),
        _check("ck_task_as_name", "length(name) >= 1 AND length(name) <= 120"),
        _check("ck_task_as_position", "position >= 0 AND position <= 999"),
        _check("ck_task_as_slot", "length(slot) >= 1 AND length(slot) <= 20"),
    )
    op.create_index("ix_task_as_task_id_begins_at", "task_as", ["task_id", "begins_at"])


def _entries() -> None:
    _table(
        "entry",
        _id("step_id"),
        _word("kind", "count", "soak", "hay", "feed", "apart", "udder", "milk", "task", "note", "round"),
        _id("animal_id", to="animal", nullable=True),
        _id("pen_id", to="pen", nullable=True),
        _id("task_id", to="task", nullable=True),
        _id("feed_id", to="feed", nullable=True),
        _column("day", sa.String(10), nullable=True),
        _column("slot", sa.String(), nullable=True),
        _word("state", "done", "skipped", "moved on", "on paper", "open"),
        _column("reason", sa.String()),
        _at("happened_at"),
        _at("happened_from", nullable=True),
        _at("written_at"),
        _id("person_id", to="person"),
        _column("bench", sa.String()),
        _id("replaces_id", to="entry", nullable=True),
        _check("ck_entry_day_and_slot", "(day IS NULL) = (slot IS NULL)"),
        _check("ck_entry_one_subject", f"{SUBJECTS} = 1 OR ({SUBJECTS} = 0 AND kind IN ('note', 'round'))"),
        _check("ck_entry_bench", "length(bench) >= 1 AND length(bench) <= 60"),
        _check("ck_entry_reason", "length(reason) <= 80"),
        _check("ck_entry_slot", "length(slot) >= 1 AND length(slot) <= 20"),
    )
    op.create_index("ix_entry_animal", "entry", ["animal_id", "kind", "happened_at"])
    op.create_index("ix_entry_turn", "entry", ["day", "slot"])
    op.create_index("ix_entry_feed", "entry", ["feed_id", "kind", "happened_at"])
    op.create_index("ix_entry_pen", "entry", ["pen_id", "kind", "happened_at"])
    op.create_index("ix_entry_step", "entry", ["step_id", "written_at", "id"])
    _table(
        "fed",
        _id("entry_id", to="entry"),
        _column("position", sa.Integer()),
        _id("feed_id", to="feed"),
        _id("measure_id", to="measure", nullable=True),
        _column("due_kg", sa.Float(), nullable=True),
        _column("given_kg", sa.Float(), nullable=True),
        _column("typed", sa.String()),
        _column("left_kg", sa.Float(), nullable=True),
        _check("ck_fed_due_kg", "due_kg >= 0 AND due_kg <= 9999.0"),
        _check("ck_fed_given_kg", "given_kg >= 0 AND given_kg <= 9999.0"),
        _check("ck_fed_left_kg", "left_kg >= 0 AND left_kg <= 9999.0"),
        _check("ck_fed_typed", "length(typed) <= 80"),
        _check("ck_fed_position", "position >= 0 AND position <= 99"),
    )
    op.create_index("ix_fed_entry_id", "fed", ["entry_id"])
    _table(
        "strung",
        _id("entry_id", to="entry"),
        _column("position", sa.Integer()),
        _column("strings", sa.Integer()),
        _check("ck_strung_strings", "strings >= 0 AND strings <= 999"),
        _check("ck_strung_position", "position >= 0 AND position <= 99"),
    )
    op.create_index("ix_strung_entry_id", "strung", ["entry_id"])
    _table(
        "milked",
        _id("entry_id", to="entry"),
        _column("position", sa.Integer()),
        _column("milk_kg", sa.Float(), nullable=True),
        _column("gross_kg", sa.Float(), nullable=True),
        _id("pail_id", to="pail", nullable=True),
        _column("empty_kg", sa.Float(), nullable=True),
        _word("fate", "house", "calves", "other animals", "sold or given", "thrown away", nullable=True),
        _column("typed", sa.String()),
        _column("held_back", sa.Boolean()),
        _check("ck_milked_empty_kg", "empty_kg >= 0 AND empty_kg <= 20"),
        _check("ck_milked_milk_kg", "milk_kg >= 0 AND milk_kg <= 80.0"),
        _check("ck_milked_milk_has_a_fate", "(milk_kg IS NULL) = (fate IS NULL)"),
        _check("ck_milked_gross_kg", "gross_kg >= 0 AND gross_kg <= 120.0"),
        _check("ck_milked_typed", "length(typed) <= 80"),
        _check("ck_milked_position", "position >= 0 AND position <= 99"),
    )
    op.create_index("ix_milked_entry_id", "milked", ["entry_id"])
    _table(
        "counted",
        _id("entry_id", to="entry"),
        _column("position", sa.Integer()),
        _column("heads_due", sa.Integer()),
        _column("heads_seen", sa.Integer(), nullable=True),
        _check("ck_counted_position", "position >= 0 AND position <= 99"),
        _check("ck_counted_heads_due", "heads_due >= 0 AND heads_due <= 999"),
        _check("ck_counted_heads_seen", "heads_seen >= 0 AND heads_seen <= 999"),
    )
    op.create_index("ix_counted_entry_id", "counted", ["entry_id"])
    _table(
        "soaked",
        _id("entry_id", to="entry"),
        _column("position", sa.Integer()),
        _word("act", "started", "fit", "thrown out"),
        _column("due_kg", sa.Float(), nullable=True),
        _column("dry_kg", sa.Float(), nullable=True),
        _column("water_kg", sa.Float(), nullable=True),
        _column("typed", sa.String()),
        _check("ck_soaked_due_kg", "due_kg >= 0 AND due_kg <= 9999.0"),
        _check("ck_soaked_position", "position >= 0 AND position <= 99"),
        _check("ck_soaked_dry_kg", "dry_kg >= 0 AND dry_kg <= 9999.0"),
        _check("ck_soaked_water_kg", "water_kg >= 0 AND water_kg <= 9999.0"),
        _check("ck_soaked_typed", "length(typed) <= 80"),
    )
    op.create_index("ix_soaked_entry_id", "soaked", ["entry_id"])
    _table(
        "parted",
        _id("entry_id", to="entry"),
        _column("position", sa.Integer()),
        _id("cow_id", to="animal"),
        _word("state", "shut away", "let in", "got out"),
        _check("ck_parted_position", "position >= 0 AND position <= 99"),
    )
    op.create_index("ix_parted_entry_id", "parted", ["entry_id"])
    _table(
        "felt",
        _id("entry_id", to="entry"),
        _column("position", sa.Integer()),
        _word("fill", "slack", "comfortable", "full", "tight"),
        _column("quarters", sa.String()),
        _check("ck_felt_position", "position >= 0 AND position <= 99"),
        _check("ck_felt_quarters", "length(quarters) <= 80"),
    )
    op.create_index("ix_felt_entry_id", "felt", ["entry_id"])
    _table(
        "noted",
        _id("entry_id", to="entry"),
        _column("position", sa.Integer()),
        _column("words", sa.String()),
        _column("tell", sa.Boolean()),
        _check("ck_noted_position", "position >= 0 AND position <= 99"),
        _check("ck_noted_words", "length(words) >= 1 AND length(words) <= 500"),
    )
    op.create_index("ix_noted_entry_id", "noted", ["entry_id"])


def _table(table: str, *parts: Part) -> None:
    items = [item for part in parts for item in part(table)]
    key = sa.PrimaryKeyConstraint("id", name=f"pk_{table}")
    op.create_table(table, sa.Column("id", sa.LargeBinary(16), nullable=False), *items, key)


def _column(name: str, kind: Any, *, nullable: bool = False) -> Part:
    return lambda _: [sa.Column(name, kind, nullable=nullable)]


def _at(name: str, *, nullable: bool = False) -> Part:
    """Microseconds UTC."""
    return _column(name, sa.BigInteger(), nullable=nullable)


def _id(name: str, *, to: str | None = None, nullable: bool = False) -> Part:
    """Sixteen bytes, of a row of another table if one is named."""
    column = sa.Column(name, sa.LargeBinary(16), nullable=nullable)
    if to is None:
        return lambda _: [column]
    return lambda table: [column, sa.ForeignKeyConstraint([name], [f"{to}.id"], name=f"fk_{table}_{name}")]


def _word(name: str, *words: str, nullable: bool = False) -> Part:
    """One of some words."""
    listed = ", ".join(f"'{word}'" for word in words)
    column = sa.Column(name, sa.String(40), nullable=nullable)
    return lambda table: [column, sa.CheckConstraint(f"{name} IN ({listed})", name=f"ck_{table}_{name}")]


def _check(name: str, rule: str) -> Part:
    return lambda _: [sa.CheckConstraint(rule, name=name)]
