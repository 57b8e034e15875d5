"""What was recorded can be replayed: the same things happen on the pan as in the session."""

from __future__ import annotations

import json
import resource
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from pytest_mock import MockerFixture

from kiosk.commands.recording import read_recording
from tests.helpers.command import Command
from tests.helpers.fake_hid import STALE, FakeScale, installed
from tests.helpers.hid_reports import DATA, identified, report, scale
from tests.helpers.imports import ROOT
from tests.helpers.recorded_session import Session, put
from tests.helpers.sma_frames import frame
from tests.helpers.sma_server import SmaServer

TICK_S = 0.11  # a silence is noticed at the next tick, of which each side has its own


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "session.jsonl"


@pytest.fixture
def server() -> Iterator[SmaServer]:
    server = SmaServer()
    yield server
    server.close()


SCRIPTS = {
    "a load comes, is added to, and goes": {1.0: put(12.3), 4.0: put(50), 7.0: put(0)},
    "the cable is pulled and put back": {
        1.0: put(12.3),
        4.0: lambda session: session.port.unplug(),
        6.0: lambda session: session.port.plug(),
        9.0: put(0),
    },
    "the balance falls silent, and is so at the end": {
        1.0: put(12.3),
        3.0: lambda session: session.device.fall_silent(),
        6.5: lambda session: session.device.speak_again(),
        7.0: put(0),
        9.0: lambda session: session.device.fall_silent(),
    },
    "more than it can weigh": {1.0: put(2100), 4.0: put(0), 6.0: put(100)},
}


@pytest.mark.parametrize("dialect", ["sma", "lines"])
@pytest.mark.parametrize("script", SCRIPTS)
def test_a_replay_tells_what_the_session_told(
    gramstand: Command, file: Path, dialect: str, script: str
) -> None:
    session = Session(dialect, file)
    begun = session.now
    session.play(12.0, SCRIPTS[script])
    code, answers = gramstand.answers("replay", "--json", str(file))
    live = [
        (event.kind, None if event.grams is None else str(event.grams), event.trouble)
        for event in session.happened
    ]
    assert code == 0
    assert len(live) >= 4
    assert [(a["event"], a.get("grams"), a.get("reason")) for a in answers] == live
    assert [a["t"] for a in answers] == pytest.approx(
        [event.at - begun for event in session.happened], abs=TICK_S
    )


def test_a_hid_scale_is_replayed_by_its_own_descriptor(
    gramstand: Command, file: Path, mocker: MockerFixture
) -> None:
    nine = scale(identified(9), DATA)
    reports = [report(power=-1, weight=123, report_id=9)] * 20
    installed(mocker).plug(FakeScale(descriptor=nine)).sends(STALE, *reports)
    gramstand("listen", "--scale", "hid:1209:0001", "--readings", "20", "--record", str(file))
    recording = read_recording(file)
    assert (recording.header.dialect, recording.header.packets) == ("hid-scale", True)
    assert [packet.data for packet in recording.packets] == reports
    stretched = spread(file, seconds=0.1)
    _, answers = gramstand.answers("replay", "--json", str(stretched))
    assert [answer.get("grams") for answer in answers] == [None, "12.3"]


def spread(file: Path, seconds: float) -> Path:
    """The same recording with so much time between its lines."""
    header, *others = file.read_text("utf-8").splitlines()
    lines = [json.loads(line) | {"t": seconds * turn} for turn, line in enumerate(others)]
    file.write_text("\n".join([header, *map(json.dumps, lines)]) + "\n", "utf-8")
    return file


def test_listen_records_what_it_prints(gramstand: Command, file: Path, server: SmaServer) -> None:
    server.answer = frame("below zero")
    where = ("--scale", server.address)
    code, answers = gramstand.answers(
        "listen", *where, "--readings", "3", "--json", "--record", str(file)
    )
    recording = read_recording(file)
    assert code == 0
    assert len(answers) == 3
    assert (recording.header.dialect, recording.header.synthetic) == ("sma", False)
    assert b"".join(p.data for p in recording.packets).count(frame("below zero")) >= 3


def test_what_comes_from_the_simulated_balance_says_so(gramstand: Command, file: Path) -> None:
    gramstand("listen", "--scale", "simulated", "--readings", "1", "--record", str(file))
    assert read_recording(file).header.synthetic


def test_a_file_that_is_there_is_not_written_over(gramstand: Command, file: Path) -> None:
    file.write_text("mine", "utf-8")
    complaint = gramstand.refusal("listen", "--scale", "simulated", "--record", str(file))
    assert f"{file} is there already" in complaint
    assert file.read_text("utf-8") == "mine"


def test_a_folder_that_is_not_there_is_one_clear_line(gramstand: Command, tmp_path: Path) -> None:
    words = ("--scale", "simulated", "--record", str(tmp_path / "none" / "file"))
    assert "cannot be written: No such file or directory" in gramstand.refusal("listen", *words)


def test_words_that_name_no_balance_leave_no_file_behind(gramstand: Command, file: Path) -> None:
    gramstand.refusal("listen", "--scale", "socket://nowhere", "--record", str(file))
    assert not file.exists()


def no_more_than(size: int) -> None:
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))


def test_a_full_disk_ends_the_recording_with_one_sentence_and_listening_goes_on(
    gramstand: Command, file: Path, server: SmaServer
) -> None:
    words = ["--scale", server.address, "--readings", "12", "--json", "--record", str(file)]
    done = subprocess.run(
        [sys.executable, "-B", "-m", "kiosk", "listen", *words],
        cwd=ROOT,
        preexec_fn=lambda: no_more_than(500),
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert (done.returncode, len(done.stdout.splitlines())) == (0, 12)
    [said] = done.stderr.splitlines()
    assert said.startswith(f"The recording {file} ends here: ")
    assert said.endswith("Weighing goes on.")
    assert 0 < len(read_recording(file).packets) < 12
    assert gramstand("replay", str(file))[0] == 0


HEADER = '{"recording": 1, "dialect": "sma"}'


def test_an_unfinished_last_line_is_passed_over(file: Path) -> None:
    file.write_text(f'{HEADER}\n{{"t": 1.0, "hex": "0a"}}\n{{"t": 2.0, "he', "utf-8")
    assert [line.t for line in read_recording(file).lines] == [1.0]


def test_a_last_line_without_an_end_counts_if_it_is_whole(file: Path) -> None:
    file.write_text(f'{HEADER}\n{{"t": 1.0, "hex": "0a"}}\n{{"t": 2.0, "hex": "0d"}}', "utf-8")
    assert [line.t for line in read_recording(file).lines] == [1.0, 2.0]


def test_marks_of_later_kinds_do_not_hinder(gramstand: Command, file: Path) -> None:
    file.write_text(f'{HEADER}\n{{"t": 1.0, "hex": "", "bell": true}}\n', "utf-8")
    assert gramstand.answers("replay", "--json", str(file)) == (0, [])
