"""The page of a ration: the head, feeds and balance side by side, broken limits, the marked feed, the foot."""

from tui.page import Line, Size, beside, fit
from tui.ration.balance_rows import balance_rows
from tui.ration.feeds import feed_rows, marked_lines, sum_rows
from tui.ration.foot import broken_lines, foot_lines
from tui.ration.head import head_lines
from tui.ration.seen import Seen

BESIDE_FROM, FEEDS_LEAST, FEEDS_MOST = 60, 36, 60
"""From this width on the balance stands beside the feeds; cells that these take, at least and at most."""


def ration_lines(seen: Seen, size: Size) -> list[Line]:
    """All of it; what is longer than the window is leafed through."""
    stands = [*head_lines(seen, size), *side_by_side(seen, size), *broken_lines(seen, size)]
    return [*stands, *marked_lines(seen, size), *foot_lines(seen, size)]


def side_by_side(seen: Seen, size: Size) -> list[Line]:
    """The feeds and the sums at the left, the balance at the right; one below the other in a narrow window."""
    if size.width < BESIDE_FROM:
        return [*feed_rows(seen, size.width), *balance_rows(seen, size.width), *sum_rows(seen)]
    column = max(min(size.width // 2 + 6, FEEDS_MOST), FEEDS_LEAST)
    left = [fit(each, column - 1) for each in (*feed_rows(seen, column - 1), *sum_rows(seen))]
    return beside(left, balance_rows(seen, size.width - column - 1), column)
