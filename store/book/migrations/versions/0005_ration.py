"""What a ration hangs on: goals, milk tests, heats seen, limits of feeds, rules by class, and the farm's own limits."""

import sqlalchemy as sa
from alembic import op

from store.book.migrations.pieces import Part, at, check, column, id_of, other_words, table, word

revision, down_revision = "0005", "0004"

SETTINGS = (
    "name", "zone", "units", "evening_from", "meal_limit_kg", "air", "vet", "dialect", "morning_at", "evening_at",
    "change_step_kg", "lead_days", "turnout_on", "hay_loss_percent", "coat", "currency",
    "cold_within_min", "colostrum_milkings", "sucked_within_h", "cleansing_within_h", "drop_percent", "jar_days",
    "fat_most_percent", "forage_least_percent", "change_step_percent", "change_step_days", "cold_most_percent",
    "calf_milk_percent", "dry_days", "close_up_days", "wean_starter_kg", "checked_by",
)  # fmt: skip
STAGES = ("in milk", "dry", "close to calving", "heifer", "suckler", "steer", "calf", "bull", "other")


def upgrade() -> None:
    """Add what is new."""
    other_words("setting", "name", *SETTINGS)
    _animals()
    _feeds()


def _dated(name: str, same: str, *parts: Part) -> None:
    table(name, at("begins_at"), at("written_at"), *parts)
    op.create_index(f"ix_{name}_{same}_begins_at", name, [same, "begins_at"])


def _animals() -> None:
    _dated(
        "feeding_goal",
        "animal_id",
        id_of("animal_id", to="animal"),
        column("condition", sa.Float(), nullable=True),
        column("gain_kg_day", sa.Float(), nullable=True),
        column("mature_kg", sa.Float(), nullable=True),
        column("forage_only", sa.Boolean()),
        column("score_every_days", sa.Integer(), nullable=True),
        check("ck_feeding_goal_condition", "condition >= 1.0 AND condition <= 9.0"),
        check("ck_feeding_goal_gain_kg_day", "gain_kg_day >= 0 AND gain_kg_day <= 3.0"),
        check("ck_feeding_goal_mature_kg", "mature_kg >= 0.1 AND mature_kg <= 2000.0"),
        check("ck_feeding_goal_score_every_days", "score_every_days >= 1 AND score_every_days <= 366"),
    )
    _dated(
        "milk_test",
        "animal_id",
        id_of("animal_id", to="animal"),
        column("fat_percent", sa.Float(), nullable=True),
        column("protein_percent", sa.Float(), nullable=True),
        check("ck_milk_test_fat_percent", "fat_percent >= 0.5 AND fat_percent <= 15.0"),
        check("ck_milk_test_protein_percent", "protein_percent >= 0.5 AND protein_percent <= 10.0"),
    )
    _dated(
        "heat",
        "animal_id",
        id_of("animal_id", to="animal"),
        column("stood", sa.Boolean()),
        column("seen", sa.Boolean()),
    )


def _feeds() -> None:
    _dated(
        "feed_limit",
        "feed_id",
        id_of("feed_id", to="feed"),
        column("forage", sa.Boolean(), nullable=True),
        column("most_meal_kg", sa.Float(), nullable=True),
        column("most_day_kg", sa.Float(), nullable=True),
        column("share_percent", sa.Float(), nullable=True),
        column("step_kg", sa.Float(), nullable=True),
        column("step_days", sa.Integer(), nullable=True),
        check("ck_feed_limit_most_meal_kg", "most_meal_kg >= 0 AND most_meal_kg <= 500.0"),
        check("ck_feed_limit_most_day_kg", "most_day_kg >= 0 AND most_day_kg <= 500.0"),
        check("ck_feed_limit_share_percent", "share_percent >= 0 AND share_percent <= 100"),
        check("ck_feed_limit_step_kg", "step_kg >= 0.001 AND step_kg <= 500.0"),
        check("ck_feed_limit_step_days", "step_days >= 1 AND step_days <= 30"),
    )
    _dated(
        "class_rule",
        "stage",
        word("stage", *STAGES),
        id_of("feed_id", to="feed"),
        column("fixed_kg", sa.Float()),
        column("per_kg_milk", sa.Float()),
        column("above_kg", sa.Float()),
        column("weight_percent", sa.Float()),
        check("ck_class_rule_fixed_kg", "fixed_kg >= 0 AND fixed_kg <= 500.0"),
        check("ck_class_rule_per_kg_milk", "per_kg_milk >= 0 AND per_kg_milk <= 5"),
        check("ck_class_rule_above_kg", "above_kg >= 0 AND above_kg <= 500.0"),
        check("ck_class_rule_weight_percent", "weight_percent >= 0 AND weight_percent <= 100"),
    )
