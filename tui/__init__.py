"""What the keeper sees and presses. Knows no SQL and no equation."""
