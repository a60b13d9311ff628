"""The arithmetic of the trade: numbers in, numbers out; no clock, no file, no database."""
