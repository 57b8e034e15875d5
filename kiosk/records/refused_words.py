"""What was refused, in words by which whoever captured it finds it again: the cup, the sheet."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import fields
from decimal import Decimal
from typing import Any

from kiosk.evidence import Weighing
from kiosk.records.entries import Entry
from kiosk.records.round_notes import NoteKind, RoundNote
from kiosk.texts import say
from kiosk.texts.numbers import grams, number

Content = Mapping[str, Any]
Last = Callable[[str, str], Content | None]  # what a round says last about something, if anything


def described(entries: Sequence[Entry], last: Last) -> str:
    """A note of a round by what it is about, anything else by its masses.

    ``last`` takes the id of a round and what a note is about.
    """
    words = [word for entry in entries for word in _words(entry, last)]
    return ", ".join(words) or say("journal.no_mass")


def _words(entry: Entry, last: Last) -> list[str]:
    if not isinstance(entry, RoundNote):
        values = (getattr(entry, field.name) for field in fields(entry))
        return [_mass(value) for value in values if isinstance(value, Weighing)]
    # Not what the empty pan showed before: nobody remembers that.
    masses = [] if entry.weighing is None else [_mass(entry.weighing)]
    return [*_about(entry, json.loads(entry.content), last), *masses]


def _mass(weighing: Weighing) -> str:
    return grams(weighing.grams, weighing.readability)


def _about(note: RoundNote, said: Content, last: Last) -> list[str]:
    if note.kind == NoteKind.CLOCK:
        return [say("journal.clock", sitting=said["sitting"])]
    team = last(note.round_id, f"team {said.get('team')}")
    if team is None:
        return []
    if note.kind == NoteKind.CUP:
        return [say("journal.cup", team=team["label"])]
    if note.kind == NoteKind.ANSWER:
        key = last(note.round_id, f"key {team['division']} {said['task']}")
        thing = say("journal.sheet" if key is None else _thing(said["task"]),
                    team=team["label"], letter=key["letter"] if key else "")  # fmt: skip
        return [thing, _value(said)]
    return []


def _thing(task: str) -> str:
    """By what stands on it: how large its number is, is for nobody who types."""
    return "journal.jar" if task.startswith("count") else "journal.box"


def _value(said: Content) -> str:
    if said.get("unreadable"):
        return say("journal.unreadable")
    estimate = said.get("estimate")
    return say("journal.blank") if estimate is None else number(Decimal(estimate))
