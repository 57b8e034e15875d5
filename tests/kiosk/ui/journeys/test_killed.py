"""The kiosk is killed the moment it shows something: what it showed is in the records."""

from __future__ import annotations

import signal
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from kiosk.records.store import Store
from tests.helpers.imports import ROOT


@pytest.fixture
def records(tmp_path: Path) -> Path:
    return tmp_path / "records.sqlite"


def killed_when_it_shows(words: str, records: Path) -> str:
    """What stood on the screen when the kiosk was killed."""
    command = [sys.executable, "-m", "tests.helpers.killed_kiosk", str(records), words]
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True) as kiosk:
        assert kiosk.stdout is not None
        shown = kiosk.stdout.readline().strip()
        kiosk.kill()
        kiosk.stdout.read()
    assert kiosk.returncode == -signal.SIGKILL
    return shown


def test_a_score_that_was_shown_is_kept(records: Path) -> None:
    assert killed_when_it_shows("score", records) == "93.4"
    with closing(Store(str(records))) as store:
        assert [str(each.points) for each in store.last_tries("Heron", simulated=True)] == ["93.4"]
        assert store.cups_out(simulated=True) == []


def test_an_empty_cup_that_was_shown_as_weighed_is_out(records: Path) -> None:
    assert killed_when_it_shows("weighs", records).startswith("Cup 1 weighs")
    with closing(Store(str(records))) as store:
        (cup,) = store.cups_out(simulated=True)
    assert (cup.number, str(cup.empty.grams)) == (1, "12.3")
