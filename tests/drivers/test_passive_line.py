"""The silent listener: in lock step on a scripted port, and in its thread on a real one."""

from __future__ import annotations

import time
from pathlib import Path

import pytest

from drivers.errors import BadAddress, PortLost, PortUnavailable, Reason
from drivers.events import Back, Lost
from drivers.packet import Packet
from drivers.passive_line import LineEvent, PassiveLine, SettingsTried, listen_at
from drivers.passive_listening import USUAL_SETTINGS
from drivers.transports.port_settings import PortSettings
from tests.helpers.garbling_port import LINE, GarblingPort
from tests.helpers.pty_port import PtyPort

PATIENCE_S = 5.0  # of real time, for a thread


class Heard:
    """A listener on a scripted port, and what it published."""

    def __init__(self, port: GarblingPort, *candidates: PortSettings) -> None:
        self.port = port
        self.events: list[LineEvent] = []
        self.line = PassiveLine(
            "scripted",
            candidates or USUAL_SETTINGS,
            port.with_settings,
            publish=self.events.append,
            clock=lambda: port.now,
            wait=port.wait,
        )

    def pump(self, turns: int) -> None:
        for _ in range(turns):
            self.line.pump()

    def of(self, kind: type) -> list[LineEvent]:
        return [event for event in self.events if isinstance(event, kind)]

    def tried(self) -> list[PortSettings]:
        return [event.settings for event in self.events if isinstance(event, SettingsTried)]

    def text(self) -> bytes:
        """What came at the present settings."""
        last = max(at for at, event in enumerate(self.events) if isinstance(event, SettingsTried))
        return b"".join(event.data for event in self.events[last:] if isinstance(event, Packet))


def test_packets_come_as_they_are() -> None:
    heard = Heard(GarblingPort(USUAL_SETTINGS[0]))
    heard.pump(11)
    assert heard.text() == 10 * LINE
    assert isinstance(heard.events[0], SettingsTried)
    assert isinstance(heard.events[1], Back)


@pytest.mark.parametrize("right", USUAL_SETTINGS)
def test_the_settings_are_found_at_which_clean_lines_come(right: PortSettings) -> None:
    heard = Heard(GarblingPort(right))
    heard.pump(300)
    assert heard.line.settings == right
    assert heard.tried() == list(USUAL_SETTINGS[: USUAL_SETTINGS.index(right) + 1])
    assert heard.text().startswith(LINE)


def test_garbage_everywhere_is_said_and_the_search_goes_on() -> None:
    heard = Heard(GarblingPort(PortSettings(300)))
    heard.pump(400)
    failed = [event.all_failed for event in heard.events if isinstance(event, SettingsTried)]
    assert failed[: len(USUAL_SETTINGS) + 1] == [False] * len(USUAL_SETTINGS) + [True]
    heard.port.right = USUAL_SETTINGS[3]
    heard.pump(400)
    assert heard.line.settings == USUAL_SETTINGS[3]


def test_settings_that_were_given_are_not_doubted() -> None:
    heard = Heard(GarblingPort(PortSettings(300)), PortSettings(9600))
    heard.pump(100)
    assert heard.tried() == [PortSettings(9600)]
    assert len(heard.of(Packet)) == 99


def test_a_lost_port_is_looked_for_and_heard_at_the_same_settings() -> None:
    heard = Heard(GarblingPort(USUAL_SETTINGS[2]))
    heard.pump(60)
    heard.port.failure = PortLost(Reason.UNPLUGGED, "gone")
    heard.pump(10)
    assert [event.reason for event in heard.events if isinstance(event, Lost)] == [Reason.UNPLUGGED]
    heard.port.failure = None
    heard.pump(10)
    assert isinstance(heard.events[-1], Packet)
    assert heard.line.settings == USUAL_SETTINGS[2]
    assert len(heard.tried()) == 3


def test_a_port_that_cannot_be_opened_is_lost_once() -> None:
    port = GarblingPort(USUAL_SETTINGS[0])
    port.failure = PortUnavailable(Reason.BUSY, "in use")
    heard = Heard(port)
    heard.pump(10)
    assert [type(event) for event in heard.events] == [Lost]


def test_closing_lets_go_of_the_port() -> None:
    heard = Heard(GarblingPort(USUAL_SETTINGS[1]))
    heard.pump(40)
    heard.line.close()
    assert heard.port.opened == heard.port.closed


def test_a_job_is_done_between_two_reads() -> None:
    heard, done = Heard(GarblingPort(USUAL_SETTINGS[0])), []
    heard.pump(3)
    heard.line.between_reads(lambda: done.append(heard.port.now))
    assert done == []
    heard.pump(2)
    assert len(done) == 1


def test_a_hid_scale_sends_no_lines() -> None:
    with pytest.raises(BadAddress, match="sends no lines"):
        listen_at("hid:1209:0001:A7", publish=print)


def test_it_listens_in_its_thread_through_an_unplug(tmp_path: Path) -> None:
    port, events = PtyPort(tmp_path), []
    line = listen_at(str(port.link), publish=events.append)

    def until(kind: type, count: int) -> None:
        end = time.monotonic() + PATIENCE_S
        while sum(isinstance(event, kind) for event in events) < count:
            assert time.monotonic() < end, events
            time.sleep(0.01)

    line.start()
    try:
        until(Back, 1)
        port.say(LINE)
        until(Packet, 1)
        port.unplug()
        until(Lost, 1)
        port.plug()
        until(Back, 2)
    finally:
        line.close()
        port.unplug()
