"""What a round no longer takes: notes that come late must not change what others decided by.

Rules freeze when the first sitting begins, the keys of a division when one of its sittings does,
teams, cups and answers when its answers are locked. From then on only what says that it is a change
(a reason, a cup weighed again, the judge) is taken, and nothing at all once its results are final.
It is asked where notes are kept, since a kiosk that was cut off, or a stick, knows nothing of what
happened meanwhile. What is kept may have been written by another version: what is missing in it is
taken as never said.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from kiosk.records.errors import Problem
from kiosk.records.models import RoundNoteRow
from kiosk.records.round_notes import NoteKind, Presence, began, said_in

_OPEN = "open"
_FINAL = "final"
_JUDGE = "judge"
_UNKNOWN = 0  # sittings are numbered from 1

Content = Mapping[str, Any]


def held(session: Session, *, round_id: str, kind: str, about: str, content: str) -> Problem | None:
    """Why the round does not take that note any more, None if it does."""
    said = said_in(content)
    if any(
        _stage(session, round_id, one) == _FINAL for one in _touched(session, round_id, kind, said)
    ):
        return Problem.ROUND_FINAL
    match kind:
        case NoteKind.ROUND:
            begun = any(_all(session, round_id, NoteKind.CLOCK))
            return Problem.ROUND_FROZEN if begun else None
        case NoteKind.KEY:
            frozen = not said.get("reason") and _begun(session, round_id, said.get("division", ""))
            return Problem.ROUND_FROZEN if frozen else None
        case NoteKind.TEAM:
            late = _team_is_late(session, round_id, about, said)
        case NoteKind.CUP:
            late = _cup_is_late(session, round_id, said)
        case NoteKind.ANSWER:
            late = said.get("typing") != _JUDGE and _closed(session, round_id, said)
        case _:
            late = False
    return Problem.ROUND_LOCKED if late else None


def _touched(session: Session, round_id: str, kind: str, said: Content) -> set[str]:
    """The divisions whose results a note could change, or say something against."""
    divisions: set[str] = set()
    if kind in (NoteKind.TEAM, NoteKind.KEY):
        divisions.add(said.get("division", ""))
    if kind in (NoteKind.TEAM, NoteKind.CUP, NoteKind.ANSWER, NoteKind.PROTEST):
        team = latest(session, round_id, f"team {said.get('team')}")
        divisions.add((team or {}).get("division", ""))
    return divisions


def _cup_is_late(session: Session, round_id: str, said: Content) -> bool:
    """After the lock a cup is weighed once more in a protest, as long as nobody decided it."""
    if not said.get("protest"):
        return _closed(session, round_id, said)
    protest = latest(session, round_id, f"protest {said['protest']}") or {}
    return protest.get("accepted") is not None


def _team_is_late(session: Session, round_id: str, about: str, said: Content) -> bool:
    """Nobody comes into a division that is locked; another change there needs a reason.

    A team that is gone was there: it may come back.
    """
    before = latest(session, round_id, about)
    into = said.get("division", "")
    comes = before is None or before.get("division") != into
    if comes and not said.get("gone") and not _is_open(session, round_id, into):
        return True
    if before is None or said.get("reason"):
        return False
    return not _is_open(session, round_id, before.get("division", ""))


def _closed(session: Session, round_id: str, said: Content) -> bool:
    found = latest(session, round_id, f"team {said.get('team')}")
    return found is not None and not _is_open(session, round_id, found.get("division", ""))


def _is_open(session: Session, round_id: str, division: str) -> bool:
    return _stage(session, round_id, division) == _OPEN


def _stage(session: Session, round_id: str, division: str) -> str:
    step = latest(session, round_id, f"step {division}") or {}
    return str(step.get("stage", _OPEN))


def latest(session: Session, round_id: str, about: str) -> Content | None:
    """What was noted last about that thing, None if nothing was."""
    content = session.scalar(
        select(RoundNoteRow.content)
        .where(RoundNoteRow.round_id == round_id, RoundNoteRow.about == about)
        .order_by(RoundNoteRow.place.desc())
        .limit(1)
    )
    return None if content is None else said_in(content)


def _begun(session: Session, round_id: str, division: str) -> bool:
    starts: dict[int, int] = {}
    for place, _, clock in _all(session, round_id, NoteKind.CLOCK):
        starts.setdefault(_sitting(clock), place)
    starts.pop(_UNKNOWN, None)
    teams: dict[str, list[Presence]] = {}
    for place, about, team in _all(session, round_id, NoteKind.TEAM):
        of = None if team.get("gone") else team.get("division")
        teams.setdefault(about, []).append((place, of, _sitting(team)))
    return began(division, teams.values(), starts)


def _sitting(said: Content) -> int:
    sitting = said.get("sitting")
    return sitting if isinstance(sitting, int) else _UNKNOWN


def _all(session: Session, round_id: str, kind: NoteKind) -> Iterable[tuple[int, str, Content]]:
    """Place, about and content of each note of that kind."""
    rows = session.execute(
        select(RoundNoteRow.place, RoundNoteRow.about, RoundNoteRow.content)
        .where(RoundNoteRow.round_id == round_id, RoundNoteRow.kind == kind.value)
        .order_by(RoundNoteRow.place)
    )
    return [(place, about, said_in(content)) for place, about, content in rows]
