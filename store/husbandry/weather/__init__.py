"""Cold and heat: how much more energy cattle need, when heat weighs on them, and what they drink."""
