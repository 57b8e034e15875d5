"""Writing entries down: one row each, once, and only if it fits what was kept before.

Every rule runs inside the transaction that writes the row. What may be asked by several kiosks at
the same moment is decided by a lock on the row of the try or key (PostgreSQL; SQLite has one
writer at a time anyway) or by a primary key.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields
from enum import StrEnum
from typing import Any

from sqlalchemy import exists, select
from sqlalchemy.orm import Session

from kiosk.evidence import Source, Weighing
from kiosk.records import (
    entries,
    jar_entries,
    models,
    round_notes,
    rounds,
    volume_entries,
    volumes,
    water_entries,
)
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.kinds import CUP, JAR
from kiosk.records.labels import claim, locked, release
from kiosk.records.models import Kept

_MAY_BE_WEIGHED = "Weighing | None"  # the annotation of a field, as a text


def keep(session: Session, entry: entries.Entry) -> None:
    """Write one entry, unless its id is there already with the same content.

    Raises RecordsError if it does not fit; the caller's transaction is then to be given up.
    """
    model, rule = _KINDS[type(entry)]
    columns = _columns(session, entry)
    if not _is_there(session, model, columns):
        row = model(**columns, **rule(session, entry))
        if isinstance(row, models.RoundNoteRow):
            rounds.add(session, row)
        else:
            session.add(row)
            session.flush()


def _columns(session: Session, thing: entries.Entry | Weighing) -> dict[str, Any]:
    columns: dict[str, Any] = {}
    for field in fields(thing):
        value = getattr(thing, field.name)
        if isinstance(value, Weighing):
            _keep_weighing(session, value)
            columns[f"{field.name}_id"] = value.id
        elif value is None and field.type == _MAY_BE_WEIGHED:
            columns[f"{field.name}_id"] = None
        else:
            columns[field.name] = value.value if isinstance(value, StrEnum) else value
    return columns


def _keep_weighing(session: Session, weighing: Weighing) -> None:
    columns = _columns(session, weighing)
    if not _is_there(session, models.WeighingRow, columns):
        session.add(models.WeighingRow(**columns))
        session.flush()


def _is_there(session: Session, model: type[Kept], columns: dict[str, Any]) -> bool:
    row = session.scalar(select(model).where(model.id == columns["id"]))
    if row is not None and any(getattr(row, name) != value for name, value in columns.items()):
        raise RecordsError(Problem.OTHER_CONTENT)
    return row is not None


# What must hold for a cup -------------------------------------------------------------------


def _take_cup(session: Session, entry: entries.CupTaken) -> dict[str, Any]:
    claim(session, CUP, entry.simulated, str(entry.number), entry.id)
    return {"simulated": entry.simulated}


def _hand_in(session: Session, entry: entries.CupHandedIn) -> dict[str, Any]:
    taken = locked(session, models.CupTakenRow, entry.try_id, Problem.NO_TRY)
    if taken.simulated != (entry.filled.source is Source.SIMULATED):
        raise RecordsError(Problem.MIXED)
    if not release(session, entry.try_id):
        raise RecordsError(Problem.NOT_OUT)
    return {}


def _throw_away(session: Session, entry: entries.TryThrownAway) -> dict[str, Any]:
    locked(session, models.CupTakenRow, entry.try_id, Problem.NO_TRY)
    row = models.TryThrownAwayRow
    if session.scalar(select(exists().where(row.try_id == entry.try_id))):
        raise RecordsError(Problem.GONE_ALREADY)
    release(session, entry.try_id)
    return {}


# What must hold for a key -------------------------------------------------------------------


def _start_key(_session: Session, _entry: entries.KeyStarted) -> dict[str, Any]:
    return {}


def _add_mass(session: Session, entry: entries.KeyMass) -> dict[str, Any]:
    _open_key(session, entry.key_id)
    simulated = _is_simulated(session, entry.key_id)
    if simulated not in (None, entry.weighing.source is Source.SIMULATED):
        raise RecordsError(Problem.MIXED)
    return {}


def _void_mass(session: Session, entry: entries.MassVoided) -> dict[str, Any]:
    mass = locked(session, models.KeyMassRow, entry.mass_id, Problem.MASS_GONE)
    _open_key(session, mass.key_id)
    if session.scalar(select(exists().where(models.MassVoidedRow.mass_id == entry.mass_id))):
        raise RecordsError(Problem.GONE_ALREADY)
    return {}


def _change_key(session: Session, entry: entries.KeyChanged) -> dict[str, Any]:
    _open_key(session, entry.key_id)
    return {}


def _make_key(session: Session, entry: entries.KeyMade) -> dict[str, Any]:
    _open_key(session, entry.key_id)
    simulated = _is_simulated(session, entry.key_id)
    if simulated is None:
        raise RecordsError(Problem.NO_MASSES)
    claim(session, JAR, simulated, entry.letter, entry.key_id)
    return {"simulated": simulated}


def _drop_key(session: Session, entry: entries.KeyDropped) -> dict[str, Any]:
    locked(session, models.KeyStartedRow, entry.key_id, Problem.NO_KEY)
    if session.scalar(select(exists().where(models.KeyDroppedRow.key_id == entry.key_id))):
        raise RecordsError(Problem.GONE_ALREADY)
    release(session, entry.key_id)
    return {}


# What must hold for a guess ------------------------------------------------------------------


def _guess(session: Session, entry: entries.GuessMade) -> dict[str, Any]:
    _sealed_key(session, entry.key_id)
    row = models.GuessMadeRow
    earlier = exists().where(row.key_id == entry.key_id, row.team == entry.team)
    shown = exists().where(models.AnswerShownRow.key_id == entry.key_id)
    return {"seen": bool(session.scalar(select(shown | earlier if entry.team else shown)))}


def _show_answer(session: Session, entry: entries.AnswerShown) -> dict[str, Any]:
    _sealed_key(session, entry.key_id)
    return {}


def _sealed_key(session: Session, key_id: str) -> None:
    """A key that was made and still counts: its label is taken. Two kiosks wait for each other."""
    row = models.LabelTakenRow
    label = select(row).where(row.holder == key_id, row.kind != CUP).with_for_update()
    if session.scalar(label) is None:
        raise RecordsError(Problem.NO_KEY)


def _weigh_jar(session: Session, entry: jar_entries.JarWeighed) -> dict[str, Any]:
    _sealed_key(session, entry.key_id)
    if _is_simulated(session, entry.key_id) != (entry.weighing.source is Source.SIMULATED):
        raise RecordsError(Problem.MIXED)
    return {}


# What must hold for a check of the balance ---------------------------------------------------


def _add_check_mass(session: Session, entry: entries.CheckMass) -> dict[str, Any]:
    simulated = _check_is_simulated(session, entry.check_id)
    if simulated not in (None, entry.weighing.source is Source.SIMULATED):
        raise RecordsError(Problem.MIXED)
    return {}


def _end_check(session: Session, entry: entries.BalanceChecked) -> dict[str, Any]:
    simulated = _check_is_simulated(session, entry.id)
    if simulated is None:
        raise RecordsError(Problem.NO_WEIGHING)
    return {"simulated": simulated}


def _check_is_simulated(session: Session, check_id: str) -> bool | None:
    """By the first mass of the check; None while there is none."""
    first = session.scalar(
        select(models.CheckMassRow).where(models.CheckMassRow.check_id == check_id).limit(1)
    )
    return None if first is None else first.weighing.source == Source.SIMULATED.value


def _open_key(session: Session, key_id: str) -> None:
    locked(session, models.KeyStartedRow, key_id, Problem.NO_KEY)
    made = exists().where(models.KeyMadeRow.key_id == key_id)
    dropped = exists().where(models.KeyDroppedRow.key_id == key_id)
    if session.scalar(select(made | dropped)):
        raise RecordsError(Problem.KEY_CLOSED)


def _is_simulated(session: Session, key_id: str) -> bool | None:
    """By the first mass of the key, voided or not; None while there is none."""
    masses = (
        select(models.WeighingRow.source)
        .join(models.KeyMassRow, models.KeyMassRow.weighing_id == models.WeighingRow.id)
        .where(models.KeyMassRow.key_id == key_id)
        .limit(1)
    )
    source = session.scalar(masses)
    return None if source is None else source == Source.SIMULATED.value


_Rule = Callable[[Session, Any], dict[str, Any]]
_KINDS: dict[type[entries.Entry], tuple[type[Kept], _Rule]] = {
    entries.CupTaken: (models.CupTakenRow, _take_cup),
    entries.CupHandedIn: (models.CupHandedInRow, _hand_in),
    entries.TryThrownAway: (models.TryThrownAwayRow, _throw_away),
    entries.KeyStarted: (models.KeyStartedRow, _start_key),
    entries.KeyMass: (models.KeyMassRow, _add_mass),
    entries.MassVoided: (models.MassVoidedRow, _void_mass),
    entries.KeyChanged: (models.KeyChangedRow, _change_key),
    entries.KeyMade: (models.KeyMadeRow, _make_key),
    entries.KeyDropped: (models.KeyDroppedRow, _drop_key),
    entries.GuessMade: (models.GuessMadeRow, _guess),
    entries.AnswerShown: (models.AnswerShownRow, _show_answer),
    jar_entries.JarWeighed: (models.JarWeighedRow, _weigh_jar),
    volume_entries.VolumeStarted: (models.VolumeStartedRow, volumes.start),
    volume_entries.SizeRead: (models.SizeReadRow, volumes.add_size),
    volume_entries.SizeVoided: (models.SizeVoidedRow, volumes.void_size),
    water_entries.WaterWeighed: (models.WaterWeighedRow, volumes.add_water),
    water_entries.WaterVoided: (models.WaterVoidedRow, volumes.void_water),
    volume_entries.VolumeMade: (models.VolumeMadeRow, volumes.make),
    volume_entries.VolumeDropped: (models.VolumeDroppedRow, volumes.drop),
    entries.CheckMass: (models.CheckMassRow, _add_check_mass),
    entries.BalanceChecked: (models.BalanceCheckedRow, _end_check),
    round_notes.RoundNote: (models.RoundNoteRow, rounds.fits),
}


def kinds_of_entries() -> tuple[type[entries.Entry], ...]:
    """Everything that can be kept."""
    return tuple(_KINDS)
