"""Conversations with the simulated balance; frames by position after SMA SCP-0499."""

from __future__ import annotations

import pytest

from drivers.simulated.profile import MotionFlag
from drivers.simulated.sma_device import BOOT_TEXT
from tests.helpers.simulated_desk import SimulatedDesk, quiet_profile

KILOGRAMS = quiet_profile("1", "15000")


def status(frame: bytes) -> str:
    assert len(frame) == 20
    return chr(frame[1])


def mass(frame: bytes) -> str:
    assert len(frame) == 20
    return frame[6:16].decode()


# The mass


def test_plain_grams() -> None:
    desk = SimulatedDesk(quiet_profile("0.01"))
    desk.load(123.45)

    assert desk.ask(b"W") == bytes.fromhex(
        "0A 20 31 47 20 20 20 20 20 20 31 32 33 2E 34 35 67 20 20 0D"
    )


def test_moving_kilograms() -> None:
    desk = SimulatedDesk(quiet_profile("1", "15000", motion_flag=MotionFlag.NEVER))
    desk.ask(b"Ukg ")
    desk.load(7650)

    assert desk.ask(b"W") == bytes.fromhex(
        "0A 20 31 47 4D 20 20 20 20 20 20 37 2E 36 35 30 6B 67 20 0D"
    )


def test_below_zero() -> None:
    desk = SimulatedDesk(KILOGRAMS)
    desk.ask(b"Ukg ")
    desk.load(100)
    desk.ask(b"Z")
    desk.load(0)

    assert desk.ask(b"W") == bytes.fromhex(
        "0A 55 31 47 20 20 20 20 20 20 2D 30 2E 31 30 30 6B 67 20 0D"
    )


def test_centre_of_zero() -> None:
    assert SimulatedDesk().ask(b"W") == b"\nZ1G         0.0g  \r"


def test_over_capacity() -> None:
    desk = SimulatedDesk()
    desk.load(2400)

    assert status(desk.ask(b"W")) == "O"


def test_the_mass_is_held_between_refreshes() -> None:
    desk = SimulatedDesk()
    desk.pan.load(100, desk.clock.now)
    desk.wait(0.31)
    first = desk.ask(b"W")
    desk.wait(0.05)
    held = desk.ask(b"W")
    desk.wait(0.05)

    assert first == held != desk.ask(b"W")


@pytest.mark.parametrize("letter", [b"H", b"Q", b"S"])
def test_high_resolution(letter: bytes) -> None:
    desk = SimulatedDesk()
    desk.load(12.3456)

    assert desk.ask(letter) == b"\n 1g       12.35g  \r"


@pytest.mark.parametrize(("letter", "digits"), [(b"P", 1), (b"Q", 2)])
def test_waits_for_rest(letter: bytes, digits: int) -> None:
    desk = SimulatedDesk()
    desk.pan.load(50, desk.clock.now)
    desk.wait(0.2)

    assert desk.ask(letter) == b""
    came = desk.wait(3.0)
    assert float(mass(came)) == pytest.approx(50, abs=0.05)
    assert mass(came)[-digits - 1] == "."
    assert chr(came[4]) == " "
    assert desk.wait(1.0) == b""


def test_rest_that_never_comes_is_answered_with_dashes() -> None:
    desk = SimulatedDesk()
    desk.pan.lean(50, 8, desk.clock.now)
    desk.wait(0.2)
    desk.ask(b"P")

    assert desk.wait(9.5) == b""
    assert desk.wait(1.0) == b"\n 1GM ----------   \r"


def test_repeats_at_each_refresh_until_the_next_request() -> None:
    desk = SimulatedDesk()
    first = desk.ask(b"R")
    repeated = desk.wait(1.001)
    desk.ask(b"W")

    assert repeated == first * 10
    assert desk.wait(1.0) == b""


def test_repeats_follow_the_load() -> None:
    desk = SimulatedDesk()
    desk.ask(b"R")
    desk.pan.load(30, desk.clock.now)
    frames = desk.wait(3.001)

    assert mass(frames[:20]) != mass(frames[-20:]) == "      30.0"


# Zero and tare


def test_zero() -> None:
    desk = SimulatedDesk()
    desk.load(15)

    assert desk.ask(b"Z") == b"\nZ1G         0.0g  \r"
    assert mass(desk.ask(b"W")).strip() == "0.0"


