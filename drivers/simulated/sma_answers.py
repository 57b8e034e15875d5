"""What an SMA balance answers to each request (SMA SCP-0499), without framing, faults or ports."""

from __future__ import annotations

import re
from collections.abc import Callable
from decimal import Decimal

from drivers.simulated.indicator import Indicator, State
from drivers.simulated.sma_frames import (
    COMMUNICATION_ERROR,
    DIAGNOSTICS_FINE,
    ESC,
    NO_MASS,
    UNKNOWN,
    field,
    standard_reply,
)
from drivers.simulated.units import GRAMS_PER_UNIT, count_by

LEVEL_1 = "WZDAB"
LEVEL_2 = "HPQRSTMCUIN"
STILL_WAIT_SECONDS = 10.0
"""How long ``P`` waits for rest; then ten dashes come. The standard gives no time."""
_PRESET_TARE = re.compile(r" *[0-9]+(\.[0-9]+)? *", re.ASCII)
_STATUS = {
    State.IN_RANGE: " ",
    State.CENTRE_OF_ZERO: "Z",
    State.UNDER: "U",
    State.OVER: "O",
    State.NOT_ZEROED: "I",
}


class SmaAnswers:
    """Answers for one indicator; ``level`` 1 answers ``?`` to every letter of level 2.

    A zero refused in motion shows ``E`` until the motion ends, one refused beyond the zero range
    in one reply; a refused tare shows ``T`` in one reply. With ``E``, ``T`` and ``I`` the mass is
    ten dashes.
    """

    def __init__(self, indicator: Indicator, level: int) -> None:
        self._indicator = indicator
        self._level = level
        self._handlers = self._table()
        self.forget()

    def forget(self) -> None:
        """As after switching on: nothing asked, no error to report."""
        self._repeating: bool | None = None  # fine or not; None when nothing is repeated
        self._waiting: tuple[bool, float] | None = None  # fine or not, and since when
        self._lines: dict[str, list[bytes]] = {}
        self._zero_error = False
        self._tare_error = False

    def answer(self, request: bytes) -> bytes:
        """The reply to one request without its LF and CR; empty when none is due (yet)."""
        self._repeating = self._waiting = None
        if request == ESC:
            self._lines = {}
            return b""
        if not request.isascii():
            return COMMUNICATION_ERROR
        letter, data = chr(request[0]), request[1:].decode("ascii")
        if letter in self._handlers and not data:
            return self._handlers[letter]()
        if letter == "T" and self._level > 1:
            return self._preset_tare(data)
        if letter == "U" and self._level > 1:
            return self._select_unit(data)
        return UNKNOWN

    def refreshed(self) -> list[bytes]:
        """What is due now that the display shows a new reading."""
        moving = self._indicator.moving
        self._zero_error = self._zero_error and moving
        replies = []
        if self._repeating is not None:
            replies.append(self._mass(fine=self._repeating))
        if self._waiting is not None:
            fine, since = self._waiting
            late = self._indicator.at - since >= STILL_WAIT_SECONDS
            if late or not moving:
                self._waiting = None
                replies.append(self._no_rest() if moving else self._mass(fine=fine))
        return replies

    def zero(self) -> bool:
        """Try to zero, by key or by command."""
        done = self._indicator.set_zero()
        self._zero_error = not done
        return done

    def tare(self) -> bool:
        """Try to tare, by key or by command."""
        done = self._indicator.set_tare()
        self._tare_error = not done
        return done

    def _table(self) -> dict[str, Callable[[], bytes]]:
        every: dict[str, Callable[[], bytes]] = {
            "W": self._mass,
            "H": lambda: self._mass(fine=True),
            "P": lambda: self._when_still(fine=False),
            "Q": lambda: self._when_still(fine=True),
            "R": lambda: self._repeat(fine=False),
            "S": lambda: self._repeat(fine=True),
            "Z": lambda: self._after(self.zero),
            "T": lambda: self._after(self.tare),
            "M": self._tare_report,
            "C": lambda: self._after(self._indicator.clear_tare),
            "U": lambda: self._after(self._indicator.next_unit),
            "D": lambda: DIAGNOSTICS_FINE,
            "A": lambda: self._begin("B", self._about()),
            "B": lambda: self._next_line("B"),
            "I": lambda: self._begin("N", self._information()),
            "N": lambda: self._next_line("N"),
        }
        return {letter: every[letter] for letter in LEVEL_1 + (LEVEL_2 if self._level > 1 else "")}

    def _mass(self, *, fine: bool = False) -> bytes:
        shown = self._indicator.shown(fine=fine)
        status, mass = _STATUS[shown.state], f"{shown.value:f}"
        if self._zero_error:
            status, self._zero_error = "E", shown.moving
        elif self._tare_error:
            status, self._tare_error = "T", False
        if status in "EIT":
            mass = NO_MASS
        mode = "N" if shown.net else "G"
        return standard_reply(
            status, mode.lower() if fine else mode, shown.moving, mass, shown.unit
        )

    def _no_rest(self) -> bytes:
        return standard_reply(" ", "G", True, NO_MASS, "")

    def _when_still(self, *, fine: bool) -> bytes:
        if not self._indicator.moving:
            return self._mass(fine=fine)
        self._waiting = (fine, self._indicator.at)
        return b""

    def _repeat(self, *, fine: bool) -> bytes:
        self._repeating = fine
        return self._mass(fine=fine)

    def _after(self, action: Callable[[], object]) -> bytes:
        action()
        return self._mass()

    def _preset_tare(self, data: str) -> bytes:
        if not _PRESET_TARE.fullmatch(data):
            return UNKNOWN
        self._tare_error = not self._indicator.preset_tare(Decimal(data.strip()))
        return self._mass()

    def _tare_report(self) -> bytes:
        tare, unit = self._indicator.shown_tare(), self._indicator.unit
        return standard_reply(" ", "T", self._indicator.moving, f"{tare:f}", unit)

    def _select_unit(self, data: str) -> bytes:
        unit = data.rstrip(" _")
        if unit in GRAMS_PER_UNIT:
            self._indicator.unit = unit
        return self._mass()

    def _begin(self, letter: str, lines: list[bytes]) -> bytes:
        self._lines[letter] = lines[1:]
        return lines[0]

    def _next_line(self, letter: str) -> bytes:
        lines = self._lines.get(letter)
        return lines.pop(0) if lines else UNKNOWN

    def _about(self) -> list[bytes]:
        return [
            field("SMA", f"{self._level}/1.0"),
            field("MFG", "simulated"),
            field("MOD", "practice pan"),
            field("REV", "1.0"),
            field("END"),
        ]

    def _information(self) -> list[bytes]:
        unit, profile = self._indicator.unit, self._indicator.profile
        step = count_by(unit, profile.readability)
        decimals = max(0, -step.adjusted())
        count = int(step.scaleb(decimals))  # in units of the last digit
        capacity = profile.capacity / GRAMS_PER_UNIT[unit] // step * step
        return [
            field("SMA", f"{self._level}/1.0"),
            field("TYP", "S"),
            field("CAP", f"{unit:<3}:{capacity:.{decimals}f}:{count}:{decimals}"),
            field("CMD", LEVEL_2),
            field("END"),
        ]
