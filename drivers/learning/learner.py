"""From what a balance sent while a load was put on and taken off to the shape of its lines."""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

from drivers.dialects.lines import Lines
from drivers.events import ReadingReceived
from drivers.learning.findings import Learned, Refusal, Study
from drivers.learning.heard_lines import HeardLine, heard_lines, terminator_of
from drivers.learning.line_lengths import lengths_of
from drivers.learning.marks import Marks, marks_of
from drivers.learning.mass_field import MassField, mass_field
from drivers.learning.rests import loads_in
from drivers.learning.surroundings import (
    UnitFound,
    follows_digits,
    sign_of,
    unit_of,
    words_of,
)
from drivers.line_shape import LineShape, Terminator
from drivers.packet import Packet

FEWEST_LINES = 8
LEAST_READ = 0.8  # share of the lines that the shape must read
NO_MARKS = 0.9  # confidence without a word on rest
_DASH = "-"


def learn(
    packets: Sequence[Packet], name: str, port_settings: str | None = None
) -> Learned | Refusal:
    """What the lines in ``packets`` show, as the shape called ``name``; or why nothing is learned.

    The packets must hold an empty pan, a load put on, its rest, and the pan empty again.
    """
    return study(packets, name, port_settings).found


def study(packets: Sequence[Packet], name: str, port_settings: str | None = None) -> Study:
    """The same, with how far whoever puts loads on has come."""
    lines = heard_lines(packets)
    if len(lines) < FEWEST_LINES:
        heard = any(packet.data for packet in packets)
        return Study(found=Refusal.NO_LINES if heard else Refusal.SILENT)
    field = mass_field(lines)
    if isinstance(field, Refusal):
        return Study(found=field, loaded=field is Refusal.NOT_RETURNED)
    loads, loaded = loads_in(field.series, field.rests)
    found = _learned(packets, lines, field, name, port_settings)
    return Study(found=found, loads=loads, loaded=loaded)


def _learned(
    packets: Sequence[Packet],
    lines: Sequence[HeardLine],
    field: MassField,
    name: str,
    port_settings: str | None,
) -> Learned | Refusal:
    unit = unit_of(field)
    if unit is None:
        return Refusal.NO_UNIT
    marks = marks_of(field, unit.sent)
    shape = _shape(field, unit, marks, name, terminator_of(packets, lines), port_settings)
    read = _share_read(packets, shape, lines)
    if read < LEAST_READ:
        return Refusal.UNCLEAR
    few = 1 - 1 / (len(lines) + 2)  # even if every line is read, a few lines prove little
    confidence = read * few * _certainty(field, marks)
    return Learned(shape=shape, confidence=floor(100 * confidence) / 100)  # never a full 1


def _shape(
    field: MassField,
    unit: UnitFound,
    marks: Marks,
    name: str,
    terminator: Terminator,
    port_settings: str | None,
) -> LineShape:
    lengths = lengths_of(field)
    decimals = {number.decimals for number in field.found}
    sign, dashes = sign_of(field)
    words = words_of(field, unit.sent)
    return LineShape(
        name=name,
        terminator=terminator,
        lengths=lengths,
        number=field.number,
        follows_digits=follows_digits(field),
        point="," if field.point == "," else ".",
        decimals=field.decimals if len(decimals) == 1 and not lengths else None,
        sign=sign,
        unit=unit.unit,
        unit_place=unit.place,
        unit_lacks_while_moving=unit.lacks_while_moving,
        stable=marks.stable,
        moving=marks.moving,
        words=(*words, _DASH) if dashes else words,
        readability=field.step,
        port_settings=port_settings,
    )


def _share_read(packets: Sequence[Packet], shape: LineShape, lines: Sequence[HeardLine]) -> float:
    dialect = Lines(shape.name, shape)
    events = [event for packet in packets for event in dialect.feed(packet)]
    masses = sum(
        isinstance(event, ReadingReceived) and event.reading.grams is not None for event in events
    )
    return min(1.0, masses / len(lines))


def _certainty(field: MassField, marks: Marks) -> float:
    different = len(set(field.series.values))
    marked = NO_MARKS + (1 - NO_MARKS) * marks.clear
    return (1 - 0.5**different) * marked
