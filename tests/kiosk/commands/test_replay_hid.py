"""``gramstand replay`` on the recordings of HID scales."""

from __future__ import annotations

import json

import pytest

from tests.helpers.command import Command
from tests.helpers.make_hid_recordings import FOLDER, SITUATIONS, lines

STORIES: dict[str, list[tuple[str, str | None]]] = {
    "settle": [
        ("pan empty", None), ("load placed", None), ("settled", "12.3"),
        ("load removed", None), ("pan empty", None),
    ],
    "under-zero": [
        ("pan empty", None), ("load placed", None), ("settled", "12.3"),
        ("load removed", None), ("pan empty", None),
        ("unreadable", None), ("pan empty", None),
        ("load placed", None), ("settled", "50.0"),
    ],
    "over-limit": [
        ("pan empty", None), ("load placed", None), ("overloaded", None),
        ("load removed", None), ("pan empty", None),
    ],
    "fault": [
        ("pan empty", None), ("load placed", None), ("settled", "50.0"),
        ("unreadable", None), ("settled", "50.0"),
    ],
    "pour": [
        ("pan empty", None), ("load placed", None), ("settled", "156.5"),
        ("load placed", None), ("settled", "356.4"),
    ],
    "silence": [
        ("pan empty", None), ("silent", None), ("pan empty", None),
        ("load placed", None), ("settled", "12.3"),
    ],
    "unplugged": [
        ("pan empty", None), ("load placed", None), ("settled", "12.3"),
        ("silent", None), ("pan empty", None),
    ],
    "tared-by-key": [
        ("pan empty", None), ("load placed", None), ("settled", "12.3"),
        ("load removed", None), ("pan empty", None), ("unreadable", None),
    ],
    "unit-key": [("pan empty", None), ("load placed", None), ("settled", "50.0")],
    "garbage": [("pan empty", None), ("load placed", None), ("settled", "50.0")],
    "reports-of-zeros": [("pan empty", None), ("load placed", None), ("settled", "50.0")],
}  # fmt: skip


@pytest.mark.parametrize("name", STORIES)
def test_a_recording_tells_what_happened_on_the_pan(gramstand: Command, name: str) -> None:
    file = FOLDER / f"synthetic-{name}.jsonl"
    code, answers = gramstand.answers("replay", "--json", str(file))
    told = [(answer["event"], answer.get("grams")) for answer in answers]
    assert code == 0
    assert [event for event in told if event[0] != "disturbed"] == STORIES[name]


@pytest.mark.parametrize("name", SITUATIONS)
def test_a_recording_can_be_made_again_and_says_that_it_is_synthetic(name: str) -> None:
    kept = (FOLDER / f"synthetic-{name}.jsonl").read_text(encoding="utf-8").splitlines()
    assert kept == list(lines(name))
    header = json.loads(kept[0])
    assert (header["synthetic"], header["packets"]) == (True, True)


def test_no_recording_lacks_its_story() -> None:
    kept = {file.stem.removeprefix("synthetic-") for file in FOLDER.glob("*.jsonl")}
    assert kept == set(STORIES) == set(SITUATIONS)
