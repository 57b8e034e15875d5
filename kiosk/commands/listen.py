"""``gramstand listen``: prints every frame of a balance as it comes."""

from __future__ import annotations

import argparse
import math
import queue
import time
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from functools import partial
from pathlib import Path

from drivers.balance import Balance, open_balance
from drivers.errors import BadAddress
from drivers.events import Back, BalanceEvent, Lost, ReadingReceived
from drivers.reading import Reading
from drivers.recorder import Recorder, open_recorded
from kiosk.commands.auto_scale import AUTO, the_only_scale
from kiosk.commands.console import BadInputError, complain, emit, tell
from kiosk.commands.recording import recording_into
from kiosk.commands.shapes import use_kept_shapes
from kiosk.texts import say
from kiosk.texts.numbers import grams, number

HELP: str = say("listen.help")
SIMULATED = "simulated"
GIVE_UP_AFTER = 20.0  # seconds that a lost port may stay away when only frames are counted
_LOOK_EVERY = 0.1  # seconds, at which limits are looked at while nothing comes


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the options of this command."""
    parser.add_argument("--scale", required=True, metavar="WHERE", help=say("listen.scale"))
    parser.add_argument("--dialect", metavar="NAME", help=say("listen.dialect"))
    parser.add_argument("--port-settings", metavar="9600-8N1", help=say("listen.port_settings"))
    parser.add_argument("--readings", type=_count, metavar="N", help=say("listen.readings"))
    parser.add_argument("--seconds", type=seconds_of, metavar="S", help=say("listen.seconds"))
    parser.add_argument("--record", type=Path, metavar="FILE", help=say("recording.option"))


def run(options: argparse.Namespace) -> int:
    """Listen until a limit is reached: 0, or 1 if the port is lost then. May be BadInputError."""
    use_kept_shapes()
    listener = _Listener(options)
    try:
        with recording_into(options.record) as recorder, _address_of(options.scale) as where:
            return listener.listen(where, recorder)
    except BadAddress as error:
        raise BadInputError(str(error)) from error
    except KeyboardInterrupt:
        return listener.outcome


class _Listener:
    """Prints what comes, and knows when it is enough."""

    def __init__(self, options: argparse.Namespace) -> None:
        self._options = options
        self._readings: int | None = options.readings
        self._seconds: float | None = options.seconds
        self._events: queue.SimpleQueue[BalanceEvent] = queue.SimpleQueue()
        self._started = time.monotonic()
        self._heard = 0
        self._opened = False
        self._lost_at: float | None = None

    @property
    def outcome(self) -> int:
        """1 while the port is lost, else 0."""
        return 0 if self._lost_at is None else 1

    def listen(self, where: str, recorder: Recorder | None) -> int:
        """Print until it is enough. Raises BadAddress."""
        with closing(self._balance(where, recorder)) as balance:
            balance.start()
            while not self._enough(time.monotonic()):
                try:
                    self._hear(self._events.get(timeout=self._patience()))
                except queue.Empty:
                    continue
        return self.outcome

    def _balance(self, where: str, recorder: Recorder | None) -> Balance:
        named = self._options.scale
        opened: Callable[..., Balance] = open_balance
        if recorder is not None:
            opened = partial(open_recorded, recorder, synthetic=named == SIMULATED)
        return opened(
            where,
            dialect=self._options.dialect,
            port_settings=self._options.port_settings,
            name=named,
            publish=self._events.put,
        )

    def _patience(self) -> float:
        if self._seconds is None:
            return _LOOK_EVERY
        left = self._started + self._seconds - time.monotonic()
        return max(0.0, min(_LOOK_EVERY, left))

    def _enough(self, now: float) -> bool:
        if self._readings is not None and self._heard >= self._readings:
            return True
        if self._seconds is not None:
            return now - self._started >= self._seconds
        if self._lost_at is None:
            return False
        counting = self._readings is not None
        return not self._opened or (counting and now - self._lost_at >= GIVE_UP_AFTER)

    def _hear(self, event: BalanceEvent) -> None:
        match event:
            case ReadingReceived(reading=reading):
                self._heard += 1
                self._tell(_as_json(reading), _as_text(reading))
            case Lost(reason=reason, detail=detail):
                if self._lost_at is None:
                    self._lost_at = time.monotonic()
                    self._tell({"lost": str(reason)}, say("listen.lost", why=reason))
                complain(say("listen.lost.detail", detail=detail))
            case Back(where=where):
                if self._lost_at is not None:
                    self._tell({"back": where}, say("listen.back", where=where))
                self._opened, self._lost_at = True, None

    def _tell(self, as_json: dict[str, object], as_text: str) -> None:
        if self._options.json:
            emit(as_json)
        else:
            tell(as_text)


def _as_json(reading: Reading) -> dict[str, object]:
    told: dict[str, object] = {
        "value": reading.value,
        "unit": reading.unit,
        "grams": reading.grams,
        "stable": reading.stable,
        "basis": reading.basis,
        "range": reading.range,
    }
    return told if reading.reason is None else {**told, "reason": reading.reason}


def _as_text(reading: Reading) -> str:
    if reading.value is None or reading.grams is None:
        return say("listen.no_mass", reason=reading.reason)
    motion = {True: say("listen.still"), False: say("listen.moving"), None: say("listen.unsaid")}
    words = [
        say("listen.mass", value=number(reading.value), unit=reading.unit),
        motion[reading.stable],
        reading.basis or "",
        grams(reading.grams) if reading.unit != "g" else "",
    ]
    return ", ".join(filter(None, words))


@contextmanager
def _address_of(where: str) -> Iterator[str]:
    """The address behind ``where``; the simulated balance lives as long as the context."""
    if where != SIMULATED:
        yield the_only_scale() if where == AUTO else where
        return
    from drivers.simulated.table import simulated_table  # numpy comes with it

    with simulated_table() as table:
        table.start()
        yield table.address


def _count(text: str) -> int:
    if not (text.isascii() and text.isdigit() and int(text) > 0):
        raise argparse.ArgumentTypeError(say("listen.readings.bad", text=repr(text)))
    return int(text)


def seconds_of(text: str) -> float:
    """A time above zero; ArgumentTypeError, with one sentence, for anything else."""
    try:
        seconds = float(text)
    except ValueError:
        seconds = math.nan
    if not 0 < seconds < math.inf:
        raise argparse.ArgumentTypeError(say("listen.seconds.bad", text=repr(text)))
    return seconds