def test_zero_refused_in_motion_says_so_until_it_is_still() -> None:
    desk = SimulatedDesk()
    desk.pan.load(15, desk.clock.now)
    desk.wait(0.2)

    assert desk.ask(b"Z") == b"\nE1GM ----------g  \r"
    assert status(desk.ask(b"W")) == "E"
    desk.wait(3)
    assert desk.ask(b"W") == b"\n 1G        15.0g  \r"


def test_zero_refused_beyond_its_range_says_so_once() -> None:
    desk = SimulatedDesk()
    desk.load(300)

    assert desk.ask(b"Z") == b"\nE1G  ----------g  \r"
    assert mass(desk.ask(b"W")).strip() == "300.0"


def test_tare_and_its_report() -> None:
    desk = SimulatedDesk()
    desk.load(12.3)

    assert desk.ask(b"T") == b"\n 1N         0.0g  \r"
    desk.load(112.3)
    assert desk.ask(b"W") == b"\n 1N       100.0g  \r"
    assert desk.ask(b"H") == b"\n 1n      100.00g  \r"
    assert desk.ask(b"M") == b"\n 1T        12.3g  \r"
    assert desk.ask(b"C") == b"\n 1G       112.3g  \r"


def test_tare_refused_in_motion_says_so_once() -> None:
    desk = SimulatedDesk(KILOGRAMS)
    desk.ask(b"Ukg ")
    desk.pan.load(500, desk.clock.now)
    desk.wait(0.2)

    assert desk.ask(b"T") == bytes.fromhex(
        "0A 54 31 47 4D 20 2D 2D 2D 2D 2D 2D 2D 2D 2D 2D 6B 67 20 0D"
    )
    assert status(desk.ask(b"W")) == " "


def test_preset_tare_in_the_present_unit() -> None:
    desk = SimulatedDesk(KILOGRAMS)
    desk.ask(b"Ukg ")
    desk.load(1450)

    assert desk.ask(b"T     0.200") == b"\n 1N       1.250kg \r"
    assert desk.ask(b"M") == b"\n 1T       0.200kg \r"


@pytest.mark.parametrize("value", [b"heavy", b"1_0", b"--1", b"1e3", b"."])
def test_a_preset_tare_that_is_no_number(value: bytes) -> None:
    assert SimulatedDesk().ask(b"T" + value) == b"\n?\r"


def test_a_preset_tare_beyond_the_capacity() -> None:
    desk = SimulatedDesk()

    assert status(desk.ask(b"T9999")) == "T"
    assert chr(desk.ask(b"W")[3]) == "G"


# Units


def test_units_go_round() -> None:
    desk = SimulatedDesk()

    assert [desk.ask(b"U")[16:19] for _ in range(4)] == [b"kg ", b"oz ", b"lb ", b"g  "]


def test_an_unknown_unit_is_ignored() -> None:
    assert SimulatedDesk().ask(b"Uozt")[16:19] == b"g  "


# The dialogues


def test_about() -> None:
    desk = SimulatedDesk()
    lines = [desk.ask(b"A"), *(desk.ask(b"B") for _ in range(5))]

    assert lines[0] == b"\nSMA:2/1.0\r"
    assert [line[1:5] for line in lines[1:4]] == [b"MFG:", b"MOD:", b"REV:"]
    assert lines[4:] == [b"\nEND:\r", b"\n?\r"]


def test_information() -> None:
    desk = SimulatedDesk(quiet_profile("5", "15000"))
    desk.ask(b"Ukg ")
    lines = [desk.ask(b"I"), *(desk.ask(b"N") for _ in range(5))]

    assert lines == [
        b"\nSMA:2/1.0\r",
        b"\nTYP:S\r",
        b"\nCAP:kg :15.000:5:3\r",
        b"\nCMD:HPQRSTMCUIN\r",
        b"\nEND:\r",
        b"\n?\r",
    ]


@pytest.mark.parametrize(
    ("readability", "line"),
    [
        ("0.1", b"\nCAP:g  :2000.0:1:1\r"),
        ("0.05", b"\nCAP:g  :2000.00:5:2\r"),
        ("2", b"\nCAP:g  :2000:2:0\r"),
    ],
)
def test_capacity_line(readability: str, line: bytes) -> None:
    desk = SimulatedDesk(quiet_profile(readability))
    desk.ask(b"I")
    desk.ask(b"N")

    assert desk.ask(b"N") == line


def test_diagnostics() -> None:
    assert SimulatedDesk().ask(b"D") == b"\n    \r"


