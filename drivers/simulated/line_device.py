"""A balance that sends lines and hears nothing: time passed in, bytes out."""

from __future__ import annotations

from drivers.simulated.indicator import Indicator
from drivers.simulated.line_faults import LineFaults
from drivers.simulated.line_style import LineStyle
from drivers.simulated.weighing_pan import WeighingPan

BOOT_TEXT = b"PRACTICE PAN READY"
_SWITCHED_ON_AT = 9 * 3600.0  # o'clock, in seconds


class LineDevice:
    """The balance on ``pan``; it sends a line with each reading, whether anybody listens or not.

    With ``at_key`` it sends one when its print key is pressed, and at no other time. ``faults``
    spoils lines on their way. Switched off or silent, the pan under it goes on.
    """

    def __init__(self, pan: WeighingPan, style: LineStyle, *, at_key: bool = False) -> None:
        self.indicator = Indicator(pan)
        self.faults = LineFaults(pan.profile.seed)
        self._style = style
        self._at_key = at_key
        self._word: str | None = None
        self._outbox = bytearray()
        self._lines = 0
        self._on = True
        self._silent = False

    def receive(self, data: bytes, now: float) -> bytes:
        """Bytes from the host are lost; returns what the balance has to send."""
        return self.due(now)

    def due(self, now: float) -> bytes:
        """The lines of the readings since the last call."""
        self._catch_up(now)
        data = bytes(self._outbox)
        self._outbox.clear()
        return data

    def press_zero(self, now: float) -> bool:
        """The zero key; False when it was refused (in motion, out of range, switched off)."""
        self._catch_up(now)
        return self._on and self.indicator.set_zero()

    def press_tare(self, now: float) -> bool:
        """The tare key; False when it was refused. On an empty pan it clears the tare."""
        self._catch_up(now)
        return self._on and self.indicator.set_tare()

    def press_unit(self, now: float) -> None:
        """The unit key: g, kg, oz, lb and round again."""
        self._catch_up(now)
        if self._on:
            self.indicator.next_unit()

    def press_print(self, now: float) -> None:
        """The print key: one line of what is shown."""
        self._catch_up(now)
        if self._on and not self._silent:
            self._send()

    def show_word(self, word: str | None) -> None:
        """Show a word in place of the number: an error, a wish to be calibrated; None ends it."""
        self._word = word

    def fall_silent(self) -> None:
        """Say nothing, with the port open."""
        self._silent = True
        self._outbox.clear()

    def speak_again(self) -> None:
        """Send lines again."""
        self._silent = False

    def switch_off(self, now: float) -> None:
        """Off, by its key or by itself."""
        self._catch_up(now)
        self._on = False
        self._outbox.clear()

    def switch_on(self, now: float) -> None:
        """On again: sends its start-up text and sets itself to zero with whatever lies there."""
        self._catch_up(now)
        self._on = True
        self.indicator.switch_on()
        if not self._silent:
            self._outbox += BOOT_TEXT + self._style.end

    def _catch_up(self, now: float) -> None:
        for _ in self.indicator.advance(now):
            if self._on and not self._silent and not self._at_key:
                self._send()

    def _send(self) -> None:
        self._lines += 1
        if self._word is not None:
            line = self._word.encode("ascii") + self._style.end
        else:
            clock = _SWITCHED_ON_AT + self.indicator.at
            line = self._style.line(self.indicator.shown(), clock, self._lines)
        self._outbox += self.faults.apply(line)
