"""Lots of a feed: a new one may be denser or lighter, so that its scoop is to be weighed at its first use."""

from collections.abc import Sequence
from itertools import pairwise


def lot_began(lots: Sequence[str]) -> int:
    """With which delivery the newest lot began. lots: of each delivery, newest first; "" may be another every time.

    The place in that list, from 0. Raises ValueError where nothing was delivered. Common practice.
    """
    if not lots:
        raise ValueError("lots is empty; it must hold at least one delivery")
    return next((at for at, (lot, before) in enumerate(pairwise(lots)) if not lot or lot != before), len(lots) - 1)
