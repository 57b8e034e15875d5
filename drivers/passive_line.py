"""PassiveLine: listens to one port in a thread of its own and never sends a byte.

Built like drivers.balance, for a balance of which nobody knows how it writes its lines. Port
settings at which garbage comes are left for the next ones; after the last the first come again,
since a person may have changed the balance's own settings meanwhile.
"""

from __future__ import annotations

import logging
import threading
import time
from collections import deque
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from drivers.balance import RETRY_EVERY, Clock, Opener, Wait
from drivers.errors import BadAddress, PortUnavailable, Reason
from drivers.events import Back, Lost
from drivers.learning.clean_text import Hearing
from drivers.packet import Packet
from drivers.passive_listening import USUAL_SETTINGS
from drivers.port import PATIENCE, Port
from drivers.transports import Transport
from drivers.transports.addresses import check_address, is_url
from drivers.transports.hid_addresses import is_hid
from drivers.transports.port_settings import PortSettings, parse_port_settings

_log = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingsTried:
    """From ``at`` on the port is heard at ``settings``; what came at others was garbage.

    ``all_failed`` once garbage came at every one of the candidates.
    """

    settings: PortSettings
    all_failed: bool
    at: float


LineEvent = Packet | SettingsTried | Lost | Back
OpenWith = Callable[[str, PortSettings], Opener]


class PassiveLine:
    """Listens until it is closed, through every loss of its port.

    ``publish`` is called by the reader thread: with SettingsTried before the first packet at
    these settings, with each packet that holds bytes, with Back and Lost as a Balance would.
    Settings that stand alone are not doubted, nor are those at which clean text came once.
    """

    def __init__(
        self,
        where: str,
        candidates: Sequence[PortSettings],
        open_with: OpenWith,
        *,
        publish: Callable[[LineEvent], object],
        clock: Clock = time.monotonic,
        wait: Wait | None = None,
    ) -> None:
        self._candidates = tuple(candidates)
        self._open_with = open_with
        self._publish = publish
        self._clock = clock
        self._closing = threading.Event()
        self._wait = self._closing.wait if wait is None else wait
        self._jobs: deque[Callable[[], object]] = deque()
        self._turn = 0
        self._port = open_with(where, self.settings)
        self._hearing = Hearing(sure=len(candidates) == 1)
        self._told = False
        self._transport: Transport | None = None
        self._lost = False
        self._look_at = clock()
        self._thread: threading.Thread | None = None

    @property
    def settings(self) -> PortSettings:
        """The settings at which the port is heard now."""
        return self._candidates[self._turn % len(self._candidates)]

    def start(self) -> None:
        """Begin to listen, in a thread of its own."""
        self._thread = threading.Thread(
            target=self._run, name=f"listening to {self._port.where}", daemon=True
        )
        self._thread.start()

    def between_reads(self, job: Callable[[], object]) -> None:
        """Let the reader thread do something that would make a screen wait."""
        self._jobs.append(job)

    def close(self, deadline: float = 2.0) -> None:
        """End, within ``deadline`` seconds at the most; a thread stuck in a driver is left."""
        self._closing.set()
        if self._thread is None:
            self._let_go()
        elif self._thread is not threading.current_thread():
            self._thread.join(deadline)

    def pump(self) -> None:
        """One turn: read and publish. Without a port: look for it. Failures become Lost."""
        try:
            while self._jobs:
                self._jobs.popleft()()
            if self._transport is None:
                self._look_for_port()
            else:
                self._hear(self._transport)
        except PortUnavailable as failure:
            self._lose(failure.reason, failure.detail)
        except Exception as fault:
            # A fault of ours: the screen must know, the log keeps where, and listening goes on.
            _log.exception("listening to %s failed", self._port.where)
            self._lose(Reason.OTHER, f"{type(fault).__name__}: {fault}")

    def _run(self) -> None:
        try:
            while not self._closing.is_set():
                self.pump()
        finally:
            self._let_go()

    def _hear(self, transport: Transport) -> None:
        data = transport.read()
        if not data:
            return
        if self._hearing.take(data):
            self._publish(Packet(self._clock(), data))
        else:
            self._next_settings()

    def _next_settings(self) -> None:
        self._let_go()
        self._turn += 1
        self._port = self._open_with(self._port.where, self.settings)
        self._hearing = Hearing(sure=False)
        self._told = False

    def _look_for_port(self) -> None:
        pause = self._look_at - self._clock()
        if pause > 0:
            self._wait(pause)
        if self._closing.is_set() or self._clock() < self._look_at:
            return
        self._transport = self._port.open()
        now = self._clock()
        if not self._told:
            self._told = True
            failed = self._turn >= len(self._candidates)
            self._publish(SettingsTried(settings=self.settings, all_failed=failed, at=now))
        self._lost = False
        self._publish(Back(where=self._port.where, at=now))

    def _lose(self, reason: Reason, detail: str) -> None:
        self._let_go()
        self._look_at = self._clock() + RETRY_EVERY
        if not self._lost:
            self._lost = True
            self._publish(Lost(reason=reason, detail=detail, at=self._clock()))

    def _let_go(self) -> None:
        transport, self._transport = self._transport, None
        if transport is not None:
            transport.close()


def listen_at(
    where: str,
    port_settings: str | None = None,
    *,
    publish: Callable[[LineEvent], object],
    clock: Clock = time.monotonic,
    wait: Wait | None = None,
    patience: float = PATIENCE,
) -> PassiveLine:
    """A listener at a path, a COM port or a URL; ``start`` or ``pump`` it.

    Without ``port_settings`` the usual ones are tried in turn, as far as the address has any.
    BadAddress if the words make no sense or name a HID scale, which sends no lines.
    """
    check_address(where)
    if is_hid(where):
        raise BadAddress(f"{where!r} is a HID scale, which sends no lines")
    known = port_settings is not None or is_url(where)
    candidates = (parse_port_settings(port_settings),) if known else USUAL_SETTINGS
    return PassiveLine(
        where,
        candidates,
        lambda address, settings: Port(address, settings, patience),
        publish=publish,
        clock=clock,
        wait=wait,
    )
