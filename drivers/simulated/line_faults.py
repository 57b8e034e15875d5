"""What a bad cable does to frames: tears, repeats and garbles them, on demand."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable

import numpy as np


class LineFaults:
    """Faults for the next frames, used up one a frame in the order in which they were asked for.

    Garbled bytes always have their highest bit set, as bytes with a parity error do: never one
    digit for another, which no receiver of a frame without a checksum could notice.
    """

    def __init__(self, seed: int) -> None:
        self._rng = np.random.default_rng([seed, 2])
        self._waiting: deque[Callable[[bytes], bytes]] = deque()
        self.other_parity = False
        """While set: sent with seven bits and even parity, received as eight bits."""

    def tear(self, frames: int = 1) -> None:
        """Lose a stretch out of each of the next frames."""
        self._waiting.extend([self._torn] * frames)

    def repeat(self, frames: int = 1) -> None:
        """Send each of the next frames twice."""
        self._waiting.extend([lambda frame: frame + frame] * frames)

    def garble(self, frames: int = 1) -> None:
        """Spoil one to three bytes in each of the next frames."""
        self._waiting.extend([self._garbled] * frames)

    def apply(self, frame: bytes) -> bytes:
        """The frame as it leaves the cable."""
        if self.other_parity:
            return bytes(byte | (byte.bit_count() % 2) << 7 for byte in frame)
        return self._waiting.popleft()(frame) if self._waiting else frame

    def _torn(self, frame: bytes) -> bytes:
        start = int(self._rng.integers(0, len(frame)))
        end = int(self._rng.integers(start + 1, len(frame) + 1))
        return frame[:start] + frame[end:]

    def _garbled(self, frame: bytes) -> bytes:
        spoiled = bytearray(frame)
        count = min(len(frame), int(self._rng.integers(1, 4)))
        for place in self._rng.choice(len(frame), size=count, replace=False):
            spoiled[place] = int(self._rng.integers(0x80, 0x100))
        return bytes(spoiled)
