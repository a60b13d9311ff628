"""The first form of the book: farm, people, pens, animals, feeds, plans, tasks, and entries with their lines."""

import sqlalchemy as sa
from alembic import op

from store.book.migrations.pieces import at, check, column, id_of, table, word

revision, down_revision = "0001", None

SUBJECTS = " + ".join(f"(CASE WHEN {each}_id IS NULL THEN 0 ELSE 1 END)" for each in ("animal", "pen", "task", "feed"))


def upgrade() -> None:
    """Make every table and index."""
    _farm_and_yard()
    _feeding()
    _entries()


def _farm_and_yard() -> None:
    table("farm")
    table(
        "setting",
        at("begins_at"),
        at("written_at"),
        word("name", "name", "zone", "units", "evening_from", "meal_limit_kg", "air", "vet"),
        column("value", sa.String()),
        check("ck_setting_value", "length(value) >= 1 AND length(value) <= 200"),
    )
    op.create_index("ix_setting_name_begins_at", "setting", ["name", "begins_at"])
    table("person")
    table(
        "person_as",
        at("begins_at"),
        at("written_at"),
        id_of("person_id", to="person"),
        column("name", sa.String()),
        column("adult", sa.Boolean()),
        column("here", sa.Boolean()),
        check("ck_person_as_name", "length(name) >= 1 AND length(name) <= 60"),
    )
    op.create_index("ix_person_as_person_id_begins_at", "person_as", ["person_id", "begins_at"])
    table("pen")
    table(
        "pen_as",
        at("begins_at"),
        at("written_at"),
        id_of("pen_id", to="pen"),
        column("name", sa.String()),
        column("position", sa.Integer()),
        column("in_use", sa.Boolean()),
        check("ck_pen_as_position", "position >= 0 AND position <= 999"),
        check("ck_pen_as_name", "length(name) >= 1 AND length(name) <= 60"),
    )
    op.create_index("ix_pen_as_pen_id_begins_at", "pen_as", ["pen_id", "begins_at"])
    table("animal")
    table(
        "animal_as",
        at("begins_at"),
        at("written_at"),
        id_of("animal_id", to="animal"),
        column("name", sa.String()),
        column("tag", sa.String()),
        word("species", "cattle", "sheep", "goat", "horse", "poultry"),
        word("stage", "in milk", "dry", "close to calving", "heifer", "suckler", "steer", "calf", "bull", "other"),
        column("born_on", sa.String(10), nullable=True),
        column("calved_on", sa.String(10), nullable=True),
        column("adult_only", sa.Boolean()),
        column("two_people", sa.Boolean()),
        column("kept", sa.Boolean()),
        check("ck_animal_as_tag", "length(tag) <= 40"),
        check("ck_animal_as_name", "length(name) >= 1 AND length(name) <= 60"),
    )
    op.create_index("ix_animal_as_animal_id_begins_at", "animal_as", ["animal_id", "begins_at"])
    table(
        "standing",
        at("begins_at"),
        at("written_at"),
        id_of("animal_id", to="animal"),
        id_of("pen_id", to="pen", nullable=True),
    )
    op.create_index("ix_standing_animal_id_begins_at", "standing", ["animal_id", "begins_at"])
    table(
        "sharing",
        at("begins_at"),
        at("written_at"),
        id_of("cow_id", to="animal"),
        id_of("calf_id", to="animal"),
        column("shares", sa.Boolean()),
        column("longest_h", sa.Float()),
        check("ck_sharing_longest_h", "longest_h >= 1 AND longest_h <= 48"),
    )
    op.create_index("ix_sharing_calf_id_begins_at", "sharing", ["calf_id", "begins_at"])
    table(
        "withheld",
        at("begins_at"),
        at("written_at"),
        id_of("animal_id", to="animal"),
        at("ends_at", nullable=True),
        column("why", sa.String()),
        check("ck_withheld_why", "length(why) >= 1 AND length(why) <= 120"),
    )
    op.create_index("ix_withheld_animal_id_begins_at", "withheld", ["animal_id", "begins_at"])


