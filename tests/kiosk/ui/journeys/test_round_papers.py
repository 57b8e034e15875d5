"""A round by touch: its hub, a tick on the day list that stays, checks from there, its papers."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.helpers.journey import Journey
from tests.helpers.papers import words_on
from tests.helpers.queue_journey import ROUND, begin_round

LEVEL = "Level, free of draughts, touching nothing beside it"
SCALE = "Checked today with weights or coins"


def open_round(journey: Journey) -> None:
    for name in ("Run a round", ROUND):
        journey.tap(name)


def test_the_day_list_is_ticked_and_leads_to_the_check(journey: Journey) -> None:
    begin_round(journey, ["Wren", "Heron"])
    open_round(journey)
    journey.tap("Before we begin")
    journey.tap(LEVEL)
    assert "1 of 14" in journey.seen
    journey.tap(SCALE)
    journey.tap("Home")
    assert "1 of 14" in journey.seen  # the list lies there again
    for _ in range(2):
        journey.tap("Back")
    open_round(journey)
    journey.tap("Before we begin")
    assert "1 of 14" in journey.seen


def test_answer_sheets_are_saved(
    journey: Journey, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("kiosk.reports.saving.user_documents_path", lambda: tmp_path)
    begin_round(journey, ["Wren", "Heron"])
    open_round(journey)
    journey.tap("Papers")
    journey.tap("Answer sheets, sitting 1")
    journey.until(lambda: "Saved in" in journey.seen, "where the sheets are")
    (file,) = (tmp_path / "Gramstand").iterdir()
    assert "simulated" in file.name
    words = words_on(file.read_bytes())
    assert words.index("Wren") < words.index("Heron")
