"""``gramstand listen`` as a program of its own, against a balance on ``socket://``."""

import argparse
import json
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator

import pytest

from kiosk.__main__ import main
from kiosk.commands import listen as listen_command
from tests.helpers.sma_frames import frame, weight
from tests.helpers.sma_server import SmaServer

Listen = Callable[..., subprocess.Popen[str]]


@pytest.fixture
def server() -> Iterator[SmaServer]:
    server = SmaServer()
    yield server
    server.close()


@pytest.fixture
def listen() -> Iterator[Listen]:
    running: list[subprocess.Popen[str]] = []

    def start(*words: str) -> subprocess.Popen[str]:
        command = [sys.executable, "-m", "kiosk", "listen", *words]
        process = subprocess.Popen(
            command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
        )
        running.append(process)
        return process

    yield start
    for process in running:
        process.kill()
        process.communicate()


def ended(process: subprocess.Popen[str]) -> tuple[int, list[dict], str]:
    """Exit code, objects printed, messages."""
    out, messages = process.communicate(timeout=10)
    return process.returncode, [json.loads(line) for line in out.splitlines()], messages


def test_prints_so_many_frames_and_ends(listen: Listen, server: SmaServer) -> None:
    server.answer = frame("below zero")
    code, told, messages = ended(listen("--scale", server.address, "--readings", "3", "--json"))
    assert (code, messages) == (0, "")
    assert told == 3 * [
        {
            "value": "-0.100",
            "unit": "kg",
            "grams": "-100.000",
            "stable": True,
            "basis": "gross",
            "range": "under",
        }
    ]


def test_what_the_balance_says_at_once_is_heard(listen: Listen, server: SmaServer) -> None:
    server.greeting = b"READY\r" + frame("gross pounds") + frame("moving") + frame("tare refused")
    code, told, _ = ended(listen("--scale", server.address, "--readings", "3", "--json"))
    assert code == 0
    assert [line["grams"] for line in told] == ["2279.30165925", "7650.000", None]
    assert told[1]["stable"] is False
    assert told[2]["reason"] == "the balance could not tare"
    assert told[2]["range"] == "unusable"


def test_ends_after_so_many_seconds(listen: Listen, server: SmaServer) -> None:
    begun = time.monotonic()
    code, told, _ = ended(listen("--scale", server.address, "--seconds", "0.6", "--json"))
    assert code == 0
    assert 0.6 <= time.monotonic() - begun < 3
    assert 2 <= len(told) <= 7


def test_each_line_comes_out_at_once(listen: Listen, server: SmaServer) -> None:
    process = listen("--scale", server.address, "--json")
    assert process.stdout is not None
    assert json.loads(process.stdout.readline())["value"] == "123.45"


def test_a_lost_balance_that_returns_is_told_and_listened_to(
    listen: Listen, server: SmaServer
) -> None:
    process = listen("--scale", server.address, "--seconds", "9", "--readings", "8", "--json")
    assert process.stdout is not None
    process.stdout.readline()
    server.answer = weight("77.00")
    server.hang_up()
    code, told, _ = ended(process)
    happened = [line for line in told if "value" not in line]
    assert code == 0
    assert happened == [
        {"lost": "the other end closed the connection"},
        {"back": server.address},
    ]
    assert told[-1]["value"] == "77.00"


def test_a_balance_lost_for_good_ends_with_one(listen: Listen, server: SmaServer) -> None:
    process = listen("--scale", server.address, "--seconds", "0.7", "--json")
    assert process.stdout is not None
    process.stdout.readline()
    server.close()
    code, told, _ = ended(process)
    assert code == 1
    assert "lost" in told[-1]


def test_a_port_that_is_not_there_ends_at_once(listen: Listen, tmp_path) -> None:
    where = str(tmp_path / "none")
    code, told, messages = ended(listen("--scale", where, "--readings", "1", "--json"))
    assert (code, told) == (1, [{"lost": "no such port"}])
    assert where in messages


def test_with_seconds_a_port_may_appear_late(listen: Listen) -> None:
    server = SmaServer()
    server.close()
    process = listen("--scale", server.address, "--seconds", "6", "--readings", "1", "--json")
    assert process.stdout is not None
    assert "lost" in json.loads(process.stdout.readline())
    server = SmaServer(server.port)
    code, told, _ = ended(process)
    server.close()
    assert code == 0
    assert told[0] == {"back": server.address}
    assert told[1]["grams"] == "123.45"


def test_the_simulated_balance_can_be_listened_to(listen: Listen) -> None:
    code, told, _ = ended(listen("--scale", "simulated", "--readings", "2", "--json"))
    assert code == 0
    assert [line["grams"] for line in told] == ["0.0", "0.0"]


def test_without_json_a_person_can_read_it(listen: Listen, server: SmaServer) -> None:
    server.greeting = frame("gross pounds") + frame("moving") + frame("tare refused")
    process = listen("--scale", server.address, "--readings", "4")
    out, _ = process.communicate(timeout=10)
    assert out.replace("\u2009", " ").splitlines() == [
        "5.025 lb, still, gross, 2 279.30165925 g",
        "7.650 kg, moving, gross, 7 650.000 g",
        "no mass: the balance could not tare",
        "123.45 g, still, gross",
    ]


def test_control_c_ends_it_without_a_word(listen: Listen, server: SmaServer) -> None:
    process = listen("--scale", server.address, "--json")
    assert process.stdout is not None
    process.stdout.readline()
    process.send_signal(signal.SIGINT)
    code, _, messages = ended(process)
    assert (code, messages) == (0, "")


@pytest.mark.parametrize(
    "words",
    [
        ["--scale", "socket://nowhere"],
        ["--scale", "COM3", "--dialect", "smb"],
        ["--scale", "COM3", "--port-settings", "9600"],
        ["--scale", "COM3", "--readings", "0"],
        ["--scale", "COM3", "--seconds", "soon"],
        [],
    ],
)
def test_bad_words_end_with_two_and_one_clear_line(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    code = main(["listen", *words, "--json"])
    said = capsys.readouterr()
    assert (code, said.out) == (2, "")
    assert len(said.err.splitlines()) == 1


def test_who_only_counts_frames_gives_up_on_a_balance_that_stays_away(
    server: SmaServer, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(listen_command, "GIVE_UP_AFTER", 0.2)
    parser = argparse.ArgumentParser()
    listen_command.configure(parser)
    options = parser.parse_args(["--scale", server.address, "--readings", "1000"])
    threading.Timer(0.2, server.close).start()
    begun = time.monotonic()
    assert listen_command.run(argparse.Namespace(json=True, **vars(options))) == 1
    assert 0.4 <= time.monotonic() - begun < 3
    assert "lost" in json.loads(capsys.readouterr().out.splitlines()[-1])
