"""A short tone, made here; where there is nothing to sound it with, nobody misses more than it.

What makes the tone is looked for when it is wanted first, so that a kiosk without ears starts as
fast as before.
"""

from __future__ import annotations

import atexit
import logging
import math
import os
import struct
import tempfile
import wave
from pathlib import Path
from typing import Any

RATE = 22_050  # samples a second
SECONDS, HERTZ, LOUD = 0.14, 880.0, 0.35
FADE_SECONDS = 0.02  # at either end: a tone that begins at once clicks


def samples() -> list[int]:
    """One tone as 16 bit samples."""
    count = round(RATE * SECONDS)
    fade = RATE * FADE_SECONDS
    return [
        round(
            32767
            * LOUD
            * min(1.0, at / fade, (count - 1 - at) / fade)
            * math.sin(2 * math.pi * HERTZ * at / RATE)
        )
        for at in range(count)
    ]


def write(path: Path) -> None:
    """Write the tone as a WAV file. OSError if it cannot be."""
    tones = samples()
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes(struct.pack(f"<{len(tones)}h", *tones))


class Tone:
    """`wanted` False keeps it quiet."""

    def __init__(self) -> None:
        self.wanted = False
        self._sound: Any = None
        self._tried = False

    def sound(self) -> None:
        """Sound once, if it is wanted and anything here can."""
        if not self.wanted:
            return
        if not self._tried:
            self._tried = True
            self._sound = self._load()
        if self._sound is not None:
            self._sound.stop()
            self._sound.play()

    def _load(self) -> Any:
        """What plays the tone, None without loudspeakers."""
        logger = logging.getLogger("kivy")
        level = logger.level
        logger.setLevel(logging.CRITICAL + 1)  # that there is no loudspeaker troubles nobody
        try:
            from kivy.core.audio import SoundLoader

            return SoundLoader.load(str(_file()))
        except Exception:  # whatever a sound library may do: a tone is no reason to stop weighing
            logging.getLogger(__name__).info("no tone", exc_info=True)
            return None
        finally:
            logger.setLevel(level)


def _file() -> Path:
    """The tone in a file that stays until the kiosk is closed: some players read it late."""
    handle, name = tempfile.mkstemp(prefix="gramstand-", suffix=".wav")
    os.close(handle)
    path = Path(name)
    atexit.register(path.unlink, missing_ok=True)
    write(path)
    return path


tone = Tone()
