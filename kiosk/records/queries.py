"""Reading the records: rows become again what went in, or views put together of it."""

from __future__ import annotations

from dataclasses import fields
from typing import Any, TypeVar

from sqlalchemy import exists, func, select
from sqlalchemy.orm import Session

from kiosk.evidence import Evidence, Source, Weighing
from kiosk.records.entries import LAST_NUMBER, BalanceChecked, CupOut, KeyMade, KeyMass
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.kept import Guess, Guessed, KeyDraft, StoredKey, Try
from kiosk.records.kinds import CUP, JAR
from kiosk.records.models import (
    AnswerShownRow,
    BalanceCheckedRow,
    CupHandedInRow,
    CupTakenRow,
    GuessMadeRow,
    KeyChangedRow,
    KeyDroppedRow,
    KeyMadeRow,
    KeyMassRow,
    KeyStartedRow,
    LabelTakenRow,
    MassVoidedRow,
    TryThrownAwayRow,
    WeighingRow,
)

_Value = TypeVar("_Value", KeyMass, KeyMade, BalanceChecked)
_QUESTIONS = ("pieces", "back_in", "goal", "in_lots", "bits")  # about a key in the making


def cups_out(session: Session, simulated: bool) -> list[CupOut]:
    """Tries whose cup is being filled, in the order in which they were taken."""
    rows = session.scalars(
        select(CupTakenRow)
        .join(LabelTakenRow, LabelTakenRow.holder == CupTakenRow.id)
        .where(LabelTakenRow.kind == CUP, LabelTakenRow.simulated.is_(simulated))
        .order_by(CupTakenRow.place)
    )
    return [
        CupOut(
            id=row.id,
            number=row.number,
            team=row.team,
            material=row.material,
            empty=weighing_of(row.empty),
            since=row.at,
        )
        for row in rows
    ]


def next_cup_number(session: Session, simulated: bool) -> int:
    """The number after the one given last, but none that is out; after the last comes 1."""
    last = session.scalar(
        select(CupTakenRow.number)
        .where(CupTakenRow.simulated.is_(simulated))
        .order_by(CupTakenRow.place.desc())
        .limit(1)
    )
    out = labels(session, CUP, simulated)
    for step in range(LAST_NUMBER):
        number = ((last or 0) + step) % LAST_NUMBER + 1
        if str(number) not in out:
            return number
    raise RecordsError(Problem.ALL_OUT, count=LAST_NUMBER)


def last_tries(session: Session, team: str, simulated: bool, limit: int) -> list[Try]:
    """The team's latest tries that were handed in and count, oldest first."""
    thrown_away = exists().where(TryThrownAwayRow.try_id == CupTakenRow.id)
    rows = session.execute(
        select(CupTakenRow, CupHandedInRow)
        .join(CupHandedInRow, CupHandedInRow.try_id == CupTakenRow.id)
        .where(CupTakenRow.team == team, CupTakenRow.simulated.is_(simulated), ~thrown_away)
        .order_by(CupHandedInRow.place.desc())
        .limit(limit)
    ).all()
    return [_try(taken, handed_in) for taken, handed_in in reversed(rows)]


def open_key(session: Session, simulated: bool) -> KeyDraft | None:
    """The key begun last that was neither made nor dropped and has at least one mass."""
    ended = (
        exists().where(KeyMadeRow.key_id == KeyStartedRow.id)
        | exists().where(KeyDroppedRow.key_id == KeyStartedRow.id)
    )  # fmt: skip
    source = Source.SIMULATED.value
    begun = select(KeyMassRow.id).join(WeighingRow, WeighingRow.id == KeyMassRow.weighing_id)
    begun = begun.where(
        KeyMassRow.key_id == KeyStartedRow.id,
        WeighingRow.source == source if simulated else WeighingRow.source != source,
    )
    row = session.scalar(
        select(KeyStartedRow)
        .where(~ended, begun.exists())
        .order_by(KeyStartedRow.place.desc())
        .limit(1)
    )
    return None if row is None else _draft(session, row, simulated)


def keys(session: Session, simulated: bool) -> list[StoredKey]:
    """Keys that were made and count, in the order in which they were made."""
    rows = session.execute(
        select(KeyStartedRow, KeyMadeRow)
        .join(KeyMadeRow, KeyMadeRow.key_id == KeyStartedRow.id)
        .join(LabelTakenRow, LabelTakenRow.holder == KeyStartedRow.id)
        .where(KeyMadeRow.simulated.is_(simulated))
        .order_by(KeyMadeRow.place)
    ).all()
    return [
        StoredKey(draft=_draft(session, started, simulated), made=_value(KeyMade, made))
        for started, made in rows
    ]


