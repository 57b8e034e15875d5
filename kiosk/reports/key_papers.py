"""What is printed when a key was made: labels for the jar and its lid, and the coach's card."""

from __future__ import annotations

from pathlib import Path

from kiosk.records.kept import StoredKey
from kiosk.reports.jar_labels import jar_labels
from kiosk.reports.key_card import key_card
from kiosk.reports.saving import save_pdf
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
