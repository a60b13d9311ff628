"""Why a number is what it is: every number of a place, walked down to what was typed, weighed or set."""
