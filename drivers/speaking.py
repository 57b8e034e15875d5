"""Finds out by trial which dialect a balance speaks; those that only listen come first.

Pure: the events of whoever has the port in, the next trial out.
"""

from __future__ import annotations

from collections.abc import Sequence

from drivers.dialects.lines import NAME as LINES
from drivers.dialects.sma import Sma
from drivers.events import BalanceEvent, Identified, ReadingReceived

TRIAL_S = 2.5  # a balance that sends by itself does so within two seconds (common practice)
MASSES = 2  # one alone may be start-up text that looks like a mass


def trials(kept: Sequence[str]) -> tuple[str, ...]:
    """The dialects to try at a port: lines, the shapes that were learned, at last asking."""
    return (LINES, *kept, Sma.name)


class Speaking:
    """Goes through `dialects`; `present` is being tried, None once all have failed."""

    def __init__(self, dialects: Sequence[str]) -> None:
        self._left = list(dialects)
        self._since: float | None = None
        self._masses = 0
        self.understood = False

    @property
    def present(self) -> str | None:
        """The dialect to be spoken now."""
        return self._left[0] if self._left else None

    def heard(self, event: BalanceEvent) -> None:
        """Take one event of the present trial in."""
        if isinstance(event, Identified):
            self.understood = True
        elif isinstance(event, ReadingReceived) and event.reading.grams is not None:
            self._masses += 1
            self.understood |= self._masses >= MASSES

    def tick(self, now: float, *, open_port: bool) -> bool:
        """Let time pass; True when the present dialect has changed.

        A port that is not open proves nothing, so that time does not count.
        """
        if self.understood or not self._left:
            return False
        if self._since is None or not open_port:
            self._since = now
        if now - self._since < TRIAL_S:
            return False
        self._left.pop(0)
        self._since, self._masses = None, 0
        return True
