"""The yard as the keeper sets it up: pens, animals, feeds, plans, people, and what is asked about each."""
