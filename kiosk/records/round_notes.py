"""Notes of a round: what was settled, weighed, typed or decided, as a chain for each thing.

A note is about one thing (a team, its cup, one answer, a key, the clock of a sitting) and says
which note about the same thing it follows. Two kiosks that go on from the same note cannot both be
kept: the second is told that something changed meanwhile, and nothing is written over.
What `content` holds for each kind is known to `kiosk.rounds.contents`, not here.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from typing import Any

from kiosk.evidence import Source, Weighing
from kiosk.records.entries import Entry

FIRST = ""  # what the first note about something follows
# When (a place in the order of keeping) a team was in which division (None: gone) and sitting.
Presence = tuple[int, str | None, int]


class NoteKind(StrEnum):
    """What a note is about."""

    ROUND = "round"  # its name and rules
    TEAM = "team"
    KEY = "key"  # a task of a division, and the key that it is scored by
    CLOCK = "clock"  # of a sitting
    CUP = "cup"  # of a team
    ANSWER = "answer"  # of a team to a task, in one typing
    STEP = "step"  # of a division on its way to final results
    PROTEST = "protest"
    LIST = "list"  # a result list as it was


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundNote(Entry):
    """One note; ``about`` names the thing among those of its round, ``content`` is JSON.

    ``kind`` is one of NoteKind, or one that a newer version knows.
    The first note of a round is of the kind ROUND and has the round's id. ``after`` is the id of
    the note about the same thing that stood when this one was made, FIRST for none. ``weighing`` is
    what was weighed, ``zero`` what the empty pan showed before it where that counts.
    ValueError for a weighing that is not of the same kind of balance.
    """

    round_id: str
    simulated: bool
    kind: str
    about: str
    after: str
    content: str
    weighing: Weighing | None = None
    zero: Weighing | None = None

    def __post_init__(self) -> None:
        Entry.__post_init__(self)
        for weighed in (self.weighing, self.zero):
            if weighed and (weighed.source is Source.SIMULATED) != self.simulated:
                raise ValueError("a round is either simulated or not")


@dataclass(frozen=True, slots=True, kw_only=True)
class StoredRound:
    """A round as the store gives it back: since when, and how it is called by now (JSON)."""

    id: str
    since: datetime
    content: str


def said_in(content: str) -> Mapping[str, Any]:
    """What a note holds; nothing if it is no note of any version that we know."""
    try:
        said = json.loads(content)
    except ValueError:
        return {}
    return said if isinstance(said, dict) else {}


def began(division: str, teams: Iterable[Sequence[Presence]], starts: Mapping[int, int]) -> bool:
    """Whether a sitting of that division began, whoever was moved or left since.

    ``teams`` holds where each team was, one presence after the other; ``starts`` when each
    sitting's clock was started.
    """
    for said in teams:
        for number, (_, of, sitting) in enumerate(said):
            until = said[number + 1][0] if number + 1 < len(said) else None
            start = starts.get(sitting)
            if of == division and start is not None and (until is None or start < until):
                return True
    return False
