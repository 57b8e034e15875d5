"""The desk: one running procedure between the pan, the person, the records and the screen.

Everything here runs in the screen's thread and knows no widget. Pan events and presses go in;
finished views come out by `view()`. What was captured is handed to the writer first, and the
screen is told only when it is written down, so that what stands on the screen survives anything.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from kiosk.procedures.balance_check import CheckState
from kiosk.procedures.check_jars import JarState
from kiosk.procedures.count_samples import CountSamples, SamplesState
from kiosk.procedures.fill_container import ContainerState, FillContainer
from kiosk.procedures.guess import GuessState
from kiosk.procedures.hand_in import HandInState
from kiosk.procedures.measure import Measure, MeasureState
from kiosk.procedures.measure_water import MeasureWater, WaterState
from kiosk.procedures.procedure import (
    PersonEvent,
    Procedure,
)
from kiosk.procedures.queue_steps import QueueState
from kiosk.procedures.weigh_empty import WeighEmptyState
from kiosk.records.backlog import News
from kiosk.ui.desk_base import Place
from kiosk.ui.desk_jobs import JobsDesk
from kiosk.ui.lock import CODE, HELPER_CODE
from kiosk.weighing.pan_events import PanEvent, PanKind

if TYPE_CHECKING:
    from kiosk.records.store import Store  # brings SQLAlchemy along, which only the writer may

_COMING = frozenset({PanKind.LOAD_PLACED, PanKind.SETTLED})


class Desk(JobsDesk):
    """Between the pan, the person, the records and the screen."""

    def pan_event(self, event: PanEvent) -> None:
        """Take what happened on the pan."""
        self.memory.note(event)
        if self.coach_side and self.lock.open:
            self.lock.seen(self.world.now())
        if self.failure is not None:
            self._missed.append(event)
        elif self.procedure is not None:
            self._carry_out(self.procedure.step(event))
        elif self.place is Place.ROUND:
            self.room.pan_event(event)
        elif self._somebody_came(event):
            self.hand_in(None)
        self._changed()

    def _somebody_came(self, event: PanEvent) -> bool:
        return (
            self.place is Place.HOME
            and self.ready
            and event.kind is PanKind.LOAD_PLACED
            and bool(self.facts.cups)
        )

    def press(self, event: PersonEvent) -> None:
        """Take a press. One that the state does not offer came from a finger that was late."""
        if self.failure is not None or not self.settled_for_showing:
            return
        if self.lock.open and self.coach_side:
            self.lock.seen(self.world.now())
        if self.procedure is not None and self.procedure.offers(event.kind):
            self._carry_out(self.procedure.step(event))
            self._changed()

    def room_press(self, event: PersonEvent) -> None:
        """A press on a page of a round."""
        if self.settled_for_showing or self.room.page.types_on:
            if self.lock.open and self.coach_side:  # a helper's presses are no sign of the coach
                self.lock.seen(self.world.now())
            self.room.press(event)
            self._changed()

    def go_home(self) -> None:
        """Leave the choice of a pair or a material, or what the records refuse for good."""
        if self.failure is not None:
            if not self.may_leave:
                return
            out_of_reach = self.notebook.worth_trying
            self.notebook.drop()
            self._missed.clear()
            self.procedure = None
            if not out_of_reach:
                self._read_anew()
            if self.place is Place.ROUND:
                self._changed()
                return
        self.place = Place.HOME
        self._changed()

    def _read_anew(self) -> None:
        """See what others wrote meanwhile: it stands."""
        if self.place is Place.ROUND:
            self.room.read_again()
        else:
            self.open()

    def _after(self, ended: Procedure) -> None:
        self.procedure = None
        self.place = Place.HOME
        match ended.state:
            case QueueState.LEFT | CheckState.CHECKED | CheckState.LEFT | JarState.LEFT if (
                self.room.is_open
            ):
                self.place = Place.ROUND
                self.room.page.opened()
            case CheckState.CHECKED:
                self.place = Place.SCALE
            case GuessState.NEXT:
                self.place = Place.TEAMS
            case WeighEmptyState.NEXT:
                self.place = Place.TEAMS
                self.fill_cup()
            case WeighEmptyState.SOMEBODY_ELSE | HandInState.SOMEBODY_ELSE:
                if self.facts.cups:
                    self.hand_in(None)
            case HandInState.NEXT:
                self.guessing = ""
                self.team_chosen(self.facts.team or "")
            case SamplesState.SAMPLED:
                assert isinstance(ended, CountSamples)
                self._start(FillContainer(self.world, pan=self.memory, draft=ended.kept))
            case MeasureState.WATER:
                self._start(MeasureWater(self.world, pan=self.memory))
            case WaterState.SHAPES:
                self._start(Measure(self.world, pan=self.memory))
            case ContainerState.CLOSING:
                assert isinstance(ended, FillContainer)
                self._weigh_closed(ended.letter or "")
            case ContainerState.SAMPLES:
                assert isinstance(ended, FillContainer)
                samples = CountSamples(self.world, pan=self.memory, draft=ended.kept, go_on=True)
                self._start(samples)

    def try_again(self) -> None:
        """Write down what could not be written down, then catch up with the pan."""
        self.notebook.try_again()
        missed, self._missed = self._missed, []
        for event in missed:
            # What came onto the pan meanwhile is judged afresh, after this was seen.
            if self.procedure is not None and event.kind not in _COMING:
                self._carry_out(self.procedure.step(event))
        if self.memory.loaded and not self.memory.used:
            self._weigh_again()
        self._changed()

    def others_wrote(self) -> None:
        """The records may be others now, or there again: follow; whoever is at work goes on."""
        if self.notebook.worth_trying:
            self.try_again()
        elif self.ready:
            self.notebook.follow(self._follow)

    def _follow(self) -> None:
        self.notebook.read_table()
        self.notebook.glance(_codes, self._take_codes)
        self.room.follow()
        self.see_rounds()

    def _take_codes(self, digests: tuple[str, str]) -> None:
        if not self.locked and self.place is not Place.CODE:  # nobody is typing one
            self.lock.digest, self.lock.helper_digest = digests

    def journal_said(self, news: News) -> None:
        """What was captured waits for the server, or does no longer."""
        self.notebook.journal_said(news)
        if not news.waiting:
            self.others_wrote()


def _codes(store: Store) -> tuple[str, str]:
    return store.recall(CODE) or "", store.recall(HELPER_CODE) or ""
