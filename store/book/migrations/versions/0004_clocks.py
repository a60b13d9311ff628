"""Clocks that run to the milking: apart rules, withholding, pails poured together, births, what is looked at again."""

import sqlalchemy as sa
from alembic import op

from store.book.migrations.pieces import Part, at, check, column, id_of, other_rule, other_words, table, word

revision, down_revision = "0004", "0003"

KINDS = (
    "count", "soak", "hay", "feed", "apart", "udder", "milk", "dose", "look", "task", "note", "round",
    "delivery", "stock", "loss", "weather", "cool", "birth", "watch", "jar",
)  # fmt: skip
SETTINGS = (
    "name", "zone", "units", "evening_from", "meal_limit_kg", "air", "vet", "dialect", "morning_at", "evening_at",
    "change_step_kg", "lead_days", "turnout_on", "hay_loss_percent", "coat", "currency",
    "cold_within_min", "colostrum_milkings", "sucked_within_h", "cleansing_within_h", "drop_percent", "jar_days",
)  # fmt: skip
SIGNS = ("clots", "hard", "hot", "tight", "little milk", "sore teat", "clear again", "slack", "full")
FATES = ("house", "calves", "other animals", "sold or given", "thrown away")
NAMED = " + ".join(f"(CASE WHEN {each}_id IS NULL THEN 0 ELSE 1 END)" for each in ("animal", "pen", "task", "feed"))
ALONE = "('note', 'round', 'weather', 'cool', 'watch')"


def upgrade() -> None:
    """Add what is new."""
    other_words("entry", "kind", *KINDS)
    other_rule("entry", "ck_entry_one_subject", f"{NAMED} = 1 OR ({NAMED} = 0 AND kind IN {ALONE})")
    other_words("setting", "name", *SETTINGS)
    other_words("parted", "state", "shut away", "let in", "got out", "left together")
    other_words("quarter", "sign", *SIGNS)
    other_rule("treatment_as", "ck_treatment_as_amount", "length(amount) <= 80")
    _apart()
    _care()
    _lines()


def _dated(name: str, same: str, *parts: Part, of: str) -> None:
    table(name, at("begins_at"), at("written_at"), id_of(same, to=of), *parts)
    op.create_index(f"ix_{name}_{same}_begins_at", name, [same, "begins_at"])


def _apart() -> None:
    _dated(
        "apart_rule",
        "calf_id",
        column("apart_h", sa.Float()),
        column("from_day", sa.Integer()),
        column("nights", sa.String()),
        check("ck_apart_rule_apart_h", "apart_h >= 1 AND apart_h <= 48"),
        check("ck_apart_rule_from_day", "from_day >= 0 AND from_day <= 400"),
        check("ck_apart_rule_nights", "length(nights) >= 7 AND length(nights) <= 7"),
        of="animal",
    )
    _dated("second_cow", "calf_id", id_of("cow_id", to="animal", nullable=True), of="animal")
    _dated(
        "milk_rhythm",
        "animal_id",
        column("every", sa.Integer()),
        check("ck_milk_rhythm_every", "every >= 1 AND every <= 4"),
        of="animal",
    )


def _care() -> None:
    _dated(
        "withdrawal",
        "treatment_id",
        column("milk_h", sa.Float(), nullable=True),
        column("milkings", sa.Integer(), nullable=True),
        column("meat_days", sa.Float(), nullable=True),
        column("dry_days", sa.Float(), nullable=True),
        column("calved_h", sa.Float(), nullable=True),
        column("calved_milkings", sa.Integer(), nullable=True),
        word("said_by", "label", "vet", nullable=True),
        check("ck_withdrawal_milk_h", "milk_h >= 0 AND milk_h <= 8784"),
        check("ck_withdrawal_milkings", "milkings >= 0 AND milkings <= 99"),
        check("ck_withdrawal_meat_days", "meat_days >= 0 AND meat_days <= 999"),
        check("ck_withdrawal_dry_days", "dry_days >= 0 AND dry_days <= 400"),
        check("ck_withdrawal_calved_h", "calved_h >= 0 AND calved_h <= 8784"),
        check("ck_withdrawal_calved_milkings", "calved_milkings >= 0 AND calved_milkings <= 99"),
        of="treatment",
    )
    _dated(
        "substitute",
        "feed_id",
        id_of("by_id", to="feed", nullable=True),
        column("ratio", sa.Float()),
        column("most_kg", sa.Float(), nullable=True),
        check("ck_substitute_ratio", "ratio >= 0.01 AND ratio <= 100"),
        check("ck_substitute_most_kg", "most_kg >= 0 AND most_kg <= 500.0"),
        of="feed",
    )


def _lines() -> None:
    _line("drawn", column("whole", sa.Boolean()), column("by_hand", sa.Boolean()))
    _line("poured", id_of("into_step_id"))
    _line("cooled", word("fate", *FATES, nullable=True))
    _line("born", id_of("calf_id", to="animal", nullable=True), column("alive", sa.Boolean()))
    _line(
        "watched",
        column("words", sa.String()),
        at("due_at", nullable=True),
        at("due_until", nullable=True),
        word("looks", "all right", "better", "the same", "worse", nullable=True),
        check("ck_watched_words", "length(words) >= 1 AND length(words) <= 120"),
    )
    op.create_index("ix_watched_due_at", "watched", ["due_at"])
    _line("used_up", id_of("of_step_id"))


def _line(name: str, *parts: Part) -> None:
    position = check(f"ck_{name}_position", "position >= 0 AND position <= 99")
    table(name, id_of("entry_id", to="entry"), column("position", sa.Integer()), *parts, position)
    op.create_index(f"ix_{name}_entry_id", name, ["entry_id"])
