"""Where files go to: what is mounted and can be written to, after the user's own folder."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from kiosk.ui.sticks import exported_folders, places


@pytest.fixture
def stick(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Something plugged in, as desktops mount it for a person."""
    stick = tmp_path / "media" / "somebody" / "STICK"
    stick.mkdir(parents=True)
    (tmp_path / "media" / "empty").mkdir()
    monkeypatch.setattr(os.path, "ismount", lambda path: Path(path) == stick)
    return stick


def test_a_stick_is_found_where_desktops_mount_it(stick: Path) -> None:
    own, *plugged = places([str(stick.parents[1]), "/nowhere"])
    assert own.name == "Gramstand"
    assert plugged == [stick]


def test_what_cannot_be_written_to_is_left_out(
    stick: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "access", lambda *_: False)
    assert len(places([str(stick.parents[1])])) == 1


def test_exported_records_come_newest_first(stick: Path) -> None:
    for name in ("Gramstand 2026-03-14", "Gramstand 2026-03-15", "holiday"):
        folder = stick / name
        folder.mkdir()
        if name != "holiday":
            for table in ("weighings.csv", "round_notes.csv"):
                (folder / table).touch()
    assert [folder.name[-2:] for folder in exported_folders(stick)] == ["15", "14"]


def test_a_stick_that_was_pulled_has_nothing(tmp_path: Path) -> None:
    assert exported_folders(tmp_path / "gone") == []
