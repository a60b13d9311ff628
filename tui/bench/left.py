"""How long is left, in words: `18 minutes left`, `20 minutes LATE`, `in 2 h 05`."""

from datetime import datetime, timedelta

from store.round.item import Item

A_MINUTE = timedelta(minutes=1)


def left_words(item: Item, now: datetime) -> str:
    """Until a thing comes, or since it should be done, in whole minutes of the clock on the wall."""
    within = item.until if item.until and item.is_due(now) else None
    minutes = _minute(within or item.at) - _minute(now)
    if minutes == 0:
        return "NOW" if item.asks else "now"
    if not item.asks:
        return f"in {_span(minutes)}"
    left = f"{_span(minutes)} left" if minutes > 0 else f"{_span(-minutes)} LATE"
    return f"NOW, {left}" if within and minutes > 0 else left


def _minute(moment: datetime) -> int:
    return int(moment.timestamp() // A_MINUTE.total_seconds())


def _span(minutes: int) -> str:
    """`1 minute`, `59 minutes`, `2 h 05`, `3 days`."""
    if minutes < 60:
        return "1 minute" if minutes == 1 else f"{minutes} minutes"
    hours, left = divmod(minutes, 60)
    return f"{hours} h {left:02d}" if hours < 48 else f"{hours // 24} days"
