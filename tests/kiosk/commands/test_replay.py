"""``gramstand replay``: the recordings of all situations, and files that are none."""

from __future__ import annotations

import json
from decimal import Decimal
from pathlib import Path

import pytest

from tests.helpers.command import Command
from tests.helpers.make_recordings import FOLDER, SITUATIONS, lines

# What must happen, in order; masses to one division of what lies on the pan.
STORIES: dict[str, list[str]] = {
    "settle": ["pan empty", "load placed", "settled 12.3", "load removed", "pan empty"],
    "added": ["pan empty", "load placed", "settled 50.0", "load placed", "settled 70.0"],
    "flickering-flag": ["pan empty", "load placed", "settled 50.0"],
    "overload": ["pan empty", "load placed", "overloaded", "load removed", "pan empty"],
    "silence": ["pan empty", "silent", "pan empty", "load placed", "settled 12.3"],
    "tared-by-key": ["pan empty", "load placed", "settled 12.3", "unreadable"],
    "torn-and-garbled": ["pan empty", "load placed", "settled 50.0"],
    "unplugged": ["pan empty", "load placed", "settled 12.3", "silent", "pan empty"],
    "unit-key": ["pan empty", "load placed", "settled 50.0"],  # the same mass, in another unit
    "zeroed-under-a-cup": [
        "pan empty", "load placed", "settled 12.3", "silent", "pan empty", "unreadable",
    ],
}  # fmt: skip


def recording(name: str) -> Path:
    return FOLDER / f"synthetic-{name}.jsonl"


def story(answers: list[dict[str, object]]) -> list[str]:
    """Events in order, less the touches between them; settled ones with their mass."""
    told = []
    for answer in answers:
        if answer["event"] != "disturbed":
            grams = answer.get("grams")
            told.append(f"{answer['event']} {grams}" if grams else str(answer["event"]))
    return told


@pytest.mark.parametrize("name", STORIES)
def test_a_recording_tells_what_happened_on_the_pan(gramstand: Command, name: str) -> None:
    code, answers = gramstand.answers("replay", "--json", str(recording(name)))
    assert code == 0
    assert story(answers) == STORIES[name]


@pytest.mark.parametrize("name", ["pour", "hand"])
def test_what_moves_is_settled_only_when_it_has_stopped(gramstand: Command, name: str) -> None:
    _, answers = gramstand.answers("replay", "--json", str(recording(name)))
    settled = [answer for answer in answers if answer["event"] == "settled"]
    first, last = settled[0], settled[-1]
    assert len(settled) == 2
    assert float(str(last["t"])) > 7.0
    added = Decimal(200) if name == "pour" else Decimal(0)
    gained = Decimal(str(last["grams"])) - Decimal(str(first["grams"]))
    assert abs(gained - added) <= Decimal("0.2")


def test_no_recording_lacks_its_story() -> None:
    kept = {file.stem.removeprefix("synthetic-") for file in FOLDER.glob("*.jsonl")}
    assert kept == {*STORIES, "pour", "hand"} == set(SITUATIONS)


def test_times_are_those_of_the_recording(gramstand: Command) -> None:
    _, answers = gramstand.answers("replay", "--json", str(recording("settle")))
    times = [float(str(answer["t"])) for answer in answers]
    assert times == sorted(times)
    assert 0 < times[0] < times[-1] <= 8.0


@pytest.mark.parametrize("name", SITUATIONS)
def test_the_recordings_can_be_made_again(name: str) -> None:
    kept = recording(name).read_text(encoding="utf-8")
    assert kept.splitlines() == list(lines(name))
    assert json.loads(kept.splitlines()[0])["synthetic"]


HEADER = '{"recording": 1, "dialect": "sma", "readability_g": 0.1}'


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "empty"),
        ("not json\n", "line 1"),
        ('{"recording": 2, "dialect": "sma"}\n', "line 1"),
        (f'{HEADER}\n{{"t": 1.0, "hex": "0g"}}\n', "line 2"),
        (f'{HEADER}\n{{"t": 2, "hex": "0a"}}\n{{"t": 1, "hex": "0d"}}\n', "line 3"),
        ('{"recording": 1, "dialect": "nobody-speaks-it"}\n', "nobody-speaks-it"),
    ],
)
def test_a_broken_recording_is_one_clear_line(
    gramstand: Command, tmp_path: Path, text: str, says: str
) -> None:
    file = tmp_path / "broken.jsonl"
    file.write_text(text, encoding="utf-8")
    complaint = gramstand.refusal("replay", "--json", str(file))
    assert says in complaint


def test_a_missing_recording_is_one_clear_line(gramstand: Command, tmp_path: Path) -> None:
    assert "cannot be read" in gramstand.refusal("replay", str(tmp_path / "none.jsonl"))
