"""The milk store: what house milk is there, and where the milk of the last days went."""
