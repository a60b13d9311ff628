"""Milk: the pail, how an udder fills, what is usual, her curve, a day and a lactation, and the calf's share."""
