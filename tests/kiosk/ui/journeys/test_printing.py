"""The papers of a kept key by touch: saved among the documents, and where is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.helpers.journey import Journey
from tests.helpers.key_hands import KeyHands
from tests.helpers.papers import words_on

PRINT = "Print as PDF"
PAPERS = ["Jar A key card (simulated).pdf", "Jar A label (simulated).pdf"]


@pytest.fixture
def documents(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder of documents of whoever runs the kiosk."""
    monkeypatch.setenv("XDG_DOCUMENTS_DIR", str(tmp_path / "documents"))
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "no configuration"))
    return tmp_path / "documents"


def saved_key(journey: Journey) -> None:
    KeyHands(journey).to_key()
    journey.tap("Save as jar A")
    journey.until_title("Jar A is kept.")


def papers_in(documents: Path) -> list[str]:
    return sorted(file.name for file in (documents / "Gramstand").iterdir())


def test_label_and_card_of_a_kept_key_are_saved(journey: Journey, documents: Path) -> None:
    saved_key(journey)
    ((count, piece),) = journey.kept("SELECT count, piece_mass_g FROM keys_made")
    journey.tap(PRINT)
    journey.until(lambda: PAPERS[0] in journey.seen, "where the papers are")
    assert papers_in(documents) == PAPERS
    card, label = ((documents / "Gramstand" / name).read_bytes() for name in PAPERS)
    assert f"{count:,} pieces".replace(",", " ") in words_on(card)
    assert f"One piece: {piece} g" in words_on(card)
    assert words_on(label) == "A SIMULATED A SIMULATED"


def test_labels_and_card_of_a_measured_box_are_saved(journey: Journey, documents: Path) -> None:
    for words in ("Measure a box", "box", "centimetres"):
        journey.tap(words)
    for digits in ("12", "12", "9", "9", "23", "23"):
        for digit in digits:
            journey.tap(digit)
        main = journey.scene.sheet.main
        assert main is not None
        journey.tap(main.text)
    journey.tap("Save as box 1")
    journey.tap(PRINT)
    journey.until(lambda: "Box 1 label.pdf" in journey.seen, "where the papers are")
    assert papers_in(documents) == ["Box 1 key card.pdf", "Box 1 label.pdf"]
    card, label = ((documents / "Gramstand" / name).read_bytes() for name in papers_in(documents))
    assert "2 484 cm³" in words_on(card)
    assert "tall 23 cm" in words_on(card)
    assert words_on(label) == "1 1"


def test_the_screen_names_the_folder_and_the_papers(journey: Journey, documents: Path) -> None:
    saved_key(journey)
    journey.tap(PRINT)
    journey.until(lambda: "Ready to be printed" in journey.seen, "where the papers are")
    assert str(documents / "Gramstand") in journey.seen
    assert all(name in journey.seen for name in PAPERS)


def test_what_is_wrong_is_told_and_printing_can_be_tried_again(
    journey: Journey, documents: Path
) -> None:
    documents.mkdir()
    in_the_way = documents / "Gramstand"
    in_the_way.write_bytes(b"")
    saved_key(journey)
    journey.tap(PRINT)
    journey.until(lambda: "is no folder" in journey.seen, "what is wrong")
    in_the_way.unlink()
    journey.tap(PRINT)
    journey.until(lambda: "Ready to be printed" in journey.seen, "where the papers are")
    assert papers_in(documents) == PAPERS


def test_the_next_key_does_not_show_the_papers_of_the_last(
    journey: Journey, documents: Path
) -> None:
    saved_key(journey)
    journey.tap(PRINT)
    journey.until(lambda: "Ready to be printed" in journey.seen, "where the papers are")
    journey.tap("Home")
    journey.clear()
    KeyHands(journey).to_key()
    journey.tap("Save as jar B")
    journey.until_title("Jar B is kept.")
    assert "Ready to be printed" not in journey.seen
    assert PRINT in journey.seen
