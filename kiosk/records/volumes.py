"""Volume keys: what must hold for each of their entries, and how they are read back."""

from __future__ import annotations

from dataclasses import fields
from typing import Any, TypeVar

from sqlalchemy import Select, exists, select
from sqlalchemy.orm import Session

from kiosk.evidence import Source
from kiosk.records import queries, water_entries
from kiosk.records import volume_entries as entries
from kiosk.records.errors import Problem, RecordsError
from kiosk.records.kept import Guessed, StoredVolume, VolumeDraft
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
    WaterVoidedRow,
    WaterWeighedRow,
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


def add_water(session: Session, entry: water_entries.WaterWeighed) -> dict[str, Any]:
    """A mass belongs to a key in the making, and comes from a balance as the others do."""
    _open_volume(session, entry.key_id)
    if simulated_by(session, entry.key_id) not in (None, entry.weighing.source is Source.SIMULATED):
        raise RecordsError(Problem.MIXED)
    return {}


def void_water(session: Session, entry: water_entries.WaterVoided) -> dict[str, Any]:
    """A mass is voided once, while its key is in the making."""
    mass = locked(session, WaterWeighedRow, entry.water_id, Problem.MASS_GONE)
    _open_volume(session, mass.key_id)
    if session.scalar(select(exists().where(WaterVoidedRow.water_id == entry.water_id))):
        raise RecordsError(Problem.GONE_ALREADY)
    return {}


def make(session: Session, entry: entries.VolumeMade) -> dict[str, Any]:
    """A key has sizes or masses behind it, and a number that no other box has.

    A box of the simulated balance may not take the number of a real one; a real one may take its.
    """
    simulated = bool(simulated_by(session, entry.key_id))
    if _open_volume(session, entry.key_id) == entries.Shape.WATER:
        roles = {mass.role for mass in session.scalars(_waters(entry.key_id))}
        if roles != set(water_entries.WaterRole):
            raise RecordsError(Problem.NO_MASSES)
    elif not session.scalar(select(exists().where(SizeReadRow.key_id == entry.key_id))):
        raise RecordsError(Problem.NO_SIZES)
    label = str(entry.number)
    if simulated and label in queries.labels(session, BOX, simulated=False):
        raise RecordsError(Problem.BOX_TAKEN, number=label)
    claim(session, BOX, simulated, label, entry.key_id)
    return {}


def drop(session: Session, entry: entries.VolumeDropped) -> dict[str, Any]:
    """A key is dropped once, made or not."""
    locked(session, VolumeStartedRow, entry.key_id, Problem.NO_KEY)
    if session.scalar(select(exists().where(VolumeDroppedRow.key_id == entry.key_id))):
        raise RecordsError(Problem.GONE_ALREADY)
    release(session, entry.key_id)
    return {}


def _open_volume(session: Session, key_id: str) -> str:
    """The shape of a key in the making. RecordsError for any other key."""
    started = locked(session, VolumeStartedRow, key_id, Problem.NO_KEY)
    made = exists().where(VolumeMadeRow.key_id == key_id)
    dropped = exists().where(VolumeDroppedRow.key_id == key_id)
    if session.scalar(select(made | dropped)):
        raise RecordsError(Problem.KEY_CLOSED)
    return started.shape


def simulated_by(session: Session, key_id: str) -> bool | None:
    """By the first mass of the key, voided or not; None while there is none."""
    first = session.scalar(select(WaterWeighedRow).where(WaterWeighedRow.key_id == key_id).limit(1))
    return None if first is None else first.weighing.source == Source.SIMULATED.value


# Reading back --------------------------------------------------------------------------------


def open_volume(session: Session, simulated: bool) -> VolumeDraft | None:
    """The volume key begun last that was neither made nor dropped and has something that counts.

    Sizes come from a ruler and go on beside any balance, masses beside one of their kind.
    """
    ended = (
        exists().where(VolumeMadeRow.key_id == VolumeStartedRow.id)
        | exists().where(VolumeDroppedRow.key_id == VolumeStartedRow.id)
    )  # fmt: skip
    rows = session.scalars(
        select(VolumeStartedRow).where(~ended).order_by(VolumeStartedRow.place.desc())
    )
    drafts = (_draft(session, row) for row in rows)
    return next(
        (
            draft
            for draft in drafts
            if draft.sizes or (draft.waters and draft.simulated is simulated)
        ),
        None,
    )


def volumes(session: Session, simulated: bool) -> list[StoredVolume]:
    """Volume keys that were made and count, in the order in which they were made.

    Beside the simulated balance its boxes come along with the real ones, except one whose number a
    real box has by now.
    """
    rows = session.execute(
        select(VolumeStartedRow, VolumeMadeRow)
        .join(VolumeMadeRow, VolumeMadeRow.key_id == VolumeStartedRow.id)
        .join(LabelTakenRow, LabelTakenRow.holder == VolumeStartedRow.id)
        .order_by(VolumeMadeRow.place)
    ).all()
    found = [
        StoredVolume(draft=_draft(session, started), made=_value(entries.VolumeMade, made))
        for started, made in rows
    ]
    real = {volume.made.number for volume in found if not volume.draft.simulated}
    return [
        volume
        for volume in found
        if not volume.draft.simulated or (simulated and volume.made.number not in real)
    ]


def boxes_to_guess(session: Session, simulated: bool) -> list[Guessed]:
    """The boxes that can be guessed beside such a balance, by number as text."""
    real = queries.guessed(session, BOX, simulated=False)
    taken = {box.letter for box in real}
    practice = queries.guessed(session, BOX, simulated=True) if simulated else []
    boxes = [*real, *(box for box in practice if box.letter not in taken)]
    return sorted(boxes, key=lambda box: box.letter)


def _waters(key_id: str) -> Select[Any]:
    voided = exists().where(WaterVoidedRow.water_id == WaterWeighedRow.id)
    masses = select(WaterWeighedRow).where(WaterWeighedRow.key_id == key_id, ~voided)
    return masses.order_by(WaterWeighedRow.place)


def _water(row: WaterWeighedRow) -> water_entries.WaterWeighed:
    return water_entries.WaterWeighed(
        id=row.id,
        key_id=row.key_id,
        role=water_entries.WaterRole(row.role),
        celsius=row.celsius,
        weighing=queries.weighing_of(row.weighing),
        at=row.at,
    )


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
        waters=tuple(map(_water, session.scalars(_waters(row.id)))),
    )


def _value(kind: type[_Value], row: Kept) -> _Value:
    return kind(**{field.name: getattr(row, field.name) for field in fields(kind)})
