"""What is printed when a key was made: two labels, for jar and lid, and the coach's card."""

from __future__ import annotations

from pathlib import Path

from kiosk.records.kept import StoredKey, StoredVolume
from kiosk.reports.jar_labels import jar_labels
from kiosk.reports.key_card import key_card
from kiosk.reports.saving import save_pdf
from kiosk.reports.volume_card import volume_card
from kiosk.settings import Paper
from kiosk.texts import say

JAR_AND_LID = 2


def save_key_papers(key: StoredKey, folder: Path, paper: Paper) -> tuple[Path, Path]:
    """Save the labels and the key card in ``folder``; where they are. PaperError if they are not.

    The names of the files give nothing away but the letter.
    """
    letter, simulated = key.made.letter, key.draft.simulated
    labels = jar_labels(JAR_AND_LID * (letter,), paper, simulated=simulated)
    card = key_card(key, paper)
    mark = say("paper.file.simulated") if simulated else ""
    return (
        save_pdf(labels, folder, say("paper.label.file", letter=letter) + mark),
        save_pdf(card, folder, say("paper.card.file", letter=letter) + mark),
    )


def save_volume_papers(key: StoredVolume, folder: Path, paper: Paper) -> tuple[Path, Path]:
    """The same for a box: labels with its number, and its card."""
    label, simulated = f"{key.made.number}", key.draft.simulated
    labels = jar_labels(JAR_AND_LID * (label,), paper, simulated=simulated)
    mark = say("paper.file.simulated") if simulated else ""
    return (
        save_pdf(labels, folder, say("paper.volume.label_file", number=label) + mark),
        save_pdf(volume_card(key, paper), folder, say("paper.volume.file", number=label) + mark),
    )
