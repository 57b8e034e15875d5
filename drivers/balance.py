"""Balance: one port, one dialect, one reader thread; what it tells goes to ``publish``.

The thread only calls ``pump``; a test may call it instead, with a clock of its own. Nobody but
the thread touches the port, so closing needs no more than to ask it to end.
"""

from __future__ import annotations

import logging
import threading
import time
from collections.abc import Callable
from typing import Protocol

from drivers.dialects import Dialect, make_dialect, usual_port_settings
from drivers.dialects.hid_scale import HidScale
from drivers.dialects.sma import Sma
from drivers.errors import BadAddress, PortUnavailable, Reason
from drivers.events import Back, BalanceEvent, CommandRefused, Lost
from drivers.packet import Packet
from drivers.port import PATIENCE, Port
from drivers.transports import Transport
from drivers.transports.addresses import Described, unheard
from drivers.transports.hid_addresses import is_hid
from drivers.transports.port_settings import parse_port_settings

_THERE_AGAIN = (Reason.NOT_ALLOWED, Reason.BUSY, Reason.ELSEWHERE)  # asks for something else
RETRY_EVERY = 1.0  # seconds between two looks for a lost port

Clock = Callable[[], float]
Wait = Callable[[float], object]
Publish = Callable[[BalanceEvent], object]
Tap = Callable[[Packet], object]

_log = logging.getLogger(__name__)


class Opener(Protocol):
    """What a Balance needs of a port."""

    @property
    def where(self) -> str:
        """Its present address."""
        ...

    def open(self) -> Transport:
        """Open it. Raises PortUnavailable."""
        ...


class Balance:
    """Reads a balance until it is closed, through every loss of its port.

    Each opening is published as Back, each failure as one Lost, however long it lasts, and as one
    more when the port is there again but cannot be used; after a Lost no command is under way any
    more. ``publish`` is called by the reader thread, and so is ``tap``, with each packet that
    holds bytes, before it is read; a tap that fails is called no more. ``wait`` pauses for some
    seconds between two looks for the port; by default ``close`` cuts it short.
    """

    def __init__(
        self,
        port: Opener,
        dialect: Dialect,
        *,
        publish: Publish,
        clock: Clock = time.monotonic,
        wait: Wait | None = None,
        tap: Tap | None = None,
    ) -> None:
        self._port = port
        self._dialect = dialect
        self._publish = publish
        self._tap = tap
        self._clock = clock
        self._closing = threading.Event()
        self._wait = self._closing.wait if wait is None else wait
        self._zero_wanted = threading.Event()
        self._transport: Transport | None = None
        self._lost: Reason | None = None
        self._look_at = clock()
        self._thread: threading.Thread | None = None

    @property
    def dialect(self) -> str:
        """The name of what it speaks."""
        return self._dialect.name

    def start(self) -> None:
        """Begin to read, in a thread of its own."""
        self._thread = threading.Thread(
            target=self._run, name=f"balance {self._port.where}", daemon=True
        )
        self._thread.start()

    def zero(self) -> None:
        """Ask for zero; CommandDone or CommandRefused tells the outcome, Lost ends it too."""
        self._zero_wanted.set()

    def close(self, deadline: float = 2.0) -> None:
        """End, within ``deadline`` seconds at the most; a thread stuck in a driver is left."""
        self._closing.set()
        if self._thread is None:
            self._let_go()
        elif self._thread is not threading.current_thread():
            self._thread.join(deadline)

    def pump(self) -> None:
        """One turn: send what is due, read, publish. Without a port: look for it.

        Anything that fails is published as Lost.
        """
        try:
            if self._transport is None:
                self._look_for_port()
            else:
                self._exchange(self._transport)
        except PortUnavailable as failure:
            self._lose(failure.reason, failure.detail)
        except Exception as fault:
            # A fault of ours: the screen must know, the log keeps where, and reading goes on.
            _log.exception("reading the balance at %s failed", self._port.where)
            self._lose(Reason.OTHER, f"{type(fault).__name__}: {fault}")

    def _run(self) -> None:
        try:
            while not self._closing.is_set():
                self.pump()
        finally:
            self._let_go()

    def _exchange(self, transport: Transport) -> None:
        if self._zero_wanted.is_set():
            self._zero_wanted.clear()
            self._dialect.zero()
        if request := self._dialect.due(self._clock()):
            transport.write(request)
        data = transport.read()
        packet = Packet(self._clock(), data)
        if data:
            self._let_tap(packet)
        for event in self._dialect.feed(packet):
            self._publish(event)

    def _let_tap(self, packet: Packet) -> None:
        if self._tap is None:
            return
        try:
            self._tap(packet)
        except Exception:  # whatever a recorder of others does, weighing goes on
            _log.exception("the tap on the balance at %s failed", self._port.where)
            self._tap = None

    def _look_for_port(self) -> None:
        pause = self._look_at - self._clock()
        if pause > 0:
            self._wait(pause)
        try:
            if self._closing.is_set() or self._clock() < self._look_at:
                return
            self._transport = self._port.open()
        finally:
            self._refuse_zero()
        now = self._clock()
        self._dialect.reset(now)
        self._lost = None
        self._publish(Back(where=self._port.where, at=now))

    def _refuse_zero(self) -> None:
        # Done later, when the port is back, it might zero a load that nobody thinks of any more.
        if self._zero_wanted.is_set():
            self._zero_wanted.clear()
            reason = "the balance is not connected"
            self._publish(CommandRefused(command="zero", reason=reason, at=self._clock()))

    def _lose(self, reason: Reason, detail: str) -> None:
        self._let_go()
        self._look_at = self._clock() + RETRY_EVERY
        if self._lost is None or (reason is not self._lost and reason in _THERE_AGAIN):
            self._lost = reason
            self._publish(Lost(reason=reason, detail=detail, at=self._clock()))

    def _let_go(self) -> None:
        transport, self._transport = self._transport, None
        if transport is not None:
            transport.close()


