"""A balance that speaks SMA SCP-0499: bytes in, bytes out, time passed in; keys and faults."""

from __future__ import annotations

from drivers.simulated.indicator import Indicator
from drivers.simulated.line_faults import LineFaults
from drivers.simulated.sma_answers import SmaAnswers
from drivers.simulated.sma_frames import RequestReader
from drivers.simulated.weighing_pan import WeighingPan

BOOT_TEXT = b"\r\nPRACTICE PAN 1.0\r\nSELF TEST OK\r\n"


class SmaDevice:
    """The balance on ``pan``; ``level`` 1 answers ``?`` to every letter of level 2.

    ``faults`` spoils frames on their way. Switched off or silent, the pan under it goes on.
    """

    def __init__(self, pan: WeighingPan, level: int = 2) -> None:
        self.indicator = Indicator(pan)
        self.faults = LineFaults(pan.profile.seed)
        self._answers = SmaAnswers(self.indicator, level)
        self._reader = RequestReader()
        self._outbox = bytearray()
        self._on = True
        self._silent = False

    def receive(self, data: bytes, now: float) -> bytes:
        """Bytes from the host; returns what the balance has to send."""
        self._catch_up(now)
        if self._talking:
            for request in self._reader.feed(data):
                self._send(self._answers.answer(request))
        return self._take_outbox()

    def due(self, now: float) -> bytes:
        """What the balance sends by itself until ``now``: repeated and waited-for masses."""
        self._catch_up(now)
        return self._take_outbox()

    def press_zero(self, now: float) -> bool:
        """The zero key; False when it was refused (in motion, out of range, switched off)."""
        self._catch_up(now)
        return self._on and self._answers.zero()

    def press_tare(self, now: float) -> bool:
        """The tare key; False when it was refused. On an empty pan it clears the tare."""
        self._catch_up(now)
        return self._on and self._answers.tare()

    def press_unit(self, now: float) -> None:
        """The unit key: g, kg, oz, lb and round again."""
        self._catch_up(now)
        if self._on:
            self.indicator.next_unit()

    def fall_silent(self) -> None:
        """Hear nothing and say nothing, with the port open."""
        self._silent = True
        self._forget()

    def speak_again(self) -> None:
        """Answer again; what was asked in the meantime is lost."""
        self._silent = False

    def switch_off(self, now: float) -> None:
        """Off, by its key or by itself; what it was asked to repeat is forgotten."""
        self._catch_up(now)
        self._on = False
        self._forget()

    def switch_on(self, now: float) -> None:
        """On again: sends its start-up text and sets itself to zero with whatever lies there.

        More than a fifth of the capacity is not zeroed: status ``I`` until it is.
        """
        self._catch_up(now)
        self._on = True
        self.indicator.switch_on()
        if self._talking:
            self._outbox += BOOT_TEXT

    @property
    def _talking(self) -> bool:
        return self._on and not self._silent

    def _forget(self) -> None:
        self._reader.forget()
        self._answers.forget()
        self._outbox.clear()

    def _catch_up(self, now: float) -> None:
        for _ in self.indicator.advance(now):
            for reply in self._answers.refreshed():
                self._send(reply)

    def _send(self, reply: bytes) -> None:
        if reply:
            self._outbox += self.faults.apply(reply)

    def _take_outbox(self) -> bytes:
        data = bytes(self._outbox)
        self._outbox.clear()
        return data
