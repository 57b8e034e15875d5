"""``gramstand replay``: a recording through dialect, settling and pan events, on its own clock."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

from drivers.dialects import Dialect, make_dialect
from drivers.dialects.hid_scale import HidScale
from drivers.errors import BadAddress
from drivers.events import BalanceEvent, Identified, LineUnreadable, ReadingReceived
from drivers.packet import Packet
from drivers.recording import Line
from kiosk.commands.console import BadInputError, emit, tell
from kiosk.commands.recording import Recording, read_recording
from kiosk.commands.shapes import use_kept_shapes
from kiosk.evidence import Source
from kiosk.texts import say
from kiosk.texts.numbers import grams
from kiosk.weighing.pan_events import PanEvent
from kiosk.weighing.pan_watch import PanWatch

HELP: str = say("replay.help")
TICK_S = 0.1


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("file", metavar="FILE", type=Path, help=say("replay.file"))
    parser.add_argument("--dialect", metavar="NAME", help=say("replay.dialect"))


def run(options: argparse.Namespace) -> int:
    """Print what happened on the pan; 0. BadInputError for a file or a dialect that is none."""
    use_kept_shapes()
    recording = read_recording(options.file)
    for event in _events(recording, options.dialect or recording.header.dialect):
        if options.json:
            emit(_answer(event))
        else:
            tell(_line(event))
    return 0


def _events(recording: Recording, dialect_name: str) -> Iterator[PanEvent]:
    try:
        dialect = make_dialect(dialect_name, "recording")
    except BadAddress as error:
        raise BadInputError(str(error)) from error
    source = Source.SIMULATED if recording.header.synthetic else Source.BALANCE
    watch = PanWatch(readability=recording.header.readability_g, source=source)
    now = 0.0
    for line in recording.lines:
        # Silence shows by time that passes between two lines, not after the last one.
        while now + TICK_S < line.t:
            now += TICK_S
            yield from watch.tick(now)
        now = line.t
        yield from watch.tick(now)
        yield from _marked(line, watch, dialect)
        if line.hex:
            for event in dialect.feed(Packet(at=now, data=line.hex)):
                yield from _told(watch, event)


def _marked(line: Line, watch: PanWatch, dialect: Dialect) -> list[PanEvent]:
    """What was noted besides the bytes."""
    if line.readability_g is not None:
        watch.identified(line.readability_g, None)
    if line.lost is not None:
        return watch.lost(line.t)
    if line.back is None:
        return []
    if isinstance(dialect, HidScale):
        dialect.described(line.descriptor or b"")
    dialect.reset(line.t)
    return watch.back(line.t)


def _told(watch: PanWatch, event: BalanceEvent) -> list[PanEvent]:
    if isinstance(event, ReadingReceived):
        return watch.reading(event.reading)
    if isinstance(event, LineUnreadable):
        return watch.garbage(event.at)
    if isinstance(event, Identified):
        watch.identified(event.readability, event.capacity)
    return []


def _answer(event: PanEvent) -> dict[str, object]:
    answer: dict[str, object] = {"t": round(event.at, 3), "event": event.kind.value}
    if event.grams is not None:
        answer["grams"] = event.grams
    if event.trouble is not None:
        answer["reason"] = event.trouble.value
    return answer


def _line(event: PanEvent) -> str:
    words = event.kind.value
    if event.grams is not None:
        words += f" {grams(event.grams, event.readability)}"
    elif event.trouble is not None:
        words += f" ({event.trouble.value})"
    return f"{Decimal(str(round(event.at, 2))):>8} s  {words}"
