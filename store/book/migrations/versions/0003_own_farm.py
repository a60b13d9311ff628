"""The keeper's own farm: feed room, breeding and weights, what feeds are made of, jobs that come and go."""

import sqlalchemy as sa
from alembic import op

from store.book.migrations.pieces import (
    Part,
    at,
    check,
    column,
    id_of,
    other_rule,
    other_words,
    table,
    word,
)

revision, down_revision = "0003", "0002"

KINDS = (
    "count", "soak", "hay", "feed", "apart", "udder", "milk", "dose", "look", "task", "note", "round",
    "delivery", "stock", "loss", "weather",
)  # fmt: skip
SETTINGS = (
    "name", "zone", "units", "evening_from", "meal_limit_kg", "air", "vet", "dialect", "morning_at", "evening_at",
    "change_step_kg", "lead_days", "turnout_on", "hay_loss_percent", "coat", "currency",
)  # fmt: skip
STAGES = ("in milk", "dry", "close to calving", "heifer", "suckler", "steer", "calf", "bull", "other")
PERCENT = ("dm_percent", "cp_percent", "ndf_percent", "fat_percent", "ca_percent", "p_percent")
NAMED = " + ".join(f"(CASE WHEN {each}_id IS NULL THEN 0 ELSE 1 END)" for each in ("animal", "pen", "task", "feed"))


def upgrade() -> None:
    """Add what is new."""
    other_words("entry", "kind", *KINDS)
    other_rule(
        "entry", "ck_entry_one_subject", f"{NAMED} = 1 OR ({NAMED} = 0 AND kind IN ('note', 'round', 'weather'))"
    )
    other_words("setting", "name", *SETTINGS)
    _yard()
    _feeds()
    _lines()


def _yard() -> None:
    table(
        "breeding",
        at("begins_at"),
        at("written_at"),
        id_of("animal_id", to="animal"),
        column("breed", sa.String()),
        id_of("dam_id", to="animal", nullable=True),
        column("served_on", sa.String(10), nullable=True),
        column("due_on", sa.String(10), nullable=True),
        check("ck_breeding_breed", "length(breed) <= 40"),
    )
    op.create_index("ix_breeding_animal_id_begins_at", "breeding", ["animal_id", "begins_at"])
    table(
        "body",
        at("begins_at"),
        at("written_at"),
        id_of("animal_id", to="animal"),
        column("weight_kg", sa.Float(), nullable=True),
        column("girth_cm", sa.Float(), nullable=True),
        check("ck_body_weight_kg", "weight_kg >= 0.1 AND weight_kg <= 2000.0"),
        check("ck_body_girth_cm", "girth_cm >= 40.0 AND girth_cm <= 320.0"),
    )
    op.create_index("ix_body_animal_id_begins_at", "body", ["animal_id", "begins_at"])
    table(
        "task_due",
        at("begins_at"),
        at("written_at"),
        id_of("task_id", to="task"),
        column("every_days", sa.Integer()),
        column("once", sa.Boolean()),
        column("until_on", sa.String(10), nullable=True),
        column("season_first", sa.String(), nullable=True),
        column("season_last", sa.String(), nullable=True),
        word("stage", *STAGES, nullable=True),
        check("ck_task_due_every_days", "every_days >= 1 AND every_days <= 366"),
        check("ck_task_due_whole_season", "(season_first IS NULL) = (season_last IS NULL)"),
        check("ck_task_due_season", "length(season_first) = 5 AND length(season_last) = 5"),
    )
    op.create_index("ix_task_due_task_id_begins_at", "task_due", ["task_id", "begins_at"])


def _feeds() -> None:
    table(
        "composition",
        at("begins_at"),
        at("written_at"),
        id_of("feed_id", to="feed"),
        word("origin", "table", "tag", "test"),
        column("resembles", sa.String()),
        *(column(each, sa.Float(), nullable=True) for each in (*PERCENT, "tdn_percent", "nel_mcal")),
        check("ck_composition_resembles", "length(resembles) <= 60"),
        *(check(f"ck_composition_{each}", f"{each} >= 0 AND {each} <= 100") for each in PERCENT),
        check("ck_composition_tdn_percent", "tdn_percent >= 0 AND tdn_percent <= 200"),
        check("ck_composition_nel_mcal", "nel_mcal >= 0 AND nel_mcal <= 10"),
    )
    op.create_index("ix_composition_feed_id_begins_at", "composition", ["feed_id", "begins_at"])
    table(
        "volume",
        at("begins_at"),
        at("written_at"),
        id_of("measure_id", to="measure"),
        column("holds_l", sa.Float()),
        check("ck_volume_holds_l", "holds_l >= 0.01 AND holds_l <= 2000"),
    )
    op.create_index("ix_volume_measure_id_begins_at", "volume", ["measure_id", "begins_at"])
    table(
        "free_feed",
        at("begins_at"),
        at("written_at"),
        id_of("feed_id", to="feed"),
        id_of("pen_id", to="pen"),
        column("offered", sa.Boolean()),
    )
    op.create_index("ix_free_feed_feed_id_pen_id_begins_at", "free_feed", ["feed_id", "pen_id", "begins_at"])


def _lines() -> None:
    _line(
        "delivered",
        column("kg", sa.Float()),
        column("bags", sa.Integer(), nullable=True),
        column("price", sa.Float(), nullable=True),
        column("lot", sa.String()),
        column("typed", sa.String()),
        check("ck_delivered_kg", "kg >= 0 AND kg <= 1000000.0"),
        check("ck_delivered_bags", "bags >= 0 AND bags <= 99999"),
        check("ck_delivered_price", "price >= 0 AND price <= 10000000.0"),
        check("ck_delivered_lot", "length(lot) <= 40"),
        check("ck_delivered_typed", "length(typed) <= 80"),
    )
    _line(
        "stocked",
        column("kg", sa.Float()),
        column("typed", sa.String()),
        check("ck_stocked_kg", "kg >= 0 AND kg <= 1000000.0"),
        check("ck_stocked_typed", "length(typed) <= 80"),
    )
    _line(
        "lost",
        column("kg", sa.Float()),
        column("why", sa.String()),
        column("typed", sa.String()),
        check("ck_lost_kg", "kg >= 0 AND kg <= 1000000.0"),
        check("ck_lost_why", "length(why) <= 80"),
        check("ck_lost_typed", "length(typed) <= 80"),
    )
    _line(
        "forecast",
        column("low_c", sa.Float()),
        column("wind_kmh", sa.Float(), nullable=True),
        column("wet", sa.Boolean()),
        check("ck_forecast_low_c", "low_c >= -60.0 AND low_c <= 40.0"),
        check("ck_forecast_wind_kmh", "wind_kmh >= 0 AND wind_kmh <= 200.0"),
    )


def _line(name: str, *parts: Part) -> None:
    position = check(f"ck_{name}_position", "position >= 0 AND position <= 99")
    table(name, id_of("entry_id", to="entry"), column("position", sa.Integer()), *parts, position)
    op.create_index(f"ix_{name}_entry_id", name, ["entry_id"])
