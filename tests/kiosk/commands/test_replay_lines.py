"""``gramstand replay`` with recordings of balances that send lines, known and to be learned."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest

from drivers.dialects import use_shapes
from drivers.learning.findings import Learned
from drivers.learning.learner import learn
from kiosk.commands.recording import read_recording
from kiosk.commands.shapes import ShapeFiles
from tests.helpers.command import Command
from tests.helpers.make_line_recordings import FOLDER, SITUATIONS, lines

CUP = ["pan empty", "load placed", "settled 12.30", "load removed", "pan empty"]
HALF = ["pan empty", "load placed", "settled 50.00", "load removed", "pan empty"]
STORIES = {
    "header": CUP,
    "comma": CUP,
    "overload": ["pan empty", "load placed", "overloaded", "load removed", "pan empty"],
    "pour": ["pan empty", "load placed", "settled 300.00", "load placed", "settled 500.00"],
    "silence": ["pan empty", "silent", "pan empty", "load placed", "settled 12.30"],
    "unplugged": ["pan empty", "load placed", "settled 12.30", "silent", "pan empty"],
    "below-zero": [
        "pan empty", "load placed", "settled 12.30", "load removed", "pan empty", "unreadable",
        "pan empty", "load placed", "settled 50.00",
    ],
    "tared-by-key": ["pan empty", "load placed", "settled 12.30", "unreadable"],
    "unit-key": ["pan empty", "load placed", "settled 50.00"],  # the same mass, in another unit
    "clock": ["unreadable"],  # several numbers: nobody said which is the mass
}  # fmt: skip
# recording: the one to learn from, and what happens then
LEARNED = {"clock": ("clock", HALF), "brackets": ("brackets", HALF), "torn": ("header", HALF)}


@pytest.fixture
def kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[ShapeFiles]:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path))
    monkeypatch.setenv("HOME", str(tmp_path))
    yield ShapeFiles()
    use_shapes(None)


def recording(name: str) -> Path:
    return FOLDER / f"synthetic-{name}.jsonl"


def story(gramstand: Command, name: str, *more: str) -> list[str]:
    """Events in order, less the touches between them; settled ones with their mass."""
    code, answers = gramstand.answers("replay", "--json", *more, str(recording(name)))
    assert code == 0
    return [
        f"{answer['event']} {answer['grams']}" if "grams" in answer else answer["event"]
        for answer in answers
        if answer["event"] != "disturbed"
    ]


@pytest.mark.parametrize("name", SITUATIONS)
def test_the_recordings_are_what_the_simulated_balances_send(name: str) -> None:
    kept = recording(name).read_text(encoding="utf-8").splitlines()
    assert kept == list(lines(name))
    assert json.loads(kept[0])["synthetic"]


def test_no_recording_lacks_its_story() -> None:
    kept = {file.stem.removeprefix("synthetic-") for file in FOLDER.glob("*.jsonl")}
    assert kept == {*STORIES, *LEARNED} == set(SITUATIONS)


@pytest.mark.parametrize("name", STORIES)
def test_a_recording_of_lines_tells_what_happened(gramstand: Command, name: str) -> None:
    assert story(gramstand, name) == STORIES[name]


@pytest.mark.parametrize("name", LEARNED)
def test_once_learned_a_recording_tells_what_happened(
    gramstand: Command, kept: ShapeFiles, name: str
) -> None:
    teacher, happened = LEARNED[name]
    found = learn(read_recording(recording(teacher)).packets, "it")
    assert isinstance(found, Learned)
    kept.keep(found.shape)
    assert story(gramstand, name, "--dialect", "it") == happened


def test_garbage_for_seconds_is_told_as_unreadable(gramstand: Command, tmp_path: Path) -> None:
    said: list[dict[str, object]] = [
        {"recording": 1, "dialect": "lines", "synthetic": True, "note": "synthetic: garbage"}
    ]
    said += [{"t": turn / 10, "hex": "b1b2e78d0a"} for turn in range(1, 50)]
    file = tmp_path / "garbage.jsonl"
    file.write_text("".join(f"{json.dumps(line)}\n" for line in said), encoding="utf-8")
    code, answers = gramstand.answers("replay", "--json", str(file))
    assert code == 0
    assert [answer["event"] for answer in answers] == ["unreadable"]
