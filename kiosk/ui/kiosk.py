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

from drivers.dialects import kept_names
from drivers.discovery import list_hid_scales, list_ports
from drivers.errors import PortUnavailable
from drivers.recorder import Recorder
from drivers.simulated.table import SimulatedTable, simulated_table
from kiosk.procedures.procedure import Person, PersonEvent
from kiosk.records.watcher import Watcher, watching
from kiosk.records.writer import Writer, opening, opening_journal
from kiosk.settings import KioskSettings
from kiosk.texts import say
from kiosk.ui.connection import AUTO, SIMULATED, TYPED, Connection, ScaleChoice
from kiosk.ui.controls import Controls
from kiosk.ui.keyboard import said_by_key, said_by_text
from kiosk.ui.lock import CODE
from kiosk.ui.presenters.bench import BenchModel
from kiosk.ui.presenters.scale_facts import FoundScale, ScaleKind
from kiosk.ui.presenters.scale_words import cable_marks
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.scale_drawer import ScaleDrawer
from kiosk.ui.screens.frame import Frame
from kiosk.ui.station import Station
from kiosk.ui.teaching import ShapeKeeper, Teaching
from kiosk.ui.theme import theme
from kiosk.ui.tone import tone

TICK_S = 0.1
CLOSE_S = 3.0
# A new screen is laid out and painted in one frame; Kivy's default would spread it over several.
LAYOUT_ROUNDS = 60


