"""A held, bounced or doubled Enter confirms one step, not two."""

ENTER_GAP_S = 0.7
"""A held key starts repeating 0.25 to 0.66 s after the press; a second press on purpose takes longer. [s]"""


class EnterGuard:
    """Enter counts if another key came since the last Enter, or that Enter arrived long enough ago."""

    def __init__(self) -> None:
        """Nothing was pressed yet."""
        self._other_key = True
        self._arrived_s = 0.0

    def other(self) -> None:
        """Another key came."""
        self._other_key = True

    def enter(self, ticks_s: float) -> bool:
        """An Enter arrives; whether it counts. One that does not count holds the next one off too."""
        counts = self._other_key or ticks_s - self._arrived_s >= ENTER_GAP_S
        self._other_key, self._arrived_s = False, ticks_s
        return counts

    def done(self, ticks_s: float) -> None:
        """What an Enter did is done: on a slow disk the presses that waited meanwhile are still the same press."""
        self._arrived_s = ticks_s
