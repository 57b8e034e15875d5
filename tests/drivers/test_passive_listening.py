"""Ports that are listened to in silence: scripted ones, which garble at the wrong settings."""

from __future__ import annotations

import pytest

from drivers.errors import PortLost, Reason
from drivers.passive_listening import USUAL_SETTINGS, Heard, listen_passively
from drivers.transports.port_settings import PortSettings

LINE = b"ST,+00123.45  g\r\n"


def with_parity(data: bytes) -> bytes:
    """Seven bits and even parity, as a receiver of eight bits sees them."""
    return bytes(byte | (byte.bit_count() % 2) << 7 for byte in data)


def at_another_speed(data: bytes) -> bytes:
    return bytes((byte * 37 + 11) % 256 for byte in data)


class ScriptedPort:
    """Sends LINE ten times a second, which comes right at ``right`` only; never written to."""

    def __init__(self, right: PortSettings, silent_until: float = 0.0) -> None:
        self.right = right
        self.silent_until = silent_until
        self.now = 0.0
        self.tried: list[PortSettings] = []
        self.closed = 0
        self.fails_at = float("inf")

    def open(self, settings: PortSettings) -> ScriptedPort:
        self.tried.append(settings)
        return self

    def read(self) -> bytes:
        self.now += 0.1
        if self.now >= self.fails_at:
            raise PortLost(Reason.UNPLUGGED, "gone")
        if self.now < self.silent_until:
            return b""
        return self._garbled(LINE)

    def write(self, data: bytes) -> None:
        raise AssertionError("nothing may be sent")

    def close(self) -> None:
        self.closed += 1

    def _garbled(self, data: bytes) -> bytes:
        now, right = self.tried[-1], self.right
        if now == right:
            return data
        return with_parity(data) if now.speed == right.speed else at_another_speed(data)

    def heard(self, *candidates: PortSettings, seconds: float = 10.0) -> Heard:
        return listen_passively(self.open, candidates, seconds=seconds, clock=lambda: self.now)


@pytest.mark.parametrize("right", USUAL_SETTINGS)
def test_the_settings_are_found_at_which_clean_lines_come(right: PortSettings) -> None:
    port = ScriptedPort(right)
    heard = port.heard(*USUAL_SETTINGS, seconds=30.0)
    assert heard.settings == right
    assert b"".join(packet.data for packet in heard.packets).startswith(LINE)


def test_at_the_first_settings_nothing_is_lost() -> None:
    port = ScriptedPort(USUAL_SETTINGS[0])
    heard = port.heard(*USUAL_SETTINGS, seconds=4.95)
    assert (port.tried, len(heard.packets)) == ([USUAL_SETTINGS[0]], 50)


def test_silence_makes_nobody_doubt_the_settings() -> None:
    port = ScriptedPort(USUAL_SETTINGS[2], silent_until=4.0)
    heard = port.heard(*USUAL_SETTINGS)
    assert heard.settings == USUAL_SETTINGS[2]
    assert port.tried == list(USUAL_SETTINGS[:3])


def test_garbage_at_all_settings_is_said() -> None:
    port = ScriptedPort(PortSettings(300))
    assert port.heard(*USUAL_SETTINGS, seconds=60.0) == Heard((), None)
    assert port.closed == len(USUAL_SETTINGS)


def test_settings_that_were_given_are_not_doubted() -> None:
    port = ScriptedPort(PortSettings(300))
    heard = port.heard(PortSettings(9600), seconds=1.95)
    assert (heard.settings, len(heard.packets)) == (PortSettings(9600), 20)


def test_a_port_that_fails_is_closed_and_said() -> None:
    port = ScriptedPort(USUAL_SETTINGS[0])
    port.fails_at = 1.0
    with pytest.raises(PortLost):
        port.heard(*USUAL_SETTINGS)
    assert port.closed == 1
