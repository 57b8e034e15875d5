"""What must hold between the rows of the records, whoever wrote them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from decimal import Decimal
from itertools import chain
from typing import TypeAlias

from sqlalchemy import Connection, Executable, select
from sqlalchemy.orm import aliased

from kiosk.evidence import Source
from kiosk.records.findings import Finding, Kind, finding
from kiosk.records.kinds import BOX, CUP, JAR
from kiosk.records.models import (
    CupHandedInRow,
    CupTakenRow,
    KeyDroppedRow,
    KeyMadeRow,
    KeyMassRow,
    LabelTakenRow,
    TryThrownAwayRow,
    VolumeDroppedRow,
    VolumeMadeRow,
    WaterWeighedRow,
    WeighingRow,
)

# Target and net in grams, points, side: whether the points can come of it by any rule.
Fits: TypeAlias = Callable[[Decimal, Decimal, Decimal, str], bool]
_SIMULATED = Source.SIMULATED.value
_Label: TypeAlias = tuple[str, bool, str, str]


def senseless(connection: Connection, fits: Fits) -> Iterator[Finding]:
    """Everything that does not hold together, cups first."""
    return chain(
        _taken(connection),
        _handed_in(connection, fits),
        _keys(connection),
        _volumes(connection),
        _labels(connection),
    )


def _taken(connection: Connection) -> Iterator[Finding]:
    rows = select(CupTakenRow.id, CupTakenRow.simulated, WeighingRow.source).join(
        WeighingRow, WeighingRow.id == CupTakenRow.empty_id
    )
    for cup, simulated, source in connection.execute(rows):
        if simulated != (source == _SIMULATED):
            yield finding(Kind.MIXED, CupTakenRow.__tablename__, cup)


def _handed_in(connection: Connection, fits: Fits) -> Iterator[Finding]:
    name = CupHandedInRow.__tablename__
    for row in connection.execute(_cups_handed_in()):
        if row.net != row.gross - row.tare:
            yield finding(Kind.NET, name, row.id, net=row.net, gross=row.gross, tare=row.tare)
        if not fits(row.target, row.net, row.points, row.side):
            yield finding(
                Kind.POINTS, name, row.id,
                points=row.points, side=row.side, net=row.net, target=row.target,
            )  # fmt: skip
        if row.simulated != (row.source == _SIMULATED):
            yield finding(Kind.MIXED, name, row.id)


def _cups_handed_in() -> Executable:
    empty, filled, handed_in = aliased(WeighingRow), aliased(WeighingRow), CupHandedInRow
    return (
        select(
            handed_in.id, handed_in.net, handed_in.target, handed_in.points, handed_in.side,
            filled.grams.label("gross"), empty.grams.label("tare"), filled.source,
            CupTakenRow.simulated,
        )
        .join(CupTakenRow, CupTakenRow.id == handed_in.try_id)
        .join(empty, empty.id == CupTakenRow.empty_id)
        .join(filled, filled.id == handed_in.filled_id)
        .order_by(handed_in.place)
    )  # fmt: skip


def _keys(connection: Connection) -> Iterator[Finding]:
    made = KeyMadeRow
    for row in connection.execute(select(made.id, made.low, made.count.label("pieces"), made.high)):
        if not row.low <= row.pieces <= row.high:
            yield finding(
                Kind.INTERVAL, made.__tablename__, row.id,
                count=row.pieces, low=row.low, high=row.high,
            )  # fmt: skip
    masses = (
        select(made.id, made.simulated, WeighingRow.source)
        .join(KeyMassRow, KeyMassRow.key_id == made.key_id)
        .join(WeighingRow, WeighingRow.id == KeyMassRow.weighing_id)
    )
    mixed = {key for key, simulated, source in connection.execute(masses)
             if simulated != (source == _SIMULATED)}  # fmt: skip
    for key in sorted(mixed):
        yield finding(Kind.MIXED, made.__tablename__, key)


def _volumes(connection: Connection) -> Iterator[Finding]:
    made = VolumeMadeRow
    for row in connection.execute(select(made.id, made.low, made.cm3, made.high)):
        if not row.low <= row.cm3 <= row.high:
            yield finding(
                Kind.VOLUME, made.__tablename__, row.id, cm3=row.cm3, low=row.low, high=row.high
            )
    sources: dict[str, set[bool]] = {}
    for key, source in connection.execute(_waters()):
        sources.setdefault(key, set()).add(source == _SIMULATED)
    for key in sorted(key for key, found in sources.items() if len(found) > 1):
        yield finding(Kind.MIXED, WaterWeighedRow.__tablename__, key)


def _labels(connection: Connection) -> Iterator[Finding]:
    """A cup's number is taken while it is out, a jar's or box's label while its key counts."""
    taken = LabelTakenRow
    found = connection.execute(
        select(taken.kind, taken.simulated, taken.label, taken.holder).where(
            taken.kind.in_((CUP, JAR, BOX))
        )
    )
    wanted = set(labels_wanted(connection))
    there: set[_Label] = {(kind, bool(simulated), label, holder)
                          for kind, simulated, label, holder in found}  # fmt: skip
    for kind, _, label, holder in sorted(wanted ^ there):
        yield finding(Kind.LABEL, taken.__tablename__, holder, what=kind, label=label)


def labels_wanted(connection: Connection) -> Iterator[_Label]:
    """The labels that follow from what is kept: kind, whether simulated, label, holder."""
    return chain(_cups_out(connection), _jars(connection), _boxes(connection))


def _cups_out(connection: Connection) -> Iterator[_Label]:
    cup = CupTakenRow
    over = select(CupHandedInRow.try_id).union(select(TryThrownAwayRow.try_id))
    for number, simulated, holder in connection.execute(
        select(cup.number, cup.simulated, cup.id).where(cup.id.not_in(over))
    ):
        yield CUP, simulated, str(number), holder


def _jars(connection: Connection) -> Iterator[_Label]:
    made = KeyMadeRow
    for letter, simulated, holder in connection.execute(
        select(made.letter, made.simulated, made.key_id).where(
            made.key_id.not_in(select(KeyDroppedRow.key_id))
        )
    ):
        yield JAR, simulated, letter, holder


def _boxes(connection: Connection) -> Iterator[_Label]:
    made, dropped = VolumeMadeRow, select(VolumeDroppedRow.key_id)
    simulated = {key for key, source in connection.execute(_waters()) if source == _SIMULATED}
    rows = select(made.number, made.key_id).where(made.key_id.not_in(dropped))
    for number, holder in connection.execute(rows):
        yield BOX, holder in simulated, str(number), holder


def _waters() -> Executable:
    """Each mass of a container with water: whose it is, and where it comes from."""
    return select(WaterWeighedRow.key_id, WeighingRow.source).join(
        WeighingRow, WeighingRow.id == WaterWeighedRow.weighing_id
    )
