"""Looks and treatments that fall due at an animal, and the quarters of an udder, one by one."""

import sqlalchemy as sa
from alembic import op

from store.book.migrations.pieces import at, check, column, id_of, other_words, table, without_column, word

revision, down_revision = "0002", "0001"

KINDS = ("count", "soak", "hay", "feed", "apart", "udder", "milk", "dose", "look", "task", "note", "round")


def upgrade() -> None:
    """Add what is new; the quarters of `felt` were never written."""
    other_words("entry", "kind", *KINDS)
    without_column("felt", "quarters")
    _plans()
    _lines()


def _plans() -> None:
    table("look")
    table(
        "look_as",
        at("begins_at"),
        at("written_at"),
        id_of("look_id", to="look"),
        id_of("animal_id", to="animal"),
        column("name", sa.String()),
        word("asks", "how it looks", "condition", "heart girth", "temperature"),
        column("slot", sa.String()),
        column("every_days", sa.Integer()),
        column("until_on", sa.String(10), nullable=True),
        column("in_use", sa.Boolean()),
        check("ck_look_as_name", "length(name) >= 1 AND length(name) <= 60"),
        check("ck_look_as_slot", "length(slot) >= 1 AND length(slot) <= 20"),
        check("ck_look_as_every_days", "every_days >= 1 AND every_days <= 366"),
    )
    op.create_index("ix_look_as_look_id_begins_at", "look_as", ["look_id", "begins_at"])
    table("treatment")
    table(
        "treatment_as",
        at("begins_at"),
        at("written_at"),
        id_of("treatment_id", to="treatment"),
        id_of("animal_id", to="animal"),
        column("product", sa.String()),
        column("amount", sa.String()),
        column("route", sa.String()),
        column("why", sa.String()),
        column("batch", sa.String()),
        column("doses", sa.Integer()),
        column("every_h", sa.Float()),
        at("first_at"),
        column("in_use", sa.Boolean()),
        check("ck_treatment_as_product", "length(product) >= 1 AND length(product) <= 60"),
        check("ck_treatment_as_amount", "length(amount) >= 1 AND length(amount) <= 80"),
        check("ck_treatment_as_route", "length(route) <= 40"),
        check("ck_treatment_as_why", "length(why) <= 120"),
        check("ck_treatment_as_batch", "length(batch) <= 40"),
        check("ck_treatment_as_doses", "doses >= 1 AND doses <= 99"),
        check("ck_treatment_as_every_h", "every_h >= 1 AND every_h <= 8784"),
    )
    op.create_index("ix_treatment_as_treatment_id_begins_at", "treatment_as", ["treatment_id", "begins_at"])


def _lines() -> None:
    table(
        "quarter",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        word("quarter", "left front", "right front", "left hind", "right hind"),
        word("sign", "clots", "hard", "hot", "tight", "little milk", "sore teat", "clear again"),
        check("ck_quarter_position", "position >= 0 AND position <= 99"),
    )
    op.create_index("ix_quarter_entry_id", "quarter", ["entry_id"])
    table(
        "looked",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        id_of("look_id", to="look"),
        word("looks", "all right", "better", "the same", "worse", nullable=True),
        column("condition_points", sa.Float(), nullable=True),
        column("girth_cm", sa.Float(), nullable=True),
        column("temperature_c", sa.Float(), nullable=True),
        column("typed", sa.String()),
        check("ck_looked_position", "position >= 0 AND position <= 99"),
        check("ck_looked_condition_points", "condition_points >= 1.0 AND condition_points <= 9.0"),
        check("ck_looked_girth_cm", "girth_cm >= 40.0 AND girth_cm <= 320.0"),
        check("ck_looked_temperature_c", "temperature_c >= 30.0 AND temperature_c <= 45.0"),
        check("ck_looked_typed", "length(typed) <= 80"),
    )
    op.create_index("ix_looked_entry_id", "looked", ["entry_id"])
    table(
        "dosed",
        id_of("entry_id", to="entry"),
        column("position", sa.Integer()),
        id_of("treatment_id", to="treatment"),
        column("number", sa.Integer()),
        column("given", sa.Boolean()),
        check("ck_dosed_position", "position >= 0 AND position <= 99"),
        check("ck_dosed_number", "number >= 1 AND number <= 99"),
    )
    op.create_index("ix_dosed_entry_id", "dosed", ["entry_id"])
