"""How the feed room says a round, a day and what is there."""

from datetime import date, timedelta

from store.book.turn import Turn

WEEK = timedelta(days=7)


def round_words(turn: Turn, today: date) -> str:
    """`this evening`, `on Friday evening`, `on Tuesday morning next week`, `on the morning of Tuesday 24 March`."""
    if turn.day == today:
        return f"this {turn.slot}"
    weekday = turn.day.strftime("%A")
    monday = today - timedelta(days=today.weekday())
    if monday <= turn.day < monday + WEEK:
        return f"on {weekday} {turn.slot}"
    if monday + WEEK <= turn.day < monday + 2 * WEEK:
        return f"on {weekday} {turn.slot} next week"
    return f"on the {turn.slot} of {day_words(turn.day)}"


def day_words(day: date) -> str:
    """`Tuesday 24 March`."""
    return f"{day.strftime('%A')} {day.day} {day.strftime('%B')}"


def by_day_words(day: date, today: date) -> str:
    """By when something has to be done: `today`, `by Saturday`, `by Saturday 21 March`."""
    if day <= today:
        return "today"
    return f"by {day.strftime('%A')}" if day < today + WEEK else f"by {day_words(day)}"
