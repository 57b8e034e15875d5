"""Volume keys: what must hold for each of their entries, and how they are read back."""

from __future__ import annotations

from dataclasses import fields
from typing import Any, TypeVar

from sqlalchemy import exists, select
from sqlalchemy.orm import Session

from kiosk.records import volume_entries as entries
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.kept import StoredVolume, VolumeDraft
from kiosk.records.kinds import BOX
from kiosk.records.labels import claim, locked, release
from kiosk.records.models import (
    Kept,
    LabelTakenRow,
    SizeReadRow,
    SizeVoidedRow,
    VolumeDroppedRow,
    VolumeMadeRow,
    VolumeStartedRow,
)

_Value = TypeVar("_Value", entries.SizeRead, entries.VolumeMade)


# What must hold ------------------------------------------------------------------------------


def start(_session: Session, _entry: entries.VolumeStarted) -> dict[str, Any]:
    """A volume key may be begun at any time."""
    return {}


def add_size(session: Session, entry: entries.SizeRead) -> dict[str, Any]:
    """A size belongs to a key in the making."""
    _open_volume(session, entry.key_id)
    return {}


def void_size(session: Session, entry: entries.SizeVoided) -> dict[str, Any]:
    """A size is voided once, while its key is in the making."""
    size = locked(session, SizeReadRow, entry.size_id, Problem.SIZE_GONE)
    _open_volume(session, size.key_id)
    if session.scalar(select(exists().where(SizeVoidedRow.size_id == entry.size_id))):
        raise RecordsError(Problem.GONE_ALREADY)
    return {}


def make(session: Session, entry: entries.VolumeMade) -> dict[str, Any]:
    """A key has sizes behind it, and a number that no other box has."""
    _open_volume(session, entry.key_id)
    if not session.scalar(select(exists().where(SizeReadRow.key_id == entry.key_id))):
        raise RecordsError(Problem.NO_SIZES)
    claim(session, BOX, False, str(entry.number), entry.key_id)
    return {}


def drop(session: Session, entry: entries.VolumeDropped) -> dict[str, Any]:
    """A key is dropped once, made or not."""
    locked(session, VolumeStartedRow, entry.key_id, Problem.NO_KEY)
    if session.scalar(select(exists().where(VolumeDroppedRow.key_id == entry.key_id))):
        raise RecordsError(Problem.GONE_ALREADY)
    release(session, entry.key_id)
    return {}


def _open_volume(session: Session, key_id: str) -> None:
    locked(session, VolumeStartedRow, key_id, Problem.NO_KEY)
    made = exists().where(VolumeMadeRow.key_id == key_id)
    dropped = exists().where(VolumeDroppedRow.key_id == key_id)
    if session.scalar(select(made | dropped)):
        raise RecordsError(Problem.KEY_CLOSED)


# Reading back --------------------------------------------------------------------------------


def open_volume(session: Session) -> VolumeDraft | None:
    """The volume key begun last that was neither made nor dropped and has a size that counts."""
    ended = (
        exists().where(VolumeMadeRow.key_id == VolumeStartedRow.id)
        | exists().where(VolumeDroppedRow.key_id == VolumeStartedRow.id)
    )  # fmt: skip
    rows = session.scalars(
        select(VolumeStartedRow).where(~ended).order_by(VolumeStartedRow.place.desc())
    )
    drafts = (_draft(session, row) for row in rows)
    return next((draft for draft in drafts if draft.sizes), None)


def volumes(session: Session) -> list[StoredVolume]:
    """Volume keys that were made and count, in the order in which they were made."""
    rows = session.execute(
        select(VolumeStartedRow, VolumeMadeRow)
        .join(VolumeMadeRow, VolumeMadeRow.key_id == VolumeStartedRow.id)
        .join(LabelTakenRow, LabelTakenRow.holder == VolumeStartedRow.id)
        .order_by(VolumeMadeRow.place)
    ).all()
    return [
        StoredVolume(draft=_draft(session, started), made=_value(entries.VolumeMade, made))
        for started, made in rows
    ]


def _draft(session: Session, row: VolumeStartedRow) -> VolumeDraft:
    voided = exists().where(SizeVoidedRow.size_id == SizeReadRow.id)
    sizes = session.scalars(
        select(SizeReadRow).where(SizeReadRow.key_id == row.id, ~voided).order_by(SizeReadRow.place)
    )
    return VolumeDraft(
        id=row.id,
        shape=row.shape,
        since=row.at,
        sizes=tuple(_value(entries.SizeRead, size) for size in sizes),
    )


def _value(kind: type[_Value], row: Kept) -> _Value:
    return kind(**{field.name: getattr(row, field.name) for field in fields(kind)})
