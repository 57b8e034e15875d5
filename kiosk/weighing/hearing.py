"""When a balance was heard, and whether what comes from it is of any use."""

from __future__ import annotations

from dataclasses import dataclass

from kiosk.weighing.pan_events import Trouble

STALE_AFTER_S = 1.0
SILENT_AFTER_S = 2.5
LATE_FOR_S = 1.5
GARBLED_AFTER_S = 2.0
GARBLED_PIECES = 3
_MISSED = 2.5  # readings of a slow balance, before its newest one is old


@dataclass(slots=True)
class Hearing:
    """`last` is the newest frame, or since when one has been waited for; times in seconds."""

    now: float = float("-inf")
    last: float | None = None
    mass: float | None = None  # the newest frame with a mass
    over: int = 0  # frames in a row over the capacity
    silent: Trouble | None = None
    lost: bool = False
    _pace: float = 0.0
    _late_at: float = float("-inf")
    _garbage_since: float | None = None
    _pieces: int = 0

    def passes(self, now: float) -> None:
        """Let time pass."""
        self.now = max(self.now, now)
        if self.last is None:
            self.last = self.now

    def is_old(self, at: float) -> bool:
        """Whether a reading of that moment comes too late to be looked at; it is noted if so."""
        late = at < self.now - STALE_AFTER_S
        if late:
            self._late_at = self.now
        return late

    def frame(self, at: float, *, over: bool) -> None:
        """A frame came in time."""
        self.now = max(self.now, at)
        self.last, self.silent = at, None
        self.over = self.over + 1 if over else 0
        self._garbage_since, self._pieces = None, 0

    def mass_came(self, at: float) -> None:
        """It carries a mass."""
        if self.mass is not None:
            self._pace = at - self.mass
        self.mass = at

    def garbage(self, at: float) -> bool:
        """Bytes came that are no frame; True once nothing else has come for two seconds."""
        self.now = max(self.now, at)
        self.last = at
        if self._garbage_since is None:
            self._garbage_since = at
        self._pieces += 1
        return self._pieces >= GARBLED_PIECES and at - self._garbage_since >= GARBLED_AFTER_S

    def fell_silent(self, trouble: Trouble) -> None:
        """Nothing is known of what the balance shows any longer."""
        self.silent, self.mass = trouble, None
        self._garbage_since, self._pieces = None, 0

    def opened(self, at: float) -> None:
        """The port is open again."""
        self.now = max(self.now, at)
        self.last, self.lost = at, False
        self._garbage_since, self._pieces = None, 0

    @property
    def silence(self) -> Trouble | None:
        """What there is to say of the present silence; None while there is none."""
        if self.lost or self.last is None or self.now - self.last < SILENT_AFTER_S:
            return None
        return Trouble.LATE if self.now - self._late_at < LATE_FOR_S else Trouble.ASLEEP

    @property
    def fresh(self) -> bool:
        """Whether the newest mass still stands for what the balance shows."""
        limit = max(STALE_AFTER_S, _MISSED * min(self._pace, SILENT_AFTER_S))
        return self.mass is not None and self.now - self.mass <= limit
