"""Whether the balance's own word "stable" has earned trust.

It has once it has said "moving" of a moving load at least twice, and has not for a good while said
"stable" of a reading that was far from where it then came to rest. Trust makes the kiosk quicker;
without it, it is as quick as its own judgement. A trusted flag that has lately been no slower than
that judgement is also worth listening to when it says "moving".
"""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence

from kiosk.weighing.trace import Sample

FAR_DIVISIONS = 2.0
FAR_NOISES = 3.0
NEEDED = 2
BAN = 10  # loads for which one lie is remembered
PROMPT_LOADS = 3
HURRY = -1
HESITATE = 4


class FlagTrust:
    """The record of one balance's flag; ``trusted`` says what it is worth now."""

    def __init__(self) -> None:
        self._honest = 0
        self._ban = 0
        self._in_time: deque[bool] = deque(maxlen=PROMPT_LOADS)

    @property
    def trusted(self) -> bool:
        """True if "stable" may shorten the wait."""
        return self._honest >= NEEDED and not self._ban

    def more_readings(self, stable: bool | None) -> int:
        """How many readings more, or less, the flag's present word is worth."""
        if not self.trusted or stable is None:
            return 0
        if stable:
            return HURRY
        prompt = len(self._in_time) == PROMPT_LOADS and all(self._in_time)
        return HESITATE if prompt else 0

    def learn(self, way: Sequence[Sample], mean: float, noise: float) -> None:
        """Compare what the flag said on the ``way`` of a load that came to rest at ``mean``."""
        far = FAR_DIVISIONS + FAR_NOISES * noise
        words = [sample.stable for sample in way if abs(sample.y - mean) > far]
        if any(words):
            self._ban = BAN
        elif False in words:
            self._ban = max(0, self._ban - 1)
            self._honest += 1
            self._in_time.append(way[-1].stable is True)
