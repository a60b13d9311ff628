"""A calf: its milk, how it grows, when it can be weaned."""
