"""What was refused, in words by which whoever captured it finds it again: the cup, the sheet.

Whoever is at the screen reads them: what a team weighed or answered in a round is not told.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import fields
from typing import Any

from kiosk.evidence import Weighing
from kiosk.records.entries import Entry
from kiosk.records.round_notes import NoteKind, RoundNote, said_in
from kiosk.texts import say
from kiosk.texts.numbers import grams

Content = Mapping[str, Any]
Last = Callable[[str, str], Content | None]  # what a round says last about something, if anything


def described(entries: Sequence[Entry], last: Last) -> str:
    """A note of a round by the team and what it is about, anything else by its masses.

    ``last`` takes the id of a round and what a note is about.
    """
    words = [word for entry in entries for word in _words(entry, last)]
    return ", ".join(dict.fromkeys(words)) or say("journal.no_mass")


def _words(entry: Entry, last: Last) -> list[str]:
    if isinstance(entry, RoundNote):
        return [_about(entry, said_in(entry.content), last)]
    values = (getattr(entry, field.name) for field in fields(entry))
    masses = [value for value in values if isinstance(value, Weighing)]
    return [grams(mass.grams, mass.readability) for mass in masses]


def _about(note: RoundNote, said: Content, last: Last) -> str:
    if note.kind == NoteKind.CLOCK and "sitting" in said:
        return say("journal.clock", sitting=said["sitting"])
    team = last(note.round_id, f"team {said.get('team')}") or {}
    if note.kind == NoteKind.CUP and "label" in team:
        return say("journal.cup", team=team["label"])
    if note.kind == NoteKind.ANSWER and "label" in team:
        key = last(note.round_id, f"key {team.get('division')} {said.get('task')}") or {}
        thing = _thing(str(said.get("task"))) if "letter" in key else "journal.sheet"
        return say(thing, team=team["label"], letter=key.get("letter", ""))
    return say("journal.note")


def _thing(task: str) -> str:
    """By what stands on it: how large its number is, is for nobody who types."""
    return "journal.jar" if task.startswith("count") else "journal.box"