def usual_dialect(where: str) -> str:
    """What a balance at that address speaks unless somebody says otherwise."""
    return HidScale.name if is_hid(where) else Sma.name


def open_balance(
    where: str,
    *,
    dialect: str | None = None,
    port_settings: str | None = None,
    name: str | None = None,
    publish: Publish,
    clock: Clock = time.monotonic,
    wait: Wait | None = None,
    patience: float = PATIENCE,
    tap: Tap | None = None,
    described: Described = unheard,
) -> Balance:
    """A balance at ``where``: a path, a COM port, ``hid:...`` or a URL; ``start`` or ``pump`` it.

    ``dialect`` is the usual one of the address if not given, ``name`` what its readings carry
    (``where`` if not given), ``patience`` how many seconds a read waits. ``port_settings`` are
    those kept with the shape of that name, else 9600-8N1, if not given. ``described`` gets the
    report descriptor of a HID scale at each opening, before Back. BadAddress if the words make no
    sense. A port that is not there yet is published as Lost, and looked for.
    """
    spoken = dialect or usual_dialect(where)
    speaker = make_dialect(spoken, where if name is None else name)
    if isinstance(speaker, HidScale) != is_hid(where):
        raise BadAddress(_misfit(where, speaker.name))
    if port_settings is None:
        port_settings = usual_port_settings(spoken)

    def told(descriptor: bytes) -> None:
        if isinstance(speaker, HidScale):
            speaker.described(descriptor)
        described(descriptor)

    port = Port(where, parse_port_settings(port_settings), patience, told)
    return Balance(port, speaker, publish=publish, clock=clock, wait=wait, tap=tap)


def _misfit(where: str, dialect: str) -> str:
    usual = usual_dialect(where)
    if usual == HidScale.name:
        return f"{where!r} is a HID scale and speaks {usual}, not {dialect}; leave the dialect out"
    return (
        f"{where!r} sends no HID reports, so it cannot speak {dialect}; HID scales are at hid:..."
    )
