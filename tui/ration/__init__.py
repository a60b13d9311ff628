"""The ration of an animal, or of a pen fed as one: now and new side by side, what it gives, and what it is short of."""