def _feeding() -> None:
    table("feed")
    table(
        "feed_as",
        at("begins_at"),
        at("written_at"),
        id_of("feed_id", to="feed"),
        column("name", sa.String()),
        column("soaked", sa.Boolean()),
        column("bucket", sa.String()),
        column("baled", sa.Boolean()),
        column("in_use", sa.Boolean()),
        check("ck_feed_as_name", "length(name) >= 1 AND length(name) <= 60"),
        check("ck_feed_as_bucket", "length(bucket) <= 40"),
    )
    op.create_index("ix_feed_as_feed_id_begins_at", "feed_as", ["feed_id", "begins_at"])
    table(
        "not_for",
        at("begins_at"),
        at("written_at"),
        id_of("feed_id", to="feed"),
        word("species", "cattle", "sheep", "goat", "horse", "poultry"),
        column("barred", sa.Boolean()),
    )
    op.create_index("ix_not_for_feed_id_species_begins_at", "not_for", ["feed_id", "species", "begins_at"])
    table(
        "soak_rule",
        at("begins_at"),
        at("written_at"),
        id_of("feed_id", to="feed"),
        word("air", "cold", "mild", "hot"),
        word("water", "cold", "warm"),
        column("least_h", sa.Float()),
        column("most_h", sa.Float()),
        column("water_per_kg", sa.Float()),
        check("ck_soak_rule_most_h", "most_h >= 0 AND most_h <= 72"),
        check("ck_soak_rule_least_h", "least_h >= 0 AND least_h <= 72"),
        check("ck_soak_rule_water_per_kg", "water_per_kg >= 0 AND water_per_kg <= 20"),
    )
    op.create_index("ix_soak_rule_feed_id_air_begins_at", "soak_rule", ["feed_id", "air", "begins_at"])
    table("measure")
    table(
        "measure_as",
        at("begins_at"),
        at("written_at"),
        id_of("measure_id", to="measure"),
        column("name", sa.String()),
        column("plural", sa.String()),
        check("ck_measure_as_plural", "length(plural) >= 1 AND length(plural) <= 60"),
        check("ck_measure_as_name", "length(name) >= 1 AND length(name) <= 60"),
    )
    op.create_index("ix_measure_as_measure_id_begins_at", "measure_as", ["measure_id", "begins_at"])
    table(
        "weighing",
        at("begins_at"),
        at("written_at"),
        id_of("measure_id", to="measure"),
        id_of("feed_id", to="feed"),
        column("holds_kg", sa.Float()),
        check("ck_weighing_holds_kg", "holds_kg >= 0.001 AND holds_kg <= 500"),
    )
    op.create_index("ix_weighing_measure_id_feed_id_begins_at", "weighing", ["measure_id", "feed_id", "begins_at"])
    table("pail")
    table(
        "pail_as",
        at("begins_at"),
        at("written_at"),
        id_of("pail_id", to="pail"),
        column("name", sa.String()),
        column("empty_kg", sa.Float()),
        check("ck_pail_as_name", "length(name) >= 1 AND length(name) <= 60"),
        check("ck_pail_as_empty_kg", "empty_kg >= 0 AND empty_kg <= 20"),
    )
    op.create_index("ix_pail_as_pail_id_begins_at", "pail_as", ["pail_id", "begins_at"])
    table(
        "feed_plan",
        at("begins_at"),
        at("written_at"),
        column("slot", sa.String()),
        id_of("animal_id", to="animal", nullable=True),
        id_of("pen_id", to="pen", nullable=True),
        id_of("feed_id", to="feed"),
        column("due_kg", sa.Float(), nullable=True),
        id_of("measure_id", to="measure", nullable=True),
        column("position", sa.Integer()),
        check("ck_feed_plan_due_kg", "due_kg >= 0 AND due_kg <= 500.0"),
        check("ck_feed_plan_slot", "length(slot) >= 1 AND length(slot) <= 20"),
        check("ck_feed_plan_one_subject", "(animal_id IS NULL) <> (pen_id IS NULL)"),
        check("ck_feed_plan_position", "position >= 0 AND position <= 99"),
    )
    op.create_index(
        "ix_feed_plan_animal_id_slot_feed_id_begins_at", "feed_plan", ["animal_id", "slot", "feed_id", "begins_at"]
    )
    op.create_index(
        "ix_feed_plan_pen_id_slot_feed_id_begins_at", "feed_plan", ["pen_id", "slot", "feed_id", "begins_at"]
    )
    table(
        "milk_plan",
        at("begins_at"),
        at("written_at"),
        column("slot", sa.String()),
        id_of("animal_id", to="animal"),
        column("milked", sa.Boolean()),
        id_of("pail_id", to="pail", nullable=True),
        check("ck_milk_plan_slot", "length(slot) >= 1 AND length(slot) <= 20"),
    )
    op.create_index("ix_milk_plan_animal_id_slot_begins_at", "milk_plan", ["animal_id", "slot", "begins_at"])
    table("task")
    table(
        "task_as",
        at("begins_at"),
        at("written_at"),
        id_of("task_id", to="task"),
        column("name", sa.String()),
        column("slot", sa.String()),
        id_of("pen_id", to="pen", nullable=True),
        column("closing", sa.Boolean()),
        column("position", sa.Integer()),
        column("adult_only", sa.Boolean()),
        column("two_people", sa.Boolean()),
        column("in_use", sa.Boolean()),
        check("ck_task_as_name", "length(name) >= 1 AND length(name) <= 120"),
        check("ck_task_as_position", "position >= 0 AND position <= 999"),
        check("ck_task_as_slot", "length(slot) >= 1 AND length(slot) <= 20"),
    )
    op.create_index("ix_task_as_task_id_begins_at", "task_as", ["task_id", "begins_at"])


