"""A recording is written line by line, and what goes wrong with its file stays with it."""

from __future__ import annotations

import errno
import json
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from pytest_mock import MockerFixture

from drivers.errors import Reason
from drivers.events import Back, Identified, Lost
from drivers.packet import Packet
from drivers.recorder import ANOTHER_SCALE, Recorder

SCALE = {"where": "COM3", "dialect": "lines", "packets": False, "synthetic": False}


class Desk:
    """A recorder, its file, and what it told."""

    def __init__(self, folder: Path) -> None:
        self.file = folder / "session.jsonl"
        self.told: list[str] = []
        self.now = 100.0
        self.recorder = Recorder(self.file, ended=self.told.append, clock=lambda: self.now)

    def begin(self, **more: Any) -> None:
        self.recorder.begin(**(SCALE | more))

    @property
    def lines(self) -> list[dict[str, Any]]:
        return [json.loads(line) for line in self.file.read_text("utf-8").splitlines()]


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Desk]:
    desk = Desk(tmp_path)
    yield desk
    desk.recorder.close()


def full_disk(desk: Desk, mocker: MockerFixture, takes: int | None = None) -> None:
    """From now on the file takes so many bytes of a line; nothing at all for None."""
    real = desk.recorder._file

    def write(line: bytes) -> int:
        if takes is None:
            raise OSError(errno.ENOSPC, "No space left on device")
        return real.write(line[:takes])

    crowded = mocker.MagicMock(wraps=real, closed=False)
    crowded.write.side_effect = write
    crowded.close.side_effect = lambda: (real.close(), setattr(crowded, "closed", True))
    desk.recorder._file = crowded


def test_the_header_says_what_was_recorded(desk: Desk) -> None:
    desk.begin(where="hid:1209:0001", dialect="hid-scale", packets=True, synthetic=True)
    assert desk.lines == [
        {
            "recording": 1,
            "dialect": "hid-scale",
            "packets": True,
            "synthetic": True,
            "note": "recorded from hid:1209:0001",
        }
    ]


def test_what_is_not_so_is_left_out_of_the_header(desk: Desk) -> None:
    desk.begin()
    assert desk.lines == [{"recording": 1, "dialect": "lines", "note": "recorded from COM3"}]


def test_each_packet_is_in_the_file_at_once_with_its_time_from_the_first(desk: Desk) -> None:
    desk.begin()
    desk.recorder.packet(Packet(at=100.0, data=b"1 g\r\n"))
    desk.recorder.packet(Packet(at=100.1000004, data=b"\x00\xff"))
    assert desk.lines[1:] == [{"t": 0.0, "hex": "3120670d0a"}, {"t": 0.1, "hex": "00ff"}]


def test_a_loss_and_a_return_are_marked_on_lines_without_bytes(desk: Desk) -> None:
    desk.begin()
    desk.recorder.heard(Lost(reason=Reason.UNPLUGGED, detail="gone", at=7.0))
    desk.recorder.heard(Back(where="COM4", at=9.5))
    assert desk.lines[1:] == [
        {"t": 0.0, "hex": "", "lost": "the port went away"},
        {"t": 2.5, "hex": "", "back": "COM4"},
    ]


def test_a_return_carries_the_descriptor_that_holds_from_then_on(desk: Desk) -> None:
    desk.begin()
    desk.recorder.described(b"\x05\x8d")
    desk.recorder.heard(Back(where="hid:1", at=1.0))
    assert desk.lines[1] == {"t": 0.0, "hex": "", "back": "hid:1", "descriptor": "058d"}


def test_the_readability_is_marked_once_the_balance_has_told_it(desk: Desk) -> None:
    desk.begin()
    desk.recorder.heard(Identified(name="x", capacity=None, readability=Decimal("0.1"), at=1.0))
    desk.recorder.heard(Identified(name="x", capacity=Decimal(9), readability=None, at=2.0))
    assert desk.lines[1:] == [{"t": 0.0, "hex": "", "readability_g": 0.1}]


def test_closing_says_how_long_it_went_on(desk: Desk) -> None:
    desk.begin()
    desk.recorder.packet(Packet(at=100.0, data=b"x"))
    desk.now = 104.0
    desk.recorder.close()
    desk.recorder.close()
    assert desk.lines[-1] == {"t": 4.0, "hex": ""}
    assert desk.told == []


def test_a_file_that_is_there_is_not_touched(desk: Desk) -> None:
    desk.begin()
    before = desk.file.read_bytes()
    with pytest.raises(FileExistsError):
        Recorder(desk.file, ended=desk.told.append)
    assert desk.file.read_bytes() == before


def test_nothing_to_record_leaves_no_file_behind(desk: Desk) -> None:
    desk.recorder.close()
    assert not desk.file.exists()


def test_another_scale_ends_the_recording_of_the_first(desk: Desk) -> None:
    desk.begin()
    desk.begin(where="COM9")
    desk.recorder.packet(Packet(at=1.0, data=b"x"))
    assert desk.told == [ANOTHER_SCALE]
    assert len(desk.lines) == 1


def test_the_same_scale_in_another_dialect_goes_on(desk: Desk) -> None:
    desk.begin()
    desk.begin(dialect="sma")
    desk.recorder.packet(Packet(at=1.0, data=b"x"))
    assert desk.told == []
    assert len(desk.lines) == 2


def test_a_full_disk_ends_the_recording_with_one_word_for_it(
    desk: Desk, mocker: MockerFixture
) -> None:
    desk.begin()
    full_disk(desk, mocker)
    for at in (1.0, 2.0):
        desk.recorder.packet(Packet(at=at, data=b"x"))
    desk.recorder.heard(Back(where="COM3", at=3.0))
    assert desk.told == ["No space left on device"]


def test_half_a_line_is_taken_back(desk: Desk, mocker: MockerFixture) -> None:
    desk.begin()
    full_disk(desk, mocker, takes=9)
    desk.recorder.packet(Packet(at=1.0, data=b"x"))
    assert desk.told == ["the disk took only part of a line"]
    assert [line["dialect"] for line in desk.lines] == ["lines"]
