"""The feed room: what is there of each feed, how long it lasts, what it costs. Not on the way to the first frame.

room: every feed at a glance. drafts: delivered, weighed, lost, taken back. delivery: what is typed of one.
weighing: book against scale. scoop: a measure weighed anew. lasting, hay, tub, intake, cost: what follows from it.
"""
