"""The station: readings in, views out. Joins the pan watch to the desk; knows no widget.

Everything here is called in one thread, the screen's. Time comes from the clock that is handed in,
so that a test plays a whole journey without waiting.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from decimal import Decimal

from drivers.errors import Reason
from drivers.events import (
    Back,
    BalanceEvent,
    Identified,
    LineUnreadable,
    Lost,
    ReadingReceived,
)
from drivers.reading import Reading
from kiosk.evidence import Source
from kiosk.procedures.procedure import Surroundings
from kiosk.records.entries import new_id
from kiosk.records.writer import Writer
from kiosk.ui.desk import Desk
from kiosk.ui.presenters.scene import Scene, scene_of
from kiosk.ui.presenters.surroundings import TableFacts
from kiosk.ui.reading_off import ENTER, ReadingOff
from kiosk.weighing.pan_events import PanEvent
from kiosk.weighing.pan_history import PanHistory
from kiosk.weighing.pan_watch import PanPhase, PanWatch
from kiosk.weighing.typed_pan import TypedPan

NUMBER_EVERY_S = 0.2  # a number that changes more often cannot be read


class Station:
    """`changed` is called when there may be something new to show."""

    def __init__(
        self,
        *,
        facts: TableFacts,
        writer: Writer,
        clock: Callable[[], float],
        changed: Callable[[], None],
        wall: Callable[[], datetime] = lambda: datetime.now(UTC),
    ) -> None:
        self.facts = facts
        self.connected = False
        self.lost: Reason | None = None
        self._clock = clock
        self._changed = changed
        self.typing: ReadingOff | None = None
        self.watch = self._new_watch()
        self._history = PanHistory()
        self._number: Decimal | None = None
        self._number_at = float("-inf")
        self._scene: Scene | None = None
        self.desk = Desk(
            facts=facts,
            world=Surroundings(
                rules=facts.settings.rules,
                utc=lambda at: wall() - timedelta(seconds=clock() - at),
                new_id=new_id,
                now=clock,
            ),
            writer=writer,
            weigh_again=self._weigh_again,
            changed=changed,
        )

    def balance_event(self, event: BalanceEvent) -> None:
        """Take what the balance told; there is none where readings are typed."""
        watch = self.watch
        if isinstance(watch, TypedPan):
            return
        if self.desk.drawer is not None:
            self.desk.drawer.heard(event)
        match event:
            case ReadingReceived(reading=reading):
                self.connected = True
                self._happened(watch.reading(reading))
                self._remember(reading)
            case LineUnreadable(at=at):
                self._happened(watch.garbage(at))
            case Identified(readability=readability, capacity=capacity):
                watch.identified(readability, capacity)
            case Lost(reason=reason, at=at):
                self.connected, self.lost = False, reason
                self._happened(watch.lost(at))
            case Back(at=at):
                self.connected = True
                self._happened(watch.back(at))
        self.facts.readability = watch.state.readability
        self._changed()

    def scale_changed(self, *, simulated: bool, typed: bool = False) -> None:
        """Another scale is in use from now on: what the last one showed stands for nothing."""
        self.connected, self.lost = False, None
        self._number = None
        self._history = PanHistory()
        self.facts.typed = typed
        self.desk.scale_changed(simulated=simulated)
        self.watch = self._new_watch()

    def _new_watch(self) -> PanWatch | TypedPan:
        self.typing = ReadingOff(self._typed, self._clock) if self.facts.typed else None
        if self.typing is not None:
            return self.typing.pan
        source = Source.SIMULATED if self.facts.simulated else Source.BALANCE
        return PanWatch(readability=None, source=source)

    def tick(self) -> None:
        """Let time pass: silence and restlessness show by it."""
        if self.desk.drawer is not None:
            self.desk.drawer.tick(self._clock())
        self.desk.tick(self._clock())
        self._happened(self.watch.tick(self._clock()))
        self._changed()

    def scene(self) -> Scene:
        """What is to be seen now; while something waits to be written down, what was seen last."""
        if self._scene is None or self.desk.settled_for_showing or self.desk.failure:
            # As seldom as a number, and moved on by time alone, so that silence shows.
            now = self._clock() // NUMBER_EVERY_S * NUMBER_EVERY_S
            self.facts.past = self._history.past(now)
            self._scene = scene_of(
                self.desk,
                self.watch.state,
                connected=self.connected,
                shown=self._readable(),
                lost=self.lost,
                typing=self.typing,
            )
            if self.typing is not None and self._scene.pad is None:
                self.typing.clear()
        return self._scene

    # The keypad ------------------------------------------------------------------------------

    def pad_key(self, says: str) -> None:
        """A key of the keypad for typed readings."""
        self._pad(lambda typing: typing.key(says))

    def keyboard(self, code: int) -> bool:
        """A key of a keyboard; False where it means nothing, as its twin on the glass."""
        pad = self.scene().pad
        heard: list[bool] = []
        if pad is not None and (pad.done_on if code in ENTER else pad.digits):
            self._pad(lambda typing: heard.append(typing.keyboard(code)))
        return any(heard)

    def pad_done(self) -> None:
        """What was typed is what the scale shows."""
        self._pad(ReadingOff.done)

    def pad_empty(self) -> None:
        """The pan is empty."""
        self._pad(ReadingOff.pan_empty)

    def _pad(self, press: Callable[[ReadingOff], None]) -> None:
        asked = self.scene().pad is not None
        if self.typing is not None and asked and self.desk.settled_for_showing:
            press(self.typing)
            self._changed()

    def _typed(self, events: list[PanEvent]) -> None:
        self.facts.readability = self.watch.state.readability
        self._happened(events)

    def _readable(self) -> Decimal | None:
        """The number on the pan: at rest the newest, in motion one that stands long enough."""
        state, now = self.watch.state, self._clock()
        resting = state.phase in (PanPhase.STABLE, PanPhase.EMPTY)
        if resting or state.grams is None or now - self._number_at >= NUMBER_EVERY_S:
            self._number, self._number_at = state.grams, now
        return self._number

    def _remember(self, reading: Reading) -> None:
        state = self.watch.state
        if reading.grams is None or not state.readings_flow:
            self._history.interrupt()
        else:
            resting = state.phase in (PanPhase.STABLE, PanPhase.EMPTY)
            self._history.note(reading.at, reading.grams, resting=resting)

    def _happened(self, events: list[PanEvent]) -> None:
        for event in events:
            self.desk.pan_event(event)

    def _weigh_again(self) -> None:
        self.watch.weigh_again(self._clock())
