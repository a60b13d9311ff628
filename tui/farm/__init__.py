"""My farm: what is set up, and the sheets that ask about it."""
