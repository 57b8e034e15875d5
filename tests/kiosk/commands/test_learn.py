"""``gramstand learn``: a balance that sends lines at a real port, and what is refused."""

from __future__ import annotations

import json
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from drivers.dialects import use_shapes
from drivers.line_shape import shape_from_json
from drivers.passive_listening import USUAL_SETTINGS, Heard
from drivers.simulated.line_device import LineDevice
from drivers.simulated.port import SimulatedPort
from drivers.simulated.profile import Profile
from drivers.simulated.weighing_pan import WeighingPan
from kiosk.commands import learn as learn_command
from kiosk.commands.shapes import shapes_folder
from tests.helpers.command import Command
from tests.helpers.imports import ROOT
from tests.helpers.line_styles import KINDS, taught

LOAD_G = 52.1
UNPLUGGED = str(Path(__file__).with_name("no port"))


@pytest.fixture(autouse=True)
def _own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A configuration folder that no other test knows; nothing is kept in this process."""
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    monkeypatch.setenv("HOME", str(tmp_path))
    yield
    use_shapes(None)


class Table:
    """A balance that sends lines at a port of its own, and the hand that loads its pan."""

    def __init__(self, kind: str) -> None:
        profile = Profile(readings_per_second=20.0, noise=0.0)
        self.pan = WeighingPan(profile, time.monotonic())
        self.lock = threading.RLock()
        self.port = SimulatedPort(LineDevice(self.pan, KINDS[kind].style), lock=self.lock)
        self.port.start()

    def put(self, grams: float) -> None:
        with self.lock:
            self.pan.load(grams, time.monotonic())


def started(*words: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-m", "kiosk", *words, "--json"],
        cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip


def told(process: subprocess.Popen[str]) -> list[dict[str, Any]]:
    out, err = process.communicate(timeout=20)
    assert process.returncode == 0, err
    return [json.loads(line) for line in out.splitlines()]


def test_what_was_learned_at_a_port_can_be_listened_to_by_its_name() -> None:
    table = Table("clock before")
    where = table.port.address
    process = started("learn", "--scale", where, "--seconds", "5", "--save", "by the window")
    assert process.stderr is not None
    assert "5.0 s from now" in process.stderr.readline()
    hands = [threading.Timer(at, table.put, [grams]) for at, grams in ((1.4, LOAD_G), (3.1, 0))]
    for hand in hands:
        hand.start()
    [answer] = told(process)
    shape = answer.pop("shape")
    assert 0.9 < answer.pop("confidence") < 1
    assert answer == {
        "name": "by the window",
        "unit": "g",
        "stable_mark": "ST",
        "moving_mark": "US",
        "readability": "0.1",
    }
    assert (shape["number"], shape["port_settings"]) == (3, "9600-8N1")
    table.put(LOAD_G)
    words = ("--dialect", "by the window", "--readings", "25")
    frames = told(started("listen", "--scale", where, *words))
    table.port.close()
    assert frames[-1] == {
        "value": "52.1", "unit": "g", "grams": "52.1", "stable": True, "basis": None,
        "range": "in range",
    }  # fmt: skip


@pytest.fixture
def hears(monkeypatch: pytest.MonkeyPatch) -> list[Heard]:
    """What the next listening will have heard, last one first; whoever asks needs no port."""
    heard: list[Heard] = []
    monkeypatch.setattr(learn_command, "listen_passively", lambda *_, **__: heard.pop())
    return heard


def learned(gramstand: Command, name: str, *more: str) -> tuple[int, str, str]:
    return gramstand("learn", "--scale", "COM3", "--seconds", "9", "--save", name, *more)


def heard_of(kind: str, grams: float = LOAD_G) -> Heard:
    return Heard(tuple(taught(KINDS[kind], grams)), USUAL_SETTINGS[1])


def test_a_person_reads_what_was_found(gramstand: Command, hears: list[Heard]) -> None:
    hears.append(heard_of("suffix while moving"))
    code, out, _ = learned(gramstand, "window")
    assert code == 0
    assert out == (
        "window: g in steps of 0.01; at rest: no mark; moving: 'M'; 98 % sure. "
        "Use it with --dialect window\n"
    )


@pytest.mark.parametrize(
    ("kind", "marks"),
    [
        ("star at rest", ("*", None)),
        ("brackets, no unit", (None, "[")),
        ("no unit while moving", ("g", None)),
        ("never a word", (None, None)),
    ],
)
def test_marks_that_are_not_there_are_null(
    gramstand: Command, hears: list[Heard], kind: str, marks: tuple[str | None, str | None]
) -> None:
    hears.append(heard_of(kind))
    _, out, _ = learned(gramstand, "window", "--json")
    answer = json.loads(out)
    assert (answer["stable_mark"], answer["moving_mark"]) == marks


def test_the_port_settings_found_are_kept(gramstand: Command, hears: list[Heard]) -> None:
    hears.append(heard_of("suffix"))
    learned(gramstand, "window")
    kept = shape_from_json((shapes_folder() / "window.json").read_bytes())
    assert kept.port_settings == "2400-7E1"


def test_learned_once_more_the_newer_counts(gramstand: Command, hears: list[Heard]) -> None:
    hears[:] = [heard_of("halves"), heard_of("twos")]
    for _ in range(2):
        assert learned(gramstand, "window")[0] == 0
    kept = shape_from_json((shapes_folder() / "window.json").read_bytes())
    assert kept.readability == Decimal("0.5")
    assert [file.name for file in shapes_folder().iterdir()] == ["window.json"]


@pytest.mark.parametrize(
    ("heard", "why"),
    [
        (Heard((), USUAL_SETTINGS[0]), "Not a byte came."),
        (Heard((), None), "What came is no lines of text."),
        (heard_of("suffix", grams=0.0), "No number followed a load."),
    ],
)
def test_a_refusal_says_why_and_ends_with_one(
    gramstand: Command, hears: list[Heard], heard: Heard, why: str
) -> None:
    hears.append(heard)
    code, out, _ = learned(gramstand, "window", "--json")
    answer = json.loads(out)
    assert code == 1
    assert list(answer) == ["refused"]
    assert answer["refused"].startswith(why)
    assert not shapes_folder().exists()


def test_without_json_a_refusal_goes_to_standard_error(
    gramstand: Command, hears: list[Heard]
) -> None:
    hears.append(Heard((), USUAL_SETTINGS[0]))
    code, out, err = learned(gramstand, "window")
    assert (code, out) == (1, "")
    assert err.splitlines()[-1].startswith("Not learned. Not a byte came.")


@pytest.mark.parametrize(
    ("where", "why"),
    [
        ("simulated", "The simulated balance sends nothing by itself"),
        ("hid:0123:4567", "A HID scale sends no lines"),
        (UNPLUGGED, "The balance cannot be heard: no such port."),
    ],
)
def test_where_nothing_can_be_learned_is_refused_at_once(
    gramstand: Command, where: str, why: str
) -> None:
    code, [answer] = gramstand.answers(
        "learn", "--json", "--scale", where, "--seconds", "60", "--save", "window"
    )
    assert code == 1
    assert answer["refused"].startswith(why)


def test_what_cannot_be_kept_is_said(
    gramstand: Command, hears: list[Heard], tmp_path: Path
) -> None:
    shapes_folder().parent.mkdir(parents=True)
    shapes_folder().write_text("in the way")
    hears.append(heard_of("suffix"))
    code, out, _ = learned(gramstand, "window", "--json")
    assert code == 1
    assert "cannot be kept" in json.loads(out)["refused"]


@pytest.mark.parametrize(
    "words",
    [
        ("--save", "sma"),
        ("--save", "Lines"),
        ("--save", "../window"),
        ("--save", ""),
        ("--save", "window", "--seconds", "0"),
        ("--save", "window", "--port-settings", "9600"),
        ("--save", "window", "--scale", "socket://nowhere"),
        (),
    ],
)
def test_bad_words_end_with_two_and_one_clear_line(
    gramstand: Command, words: tuple[str, ...]
) -> None:
    gramstand.refusal("learn", "--scale", "COM3", "--seconds", "1", *words)
