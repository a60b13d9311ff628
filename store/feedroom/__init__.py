"""The feed room: what is there of each feed, how long it lasts, what it costs."""
