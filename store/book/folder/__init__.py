"""A farm folder: farm.toml and one CSV for each record class, readable in ten years with a text editor."""

REVISION = 1
"""Of the folder's form; raised when a column changes its meaning."""
