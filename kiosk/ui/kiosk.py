"""One kiosk: balance, records, station and frame, joined; and the only crossing between threads.

The reader of the balance and the writer of the records put what they have into one queue and pull
one trigger; the trigger empties the queue in the screen's thread.
"""

from __future__ import annotations

import time
from collections import deque
from collections.abc import Callable
from functools import partial

from kivy.clock import Clock

from drivers.balance import open_balance
from drivers.events import BalanceEvent
from drivers.port import PATIENCE
from drivers.simulated.table import SimulatedTable, simulated_table
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.records.writer import Writer, opening
from kiosk.settings import KioskSettings
from kiosk.ui.controls import Controls
from kiosk.ui.presenters.bench import BenchModel
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.screens.frame import Frame
from kiosk.ui.station import Station
from kiosk.ui.theme import theme

SIMULATED = "simulated"
TICK_S = 0.1
CLOSE_S = 3.0
# A new screen is laid out and painted in one frame; Kivy's default would spread it over several.
LAYOUT_ROUNDS = 60


class Kiosk:
    """`frame` is what stands in the window. BadAddress for words that name no balance.

    With a `table` of its own and its `clock` nothing runs in threads but the writer: whoever
    made the table calls `step`, so that a journey takes no longer than its computing.
    """

    def __init__(
        self,
        *,
        scale: str,
        settings: KioskSettings,
        dialect: str = "sma",
        port_settings: str | None = None,
        records: str | None = None,
        clock: Callable[[], float] = time.monotonic,
        table: SimulatedTable | None = None,
    ) -> None:
        self._stepped = table is not None
        self._queue: deque[Callable[[], None]] = deque()
        self._trigger = Clock.create_trigger(self.drain)
        self.facts = TableFacts(settings=settings, simulated=scale == SIMULATED)
        self.table = table
        if table is None and self.facts.simulated:
            self.table = simulated_table(clock)
        self.balance = open_balance(
            self.table.address if self.table else scale,
            dialect=dialect,
            port_settings=port_settings,
            name=scale,
            publish=self._heard,
            clock=clock,
            wait=_no_wait if self._stepped else None,
            patience=0.0 if self._stepped else PATIENCE,
        )
        self.writer = Writer(opening(records), self._later)
        self.station = Station(
            facts=self.facts, writer=self.writer, clock=clock, changed=self._trigger
        )
        bench = None
        if self.table is not None:
            bench = BenchModel(self.table, self.facts, self._trigger)
        self.controls = Controls(self.station, bench, self._trigger)
        Clock.max_iteration = LAYOUT_ROUNDS
        theme.less_motion = settings.less_motion
        self.frame = Frame(desk=self.controls, bench=bench)
        self.refresh()

    def start(self) -> None:
        """Open the records and the balance; the first picture stands already."""
        self.station.desk.open()
        if self._stepped:
            return
        if self.table is not None:
            self.table.start()
        self.balance.start()
        Clock.schedule_interval(self._tick, TICK_S)

    def stop(self) -> None:
        """Finish what is to be written, let go of the port; never hang."""
        Clock.unschedule(self._tick)
        self.balance.close(CLOSE_S)
        if self.table is not None:
            self.table.close()
        self.writer.close(CLOSE_S)

    def step(self) -> None:
        """One turn of balance and pan, in the caller's time."""
        assert self.table is not None
        self.balance.pump()
        self.table.pump()
        self.balance.pump()
        self.station.tick()
        self._take_in()  # the next frame shows it

    # The crossing ----------------------------------------------------------------------------

    def _heard(self, event: BalanceEvent) -> None:
        self._later(partial(self.station.balance_event, event))

    def _later(self, call: Callable[[], None]) -> None:
        self._queue.append(call)
        self._trigger()

    def drain(self, *_args: object) -> None:
        """Do what other threads have left, then show what came of it."""
        self._take_in()
        self.refresh()

    def _take_in(self) -> None:
        while self._queue:
            self._queue.popleft()()

    def _tick(self, _dt: float) -> None:
        self.station.tick()

    # Showing ---------------------------------------------------------------------------------

    def refresh(self) -> None:
        """Let the frame follow."""
        frame, controls = self.frame, self.controls
        scene = self.station.scene()
        controls.follow(scene.sheet)
        frame.strip_view = scene.strip
        frame.pan_view = scene.pan
        frame.things_out = controls.things_out
        frame.show(controls.dressed(scene.sheet))
        if controls.bench is not None and controls.things_out:
            frame.bench_view = controls.bench.view()

    def home(self) -> None:
        """The Home button, by a key."""
        self.controls.press(PersonEvent(Person.HOME))


def _no_wait(_seconds: float) -> None:
    """In stepped time nobody waits."""
