"""The form (schema) that this program writes, and how a book says which form it has."""

from pathlib import Path

HEAD = "0005"
"""The newest migration in store/book/migrations/versions."""

KNOWN_FORMS = ("0001", "0002", "0003", "0004", "0005")
"""Every form this program can read, oldest first; the last is HEAD."""

FORMS = Path(__file__).parent / "migrations" / "versions"
"""Where every form is written down."""

OLDEST_SQLITE = (3, 37, 0)
"""Older SQLite lacks what the reading statements use."""

READ_FORM = "SELECT version_num FROM alembic_version"
