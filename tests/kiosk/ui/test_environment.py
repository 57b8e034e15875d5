"""What Kivy is told before it is imported. Each test in a fresh process: Kivy listens only once."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest


def run(code: str) -> str:
    finished = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, timeout=30, check=True
    )
    assert not finished.stderr
    return finished.stdout.strip()


def test_importing_the_environment_imports_no_kivy() -> None:
    code = "import sys; from kiosk.ui import environment; print('kivy' in sys.modules)"
    assert run(code) == "False"


def test_too_late_is_refused() -> None:
    code = """
import sys, types
sys.modules["kivy"] = types.ModuleType("kivy")
from kiosk.ui import environment
try:
    environment.prepare(width=800, height=480)
except RuntimeError as trouble:
    print(trouble)
"""
    assert "call prepare() before" in run(code)


@pytest.fixture(scope="module")
def prepared() -> dict[str, object]:
    code = """
import json, logging, sys
sys.argv = ["gramstand", "--records", "somewhere"]
stderr = sys.stderr
from kiosk.ui import environment
environment.prepare(width=800, height=480, full_screen=True, offscreen=True)
from kivy.config import Config
from kivy.metrics import Metrics
print(json.dumps({
    "input": Config.items("input"),
    "escape": Config.getint("kivy", "exit_on_escape"),
    "size": [Config.getint("graphics", side) for side in ("width", "height")],
    "full screen": Config.get("graphics", "fullscreen"),
    "cursor": Config.getint("graphics", "show_cursor"),
    "screensaver": Config.getint("graphics", "allow_screensaver"),
    "density": Metrics.density,
    "argv": sys.argv,
    "handlers": len(logging.getLogger().handlers),
    "same stderr": sys.stderr is stderr,
}))
"""
    answer: dict[str, object] = json.loads(run(code))
    return answer


def test_one_input_provider_only(prepared: dict[str, object]) -> None:
    assert prepared["input"] == [["mouse", "mouse,disable_multitouch"]]


def test_escape_does_not_leave(prepared: dict[str, object]) -> None:
    assert prepared["escape"] == 0


def test_the_window_is_as_asked(prepared: dict[str, object]) -> None:
    assert prepared["size"] == [800, 480]
    assert prepared["full screen"] == "auto"
    assert prepared["cursor"] == 0


def test_no_screensaver(prepared: dict[str, object]) -> None:
    assert prepared["screensaver"] == 0


def test_one_sp_is_one_pixel(prepared: dict[str, object]) -> None:
    assert prepared["density"] == 1


def test_the_command_line_and_the_log_stay_ours(prepared: dict[str, object]) -> None:
    assert prepared["argv"] == ["gramstand", "--records", "somewhere"]
    assert prepared["handlers"] == 0
    assert prepared["same stderr"] is True
