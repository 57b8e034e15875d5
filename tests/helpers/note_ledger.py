"""What several kiosks know of the notes of a round, and when each of them saw each note first."""

from __future__ import annotations

import json
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from contextlib import closing
from pathlib import Path

from kiosk.records.entries import Entry
from kiosk.records.entry_text import entries_of
from kiosk.records.journal import Journal
from kiosk.records.round_notes import NoteKind, RoundNote
from kiosk.records.store import Store
from kiosk.rounds.state import RoundState
from tests.helpers.server_records import content


class Ledger:
    """Kiosks are numbers. The first that saw a note is the one at which it was made."""

    def __init__(self) -> None:
        self.seen: dict[str, dict[int, float]] = {}

    def saw(self, kiosk: int, state: RoundState) -> None:
        """That is the round as this kiosk knows it by now."""
        now = time.monotonic()
        for chain in state.chains.values():
            for said in chain:
                self.seen.setdefault(said.note.id, {}).setdefault(kiosk, now)

    def made(self, kiosk: int, since: float = 0, until: float = float("inf")) -> list[str]:
        """The ids of the notes that were made at this kiosk in that time."""
        return [
            note
            for note, by in self.seen.items()
            if _maker(by) == kiosk and since <= by[kiosk] < until
        ]

    def delays(self, cut_off: int, since: float, until: float) -> list[float]:
        """Until each other kiosk saw a note, in seconds; without what the cut in a line delayed."""
        found = []
        for by in self.seen.values():
            maker = _maker(by)
            for kiosk, at in by.items():
                away = cut_off in (kiosk, maker) and since - 1 <= by[maker] < until
                if kiosk != maker and not away:
                    found.append(at - by[maker])
        return found


def _maker(by: dict[int, float]) -> int:
    return min(by, key=by.__getitem__)


def refusals(journal: Path) -> list[tuple[tuple[Entry, ...], str]]:
    """What was refused for good, save by save, and the sentence that says so."""
    with closing(Journal(journal)) as opened:
        assert opened.count() == 0, "something waits still"
        return [(entries_of(text), why) for text, why in opened.refused()]


def _is_alike(entries: Sequence[Entry], answers: set[tuple[str, str]]) -> bool:
    """Whether the same answers were typed elsewhere: of that nobody is told."""
    return all(
        isinstance(entry, RoundNote) and (entry.about, _said(entry)) in answers for entry in entries
    )


def _said(note: RoundNote) -> str:
    return str(json.loads(note.content).get("estimate"))


def what_is_wrong(
    where: str, round_id: str, ledger: Ledger, journals: Sequence[Path], told: Sequence[list[str]]
) -> Iterator[str]:
    """What was lost, is there twice, or was refused without a word, in words."""
    with closing(Store(where)) as store:
        notes = store.round_notes(round_id)
    kept = Counter(note.id for note in notes)
    answers = {(note.about, _said(note)) for note in notes if note.kind == NoteKind.ANSWER}
    refused: Counter[str] = Counter()
    for kiosk, (journal, read) in enumerate(zip(journals, told, strict=True)):
        found = refusals(journal)
        refused.update(entry.id for entries, _ in found for entry in entries)
        sentences = [why for entries, why in found if not _is_alike(entries, answers)]
        if Counter(sentences) != Counter(read):
            yield f"kiosk {kiosk} told {len(read)} of {len(sentences)} refusals"
    for note in ledger.seen.keys() | kept.keys():
        if kept[note] + refused[note] != 1:
            yield f"note {note} is stored {kept[note]} times, refused {refused[note]} times"
        if note not in ledger.seen:
            yield f"note {note} was made at no kiosk"
    rows = content(where)
    chains = Counter((row["about"], row["after"]) for row in rows["round_notes"])
    masses = Counter(row["id"] for row in rows["weighings"])
    for one, often in [*chains.items(), *masses.items()]:
        if often > 1:
            yield f"{one} is there {often} times"