def _entries() -> None:
    table(
        "entry",
        id_of("step_id"),
        word("kind", "count", "soak", "hay", "feed", "apart", "udder", "milk", "task", "note", "round"),
        id_of("animal_id", to="animal", nullable=True),
        id_of("pen_id", to="pen", nullable=True),
        id_of("task_id", to="task", nullable=True),
        id_of("feed_id", to="feed", nullable=True),
        column("day", sa.String(10), nullable=True),
        column("slot", sa.String(), nullable=True),
        word("state", "done", "skipped", "moved on", "on paper", "open"),
        column("reason", sa.String()),
        at("happened_at"),
        at("happened_from", nullable=True),
        at("written_at"),
        id_of("person_id", to="person"),
        column("bench", sa.String()),
        id_of("replaces_id", to="entry", nullable=True),
        check("ck_entry_day_and_slot", "(day IS NULL) = (slot IS NULL)"),
        check("ck_entry_one_subject", f"{SUBJECTS} = 1 OR ({SUBJECTS} = 0 AND kind IN ('note', 'round'))"),
        check("ck_entry_bench", "length(bench) >= 1 AND length(bench) <= 60"),
        check("ck_entry_reason", "length(reason) <= 80"),
        check("ck_entry_slot", "length(slot) >= 1 AND length(slot) <= 20"),
    )
    op.create_index("ix_entry_animal", "entry", ["animal_id", "kind", "happened_at"])
    op.create_index("ix_entry_turn", "entry", ["day", "slot"])
    op.create_index("ix_entry_feed", "entry", ["feed_id", "kind", "happened_at"])
    op.create_index("ix_entry_pen", "entry", ["pen_id", "kind", "happened_at"])
    op.create_index("ix_entry_step", "entry", ["step_id", "written_at", "id"])
    table(
        "fed",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        id_of("feed_id", to="feed"),
        id_of("measure_id", to="measure", nullable=True),
        column("due_kg", sa.Float(), nullable=True),
        column("given_kg", sa.Float(), nullable=True),
        column("typed", sa.String()),
        column("left_kg", sa.Float(), nullable=True),
        check("ck_fed_due_kg", "due_kg >= 0 AND due_kg <= 9999.0"),
        check("ck_fed_given_kg", "given_kg >= 0 AND given_kg <= 9999.0"),
        check("ck_fed_left_kg", "left_kg >= 0 AND left_kg <= 9999.0"),
        check("ck_fed_typed", "length(typed) <= 80"),
        check("ck_fed_position", "position >= 0 AND position <= 99"),
    )
    op.create_index("ix_fed_entry_id", "fed", ["entry_id"])
    table(
        "strung",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        column("strings", sa.Integer()),
        check("ck_strung_strings", "strings >= 0 AND strings <= 999"),
        check("ck_strung_position", "position >= 0 AND position <= 99"),
    )
    op.create_index("ix_strung_entry_id", "strung", ["entry_id"])
    table(
        "milked",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        column("milk_kg", sa.Float(), nullable=True),
        column("gross_kg", sa.Float(), nullable=True),
        id_of("pail_id", to="pail", nullable=True),
        column("empty_kg", sa.Float(), nullable=True),
        word("fate", "house", "calves", "other animals", "sold or given", "thrown away", nullable=True),
        column("typed", sa.String()),
        column("held_back", sa.Boolean()),
        check("ck_milked_empty_kg", "empty_kg >= 0 AND empty_kg <= 20"),
        check("ck_milked_milk_kg", "milk_kg >= 0 AND milk_kg <= 80.0"),
        check("ck_milked_milk_has_a_fate", "(milk_kg IS NULL) = (fate IS NULL)"),
        check("ck_milked_gross_kg", "gross_kg >= 0 AND gross_kg <= 120.0"),
        check("ck_milked_typed", "length(typed) <= 80"),
        check("ck_milked_position", "position >= 0 AND position <= 99"),
    )
    op.create_index("ix_milked_entry_id", "milked", ["entry_id"])
    table(
        "counted",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        column("heads_due", sa.Integer()),
        column("heads_seen", sa.Integer(), nullable=True),
        check("ck_counted_position", "position >= 0 AND position <= 99"),
        check("ck_counted_heads_due", "heads_due >= 0 AND heads_due <= 999"),
        check("ck_counted_heads_seen", "heads_seen >= 0 AND heads_seen <= 999"),
    )
    op.create_index("ix_counted_entry_id", "counted", ["entry_id"])
    table(
        "soaked",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        word("act", "started", "fit", "thrown out"),
        column("due_kg", sa.Float(), nullable=True),
        column("dry_kg", sa.Float(), nullable=True),
        column("water_kg", sa.Float(), nullable=True),
        column("typed", sa.String()),
        check("ck_soaked_due_kg", "due_kg >= 0 AND due_kg <= 9999.0"),
        check("ck_soaked_position", "position >= 0 AND position <= 99"),
        check("ck_soaked_dry_kg", "dry_kg >= 0 AND dry_kg <= 9999.0"),
        check("ck_soaked_water_kg", "water_kg >= 0 AND water_kg <= 9999.0"),
        check("ck_soaked_typed", "length(typed) <= 80"),
    )
    op.create_index("ix_soaked_entry_id", "soaked", ["entry_id"])
    table(
        "parted",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        id_of("cow_id", to="animal"),
        word("state", "shut away", "let in", "got out"),
        check("ck_parted_position", "position >= 0 AND position <= 99"),
    )
    op.create_index("ix_parted_entry_id", "parted", ["entry_id"])
    table(
        "felt",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        word("fill", "slack", "comfortable", "full", "tight"),
        column("quarters", sa.String()),
        check("ck_felt_position", "position >= 0 AND position <= 99"),
        check("ck_felt_quarters", "length(quarters) <= 80"),
    )
    op.create_index("ix_felt_entry_id", "felt", ["entry_id"])
    table(
        "noted",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        column("words", sa.String()),
        column("tell", sa.Boolean()),
        check("ck_noted_position", "position >= 0 AND position <= 99"),
        check("ck_noted_words", "length(words) >= 1 AND length(words) <= 500"),
    )
    op.create_index("ix_noted_entry_id", "noted", ["entry_id"])
