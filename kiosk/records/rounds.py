"""Rounds in the records: the chains of their notes, and who came first."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from sqlalchemy import select
from sqlalchemy.exc import IntegrityError
from sqlalchemy.orm import Session

from kiosk.records.errors import Problem, RecordsError
from kiosk.records.labels import locked
from kiosk.records.models import RoundNoteRow
from kiosk.records.queries import weighing_of
from kiosk.records.round_locks import held
from kiosk.records.round_notes import FIRST, NoteKind, RoundNote, StoredRound


def fits(session: Session, note: RoundNote) -> dict[str, Any]:
    """Whether a note follows what is kept.

    RecordsError for an unknown round, a lost race, or what is frozen or locked by now.
    """
    opens = note.id == note.round_id
    if not opens:
        # One note of a round after the other: what a note is judged by stays so until it is kept.
        first = locked(session, RoundNoteRow, note.round_id, Problem.NO_ROUND)
        if first.simulated != note.simulated:
            raise RecordsError(Problem.MIXED)
    latest = session.scalar(
        select(RoundNoteRow.id)
        .where(RoundNoteRow.round_id == note.round_id, RoundNoteRow.about == note.about)
        .order_by(RoundNoteRow.place.desc())
        .limit(1)
    )
    if note.after != (latest or FIRST):
        raise RecordsError(Problem.LOST_RACE)
    problem = (
        None
        if opens
        else held(
            session, round_id=note.round_id, kind=note.kind, about=note.about, content=note.content
        )
    )
    if problem is not None:
        raise RecordsError(problem)
    return {}


def add(session: Session, row: RoundNoteRow) -> None:
    """Put a note in that fitted. RecordsError if another kiosk was quicker by a moment."""
    session.add(row)
    try:
        session.flush()
    except IntegrityError as error:
        raise RecordsError(Problem.LOST_RACE) from error


def rounds(session: Session, simulated: bool) -> list[StoredRound]:
    """The rounds, in the order in which they were opened."""
    rows = session.scalars(
        select(RoundNoteRow)
        .where(RoundNoteRow.kind == NoteKind.ROUND.value, RoundNoteRow.simulated.is_(simulated))
        .order_by(RoundNoteRow.place)
    )
    opened: dict[str, StoredRound] = {}
    for row in rows:
        since = opened[row.round_id].since if row.round_id in opened else row.at
        opened[row.round_id] = StoredRound(id=row.round_id, since=since, content=row.content)
    return list(opened.values())


def notes(
    session: Session, round_id: str, after: str = FIRST, kinds: Collection[NoteKind] = ()
) -> list[RoundNote]:
    """The notes of a round that were kept after that one, or all; in the order of keeping.

    With ``kinds`` only those that are about such things.
    """
    wanted = select(RoundNoteRow).where(RoundNoteRow.round_id == round_id)
    if kinds:
        wanted = wanted.where(RoundNoteRow.kind.in_([kind.value for kind in kinds]))
    if after:
        place = select(RoundNoteRow.place).where(RoundNoteRow.id == after).scalar_subquery()
        wanted = wanted.where(RoundNoteRow.place > place)
    rows = session.scalars(wanted.order_by(RoundNoteRow.place))
    return [_note(row) for row in rows]


def _note(row: RoundNoteRow) -> RoundNote:
    return RoundNote(
        id=row.id,
        at=row.at,
        round_id=row.round_id,
        simulated=row.simulated,
        kind=row.kind,
        about=row.about,
        after=row.after,
        content=row.content,
        weighing=None if row.weighing is None else weighing_of(row.weighing),
        zero=None if row.zero is None else weighing_of(row.zero),
    )
