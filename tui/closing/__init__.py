"""The closing: what was done, and above all what was not."""
