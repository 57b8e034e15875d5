"""From all in to the final list by touch: lock, release, protest, weigh again, correct, print."""

from __future__ import annotations

from pathlib import Path

import pytest

from kiosk.records.store import Store
from kiosk.rounds.contents import Stage
from kiosk.rounds.state import RoundState
from kiosk.settings import Rules
from kiosk.ui.presenters.result_views import ResultsView
from tests.helpers.journey import Journey
from tests.helpers.result_rounds import played
from tests.helpers.round_notes import DIVISION

PATIENCE_S = 300.0  # of the table's time: the draws are made in another thread


def keep(records: Path, state: RoundState) -> None:
    """Write all notes of a round into a records file."""
    notes = [said.note for chain in state.chains.values() for said in chain]
    store = Store(str(records))
    store.save(*sorted(notes, key=lambda note: (note.id != state.id, note.id)))
    store.close()


def ranges(journey: Journey) -> list[str]:
    """What the table says of how safe the places are."""
    sheet = journey.scene.sheet
    assert isinstance(sheet, ResultsView)
    return [line.safe for line in sheet.lines]


def test_a_round_becomes_final_by_touch(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("kiosk.reports.saving.user_documents_path", lambda: tmp_path)
    keep(tmp_path / "records", played(rules=Rules(protest_minutes=0)))
    journey = Journey(tmp_path / "records")
    try:
        for name in ("Run a\nround", "Autumn round", "Results", "Lock", "Lock"):
            journey.tap(name)
        journey.tap("Result list")
        journey.until(lambda: ranges(journey) == ["safe"] * 4, "the ranges of places", PATIENCE_S)
        journey.tap("Back")
        for name in ("Release", "Release", "Protests", "A protest", "Teal", "cup"):
            journey.tap(name)
        journey.tap("the mass is wrong")
        journey.tap("Done")
        assert "Handed in: 92.0 g, inside 80.0 g" in journey.seen
        journey.tap("Weigh\nagain")
        journey.put(93.0)
        journey.until(lambda: "is recorded" in journey.seen, "the mass")
        journey.clear()
        journey.tap("Back")
        assert "Weighed again: 93.0 g, inside 81.0 g" in journey.seen
        for name in ("Decide", "accepted", "weighed again", "Done", "Back", "Back"):
            journey.tap(name)
        for name in ("Make final", "Make final", "Print", "Result list"):
            journey.tap(name)
        state = journey.desk.room.state
        assert state.stage(DIVISION) is Stage.FINAL
        assert len(state.kept_lists(DIVISION)) == 1
        journey.until(lambda: any(tmp_path.rglob("*.pdf")), "the list")
    finally:
        journey.close()
