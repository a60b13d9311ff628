"""The feed room: what is there, how long it lasts, what came, what was weighed, what was lost, what it costs."""
