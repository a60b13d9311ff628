"""What a ration supplies, what it may hold at most, and what to be careful of in it."""
