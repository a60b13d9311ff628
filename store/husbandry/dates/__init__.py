"""Days: when she is due, when she is dried off, when she bulls again, how old an animal is.

All of it is counted in days of the calendar, leap years too; a printed table of months would be a day off in them.
"""
