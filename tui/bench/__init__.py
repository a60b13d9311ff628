"""The bench between rounds: what comes next, by the clock."""
