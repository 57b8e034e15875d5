"""The balance in use: what it says is recorded until another one is chosen."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

import pytest

from drivers.errors import BadAddress
from drivers.events import BalanceEvent, ReadingReceived
from drivers.recorder import ANOTHER_SCALE, Recorder
from drivers.simulated.table import simulated_table
from kiosk.commands.recording import read_recording
from kiosk.ui.connection import SIMULATED, Connection, ScaleChoice

TURN_S = 0.1


class Desk:
    """A connection on a clock that a test moves, with a recorder."""

    def __init__(self, file: Path) -> None:
        self.file = file
        self.now = 10.0
        self.ended: list[str] = []
        self.heard: list[BalanceEvent] = []
        self.table = simulated_table(clock=lambda: self.now, seed=3)
        self.recorder = Recorder(file, ended=self.ended.append, clock=lambda: self.now)
        self.connection = Connection(
            heard=self.heard.append,
            later=_at_once,
            clock=lambda: self.now,
            stepped=True,
            recorder=self.recorder,
        )

    def use(self, where: str) -> None:
        self.connection.use(ScaleChoice(where=where), self.table.address)

    def run(self, turns: int) -> None:
        for _ in range(turns):
            self.connection.pump()
            self.table.pump()
            self.connection.pump()
            self.now += TURN_S

    def readings(self) -> int:
        return sum(isinstance(event, ReadingReceived) for event in self.heard)

    def close(self) -> None:
        self.connection.let_go()
        self.recorder.close()
        self.table.close()


def _at_once(call: Callable[[], None]) -> None:
    call()


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Desk]:
    with closing(Desk(tmp_path / "session.jsonl")) as desk:
        yield desk


@pytest.mark.parametrize(("where", "synthetic"), [(SIMULATED, True), ("COM3", False)])
def test_what_is_heard_is_recorded(desk: Desk, where: str, synthetic: bool) -> None:
    desk.use(where)
    desk.run(10)
    recording = read_recording(desk.file)
    assert desk.readings() >= 5
    assert len(recording.packets) >= desk.readings()
    assert (recording.header.dialect, recording.header.synthetic) == ("sma", synthetic)
    assert recording.header.note == f"recorded from {where}"


def test_another_scale_ends_the_recording_and_is_weighed_on(desk: Desk) -> None:
    desk.use(SIMULATED)
    desk.run(10)
    recorded, heard = desk.file.read_bytes(), desk.readings()
    desk.use("COM3")
    desk.run(10)
    assert desk.ended == [ANOTHER_SCALE]
    assert desk.file.read_bytes() == recorded
    assert desk.readings() > heard


def test_words_that_name_no_balance_end_nothing(desk: Desk) -> None:
    desk.use(SIMULATED)
    with pytest.raises(BadAddress):
        desk.connection.use(ScaleChoice(where="gopher://host:70"))
    desk.run(10)
    assert desk.ended == []
    assert read_recording(desk.file).packets
