from __future__ import annotations

from decimal import Decimal
from functools import reduce
from operator import xor

import pytest

from drivers.simulated.indicator import Shown, State
from drivers.simulated.line_device import BOOT_TEXT, LineDevice
from drivers.simulated.line_style import LineStyle
from drivers.simulated.weighing_pan import WeighingPan
from tests.helpers.simulated_desk import quiet_profile

PLAIN = LineStyle(layout="{mark},{sign}{number} {unit}")


def shown(value: str = "12.30", *, moving: bool = False, **more: object) -> Shown:
    traits = {"unit": "g", "net": False, "state": State.IN_RANGE} | more
    return Shown(value=Decimal(value), moving=moving, **traits)  # type: ignore[arg-type]


def written(layout: str, what: Shown | None = None, **traits: object) -> bytes:
    style = LineStyle(layout=layout, **traits)  # type: ignore[arg-type]
    return style.line(what or shown(), 3_725.9, 12_345)


@pytest.mark.parametrize(
    ("layout", "traits", "line"),
    [
        ("{mark},{sign}{number} {unit}", {}, b"ST,+   12.30 g\r\n"),
        ("{sign}{number}{unit}", {"pad": "0", "plus": " "}, b" 00012.30g\r\n"),
        ("{signed} {unit}", {"plus": ""}, b"   12.30 g\r\n"),
        ("{signed} {unit}", {"point": ",", "end": b"\r"}, b"  +12,30 g\r"),
        ("{basis} {signed}", {"width": 0}, b"GS +12.30\r\n"),
        ("{number}{unit}", {"width": 0, "unit_width": 3}, b"12.30  g\r\n"),
        ("{clock} {counter} {number}", {"width": 0}, b"01:02:05 2345 12.30\r\n"),
        ("{number}", {"width": 0, "wrapped": True, "end": b""}, b"\x0212.30\x03"),
    ],
)
def test_a_line_is_written_as_its_style_says(
    layout: str, traits: dict[str, object], line: bytes
) -> None:
    assert written(layout, **traits) == line


def test_a_negative_number_has_its_minus_where_the_sign_stands() -> None:
    assert written("{sign}{number}", shown("-0.12")) == b"-    0.12\r\n"
    assert written("{signed}", shown("-0.12")) == b"   -0.12\r\n"


def test_while_moving_mark_brackets_and_unit_change() -> None:
    style = {"brackets": True, "unit_lacks": True, "width": 6}
    assert written("{mark} {number} {unit};", shown(), **style) == b"ST  12.30 g;\r\n"
    assert written("{mark} {number} {unit};", shown(moving=True), **style) == b"US  12.3[0]  ;\r\n"


@pytest.mark.parametrize("state", [State.OVER, State.NOT_ZEROED])
def test_beyond_the_range_there_is_no_number(state: State) -> None:
    assert written("{number}", shown(state=state), over="OL,") == b"OL,\r\n"


def test_check_characters_check_what_stands_before_them() -> None:
    line = written("{number} {unit},", check="xor").removesuffix(b"\r\n")
    assert int(line[-2:], 16) == reduce(xor, line[:-2])
    line = written("{number} {unit},", check="sum").removesuffix(b"\r\n")
    assert int(line[-2:], 16) == sum(line[:-2]) % 256


class Desk:
    """A balance that sends lines, on a clock that the test moves."""

    def __init__(self) -> None:
        self.now = 0.0
        self.pan = WeighingPan(quiet_profile())
        self.device = LineDevice(self.pan, PLAIN)

    def wait(self, seconds: float) -> list[bytes]:
        self.now += seconds
        return self.device.due(self.now).splitlines()


def test_a_line_comes_with_each_reading() -> None:
    desk = Desk()
    assert desk.wait(1.05) == [b"ST,+     0.0 g"] * 10


def test_a_load_moves_and_then_rests() -> None:
    desk = Desk()
    desk.pan.load(50.0, 0.0)
    lines = desk.wait(3.0)
    assert lines[0].startswith(b"US,")
    assert lines[-1] == b"ST,+    50.0 g"


def test_what_the_host_sends_is_lost() -> None:
    desk = Desk()
    assert desk.device.receive(b"\nW\r", 0.25) == b"ST,+     0.0 g\r\n" * 2


def test_keys_do_as_on_any_balance() -> None:
    desk = Desk()
    desk.pan.load(20.0, 0.0)
    desk.wait(3.0)
    assert desk.device.press_tare(3.0)
    assert desk.wait(0.1)[-1] == b"ST,+     0.0 g"
    assert desk.device.press_zero(3.1)
    desk.device.press_unit(3.1)
    assert desk.wait(0.1)[-1] == b"ST,+  0.0000 kg"


def test_silent_or_switched_off_it_sends_nothing() -> None:
    desk = Desk()
    desk.device.fall_silent()
    assert desk.wait(1.0) == []
    desk.device.speak_again()
    assert desk.wait(1.0)
    desk.device.switch_off(desk.now)
    assert desk.wait(1.0) == []
    assert not desk.device.press_zero(desk.now)
    assert not desk.device.press_tare(desk.now)


def test_switched_on_under_a_load_it_shows_zero() -> None:
    desk = Desk()
    desk.device.switch_off(0.0)
    desk.pan.load(20.0, 0.0)
    desk.wait(3.0)
    desk.device.switch_on(desk.now)
    boot, *lines = desk.wait(0.5)
    assert boot == BOOT_TEXT
    assert set(lines) == {b"ST,+     0.0 g"}


def test_faults_spoil_lines_on_their_way() -> None:
    desk = Desk()
    desk.device.faults.repeat()
    assert len(desk.wait(0.15)) == 2


def keyed() -> LineDevice:
    return LineDevice(WeighingPan(quiet_profile()), PLAIN, at_key=True)


def test_a_balance_that_prints_at_its_key_says_nothing_by_itself() -> None:
    assert keyed().due(5.0) == b""


def test_its_print_key_sends_one_line() -> None:
    device = keyed()
    device.press_print(5.0)
    assert device.due(5.0) == b"ST,+     0.0 g\r\n"
    assert device.due(9.0) == b""


def test_switched_off_its_print_key_does_nothing() -> None:
    device = keyed()
    device.switch_off(1.0)
    device.press_print(2.0)
    assert device.due(3.0) == b""


def test_a_word_stands_in_place_of_the_number_until_it_is_over() -> None:
    device = LineDevice(WeighingPan(quiet_profile()), PLAIN)
    device.show_word("Err 2")
    assert set(device.due(1.0).splitlines()) == {b"Err 2"}
    device.show_word(None)
    assert set(device.due(2.0).splitlines()) == {b"ST,+     0.0 g"}


def test_a_unit_may_have_another_word() -> None:
    assert written("{number} {unit}", width=0, units={"g": "pcs"}) == b"12.30 pcs\r\n"
