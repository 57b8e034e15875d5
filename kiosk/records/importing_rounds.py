"""Notes of rounds in a file of another kiosk: which of them fit what is noted here by now.

They were judged there, by what was known there. Here they are judged again, in their order.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from kiosk.records.models import RoundNoteRow
from kiosk.records.round_locks import held, latest
from kiosk.records.round_notes import FIRST, NoteKind, said_in

Row = Mapping[str, Any]
Readable = Callable[[str, str, str], bool]  # a note's kind, about and content

_OF_A_TEAM = (NoteKind.TEAM, NoteKind.CUP, NoteKind.ANSWER)
_DECIDED_BY = [kind.value for kind in (*_OF_A_TEAM, NoteKind.KEY)]


class Rounds:
    """Judges the rows of a file, which are its notes of rounds in their order.

    From the beginning on other kiosks wait with notes of those rounds until the transaction is
    over: what a note is judged by stays so, and no note of theirs gets a place behind one that
    nobody sees yet.
    """

    def __init__(self, session: Session, rows: Sequence[Row], readable: Readable) -> None:
        self._session = session
        self._readable = readable
        self._file = {row["id"] for row in rows}
        self._teams_there = {
            (row["round_id"], row["about"]): said_in(row["content"]).get("division")
            for row in rows
            if row["kind"] == NoteKind.TEAM
        }
        self._news_here: dict[str, frozenset[str]] = {}
        _lock(session, {row["round_id"] for row in rows})

    def takes(self, row: Row) -> bool:
        """Whether it can be read, follows what is here, and may come so late."""
        kind, about, content = row["kind"], row["about"], row["content"]
        if not self._readable(kind, about, content):
            return False
        if row["id"] == row["round_id"]:
            return bool(kind == NoteKind.ROUND and row["after"] == FIRST)
        if not self._follows(row) or self._knew_less(row):
            return False
        round_id = row["round_id"]
        problem = held(self._session, round_id=round_id, kind=kind, about=about, content=content)
        return problem is None

    def _follows(self, row: Row) -> bool:
        """Whether its round and the note before it are here: else it speaks of what is unknown."""
        note = RoundNoteRow
        opens = select(note.id).where(
            note.id == row["round_id"], note.simulated == row["simulated"]
        )
        before = select(note.id).where(
            note.id == row["after"],
            note.round_id == row["round_id"],
            note.about == row["about"],
        )
        asked = [opens] if row["after"] == FIRST else [opens, before]
        return all(self._session.execute(each).first() is not None for each in asked)

    def _knew_less(self, row: Row) -> bool:
        """Whether a division went on there without all that is noted about it here."""
        if row["kind"] != NoteKind.STEP:
            return False
        return said_in(row["content"]).get("division") in self._unknown_there(row["round_id"])

    def _unknown_there(self, round_id: str) -> frozenset[str]:
        """The divisions with teams, cups, answers or keys noted here that the file lacks."""
        if round_id not in self._news_here:
            note = RoundNoteRow
            rows = self._session.execute(
                select(note.id, note.kind, note.content).where(
                    note.round_id == round_id, note.kind.in_(_DECIDED_BY)
                )
            )
            news = [(kind, said_in(said)) for id_, kind, said in rows if id_ not in self._file]
            teams = {said.get("team") for kind, said in news if kind in _OF_A_TEAM}
            keys = {said.get("division") for kind, said in news if kind == NoteKind.KEY}
            divisions = keys.union(*(self._divisions(round_id, f"team {team}") for team in teams))
            self._news_here[round_id] = frozenset(name for name in divisions if name is not None)
        return self._news_here[round_id]

    def _divisions(self, round_id: str, team: str) -> set[str | None]:
        """Where a team is by what was noted last, here and there."""
        here = latest(self._session, round_id, team) or {}
        return {here.get("division"), self._teams_there.get((round_id, team))}


def _lock(session: Session, rounds: set[str]) -> None:
    note = RoundNoteRow
    session.execute(
        select(note.id).where(note.id.in_(sorted(rounds))).order_by(note.id).with_for_update()
    ).all()
