"""Records what a balance says while it is weighed with, line by line, for a replay.

Each line is in the hands of the system before the next one comes, so that a program that is killed
leaves a recording behind. What cannot be written ends the recording, never the weighing.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from drivers.balance import Balance, Publish, open_balance
from drivers.events import Back, BalanceEvent, Identified, Lost
from drivers.packet import Packet
from drivers.recording import Header, Line
from drivers.transports.hid_addresses import is_hid

ANOTHER_SCALE = "another scale was chosen"
_DIGITS = 6  # of a second


class Recorder:
    """Writes one recording into a new file. OSError if there cannot be one, or already is.

    ``ended`` is told in a few words why the recording had to end before it was closed; it may be
    called by the thread that reads the balance. ``clock`` is that of the balance.
    """

    def __init__(
        self,
        path: Path,
        *,
        ended: Callable[[str], object],
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        self._path = path
        self._ended = ended
        self._clock = clock
        self._file = path.open("xb", buffering=0)
        self._size = 0  # of the whole lines
        self._began: float | None = None
        self._descriptor = b""
        self._where = ""

    def begin(self, *, where: str, dialect: str, packets: bool, synthetic: bool) -> None:
        """Say what will be recorded; a recording is of one balance and ends with the next one.

        The same balance heard in another dialect, as while it is found out how it speaks, goes on:
        the bytes are the same, and a replay may be told the dialect.
        """
        if self._size:
            if where != self._where:
                self._give_up(ANOTHER_SCALE)
            return
        self._where = where
        note = f"recorded from {where}"
        self._write(
            Header(recording=1, dialect=dialect, packets=packets, synthetic=synthetic, note=note)
        )

    def described(self, descriptor: bytes) -> None:
        """How the HID scale that is being opened describes its reports."""
        self._descriptor = descriptor

    def packet(self, packet: Packet) -> None:
        """Bytes came."""
        self._write(Line(t=self._t(packet.at), hex=packet.data))

    def heard(self, event: BalanceEvent) -> None:
        """Mark what a replay could not tell from the bytes."""
        match event:
            case Lost(reason=reason, at=at):
                self._write(Line(t=self._t(at), hex=b"", lost=str(reason)))
            case Back(where=where, at=at):
                descriptor = self._descriptor or None
                self._write(Line(t=self._t(at), hex=b"", back=where, descriptor=descriptor))
            case Identified(readability=readability, at=at) if readability:
                self._write(Line(t=self._t(at), hex=b"", readability_g=readability))

    def close(self) -> None:
        """End it at this moment, so that a silence at its end has its length; safe to call twice.

        Where nothing was to be recorded no file is left behind.
        """
        if self._began is not None:
            self._write(Line(t=self._t(self._clock()), hex=b""))
        self._file.close()
        if not self._size:
            self._path.unlink(missing_ok=True)

    def _t(self, at: float) -> float:
        if self._began is None:
            self._began = at
        return round(at - self._began, _DIGITS)

    def _write(self, said: BaseModel) -> None:
        if self._file.closed:
            return
        line = said.model_dump_json(exclude_defaults=True).encode() + b"\n"
        try:
            if self._file.write(line) != len(line):
                raise OSError("the disk took only part of a line")
        except OSError as error:
            self._give_up(error.strerror or str(error))
        else:
            self._size += len(line)

    def _give_up(self, why: str) -> None:
        if self._file.closed:
            return
        with suppress(OSError):  # a reader passes over an unfinished last line
            self._file.truncate(self._size)
        self._file.close()
        self._ended(why)


def open_recorded(
    recorder: Recorder, where: str, *, synthetic: bool, publish: Publish, **how: Any
) -> Balance:
    """Open a balance as ``drivers.balance.open_balance`` does, and record what it says."""

    def heard(event: BalanceEvent) -> None:
        recorder.heard(event)
        publish(event)

    balance = open_balance(
        where, publish=heard, tap=recorder.packet, described=recorder.described, **how
    )
    recorder.begin(
        where=how.get("name") or where,
        dialect=balance.dialect,
        packets=is_hid(where),
        synthetic=synthetic,
    )
    return balance
