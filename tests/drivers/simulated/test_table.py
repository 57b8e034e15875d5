from __future__ import annotations

import os
import threading
from pathlib import Path

import serial

from drivers.simulated.line_style import LineStyle
from drivers.simulated.materials import RICE
from drivers.simulated.port import PortKind
from drivers.simulated.table import SimulatedTable, simulated_table
from tests.helpers.simulated_desk import ManualClock, quiet_profile


class Host:
    """A host at the table's port, in lock step with the balance."""

    def __init__(self, table: SimulatedTable) -> None:
        self._table = table
        self._line = os.open(table.address, os.O_RDWR | os.O_NOCTTY | os.O_NONBLOCK)

    def ask(self) -> bytes:
        os.write(self._line, b"\nW\r")
        self._table.pump()
        try:
            return os.read(self._line, 1000)
        except BlockingIOError:
            return b""

    def close(self) -> None:
        os.close(self._line)


def test_a_cup_goes_on_and_off_over_the_real_port() -> None:
    clock = ManualClock()
    with simulated_table(clock, quiet_profile()) as table:
        host = Host(table)
        cup = table.bench.cup(12.3, 7)
        table.bench.put(cup)
        clock.wait(3)
        empty = host.ask()
        table.bench.lift()
        table.bench.fill(cup, 100.0, RICE)
        table.bench.put(cup)
        clock.wait(3)
        filled = host.ask()
        host.close()

    assert empty == b"\n 1G        12.3g  \r"
    assert filled == b"\n 1G       112.3g  \r"


def test_keys_and_faults_by_one_hand() -> None:
    clock = ManualClock()
    with simulated_table(clock, quiet_profile()) as table:
        host = Host(table)
        table.bench.put(table.bench.cup(12.3))
        clock.wait(3)
        assert table.press_tare()
        assert host.ask()[3:4] == b"N"
        table.press_unit()
        assert host.ask()[16:19] == b"kg "
        table.fall_silent()
        assert host.ask() == b""
        table.speak_again()
        table.switch_off()
        assert host.ask() == b""
        table.switch_on()
        clock.wait(0.1)
        assert host.ask().endswith(b"\nZ1G         0.0g  \r")
        assert table.press_zero()
        host.close()


def test_the_same_seed_makes_the_same_table() -> None:
    frames = []
    for seed in (5, 5, 6):
        clock = ManualClock()
        with simulated_table(clock, seed=seed) as table:
            host = Host(table)
            table.bench.put(table.bench.new_cup())
            seen = b""
            for _ in range(20):
                clock.wait(0.1)
                seen += host.ask()
            frames.append(seen)
            host.close()

    assert frames[0] == frames[1] != frames[2]


def test_a_level_1_table() -> None:
    with simulated_table(level=1, kind=PortKind.SOCKET) as table:
        table.start()
        with serial.serial_for_url(table.address, timeout=1) as host:
            host.write(b"\nI\r")
            assert host.read(3) == b"\n?\r"


def test_hands_in_other_threads_do_no_harm() -> None:
    with simulated_table(profile=quiet_profile()) as table:
        table.start()

        def busy() -> None:
            for _ in range(50):
                cup = table.bench.new_cup()
                table.bench.put(cup)
                table.press_zero()
                table.bench.lift(cup)

        hands = [threading.Thread(target=busy) for _ in range(3)]
        with serial.serial_for_url(table.address, timeout=1) as host:
            for hand in hands:
                hand.start()
            frames = []
            for _ in range(50):
                host.write(b"\nW\r")
                frames.append(host.read(20))
            for hand in hands:
                hand.join()
        assert table.bench.on_pan == ()

    assert {(len(frame), frame[:1], frame[-1:]) for frame in frames} == {(20, b"\n", b"\r")}


def test_the_address_outlives_the_cable() -> None:
    with simulated_table() as table:
        address = table.address
        table.unplug()
        gone = not os.path.lexists(address)
        table.plug()
        host = Host(table)
        host.close()

        assert gone
        assert table.address == address
    assert not Path(address).parent.exists()


def test_with_a_style_lines_come_over_the_real_port() -> None:
    clock = ManualClock()
    style = LineStyle(layout="{mark},{sign}{number} {unit}")
    with simulated_table(clock, quiet_profile(), style=style, at_key=True) as table:
        line = os.open(table.address, os.O_RDWR | os.O_NOCTTY | os.O_NONBLOCK)
        clock.wait(1)
        table.press_print()
        table.pump()
        assert os.read(line, 1000) == b"ST,+     0.0 g\r\n"
        os.close(line)