class Kiosk:
    """`frame` is what stands in the window. BadAddress for words that name no balance.

    With a `table` of its own and its `clock` nothing runs in threads but the writer: whoever
    made the table calls `step`, so that a journey takes no longer than its computing. What is
    learned of the lines of a balance goes to `shapes`, by whose names it is known afterwards. A
    `recorder` writes down what the balance says; whoever made it closes it.
    """

    def __init__(
        self,
        *,
        scale: str,
        settings: KioskSettings,
        shapes: ShapeKeeper,
        dialect: str | None = None,
        port_settings: str | None = None,
        records: str | None = None,
        clock: Callable[[], float] = time.monotonic,
        table: SimulatedTable | None = None,
        new_code: bool = False,
        recorder: Recorder | None = None,
    ) -> None:
        self._stepped = table is not None
        self._shapes = shapes
        self._queue: deque[Callable[[], None]] = deque()
        self._trigger = Clock.create_trigger(self.drain)
        self._clock = clock
        self._auto = scale == AUTO
        self._new_code = new_code
        self._started = False
        self._bench: BenchModel | None = None
        self.facts = TableFacts(
            settings=settings, simulated=scale == SIMULATED, typed=scale == TYPED
        )
        self.table = table
        self.writer = Writer(
            opening(records),
            self._later,
            open_journal=opening_journal(records),
            told=lambda news: self.station.desk.journal_said(news),
        )
        self._watcher = Watcher(
            watching(records), lambda: self._later(self.station.desk.others_wrote)
        )
        self.station = Station(
            facts=self.facts, writer=self.writer, clock=clock, changed=self._trigger
        )
        self.connection = Connection(
            heard=self.station.balance_event,
            later=self._later,
            clock=clock,
            stepped=self._stepped,
            recorder=recorder,
        )
        desk = self.station.desk
        self.drawer = desk.drawer = ScaleDrawer(
            facts=self.facts.scale,
            user=self,
            look=plugged_in,
            kept=kept_names,
            remember=partial(desk.notebook.remember, "scale"),
            changed=self._trigger,
        )
        self.controls = Controls(self.station, None, self._trigger)
        Clock.max_iteration = LAYOUT_ROUNDS
        theme.less_motion = settings.less_motion
        tone.wanted = settings.sound
        self.frame = Frame(desk=self.controls)
        if not self._auto:
            choice = ScaleChoice(where=scale, dialect=dialect, port_settings=port_settings)
            self._connect(choice)
            self.drawer.in_use(choice)
        if table is not None and scale != TYPED:
            self._lay_out(table)  # with a table of the caller's its things are always at hand
        self.refresh()

    def start(self) -> None:
        """Open the records and the balance; the first picture stands already."""
        self.station.desk.lock.close()
        if self._new_code:
            self.station.desk.notebook.remember(CODE, "")
        self.station.desk.open()
        if self.facts.scale.chosen is not None:
            self.station.desk.read_last_check(self.facts.scale.chosen.where)
        if self._auto:
            self.station.desk.notebook.look_up(lambda store: store.recall("scale"), self._by_itself)
        self._started = True
        if not self._stepped and self.table is not None:
            self.table.start()
        self.connection.start()
        if not self._stepped:
            self._watcher.start()
            Clock.schedule_interval(self._tick, TICK_S)

    def stop(self) -> None:
        """Finish what is to be written, let go of the port; never hang."""
        Clock.unschedule(self._tick)
        self.connection.let_go()
        if self.drawer.teaching is not None:
            self.drawer.teaching.close()
        if self.table is not None:
            self.table.close()
        self._watcher.close(CLOSE_S)
        self.writer.close(CLOSE_S)
        self._trigger.cancel()  # answers that came meanwhile are shown by nobody

    def go_on(self) -> None:
        """Take up what Kivy dropped because it failed once."""
        self._trigger.cancel()
        self._trigger()
        Clock.unschedule(self._tick)
        Clock.schedule_interval(self._tick, TICK_S)

    def step(self) -> None:
        """One turn of balance and pan, in the caller's time."""
        assert self.table is not None
        self.connection.pump()
        self.table.pump()
        self.connection.pump()
        if self.drawer.teaching is not None:
            self.drawer.teaching.pump()
        self.station.tick()
        self._take_in()  # the next frame shows it

    # The scale -------------------------------------------------------------------------------

    def use_scale(self, choice: ScaleChoice) -> None:
        """Weigh on another scale from now on. Raises BadAddress, BadShape: the present one stays.

        What waited to be heard from the one before is dropped.
        """
        self._connect(choice)
        self.station.scale_changed(simulated=choice.where == SIMULATED, typed=choice.where == TYPED)
        self.station.desk.read_last_check(choice.where)
        self.controls.bench = self._bench if choice.where == SIMULATED else None
        if self._bench is not None:
            self._bench.out = False

    def teach_scale(self, where: str) -> Teaching:
        """Let go of the scale in use, and listen to that one in silence. Raises BadAddress."""
        teaching = Teaching(
            where=where,
            keeper=self._shapes,
            clock=self._clock,
            changed=self._trigger,
            later=self._later,
            stepped=self._stepped,
        )
        self.connection.let_go()
        self.station.scale_changed(simulated=self.facts.simulated)
        teaching.start()
        return teaching

    def _connect(self, choice: ScaleChoice) -> None:
        if choice.where == TYPED:
            self.connection.let_go()
            return
        address = None
        if choice.where == SIMULATED:
            if self.table is None:
                self.table = simulated_table(self._clock)
                if self._started:
                    self.table.start()
            address = self.table.address
            self._lay_out(self.table)
        self.connection.use(choice, address)

    def _lay_out(self, table: SimulatedTable) -> None:
        """The things of the simulated table, once."""
        if self._bench is None:
            self._bench = BenchModel(table, self.facts, self._trigger)
            self.frame.bench = self._bench
        self.controls.bench = self._bench

    def _by_itself(self, remembered: str | None) -> None:
        if not self.drawer.by_itself(ScaleChoice.from_text(remembered)):
            self.station.desk.ask_for_scale()

    # The crossing ----------------------------------------------------------------------------

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
        frame.pad_view = scene.pad
        frame.things_out = controls.things_out
        frame.show(controls.dressed(scene.sheet))
        if controls.bench is not None and controls.things_out:
            frame.bench_view = controls.bench.view()

    def home(self) -> None:
        """The Home or Back button of the present sheet, by a key."""
        if self.station.scene().sheet.screen == "choices":
            self.controls.leave_choice()
        else:
            self.controls.press(PersonEvent(Person.HOME))

    def keyboard(self, code: int) -> bool:
        """A key of a keyboard; False where it means nothing on the present sheet."""
        says = said_by_key(code, self.station.scene().sheet)
        if says is None:
            return self.station.keyboard(code)
        self.controls.press(says)
        return True

    def text(self, text: str) -> None:
        """What a keyboard has written, besides the keys that it sent."""
        for says in said_by_text(text, self.station.scene().sheet):
            self.controls.press(says)


def plugged_in() -> tuple[list[FoundScale], str]:
    """The ports and HID scales of this machine; and why HID scales cannot be looked for, or ""."""
    found = [(ScaleKind.SERIAL, port) for port in list_ports()]
    problem = ""
    try:
        found += [(ScaleKind.HID, scale) for scale in list_hid_scales()]
    except PortUnavailable as failure:
        problem = say("balances.no_hid", why=failure.detail)
    scales = [
        FoundScale(where=port.where, kind=kind, described=cable_marks(kind, port))
        for kind, port in found
    ]
    return scales, problem
