"""The round: what is due, what a key means, and what became of it. Pure: reads no clock and no book."""
