"""``gramstand`` without a command: what it needs, and what it says when it cannot open."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from kiosk.commands import open_kiosk, settings_file
from kiosk.commands.recording import read_recording
from tests.helpers.command import Command
from tests.helpers.imports import ROOT


@pytest.fixture
def gramstand(capsys: pytest.CaptureFixture[str]) -> Command:
    return Command(capsys)


# Bad input -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--scale", "socket://"), "lacks a host and a port"),
        (("--scale", "gopher://host:70"), "unknown gopher://"),
        (("--scale", ""), "no port is named"),
        (("--dialect", "klingon"), "there is no dialect called 'klingon'"),
        (("--port-settings", "fast"), "are no port settings"),
        (("--window", "800"), "write it like 800x480"),
        (("--window", "800x48O"), "write it like 800x480"),
        (("--window", "320x240"), "needs 640x384 pixels at the least"),
        (("--window", "800x480", "--full-screen"), "not allowed with"),
        (("--windows", "800x480"), "--windows"),
    ],
)
def test_bad_words_are_refused_in_one_line(
    gramstand: Command, words: tuple[str, ...], said: str
) -> None:
    assert said in gramstand.refusal(*words)


def test_a_broken_settings_file_is_refused_in_one_line(
    gramstand: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    broken = tmp_path / "settings.json"
    broken.write_text("{", encoding="utf-8")
    monkeypatch.setattr(settings_file, "settings_path", lambda: broken)
    assert str(broken) in gramstand.refusal()


@pytest.mark.parametrize("text", ["800x480", "800X480", "800×480"])
def test_a_window_size_may_be_written_in_several_ways(text: str) -> None:
    assert open_kiosk.window_size(text) == (800, 480)


# No display ----------------------------------------------------------------------------------


def there_is(monkeypatch: pytest.MonkeyPatch, **variables: str) -> None:
    """Only these of the variables that name a display, and no graphics card."""
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "SDL_VIDEODRIVER"):
        monkeypatch.delenv(name, raising=False)
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    exists = os.path.exists
    monkeypatch.setattr(os.path, "exists", lambda path: path != "/dev/dri" and exists(path))
    monkeypatch.setattr(sys, "platform", "linux")


def test_without_a_display_it_says_that_it_runs_unseen_and_how_to_see_it(
    gramstand: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    there_is(monkeypatch)
    asked: list[bool] = []

    def no_window(*_size: int, full_screen: bool, offscreen: bool) -> bool:
        asked.append(offscreen)
        return False

    monkeypatch.setattr(open_kiosk, "prepare_window", no_window)
    code, out, err = gramstand()
    assert (code, out, asked) == (1, "", [True])
    assert "runs unseen" in err
    assert "gramstand tour --pictures" in err


@pytest.mark.parametrize("variable", ["DISPLAY", "WAYLAND_DISPLAY", "SDL_VIDEODRIVER"])
def test_a_named_display_is_one(monkeypatch: pytest.MonkeyPatch, variable: str) -> None:
    there_is(monkeypatch, **{variable: ":0"})
    assert open_kiosk.has_display()


def test_a_graphics_card_alone_is_a_display(monkeypatch: pytest.MonkeyPatch) -> None:
    there_is(monkeypatch)
    monkeypatch.setattr(os.path, "exists", lambda path: path == "/dev/dri")
    assert open_kiosk.has_display()


def test_other_systems_always_have_one(monkeypatch: pytest.MonkeyPatch) -> None:
    there_is(monkeypatch)
    monkeypatch.setattr(sys, "platform", "darwin")
    assert open_kiosk.has_display()


# No graphics ---------------------------------------------------------------------------------

LIBRARY_MISSING = "sys.modules['kivy.core.window'] = None"
NO_PROVIDER = "sys.modules['kivy.core.window'] = types.SimpleNamespace(Window=None)"


@pytest.mark.parametrize("lack", [LIBRARY_MISSING, NO_PROVIDER])
def test_without_graphics_libraries_it_says_what_to_install(lack: str, tmp_path: Path) -> None:
    program = f"import sys, types; {lack}; from kiosk.__main__ import main; sys.exit(main([]))"
    done = in_a_process("-c", program, home=tmp_path)
    assert done.returncode == 1
    assert "apt-get install libgl1 libegl1" in done.stderr
    assert "Traceback" not in done.stderr


def in_a_process(*words: str, home: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, *words],
        cwd=ROOT,
        env=os.environ | {"HOME": str(home), "SDL_VIDEODRIVER": "offscreen"},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )


# A whole opening -----------------------------------------------------------------------------


def test_an_ended_kiosk_lets_go_in_order(tmp_path: Path) -> None:
    records = tmp_path / "records.sqlite"
    command = [sys.executable, "-m", "kiosk", "--records", str(records), "--window", "800x480"]
    environment = os.environ | {"HOME": str(tmp_path), "SDL_VIDEODRIVER": "offscreen"}
    with subprocess.Popen(command, cwd=ROOT, env=environment, stderr=subprocess.PIPE) as kiosk:
        wait_for(lambda: records.exists() and records.stat().st_size > 0)
        kiosk.terminate()
        _, complaints = kiosk.communicate(timeout=20)
    assert (kiosk.returncode, complaints) == (0, b"")
    assert not records.with_name(records.name + "-journal").exists()


def test_a_kiosk_records_what_its_balance_says(tmp_path: Path) -> None:
    file = tmp_path / "session.jsonl"
    words = ["--records", str(tmp_path / "records.sqlite"), "--record", str(file)]
    environment = os.environ | {"HOME": str(tmp_path), "SDL_VIDEODRIVER": "offscreen"}
    with subprocess.Popen([sys.executable, "-m", "kiosk", *words], cwd=ROOT, env=environment) as it:
        wait_for(lambda: file.exists() and file.read_bytes().count(b"\n") > 5)
        it.terminate()
        assert it.wait(timeout=20) == 0
    recording = read_recording(file)
    assert (recording.header.dialect, recording.header.synthetic) == ("sma", True)
    assert recording.lines[-1].hex == b""  # closed in order


def test_a_recording_that_is_there_is_not_written_over(gramstand: Command, tmp_path: Path) -> None:
    assert "is there already" in gramstand.refusal("--record", str(tmp_path))


def wait_for(happened: Callable[[], bool]) -> None:
    """Wait until it has happened, at most twenty seconds of real time."""
    end = time.monotonic() + 20
    while not happened():
        assert time.monotonic() < end
        time.sleep(0.02)