def used_letters(session: Session, simulated: bool) -> set[str]:
    """Letters of jars whose key counts."""
    return labels(session, JAR, simulated)


def guessed(session: Session, kind: str, simulated: bool) -> list[Guessed]:
    """The containers of that kind whose key counts, by letter, and how many guessed them."""
    count = (
        select(func.count())
        .where(GuessMadeRow.key_id == LabelTakenRow.holder, ~GuessMadeRow.seen)
        .scalar_subquery()
    )
    shown = exists().where(AnswerShownRow.key_id == LabelTakenRow.holder)
    rows = session.execute(
        select(LabelTakenRow.holder, LabelTakenRow.label, count, shown)
        .where(LabelTakenRow.kind == kind, LabelTakenRow.simulated.is_(simulated))
        .order_by(LabelTakenRow.label)
    )
    return [
        Guessed(kind=kind, key_id=holder, letter=label, guesses=guesses, shown=bool(seen))
        for holder, label, guesses, seen in rows
    ]


def guesses(session: Session, key_id: str) -> list[Guess]:
    """The guesses at one key, in the order in which they were made."""
    rows = session.scalars(
        select(GuessMadeRow).where(GuessMadeRow.key_id == key_id).order_by(GuessMadeRow.place)
    )
    return [Guess(team=row.team, guess=row.guess, seen=row.seen) for row in rows]


def last_check(session: Session, balance: str, simulated: bool) -> BalanceChecked | None:
    """The check of that balance that was kept last."""
    row = session.scalar(
        select(BalanceCheckedRow)
        .where(BalanceCheckedRow.balance == balance, BalanceCheckedRow.simulated.is_(simulated))
        .order_by(BalanceCheckedRow.place.desc())
        .limit(1)
    )
    return None if row is None else _value(BalanceChecked, row)


def labels(session: Session, kind: str, simulated: bool) -> set[str]:
    """The labels of that kind that are taken."""
    return set(
        session.scalars(
            select(LabelTakenRow.label).where(
                LabelTakenRow.kind == kind, LabelTakenRow.simulated.is_(simulated)
            )
        )
    )


def _draft(session: Session, row: KeyStartedRow, simulated: bool) -> KeyDraft:
    voided = exists().where(MassVoidedRow.mass_id == KeyMassRow.id)
    masses = session.scalars(
        select(KeyMassRow).where(KeyMassRow.key_id == row.id, ~voided).order_by(KeyMassRow.place)
    )
    answers = _answers(session, row)
    return KeyDraft(
        id=row.id,
        material=row.material,
        scatter_class=row.scatter_class,
        piece_cv_percent=row.piece_cv_percent,
        pieces=answers.get("pieces", row.pieces),
        back_in=answers.get("back_in"),
        goal=answers.get("goal"),
        in_lots=bool(answers.get("in_lots")),
        bits=answers.get("bits"),
        simulated=simulated,
        since=row.at,
        masses=tuple(_value(KeyMass, mass) for mass in masses),
    )


def _answers(session: Session, row: KeyStartedRow) -> dict[str, Any]:
    """What was answered last, by the name of the question."""
    changes = session.scalars(
        select(KeyChangedRow).where(KeyChangedRow.key_id == row.id).order_by(KeyChangedRow.place)
    )
    return {
        name: answer
        for change in changes
        for name in _QUESTIONS
        if (answer := getattr(change, name)) is not None
    }


def _try(taken: CupTakenRow, handed_in: CupHandedInRow) -> Try:
    return Try(
        id=taken.id,
        number=taken.number,
        team=taken.team,
        material=taken.material,
        evidence=Evidence(gross=weighing_of(handed_in.filled), tare=weighing_of(taken.empty)),
        net=handed_in.net,
        target=handed_in.target,
        points=handed_in.points,
        side=handed_in.side,
        confirmed=handed_in.confirmed,
        at=handed_in.at,
    )


def _value(kind: type[_Value], row: KeyMassRow | KeyMadeRow | BalanceCheckedRow) -> _Value:
    def plain(value: Any) -> Any:
        return weighing_of(value) if isinstance(value, WeighingRow) else value

    return kind(**{field.name: plain(getattr(row, field.name)) for field in fields(kind)})


def weighing_of(row: WeighingRow) -> Weighing:
    """The weighing that a row keeps."""
    columns = {field.name: getattr(row, field.name) for field in fields(Weighing)}
    return Weighing(**columns | {"source": Source(row.source)})
