"""Texts: printed sheets, and saving them."""

from __future__ import annotations

TEXTS: dict[str, str | tuple[str, str]] = {
    "paper.simulated": "SIMULATED",
    "paper.file.simulated": " (simulated)",
    "paper.source.balance": "balance",
    "paper.source.simulated": "simulated",
    "paper.source.typed": "typed",
    # Labels for jars
    "paper.label.head": "Labels for jars",
    "paper.label.file": "Jar {letter} label",
    # The coach's card of a key
    "paper.card.head": "Key card: jar {letter}",
    "paper.card.file": "Jar {letter} key card",
    "paper.card.hide": "For the coach. The number is inside: keep it folded and locked away.",
    "paper.card.simulated": "SIMULATED: no real balance weighed this.",
    "paper.card.fold": "Fold the bottom edge of the page up to this line.",
    "paper.card.count": "{count} pieces",
    "paper.card.sure": "95 % sure: between {low} and {high} (\u00b1 {percent})",
    "paper.card.score": (
        "An answer that earns 90 points against this number may be up to {points} points off."
    ),
    "paper.card.material": "Material: {material}",
    "paper.card.piece": "One piece: {mass}",
    "paper.card.bits": "Broken bits count too, each as one piece.",
    "paper.card.whole": "Whole pieces only: broken bits do not count.",
    "paper.card.back_in": "The counted pieces are in the jar.",
    "paper.card.back_out": "The counted pieces are not in the jar.",
    "paper.card.warning": "Mind: {warning}",
    "paper.card.evidence": "Evidence",
    "paper.card.column.what": "On the pan",
    "paper.card.column.pieces": "Pieces",
    "paper.card.column.shown": "Shown",
    "paper.card.column.net": "Net",
    "paper.card.column.at": "When",
    "paper.card.column.source": "How",
    "paper.card.tray": "empty tray",
    "paper.card.sample": "sample {place}",
    "paper.card.empty": "empty jar",
    "paper.card.filled": "full jar",
    "paper.card.lot": "lot {place}",
    "paper.card.lot.others": "lots {first} to {last}",
    "paper.card.in_lots": "Weighed in lots; the container was emptied and weighed before each.",
    "paper.card.steps": "The balance steps by {steps}.",
    "paper.card.no_steps": "The step of the balance is not known.",
    "paper.card.balance": "Balance: {balance}",
    "paper.card.made": "Key made {at}, record {id}",
    # The coach's card of a box
    "paper.volume.head": "Key card: box {number}",
    "paper.volume.file": "Box {number} key card",
    "paper.volume.label_file": "Box {number} label",
    "paper.volume.value": "{volume} cm\u00b3",
    "paper.volume.sure": "95 % sure: between {low} and {high} cm\u00b3 (\u00b1 {percent})",
    "paper.volume.shape": "Shape: {shape}, measured outside",
    "paper.volume.column.edge": "Edge",
    "paper.volume.column.read": "Read off the ruler",
    # Saving
    "paper.print": "Print as PDF",
    "paper.saved": "Ready to be printed, in\n{folder}:",
    "paper.save.full": "The disk with {where} is full. Make room on it, then print again.",
    "paper.save.not_allowed": (
        "{where} must not be written. Ask whoever looks after this machine for the right to "
        "write there, then print again."
    ),
    "paper.save.no_folder": (
        "{where} is no folder. Move the file of that name away, then print again."
    ),
    "paper.save.failed": "{where} could not be written ({why}). Put that right, then print again.",
}