@pytest.mark.parametrize("request_", [b"K", b"X1", b"W5", b"w", b"B", b"N"])
def test_unknown_requests(request_: bytes) -> None:
    assert SimulatedDesk().ask(request_) == b"\n?\r"


def test_a_byte_with_a_parity_error() -> None:
    assert SimulatedDesk().ask(b"\xd7") == b"\n!\r"


def test_escape_ends_everything_without_a_word() -> None:
    desk = SimulatedDesk()
    desk.ask(b"A")
    desk.ask(b"R")

    assert desk.device.receive(b"\x1b", desk.clock.now) == b""
    assert desk.wait(1.0) == b""
    assert desk.ask(b"B") == b"\n?\r"


@pytest.mark.parametrize("letter", list("HPQRSTMCUIN"))
def test_level_1_knows_no_letter_of_level_2(letter: str) -> None:
    assert SimulatedDesk(level=1).ask(letter.encode()) == b"\n?\r"


@pytest.mark.parametrize("request_", [b"T0.2", b"Ukg "])
def test_level_1_knows_no_data(request_: bytes) -> None:
    assert SimulatedDesk(level=1).ask(request_) == b"\n?\r"


def test_level_1_says_that_it_is() -> None:
    desk = SimulatedDesk(level=1)

    assert desk.ask(b"A") == b"\nSMA:1/1.0\r"
    assert len(desk.ask(b"W")) == len(desk.ask(b"Z")) == 20


# Keys


def test_its_own_keys() -> None:
    desk = SimulatedDesk()
    desk.load(12.3)

    assert desk.device.press_tare(desk.clock.now)
    assert desk.ask(b"W") == b"\n 1N         0.0g  \r"
    assert desk.device.press_zero(desk.clock.now)
    assert desk.ask(b"W") == b"\nZ1G         0.0g  \r"
    desk.device.press_unit(desk.clock.now)
    assert desk.ask(b"W")[16:19] == b"kg "


def test_a_tare_key_refused_in_motion_shows_in_the_next_frame() -> None:
    desk = SimulatedDesk()
    desk.pan.load(50, desk.clock.now)
    desk.wait(0.2)

    assert not desk.device.press_tare(desk.clock.now)
    assert status(desk.ask(b"W")) == "T"


# Faults


def test_silence_is_silent_and_forgets_what_was_asked() -> None:
    desk = SimulatedDesk()
    desk.ask(b"R")
    desk.device.fall_silent()

    assert desk.ask(b"W") == desk.wait(5) == b""
    desk.device.speak_again()
    assert desk.wait(5) == b""
    assert len(desk.ask(b"W")) == 20


def test_switching_on_under_a_cup_zeroes_it() -> None:
    desk = SimulatedDesk()
    desk.load(112.3)
    desk.device.switch_off(desk.clock.now)
    assert desk.ask(b"W") == b""
    desk.device.switch_on(desk.clock.now)

    assert desk.wait(0.1) == BOOT_TEXT
    assert desk.ask(b"W") == b"\nZ1G         0.0g  \r"
    desk.load(0)
    assert mass(desk.ask(b"W")).strip() == "-112.3"


def test_a_load_put_on_while_off_is_there_afterwards() -> None:
    desk = SimulatedDesk()
    desk.device.switch_off(desk.clock.now)
    desk.load(500)
    desk.device.switch_on(desk.clock.now)
    desk.wait(0.1)

    assert desk.ask(b"W") == b"\nI1G  ----------g  \r"


def test_keys_do_nothing_while_off() -> None:
    desk = SimulatedDesk()
    desk.load(12.3)
    desk.device.switch_off(desk.clock.now)

    assert not desk.device.press_tare(desk.clock.now)
    assert not desk.device.press_zero(desk.clock.now)


def test_a_tare_is_forgotten_by_switching_off() -> None:
    desk = SimulatedDesk()
    desk.load(12.3)
    desk.ask(b"T")
    desk.load(0)
    desk.device.switch_off(desk.clock.now)
    desk.device.switch_on(desk.clock.now)
    desk.wait(0.1)

    assert desk.ask(b"W") == b"\nZ1G         0.0g  \r"


def test_frames_leave_through_the_faulty_line() -> None:
    desk = SimulatedDesk()
    clean = desk.ask(b"W")
    desk.device.faults.repeat()
    desk.device.faults.tear()
    desk.device.faults.garble()

    assert desk.ask(b"W") == clean * 2
    assert len(desk.ask(b"W")) < 20
    assert max(desk.ask(b"W")) >= 0x80
    assert desk.ask(b"W") == clean
