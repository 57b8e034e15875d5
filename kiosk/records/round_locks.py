"""What a round no longer takes: notes that come late must not change what others decided by.

Rules freeze when the first sitting begins, the keys of a division when one of its sittings does,
teams, cups and answers when its answers are locked. From then on only what says that it is a change
(a reason, a cup weighed again, the judge) is taken. It is asked where notes are kept, since a kiosk
that was cut off, or a stick, knows nothing of what happened meanwhile.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from kiosk.records.errors import Problem
from kiosk.records.models import RoundNoteRow
from kiosk.records.round_notes import NoteKind, began

_OPEN = "open"
_JUDGE = "judge"


def held(session: Session, *, round_id: str, kind: str, about: str, content: str) -> Problem | None:
    """Why the round does not take that note any more, None if it does."""
    said = json.loads(content)
    match NoteKind(kind):
        case NoteKind.ROUND:
            begun = any(_all(session, round_id, NoteKind.CLOCK))
            return Problem.ROUND_FROZEN if begun else None
        case NoteKind.KEY:
            frozen = not said.get("reason") and _begun(session, round_id, said["division"])
            return Problem.ROUND_FROZEN if frozen else None
        case NoteKind.TEAM:
            late = _team_is_late(session, round_id, about, said)
        case NoteKind.CUP:
            late = not said.get("again") and _closed(session, round_id, said["team"])
        case NoteKind.ANSWER:
            late = said["typing"] != _JUDGE and _closed(session, round_id, said["team"])
        case _:
            late = False
    return Problem.ROUND_LOCKED if late else None


def _team_is_late(session: Session, round_id: str, about: str, said: Mapping[str, Any]) -> bool:
    """Nobody comes into a division that is locked; another change there needs a reason."""
    before = latest(session, round_id, about)
    into = said["division"]
    comes = before is None or before["gone"] or before["division"] != into
    if comes and not _is_open(session, round_id, into):
        return not said["gone"]
    if before is None or said.get("reason"):
        return False
    return not _is_open(session, round_id, before["division"])


def _closed(session: Session, round_id: str, team: str) -> bool:
    found = latest(session, round_id, f"team {team}")
    return found is not None and not _is_open(session, round_id, found["division"])


def _is_open(session: Session, round_id: str, division: str) -> bool:
    step = latest(session, round_id, f"step {division}")
    return step is None or step["stage"] == _OPEN


def latest(session: Session, round_id: str, about: str) -> Mapping[str, Any] | None:
    """What was noted last about that thing, None if nothing was."""
    content = session.scalar(
        select(RoundNoteRow.content)
        .where(RoundNoteRow.round_id == round_id, RoundNoteRow.about == about)
        .order_by(RoundNoteRow.place.desc())
        .limit(1)
    )
    return None if content is None else json.loads(content)


def _begun(session: Session, round_id: str, division: str) -> bool:
    starts: dict[int, int] = {}
    for place, clock in _all(session, round_id, NoteKind.CLOCK):
        starts.setdefault(clock["sitting"], place)
    teams: dict[str, list[tuple[int, str, int]]] = {}
    for place, team in _all(session, round_id, NoteKind.TEAM):
        teams.setdefault(team["team"], []).append((place, team["division"], team["sitting"]))
    return began(division, teams.values(), starts)


def _all(
    session: Session, round_id: str, kind: NoteKind
) -> Iterable[tuple[int, Mapping[str, Any]]]:
    rows = session.execute(
        select(RoundNoteRow.place, RoundNoteRow.content)
        .where(RoundNoteRow.round_id == round_id, RoundNoteRow.kind == kind.value)
        .order_by(RoundNoteRow.place)
    )
    return [(place, json.loads(content)) for place, content in rows]
